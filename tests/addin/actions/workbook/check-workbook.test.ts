import { beforeEach, describe, expect, test } from "vitest";
import { checkWorkbook, repairWorkbook } from "../../../../addin/actions/workbook/check-workbook.ts";
import { fillDemoProgram } from "../../../../addin/actions/demo/demo-program.ts";
import { readProgram } from "../../../../addin/actions/program/read-program.ts";
import { programState, RECORDS_VERSION_SETTING, setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { designSheet } from "../../../../addin/records/design.ts";
import { estimateLinesSheet } from "../../../../addin/records/estimate-lines.ts";
import { recordSheets } from "../../../../addin/records/program-sheets.ts";
import { placeSettingCell, settingCell } from "../../../../addin/records/program.ts";
import { cellOf, columnOf, firstRow, headingRow } from "../../../../addin/records/place.ts";
import { readRecords } from "../../../../addin/records/read-records.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../../addin/records/surfaces.ts";
import { addressOf } from "../../../../addin/workbook/port.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

/** The demo holds one cell with text in a number, on purpose. */
const MEANT = 'Hole diameter must be a number; it is the text "8 in".';
let workbook: WorkbookInMemory;

beforeEach(async () => {
  workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
});

const sentences = async () => (await checkWorkbook(workbook)).map(({ sentence }) => sentence);
const offers = async () => (await checkWorkbook(workbook)).map(({ repair }) => repair?.says ?? null);

async function deleteColumn(name: string, column: number): Promise<void> {
  const sheet = workbook.sheets.get(name);
  for (const row of [...(sheet?.values ?? []), ...(sheet?.formulas ?? [])])
    if (row !== undefined && row.length > column) row.splice(column, 1);
  return Promise.resolve();
}

test("a workbook as set up has nothing to repair, but for the cell the demo means", async () => {
  expect(await sentences()).toEqual([expect.stringContaining(MEANT)]);
  expect(await offers()).toEqual([null]);
});

describe("a sheet that is gone", () => {
  test("is named, and added blank, with its formulas, once that is asked for", async () => {
    workbook.sheets.delete("Surfaces");
    expect(await programState(workbook)).toEqual({ state: "incomplete", missing: ["Surfaces"] });
    const findings = await checkWorkbook(workbook);
    expect(findings.map(({ sentence }) => sentence)).toEqual(["Sheet Surfaces is missing."]);
    expect(findings[0]?.repair?.says).toBe(
      "Add sheet Surfaces with its headings, blank. What stood on it is kept nowhere, and does not come back.",
    );
    const left = await repairWorkbook(workbook, findings);
    expect(left.map(({ sentence }) => sentence)).toEqual([expect.stringContaining(MEANT)]);
    expect(await programState(workbook)).toEqual({ state: "ready" });
  });

  test("comes back with what it starts with, such as the limits of Rules", async () => {
    workbook.sheets.delete("Rules");
    const findings = await checkWorkbook(workbook);
    expect(findings[0]?.repair?.says).toBe(
      "Add sheet Rules with its headings and what it starts with. What stood on it is kept nowhere, and does not come back.",
    );
    await repairWorkbook(workbook, findings);
    expect((await readProgram(workbook)).rules[0]?.[0]).toBe("Distance to foundation");
  });

  test("half of the sheets: every one is brought back, and nothing else is touched", async () => {
    const sites = structuredClone(workbook.sheets.get("Sites")?.values);
    recordSheets.filter((_, index) => index % 2 === 0).forEach(({ name }) => name !== "Sites" && workbook.sheets.delete(name));
    let left = await checkWorkbook(workbook);
    for (let round = 0; round < 5 && left.some(({ repair }) => repair !== undefined); round++) left = await repairWorkbook(workbook, left);
    expect(left.filter(({ repair }) => repair !== undefined)).toEqual([]);
    expect(workbook.sheets.get("Sites")?.values).toEqual(sites);
    expect((await readProgram(workbook)).yards.length).toBeGreaterThan(10);
  });
});

describe("a heading", () => {
  test("that was renamed gets its name back, and the cells below it are read again", async () => {
    const where = cellOf(sitesSheet, headingRow(sitesSheet), "pondingDepth");
    const before = (await readProgram(workbook)).yards.map(({ site }) => site.record.pondingDepth);
    await workbook.writeValues([{ range: where, values: [["Ponding"]] }]);
    const findings = await checkWorkbook(workbook);
    expect(findings.map(({ repair }) => repair?.says)).toEqual([
      `Heading "Ponding" in ${addressOf(where)} becomes "Ponding depth (in | mm)" again. The cells below it stay as they are.`,
    ]);
    await repairWorkbook(workbook, findings);
    expect((await readProgram(workbook)).yards.map(({ site }) => site.record.pondingDepth)).toEqual(before);
  });

  test("whose column was deleted is put at the end, and the formulas find it there", async () => {
    await deleteColumn("Surfaces", cellOf(surfacesSheet, 0, "share").column);
    const findings = await checkWorkbook(workbook);
    const width = Object.keys(surfacesSheet.columns).length - 1;
    expect(findings.map(({ where }) => where?.column)).toEqual([width]);
    expect(findings[0]?.repair?.says).toMatch(
      /^Put the heading "Share draining here" into Surfaces!.3\. What stood in a deleted column does not come back/,
    );
    let left = await repairWorkbook(workbook, findings);
    left = await repairWorkbook(workbook, left);
    expect(left.filter(({ repair }) => repair !== undefined)).toEqual([]);
    const [[formula = ""] = []] = await workbook.readFormulas(cellOf(designSheet, firstRow(designSheet), "contributingArea"));
    expect(formula).toContain(`Surfaces!$${String.fromCharCode(65 + width)}$3:`);
  });
});

describe("a formula", () => {
  test("that somebody typed over is said with what stands there, and comes back on request", async () => {
    const where = cellOf(estimateLinesSheet, firstRow(estimateLinesSheet), "amount");
    const [[formula = ""] = []] = await workbook.readFormulas(where);
    await workbook.writeValues([{ range: where, values: [[999]] }]);
    const findings = await checkWorkbook(workbook);
    expect(findings[0]).toMatchObject({
      sentence: "'Estimate lines'!I4 does not hold the formula that belongs there.",
      repair: { says: 'Write the formula again. It takes the place of "999" typed there, which the Change log keeps.' },
    });
    await repairWorkbook(workbook, findings);
    expect(await workbook.readFormulas(where)).toEqual([[formula]]);
  });

  test("as another Excel spells it, in other letters or with spaces, is the same formula", async () => {
    const where = cellOf(estimateLinesSheet, firstRow(estimateLinesSheet), "amount");
    const [[formula = ""] = []] = await workbook.readFormulas(where);
    await workbook.writeFormulas([{ range: where, formulas: [[formula.toLowerCase().replaceAll(",", ", ")]] }]);
    expect(await offers()).toEqual([null]);
  });
});

test("a setting whose row is gone is added below the others with its first value", async () => {
  const where = settingCell("drainHours");
  await workbook.writeValues([{ range: { ...where, column: 0, columns: 4 }, values: [[null, null, null, null]] }]);
  const findings = await checkWorkbook(workbook);
  expect(findings.map(({ sentence, repair }) => [sentence, repair?.says])).toEqual([
    ['Sheet Program has no row "Ponding drains within".', 'Add the row "Ponding drains within" with 48 h below the others.'],
  ]);
  await repairWorkbook(workbook, findings);
  expect((await readProgram(workbook)).settings.drainHours).toBe(48);
});

test("the choice of the place is added where its row is gone", async () => {
  await workbook.writeValues([{ range: { ...placeSettingCell(), column: 0, columns: 4 }, values: [[null, null, null, null]] }]);
  const findings = await checkWorkbook(workbook);
  expect(findings.map(({ sentence, repair }) => [sentence, repair?.says])).toEqual([
    ['Sheet Program has no row "Country or state".', 'Add the row "Country or state" without a value below the others.'],
  ]);
  await repairWorkbook(workbook, findings);
  expect((await readProgram(workbook)).oneCall.placeAt).not.toBeNull();
});

describe("Site IDs", () => {
  test("that stand on Sites twice: the upper row is the yard, and the lower one is pointed out", async () => {
    const { yards } = await readProgram(workbook);
    const last = yards.at(-1);
    if (last === undefined) throw new Error("no yards");
    await workbook.writeValues([{ range: last.site.at("siteId"), values: [["Y-001"]] }]);
    const program = await readProgram(workbook);
    expect(program.yards.filter(({ siteId }) => siteId === "Y-001")).toHaveLength(1);
    expect(program.slips.map(({ where, sentence }) => `${addressOf(where)} ${sentence}`)).toContain(
      `${addressOf(last.site.at("siteId"))} Site ID "Y-001" stands on Sites twice. The upper row is the yard; give the lower one an ID of its own, because records are kept by Site ID.`,
    );
  });

  test("that no row of Sites has are said once an ID, with how many rows", async () => {
    await workbook.writeValues([{ range: cellOf(sitesSheet, firstRow(sitesSheet), "siteId"), values: [["Y-400"]] }]);
    const stray = (await readProgram(workbook)).slips.filter(({ sentence }) => sentence.startsWith('Site ID "Y-001"'));
    expect(stray).toHaveLength(1);
    expect(stray[0]?.sentence).toMatch(
      /stands here and \d+ more rows, and no row of Sites has it\. Put the yard back on Sites, or mend the ID\.$/,
    );
  });
});

describe("versions", () => {
  test("a workbook of an earlier version is brought up by the same repairs, then marked", async () => {
    workbook.settings.set(RECORDS_VERSION_SETTING, "1");
    for (const name of ["Prices", "Change log"]) workbook.sheets.delete(name);
    let left = await checkWorkbook(workbook);
    for (let round = 0; round < 4; round++) left = await repairWorkbook(workbook, left);
    expect(workbook.settings.get(RECORDS_VERSION_SETTING)).toBe("5");
    expect(left.filter(({ repair }) => repair !== undefined)).toEqual([]);
  });

  test("the layout of the version before gives way: computed sheets are written anew, left-over formulas go, nothing typed is lost", async () => {
    const fresh = structuredClone(workbook.sheets);
    workbook.settings.set(RECORDS_VERSION_SETTING, "2");
    const design = workbook.sheets.get("Design");
    if (design === undefined) throw new Error("no Design");
    design.values[headingRow(designSheet)] = [
      "Site ID",
      "Yard",
      "Units",
      "Contributing area (sq ft | m²)",
      "Runoff by curve numbers (cu ft | m³)",
    ];
    design.formulas[firstRow(designSheet)] = ["=1", "=2", "=3"];
    const surfaces = workbook.sheets.get("Surfaces");
    const wide = Object.keys(surfacesSheet.columns).length;
    await workbook.writeValues([{ range: cellOf(surfacesSheet, headingRow(surfacesSheet), "siteId"), values: [["Site ID"]] }]);
    (surfaces?.values[headingRow(surfacesSheet)] ?? [])[wide] = "Contributing area (sq ft | m²)";
    await workbook.writeFormulas([
      {
        range: { sheet: "Surfaces", row: firstRow(surfacesSheet), column: wide, rows: 1, columns: 1 },
        formulas: [['=IF(D4:D603="","",D4:D603)']],
      },
    ]);
    const first = await checkWorkbook(workbook);
    expect(first.map(({ sentence }) => sentence)).toEqual([
      "Sheet Design is laid out as an earlier version of the records had it.",
      'Column "Contributing area (sq ft | m²)" of sheet Surfaces is no longer computed there: Design works it out from the areas and shares typed.',
    ]);
    let left = first;
    for (let round = 0; round < 5 && left.some(({ repair }) => repair !== undefined); round++) left = await repairWorkbook(workbook, left);
    expect(left.filter(({ repair }) => repair !== undefined)).toEqual([]);
    expect(workbook.settings.get(RECORDS_VERSION_SETTING)).toBe("5");
    for (const name of ["Sites", "Hole tests", "Estimate lines"])
      expect(workbook.sheets.get(name)?.values).toEqual(fresh.get(name)?.values);
    expect(workbook.sheets.get("Design")?.formulas[firstRow(designSheet)]?.filter(Boolean)).toEqual(
      fresh.get("Design")?.formulas[firstRow(designSheet)]?.filter(Boolean),
    );
    expect(
      (await workbook.readFormulas({ sheet: "Surfaces", row: firstRow(surfacesSheet), column: wide, rows: 1, columns: 1 })).flat(),
    ).toEqual([""]);
  });

  test("the yard's card comes beside a column of somebody's own, which keeps its heading and its cells", async () => {
    workbook.settings.set(RECORDS_VERSION_SETTING, "4");
    const sites = workbook.sheets.get("Sites");
    const headings = sites?.values[headingRow(sitesSheet)] ?? [];
    const owner = columnOf(sitesSheet, "owner");
    headings.splice(owner, headings.length - owner, "Color of the door");
    await workbook.writeValues([
      { range: cellOf(sitesSheet, firstRow(sitesSheet), "siteId"), values: [["Y-001"]] },
      { range: { sheet: "Sites", row: firstRow(sitesSheet), column: owner, rows: 1, columns: 1 }, values: [["green"]] },
    ]);
    let left = await checkWorkbook(workbook);
    for (let round = 0; round < 4; round++) left = await repairWorkbook(workbook, left);
    expect(left.filter(({ repair }) => repair !== undefined)).toEqual([]);
    expect(headings[owner]).toBe("Color of the door");
    const [{ record, cells } = { record: {}, cells: {} }] = readRecords(sitesSheet, sites?.values ?? []).rows;
    expect([record, cells]).toMatchObject([{ siteId: "Y-001", owner: null, funder: null }, { owner: null }]);
    expect(sites?.values[firstRow(sitesSheet)]?.[owner]).toBe("green");
  });

  test("a workbook of a later version is left alone", async () => {
    workbook.settings.set(RECORDS_VERSION_SETTING, "6");
    expect(await programState(workbook)).toEqual({ state: "newer" });
  });

  test("a sheet of the person's own that bears one of our names is not ours", async () => {
    const own = new WorkbookInMemory();
    await own.addSheets([
      { name: "Report", headingRow: 0, columns: [], rows: 1, frozenColumns: 0, preface: ["mine"] },
      { name: "prices", headingRow: 0, columns: [], rows: 1, frozenColumns: 0, preface: ["mine"] },
    ]);
    expect(await programState(own)).toMatchObject({ state: "taken", names: expect.arrayContaining(["prices"]) as unknown });
  });
});
