import fc from "fast-check";
import { beforeEach, describe, expect, test } from "vitest";
import { logWrites, type LoggedWorkbook } from "../../../../addin/actions/program/change-log.ts";
import { latestChanges } from "../../../../addin/actions/program/read-log.ts";
import { undoChange } from "../../../../addin/actions/program/undo-change.ts";
import { addSurface, addYard, changeSurface } from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { clearRow } from "../../../../addin/actions/program/write-records.ts";
import type { CellValue } from "../../../../addin/workbook/port.ts";
import { yardIn } from "../../one-yard.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { changeLogIn, loggedInMemory } from "./logged-workbook.ts";

const CREW = { by: "Crew one", what: "Roof changed" };
const newYard = { yard: "Corner house", address: "4 Fennel Row", units: "us", soilGroup: null } as const;
const roof = { surface: "Roof", cover: "roof", area: 620, share: 0.5, howMeasured: "" };

let host: WorkbookInMemory;
let logged: LoggedWorkbook;

beforeEach(async () => {
  ({ host, logged } = await loggedInMemory());
});

const yard = () => yardIn(host);

async function roofOfYard() {
  const [surface] = (await yard()).surfaces;
  if (surface === undefined) throw new Error("no surface");
  return surface;
}

const log = () => changeLogIn(host);

async function yardWithRoof(): Promise<void> {
  await addYard(host, newYard);
  await addSurface(host, await yard(), roof);
}

describe("what the pane writes", () => {
  test("stands on the log with who, what, where, and what each cell held before and since", async () => {
    await yardWithRoof();
    await changeSurface(logged.workbook, await roofOfYard(), { ...roof, area: 640, share: null });
    expect(await logged.putOnLog(CREW)).toBe(1);
    const { row } = await roofOfYard();
    const common = {
      change: 1,
      by: "Crew one",
      what: "Roof changed",
      siteId: "Y-001",
      sheet: "Surfaces",
      beforeHolds: "value",
      afterHolds: "value",
    };
    expect(await log()).toMatchObject([
      { ...common, cell: `D${row + 1}`, heading: "Area (sq ft | m²)", before: 620, after: 640 },
      { ...common, cell: `E${row + 1}`, heading: "Share draining here", before: 0.5, after: null },
    ]);
  });

  test("is not on the log where the cell held the same already, nor where a sheet is new", async () => {
    await yardWithRoof();
    await changeSurface(logged.workbook, await roofOfYard(), roof);
    expect(await logged.putOnLog(CREW)).toBeNull();
    const blank = new WorkbookInMemory();
    const settingUp = logWrites(blank);
    await setUpWorkbook(settingUp.workbook);
    expect(await settingUp.putOnLog(CREW)).toBeNull();
  });

  test("of two changes, the newer bears the higher number and is listed first", async () => {
    await yardWithRoof();
    await changeSurface(logged.workbook, await roofOfYard(), { ...roof, area: 640 });
    await logged.putOnLog(CREW);
    await changeSurface(logged.workbook, await roofOfYard(), { ...roof, area: 660 });
    expect(await logged.putOnLog({ ...CREW, what: "Roof again" })).toBe(2);
    expect((await latestChanges(host, 10)).map(({ change, what, siteIds, cells }) => ({ change, what, siteIds, cells }))).toEqual([
      { change: 2, what: "Roof again", siteIds: ["Y-001"], cells: 1 },
      { change: 1, what: "Roof changed", siteIds: ["Y-001"], cells: 1 },
    ]);
    expect(await latestChanges(host, 1)).toHaveLength(1);
  });
});

