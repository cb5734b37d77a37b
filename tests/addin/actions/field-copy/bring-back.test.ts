import { beforeAll, describe, expect, test } from "vitest";
import { bringBack } from "../../../../addin/actions/field-copy/bring-back.ts";
import { copyFile, readCopyFile } from "../../../../addin/actions/field-copy/copy-file.ts";
import type { FieldCopy } from "../../../../addin/actions/field-copy/field-copy.ts";
import type { Choice } from "../../../../addin/actions/field-copy/merge-rows.ts";
import { planBringBack, readHome } from "../../../../addin/actions/field-copy/plan-bring-back.ts";
import { logWrites } from "../../../../addin/actions/program/change-log.ts";
import { undoChange } from "../../../../addin/actions/program/undo-change.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { holeTestsSheet } from "../../../../addin/records/hole-tests.ts";
import { pricesSheet } from "../../../../addin/records/prices.ts";
import { cellOf, firstRow } from "../../../../addin/records/place.ts";
import { programSheet } from "../../../../addin/records/program.ts";
import { readRecords } from "../../../../addin/records/read-records.ts";
import type { Sheet } from "../../../../addin/records/sheet.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../../addin/records/surfaces.ts";
import { visitsSheet } from "../../../../addin/records/visits.ts";
import { readXlsxFile } from "../../../../addin/workbook/embedded/xlsx/read-xlsx.ts";
import type { Workbook } from "../../../../addin/workbook/port.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { asFieldCopy, broughtBack, cloned, copyOf, DAY, differencesIn, home, planned, put, rowsOf, type } from "./copies.ts";

async function recordsOf<S extends Sheet>(workbook: Workbook, sheet: S) {
  const [cells = []] = await workbook.readSheets([sheet.name]);
  return readRecords(sheet, cells).rows.map(({ record }) => record);
}

const kinds = async (workbook: Workbook, copy: WorkbookInMemory) =>
  differencesIn(await planned(workbook, await asFieldCopy(copy))).map(({ kind, taken, field }) =>
    [kind, taken.sheet.name, ...(field === null ? [] : [field])].join(" "),
  );

