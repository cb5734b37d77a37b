import { beforeEach, describe, expect, it } from "vitest";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { readProgram } from "../../../../addin/actions/program/read-program.ts";
import { whatIsNext } from "../../../../addin/actions/program/what-is-next.ts";
import { basinStatusOf } from "../../../../addin/actions/visits/stage-standing.ts";
import { checkWorkbook } from "../../../../addin/actions/workbook/check-workbook.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { designSheet } from "../../../../addin/records/design.ts";
import { digDaysSheet } from "../../../../addin/records/dig-days.ts";
import { cellOf, firstRow } from "../../../../addin/records/place.ts";
import type { Sheet } from "../../../../addin/records/sheet.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../../addin/records/surfaces.ts";
import type { CellValue } from "../../../../addin/workbook/port.ts";
import { HostInMemory } from "../../../taskpane/host-in-memory.ts";

const TODAY = dayNumber(2026, 5, 10);

let workbook: HostInMemory;

function put<S extends Sheet>(sheet: S, place: number, cells: Readonly<Record<string, CellValue>>): void {
  for (const [key, value] of Object.entries(cells)) {
    const { sheet: name, row, column } = cellOf(sheet, firstRow(sheet) + place, key as keyof S["columns"] & string);
    workbook.put(name, row, column, value);
  }
}

beforeEach(async () => {
  workbook = new HostInMemory();
  await setUpWorkbook(workbook);
  for (const yard of ["Lantern House", "Sail loft"]) await addYard(workbook, { yard, address: "", units: "us", soilGroup: "B" });
  put(surfacesSheet, 0, { siteId: "Y-001", surface: "Roof", cover: "roof", area: 900 });
  put(designSheet, 0, { siteId: "Y-001", status: "fits" });
  put(designSheet, 1, { siteId: "Y-002", status: "fits" });
});

/** Status of each yard, the lines of Next that say what is not counted, and what Check names. */
async function told() {
  const program = await readProgram(workbook);
  const says = (sentence: string) => sentence.includes("Site ID") || sentence.includes("stands below") || sentence.startsWith("Units");
  return {
    status: program.yards.map(basinStatusOf),
    next: whatIsNext(program, TODAY).filter(({ kind }) => kind === "not counted"),
    slips: [...program.slips, ...program.yards.flatMap(({ slips }) => slips)].map(({ sentence }) => sentence).filter(says),
  };
}

it("a workbook whose rows all count says nothing", async () => {
  expect(await told()).toEqual({ status: ["fits", "fits"], next: [], slips: [] });
});

describe("A surface that no formula counts", () => {
  it.each([
    ["without a Site ID, under a row of the yard", 1, { surface: "Barn", area: 3000 }, "Site ID is blank: this row counts for no yard."],
    [
      "with a pattern for an ID",
      1,
      { siteId: "Y-0*1", area: 3000 },
      'Site ID "Y-0*1" is a pattern, not an ID: this row counts for no yard.',
    ],
    ["with a space inside the ID", 1, { siteId: "Y- 001", area: 3000 }, 'Site ID "Y- 001" is spelled otherwise than "Y-001"'],
    [
      "below the prepared rows",
      surfacesSheet.rows,
      { siteId: "Y-001", area: 3000 },
      "This row stands below row 603, down to which the formulas of Surfaces reach",
    ],
  ])("%s is named, and its yard no longer fits", async (_, place, cells, sentence) => {
    put(surfacesSheet, place, cells);
    const { status, next, slips } = await told();
    expect(status[0]).toMatch(/^Not all counted\. Surfaces!A\d+: /);
    expect(status[0]).toContain(sentence);
    expect(status[1]).toBe("fits");
    expect(next.map(({ yard }) => yard?.siteId)).toEqual(["Y-001"]);
    expect(slips).toHaveLength(1);
    expect(slips[0]).toContain(sentence);
  });

  it("that is named and not measured yet is told where its area belongs", async () => {
    put(surfacesSheet, 1, { siteId: "Y-001", surface: "Barn" });
    const { yards } = await readProgram(workbook);
    expect(yards[0]?.uncounted.map(({ sentence }) => sentence)).toEqual(["Area and cover are blank: this surface is not counted."]);
    expect(yards.map(basinStatusOf)).toEqual([
      "Not all counted. Surfaces!D5: Area and cover are blank: this surface is not counted.",
      "fits",
    ]);
  });

  it("that Design's own Status tells stands beside what else does not fit", async () => {
    put(designSheet, 0, { status: "Not all counted: Rows below those that formulas reach: 1." });
    expect((await readProgram(workbook)).yards.map(basinStatusOf)[0]).toMatch(/^Not all counted: Rows below/);
    put(surfacesSheet, surfacesSheet.rows, { siteId: "Y-001", area: 3000 });
    expect((await readProgram(workbook)).yards.map(basinStatusOf)[0]).toMatch(/^Not all counted\. Surfaces!A604: /);
    put(designSheet, 0, { status: "Too large: a floor. Not all counted: Rows below those that formulas reach: 1." });
    expect((await readProgram(workbook)).yards.map(basinStatusOf)[0]).toMatch(/^Too large/);
  });

  it.each([
    ["without a Site ID, under nothing", 5, { surface: "Barn", area: 3000 }, "Site ID is blank"],
    ["with an ID of no yard", 5, { siteId: "Y-099", area: 3000 }, 'Site ID "Y-099" stands here, and no row of Sites has it.'],
  ])("%s is named for the whole program", async (_, place, cells, sentence) => {
    put(surfacesSheet, place, cells);
    const { status, next, slips } = await told();
    expect(status).toEqual(["fits", "fits"]);
    expect(next).toMatchObject([{ yard: null, urgency: "soon" }]);
    expect(next[0]?.sentence).toContain(sentence);
    expect(slips).toHaveLength(1);
  });

  it("with a pattern that may mean two yards holds both up", async () => {
    put(surfacesSheet, 5, { siteId: "Y-0*", area: 3000 });
    const { status } = await told();
    expect(status.map((words) => words?.startsWith("Not all counted"))).toEqual([true, true]);
  });
});