describe("undo", () => {
  test("puts back what a changed row, an added row and a cleared row held", async () => {
    await addYard(host, newYard);
    const without = structuredClone(host.sheets.get("Surfaces")?.values);
    await addSurface(logged.workbook, await yard(), roof);
    const added = await logged.putOnLog(CREW);
    const withRoof = structuredClone(host.sheets.get("Surfaces")?.values);
    await clearRow(logged.workbook, await roofOfYard());
    const cleared = await logged.putOnLog(CREW);
    await undoChange(host, cleared ?? 0);
    expect(host.sheets.get("Surfaces")?.values).toEqual(withRoof);
    await undoChange(host, added ?? 0);
    expect((host.sheets.get("Surfaces")?.values ?? []).flat().filter((cell) => cell !== null)).toEqual(
      without?.flat().filter((cell) => cell !== null),
    );
  });

  test("of a value in place of a formula brings the formula back, and a text that looks like one stays a text", async () => {
    const where = { sheet: "Sites", row: 3, column: 1, rows: 1, columns: 2 };
    await host.writeFormulas([{ range: where, formulas: [["=1+1", "=2+2"]] }]);
    await host.writeValues([{ range: { ...where, column: 2, columns: 1 }, values: [['=HYPERLINK("x")']] }]);
    await logged.workbook.writeValues([{ range: where, values: [["Corner house", "4 Fennel Row"]] }]);
    const change = await logged.putOnLog(CREW);
    await undoChange(host, change ?? 0);
    expect(await host.readFormulas(where)).toEqual([["=1+1", ""]]);
    expect((await host.read([where]))[0]?.[0]?.[1]).toBe('=HYPERLINK("x")');
  });

  test("writes nothing when a cell has changed since, and says what each held", async () => {
    await yardWithRoof();
    await changeSurface(logged.workbook, await roofOfYard(), { ...roof, area: 640, share: 1 });
    const change = await logged.putOnLog(CREW);
    const surface = await roofOfYard();
    await host.writeValues([{ range: surface.at("area"), values: [[700]] }]);
    await expect(undoChange(host, change ?? 0)).rejects.toThrow(
      `Nothing was undone, because cells have changed since. Surfaces!D${surface.row + 1} was left with "640" and holds "700" now; before the change it held "620".`,
    );
    expect((await roofOfYard()).record).toMatchObject({ area: 700, share: 1 });
  });

  test("writes nothing into a row that belongs to another yard by now", async () => {
    await yardWithRoof();
    await changeSurface(logged.workbook, await roofOfYard(), { ...roof, area: 640 });
    const change = await logged.putOnLog(CREW);
    const surface = await roofOfYard();
    await host.writeValues([{ range: surface.at("siteId"), values: [["Y-009"]] }]);
    await expect(undoChange(host, change ?? 0)).rejects.toThrow(/^Nothing was undone/);
    expect((await host.read([surface.at("area")]))[0]?.[0]?.[0]).toBe(640);
  });

  test("of a change the log does not have is said", async () => {
    await expect(undoChange(host, 7)).rejects.toThrow("The Change log has no change 7.");
  });

  test("brings back any cells, whatever was written over them", async () => {
    const cell = fc.oneof(
      fc.string(),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.boolean(),
      fc.constant(null),
      fc.constantFrom("__proto__", "=1+1", "<img src=x onerror=alert(1)>", "\u202e1"),
    );
    const rows = fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 4 });
    await fc.assert(
      fc.asyncProperty(rows, rows, async (before, after) => {
        const range = (count: number) => ({ sheet: "Sites", row: 3, column: 1, rows: count, columns: 2 });
        const blank = before.map((): CellValue[] => [null, null]);
        await host.writeValues([{ range: range(before.length), values: before }]);
        logged.forget();
        await logged.workbook.writeValues([{ range: range(after.length), values: after }]);
        const change = await logged.putOnLog(CREW);
        if (change !== null) await undoChange(host, change);
        const same = (value: CellValue): CellValue => (typeof value === "string" && value.trim() === "" ? null : value);
        const [left = []] = await host.read([range(before.length)]);
        expect(left.map((row) => row.map(same))).toEqual(before.map((row) => row.map(same)));
        await host.writeValues([{ range: range(blank.length), values: blank }]);
      }),
      { numRuns: 40 },
    );
  });
});
