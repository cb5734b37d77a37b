/** What large programs and ordinary writes cost in requests: each is a wait of its own on Excel for the web. */
import { expect, test } from "vitest";
import { logWrites } from "../../addin/actions/program/change-log.ts";
import { readProgram } from "../../addin/actions/program/read-program.ts";
import { recordAnswer } from "../../addin/actions/visits/record-answer.ts";
import { addSurface } from "../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { appendRows } from "../../addin/actions/program/write-records.ts";
import { screeningVisit } from "../../addin/checklist/screening-visit.ts";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import type { Sheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { excelLookAt } from "../agreement/looks.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

const siteIds = Array.from({ length: 1000 }, (_, index) => `Y-${String(index + 1).padStart(3, "0")}`);
const MEGABYTE = 1024 * 1024;

async function program(): Promise<{
  readonly excel: InMemoryExcel;
  readonly workbook: ReturnType<typeof excelWorkbook>;
  readonly tripsOf: (work: () => Promise<unknown>) => Promise<number>;
}> {
  const excel = new InMemoryExcel();
  // What formulas answer is another test's; here requests are counted.
  excel.book.calculationMode = "Manual";
  const workbook = excelWorkbook((error) => expect.fail(String(error)));
  await setUpWorkbook(workbook);
  const tripsOf = async (work: () => Promise<unknown>) => {
    const before = excel.roundTrips;
    await work();
    return excel.roundTrips - before;
  };
  return { excel, workbook, tripsOf };
}

test("a thousand sites and three thousand surfaces go in with few requests, whose number does not grow with the rows, and each far below Excel's limit", async () => {
  const { excel, workbook, tripsOf } = await program();
  const sites = await tripsOf(() =>
    appendRows(
      workbook,
      sitesSheet,
      siteIds.map((siteId) => ({ siteId, yard: `Yard ${siteId}`, units: "us", pondingDepth: 6 })),
    ),
  );
  const surfaces = await tripsOf(() =>
    appendRows(
      workbook,
      surfacesSheet,
      siteIds.flatMap((siteId) => ["Roof", "Drive", "Shed"].map((surface) => ({ siteId, surface, cover: "roof", area: 400 }))),
    ),
  );
  // Growing past the prepared rows takes four more: what is prepared, the drop-downs above, formats and drop-downs, what is prepared now.
  expect(sites).toBeLessThanOrEqual(18);
  expect(surfaces).toBeLessThanOrEqual(18);
  expect(excel.largestRequestBytes).toBeLessThan(4 * MEGABYTE);
  expect(await tripsOf(() => readProgram(workbook))).toBeLessThanOrEqual(8);
  expect((await readProgram(workbook)).yards).toHaveLength(1000);
  const look = (sheet: Sheet, place: number) =>
    Object.keys(sheet.columns).map((key) => excelLookAt(excel.book)(cellOf(sheet, firstRow(sheet) + place, key)));
  expect(look(sitesSheet, 999)).toEqual(look(sitesSheet, 0));
  expect(look(surfacesSheet, 2999)).toEqual(look(surfacesSheet, 0));
  expect(look(sitesSheet, 0).filter(({ choices }) => choices !== null).length).toBeGreaterThan(2);
});

test("what the pane writes for one answer or one surface, its log included, is at most eleven requests", async () => {
  const { workbook: inner, tripsOf } = await program();
  await appendRows(inner, sitesSheet, [{ siteId: "Y-001", yard: "Corner house", units: "us" }]);
  const { workbook, putOnLog } = logWrites(inner);
  // The pane reads through the workbook that it writes to.
  const [yard] = (await readProgram(workbook)).yards;
  const step = screeningVisit.steps.find(({ id }) => id === "foundation");
  if (yard === undefined || step === undefined) throw new Error("The program lacks its yard, or the visit its step.");
  const logged = (write: () => Promise<unknown>) =>
    tripsOf(async () => {
      await write();
      await putOnLog({ by: "Crew one", what: "A test" });
    });
  const answer = await logged(() =>
    recordAnswer(workbook, yard, screeningVisit, step, { kind: "measured", value: 14, note: "", by: "Crew one" }),
  );
  const surface = await logged(() => addSurface(workbook, yard, { surface: "Roof", cover: "roof", area: 600, share: 1 }));
  expect({ answer, surface }).toEqual({
    answer: expect.toSatisfy((trips: number) => trips <= 11),
    surface: expect.toSatisfy((trips: number) => trips <= 8),
  });
});