describe("A row of Sites", () => {
  it("without units does not fit in silence, because every number may be another", async () => {
    put(sitesSheet, 0, { units: null });
    const { status, slips } = await told();
    expect(status[0]).toContain("Units is blank: every number of this yard is taken for in, ft and sq ft.");
    expect(slips).toHaveLength(1);
  });

  it("without a Site ID is no yard, and says so", async () => {
    put(sitesSheet, 3, { yard: "Mill cottage" });
    const { next, slips } = await told();
    expect(slips).toEqual(["Site ID is blank: this row is no yard. Type an ID that was never used, or clear the row."]);
    expect(next).toMatchObject([{ yard: null }]);
  });
});

describe("A Site ID", () => {
  it("in other letters, with spaces around it or with one that came from a web page, is the yard's", async () => {
    put(surfacesSheet, 1, { siteId: "y-001", cover: "roof", area: 100 });
    put(surfacesSheet, 2, { siteId: " Y-001\u00a0", cover: "roof", area: 100 });
    const { yards } = await readProgram(workbook);
    expect(yards.map(({ surfaces }) => surfaces.length)).toEqual([3, 0]);
    expect(await told()).toEqual({ status: ["fits", "fits"], next: [], slips: [] });
  });

  it("that Report's sums cannot read is told to its yard, and typed right by Check workbook", async () => {
    put(digDaysSheet, 0, { siteId: "Y-001 ", entry: "sign-in", hours: 3 });
    const { slips, status } = await told();
    expect(slips).toEqual(['Site ID "Y-001 " has a space too many: Report does not count this row. Type Y-001.']);
    expect(status[0]).toBe("fits");
    const found = (await checkWorkbook(workbook)).filter(({ where }) => where?.sheet === digDaysSheet.name);
    expect(found.map(({ repair }) => repair?.says)).toEqual([`Type "Y-001" into 'Dig days'!A4.`]);
    await found[0]?.repair?.run(workbook);
    expect((await told()).slips).toEqual([]);
  });

  it.each(["Y-0*", "Y-00?", ">Y"])("of a yard itself that stands for others too, %s, is no yard's that fits", async (siteId) => {
    put(sitesSheet, 1, { siteId });
    put(designSheet, 1, { siteId });
    const { slips, status } = await told();
    expect(slips[0]).toContain(`Site ID "${siteId}" stands for other IDs too`);
    expect(status[0]).toBe("fits");
    expect(status[1]).toContain("Not all counted. Sites!A5: ");
  });
});

it("Check workbook names the row and its cell", async () => {
  put(surfacesSheet, 1, { surface: "Barn", area: 3000 });
  const findings = await checkWorkbook(workbook);
  expect(findings.map(({ sentence }) => sentence)).toContain(
    "Surfaces!A5: Site ID is blank: this row counts for no yard. Type the yard's ID, or clear the row.",
  );
});