describe("Yards that were taken along", () => {
  let start: WorkbookInMemory;
  let taken: WorkbookInMemory;
  let workbook: WorkbookInMemory;
  let copy: WorkbookInMemory;

  beforeAll(async () => {
    start = await home();
    taken = await copyOf(start, ["Y-001", "Y-002"]);
  });
  const anew = () => {
    workbook = cloned(start);
    copy = cloned(taken);
  };

  test("are a workbook of their own, with what they are computed with and without the other yards", async () => {
    anew();
    expect((await recordsOf(copy, sitesSheet)).map(({ siteId }) => siteId)).toEqual(["Y-001", "Y-002"]);
    expect(await recordsOf(copy, pricesSheet)).toEqual(await recordsOf(workbook, pricesSheet));
    expect(await recordsOf(copy, programSheet)).toEqual(await recordsOf(workbook, programSheet));
    expect((await recordsOf(copy, surfacesSheet)).length).toBe(3);
  });

  test("come back without a difference when nobody changed anything", async () => {
    anew();
    expect(await kinds(workbook, copy)).toEqual([]);
  });

  test("bring what only the copy changed, and leave what only home changed", async () => {
    anew();
    await type(copy, surfacesSheet, 0, { area: 950 });
    await type(workbook, surfacesSheet, 0, { share: 0.5 });
    await put(copy, visitsSheet, [{ siteId: "Y-002", date: DAY + 2, stage: "ticket", step: "ticket number", answer: "0551", by: "Rowan" }]);
    expect(await kinds(workbook, copy)).toEqual(["changed Surfaces", "new Visits"]);
    await broughtBack(workbook, copy);
    expect((await recordsOf(workbook, surfacesSheet))[0]).toMatchObject({ area: 950, share: 0.5 });
    expect((await recordsOf(workbook, visitsSheet)).at(-1)).toMatchObject({ answer: "0551", by: "Rowan" });
  });

  test.each<[Choice, number]>([
    ["home", 1000],
    ["copy", 950],
  ])("ask about a cell that both sides changed, and write %s's alone", async (choice, area) => {
    anew();
    await type(copy, surfacesSheet, 0, { area: 950 });
    await type(workbook, surfacesSheet, 0, { area: 1000 });
    expect(await kinds(workbook, copy)).toEqual(["cell differs Surfaces area"]);
    const before = await rowsOf(workbook);
    await expect(broughtBack(workbook, copy)).rejects.toThrow("A question about this copy is still open. Nothing was written.");
    expect(await rowsOf(workbook)).toEqual(before);
    await broughtBack(workbook, copy, () => choice);
    expect((await recordsOf(workbook, surfacesSheet))[0]?.area).toBe(area);
  });

  test("add up the answers that both sides gave to one step on one day, or keep one side's", async () => {
    const answered = async (choice: Choice) => {
      anew();
      const answer = { siteId: "Y-001", date: DAY + 3, stage: "screening", step: "slope" };
      await put(workbook, visitsSheet, [{ ...answer, answer: 4, by: "Ash" }]);
      await put(copy, visitsSheet, [{ ...answer, answer: 5, by: "Rowan" }]);
      await broughtBack(workbook, copy, () => choice);
      return (await recordsOf(workbook, visitsSheet)).flatMap(({ step, by }) => (step === "slope" ? [by] : []));
    };
    expect(await answered("both")).toEqual(["Ash", "Rowan"]);
    expect(await answered("home")).toEqual(["Ash"]);
    expect(await answered("copy")).toEqual(["Rowan"]);
  });

  test("add up the readings of one hole by their minutes, and ask only where one minute has two depths", async () => {
    anew();
    await type(workbook, holeTestsSheet, 0, { minutes3: 60, water3: 8, minutes4: 120, water4: 5 });
    await type(copy, holeTestsSheet, 0, { minutes3: 90, water3: 6.5, minutes4: 120, water4: 4 });
    expect(await kinds(workbook, copy)).toEqual(["changed Hole tests", "cell differs Hole tests water at 120"]);
    await broughtBack(workbook, copy, ({ kind }) => (kind === "cell differs" ? "copy" : null));
    const [hole] = await recordsOf(workbook, holeTestsSheet);
    expect([hole?.minutes1, hole?.minutes2, hole?.minutes3, hole?.minutes4, hole?.minutes5]).toEqual([0, 30, 60, 90, 120]);
    expect([hole?.water1, hole?.water2, hole?.water3, hole?.water4, hole?.water5]).toEqual([12, 10, 8, 6.5, 4]);
  });

  test("put a second row where one row has no room for the readings of both", async () => {
    anew();
    const readings = (first: number, values: readonly number[]) =>
      Object.fromEntries(
        values.flatMap((minutes, at) => [
          [`minutes${first + at}`, minutes],
          [`water${first + at}`, 9],
        ]),
      );
    await type(workbook, holeTestsSheet, 0, readings(3, [41, 42, 43, 44, 45]));
    await type(copy, holeTestsSheet, 0, readings(3, [51, 52, 53, 54, 55]));
    expect(await kinds(workbook, copy)).toEqual(["rows differ Hole tests"]);
    await broughtBack(workbook, copy, () => "both");
    expect((await recordsOf(workbook, holeTestsSheet)).map(({ hole, minutes3 }) => [hole, minutes3])).toEqual([
      ["A", 41],
      ["A", null],
      ["A", 51],
    ]);
  });

  test("say what was deleted, and ask where the other side changed it meanwhile", async () => {
    anew();
    const clear = { siteId: null, surface: null, cover: null, area: null };
    await type(copy, surfacesSheet, 0, clear);
    await type(copy, surfacesSheet, 1, clear);
    await type(workbook, surfacesSheet, 1, { area: 333 });
    expect(await kinds(workbook, copy)).toEqual(["deleted Surfaces", "deleted in the copy Surfaces"]);
    await broughtBack(workbook, copy, ({ kind }) => (kind === "deleted in the copy" ? "home" : null));
    expect((await recordsOf(workbook, surfacesSheet)).map(({ surface, area }) => [surface, area])).toEqual([
      ["Drive", 333],
      ["Roof", 80],
      ["Roof", 700],
    ]);
  });

  test("bring columns of people's own back below the heading they have", async () => {
    anew();
    const own = (row: number, column: number, value: string) => ({
      range: { sheet: sitesSheet.name, row, column, rows: 1, columns: 1 },
      values: [[value]],
    });
    const beside = Object.keys(sitesSheet.columns).length;
    await copy.writeValues([own(firstRow(sitesSheet) - 1, beside, "Dog's name"), own(firstRow(sitesSheet), beside, "Bracken")]);
    await workbook.writeValues([own(firstRow(sitesSheet) - 1, beside, "Key number"), own(firstRow(sitesSheet), beside, "12")]);
    await broughtBack(workbook, copy);
    const [cells = []] = await workbook.readSheets([sitesSheet.name]);
    expect(cells[firstRow(sitesSheet) - 1]?.slice(beside)).toEqual(["Key number", "Dog's name"]);
    expect(cells[firstRow(sitesSheet)]?.slice(beside)).toEqual(["12", "Bracken"]);
    expect(await kinds(workbook, copy)).toEqual([]);
  });

  test("give new yards IDs of a series of their own, so that two copies never give one ID to two yards", async () => {
    anew();
    const second = await copyOf(workbook, ["Y-001"]);
    const yard = { yard: "Alder house", address: "2 Alder Row", units: "us", soilGroup: null } as const;
    const ids = [await addYard(copy, yard), await addYard(second, yard), await addYard(workbook, yard)];
    expect(ids).toEqual(["Y1-001", "Y2-001", "Y-004"]);
  });

  test("ask whether an ID that both sides gave to a new yard means one yard or two, and give the second an ID of its own", async () => {
    anew();
    await put(workbook, sitesSheet, [{ siteId: "Y-004", yard: "Alder house", address: "2 Alder Row" }]);
    await put(copy, sitesSheet, [{ siteId: "Y-004", yard: "Birch house", address: "5 Birch Row", units: "us" }]);
    await put(copy, surfacesSheet, [{ siteId: "Y-004", surface: "Roof", area: 555 }]);
    const field = await asFieldCopy(copy);
    const open = await planned(workbook, field);
    expect(open.sharedIds).toEqual([{ siteId: "Y-004", home: "Alder house, 2 Alder Row", copy: "Birch house, 5 Birch Row" }]);
    expect(differencesIn(open)).toEqual([]);
    const plan = await planned(workbook, field, new Map([["y-004", "another"]]));
    await bringBack(workbook, differencesIn(plan), () => null);
    expect((await recordsOf(workbook, sitesSheet)).map(({ siteId, yard }) => [siteId, yard]).slice(3)).toEqual([
      ["Y-004", "Alder house"],
      ["Y-005", "Birch house"],
    ]);
    expect((await recordsOf(workbook, surfacesSheet)).at(-1)).toMatchObject({ siteId: "Y-005", area: 555 });
  });

  test("give a measured answer its verdict by the rules at home, as a formula", async () => {
    anew();
    const rule = "Distance to foundation";
    await put(copy, visitsSheet, [{ siteId: "Y-002", date: DAY, stage: "screening", step: "foundation", answer: 4, unit: "m", rule }]);
    await broughtBack(workbook, copy);
    const row = firstRow(visitsSheet) + 3;
    const [[formula = ""] = []] = await workbook.readFormulas(cellOf(visitsSheet, row, "verdict"));
    expect(formula).toMatch(/^=SOAK\.SITECHECK\("Distance to foundation",E\d+,Rules!.*"metric"\)$/);
  });

  test("are one change on the log, and one undo takes all of it back", async () => {
    anew();
    await type(copy, surfacesSheet, 0, { area: 950 });
    await type(copy, surfacesSheet, 1, { siteId: null, surface: null, cover: null, area: null });
    await put(copy, visitsSheet, [{ siteId: "Y-002", date: DAY + 2, stage: "ticket", step: "ticket number", answer: "=1+1", by: "Rowan" }]);
    const before = await rowsOf(workbook);
    const logged = logWrites(workbook);
    await broughtBack(logged.workbook, copy);
    const change = await logged.putOnLog({ by: "Ash", what: "Brought back" });
    expect(change).toBe(1);
    expect((await recordsOf(workbook, visitsSheet)).at(-1)?.answer).toBe("=1+1");
    await undoChange(logged.workbook, 1);
    expect(await rowsOf(workbook)).toEqual(before);
  });

  test("do not write over what somebody changed between the comparison and the writing", async () => {
    anew();
    await type(copy, surfacesSheet, 0, { area: 950 });
    const plan = await planned(workbook, await asFieldCopy(copy));
    await type(workbook, surfacesSheet, 0, { area: 1 });
    const conflicts = await bringBack(workbook, differencesIn(plan), () => null);
    expect(conflicts.map(({ now, write }) => [now, write])).toEqual([[1, 950]]);
    expect((await recordsOf(workbook, surfacesSheet))[0]?.area).toBe(1);
  });

  test("name what stays in the copy: changed settings, sheets of its own, cells under no heading", async () => {
    anew();
    await type(copy, programSheet, 0, { value: 99 });
    await copy.addSheets([{ name: "Sketch", headingRow: 0, columns: [], rows: 0, frozenColumns: 0, preface: ["a drawing"] }]);
    await copy.writeValues([
      { range: { sheet: sitesSheet.name, row: firstRow(sitesSheet), column: 40, rows: 1, columns: 1 }, values: [["by the way"]] },
    ]);
    const { left } = await asFieldCopy(copy);
    expect(left.length).toBe(3);
    expect(left.join(" ")).toMatch(/Settings on sheet Program .* Sheet "Sketch" .* Sites!AO4/);
  });

  test("are refused by another workbook, where a yard of the same ID is another yard", async () => {
    anew();
    await workbook.writeSetting("soakbook.workbook", "another");
    expect(planBringBack(await readHome(workbook), await asFieldCopy(copy))).toHaveProperty("sentence");
  });
});

describe("The copy as a file", () => {
  let workbook: WorkbookInMemory;
  let bytes: Uint8Array;

  beforeAll(async () => {
    workbook = await home();
    await put(workbook, visitsSheet, [
      { siteId: "Y-001", date: DAY + 0.4583333333, stage: "screening", step: "dig", answer: "two\nlines", note: " spaced ", link: "#N/A" },
    ]);
    bytes = await copyFile(workbook, ["Y-001", "Y-002"]);
  });

  const readBack = async (file: Uint8Array) => {
    const read = await readCopyFile("copy.xlsx", file);
    if ("sentence" in read) throw new Error(read.sentence);
    return read satisfies FieldCopy;
  };

  test("is small, and comes back without a difference", async () => {
    expect(bytes.length).toBeLessThan(300_000);
    const copy = await readBack(bytes);
    expect(copy.left).toEqual([]);
    expect(differencesIn(await planned(workbook, copy))).toEqual([]);
  });

  test("opens in the page without Excel as a workbook, its formulas and drop-downs in place and what it was taken from hidden", async () => {
    const { workbook: snapshot } = await readXlsxFile("copy.xlsx", bytes, "settings");
    const sheets = Object.values(snapshot.sheets);
    expect(sheets.find(({ name }) => name === "Taken along")).toMatchObject({ hidden: 1 });
    const design = JSON.stringify(sheets.find(({ name }) => name === "Design")?.cellData);
    expect(design).toContain("SOAK.SITEDESIGN(");
    expect(snapshot.resources?.find(({ name }) => name === "SHEET_DATA_VALIDATION_PLUGIN")?.data).toContain("good lawn");
    const settings = new Map((snapshot["custom"] as { settings: [string, string][] }).settings);
    expect(settings.get("soakbook.series")).toBe("Y1");
    expect(settings.get("soakbook.records")).not.toBeUndefined();
  });

  test.each([
    ["no spreadsheet", new Uint8Array([1, 2, 3]), /cannot be read/],
    ["cut off", () => bytes.slice(0, 2000), /cannot be read/],
  ])("is refused in words when it is %s", async (_, file, says) => {
    const read = await readCopyFile("copy.xlsx", typeof file === "function" ? file() : file);
    expect("sentence" in read ? read.sentence : "").toMatch(says);
  });
});
