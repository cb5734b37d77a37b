import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  WORKBOOK_FILE_FORMAT,
  WORKBOOK_FILE_KIND,
  WorkbookFileRefused,
  contentsOf,
  readWorkbookFile,
  writeWorkbookFile,
} from "../../../../addin/workbook/embedded/workbook-file.ts";

const SAVED_AT = new Date("2026-05-04T09:30:00Z");

const workbook = {
  id: "program",
  name: "Program",
  sheetOrder: ["s1", "s2"],
  sheets: {
    s1: {
      id: "s1",
      name: "Sites",
      rowCount: 100,
      columnCount: 20,
      cellData: { "3": { "0": { v: "Y-001", t: 1 }, "1": { v: "=1+1", t: 4 } }, "6": { "1": { v: 0, t: 2, s: "input" } } },
      columnData: { "0": { w: 101 } },
    },
    s2: { id: "s2", name: "Design", cellData: { "3": { "0": { f: "=SOAK.DRAWDOWN(6,1)", v: 6 } } } },
  },
  styles: { input: { bl: 1 } },
  resources: [{ name: "drop-downs", data: "{}" }],
  custom: { soakbookSettings: [["version", "1"]] },
};

/** The file with one change made to it, as text. */
function fileWith(change: (file: ReturnType<typeof parsed>) => void): string {
  const file = parsed();
  change(file);
  return JSON.stringify(file);
}

function parsed() {
  return JSON.parse(writeWorkbookFile(workbook, SAVED_AT)) as {
    kind: unknown;
    format: unknown;
    savedAt: unknown;
    workbook: Record<string, unknown> & { sheets: Record<string, Record<string, unknown>> };
  };
}

function refusal(text: string): string {
  try {
    readWorkbookFile("ferry.soakbook", text);
  } catch (error) {
    expect(error).toBeInstanceOf(WorkbookFileRefused);
    return (error as Error).message;
  }
  return "not refused";
}

describe("A workbook file", () => {
  it("gives back what was saved, widths and styles included", () => {
    expect(readWorkbookFile("ferry.soakbook", writeWorkbookFile(workbook, SAVED_AT))).toEqual(workbook);
  });

  it("that is cut off, empty or scrambled says from where it cannot be read", () => {
    const whole = writeWorkbookFile(workbook, SAVED_AT);
    const unreadable = '"ferry.soakbook" is damaged: it cannot be read ';
    for (const end of [200, whole.length - 1]) {
      expect(refusal(whole.slice(0, end))).toMatch(/(to its end; it may have been cut off|from line 1, character \d+ on)\.$/);
    }
    expect(refusal("")).toBe(`${unreadable}because it is empty.`);
    expect(refusal("{ oops")).toMatch(/^"ferry\.soakbook" is damaged: it cannot be read /);
    const scrambled = `{\n"kind": "Soakbook workbook",\n"format" 1, ${" ".repeat(80)}}`;
    expect(refusal(scrambled)).toBe(`${unreadable}from line 3, character 10 on.`);
  });

  it("of another kind is named as such", () => {
    for (const other of ['{"some":"thing"}', "[]", "null", "12", '"text"']) {
      expect(refusal(other)).toBe('"ferry.soakbook" is not a Soakbook workbook file.');
    }
  });

  it("of a later version is refused before its content is looked at", () => {
    const later = JSON.stringify({ kind: WORKBOOK_FILE_KIND, format: WORKBOOK_FILE_FORMAT + 1, somethingNew: true });
    expect(refusal(later)).toBe(
      '"ferry.soakbook" was saved by a later version of Soakbook (file format 2; this version reads format 1). Open it with that version.',
    );
  });

  it("with a broken cell says which sheet and which cell", () => {
    const cellOf = (file: ReturnType<typeof parsed>) =>
      (file.workbook.sheets["s1"]?.["cellData"] as Record<string, Record<string, unknown>>)["6"] ?? {};
    const prefix = '"ferry.soakbook" is damaged: sheet "Sites", cell B7 holds';
    for (const broken of [{ v: { nested: 1 } }, { v: [1] }, "just text", { v: 1, t: 9 }]) {
      expect(refusal(fileWith((file) => (cellOf(file)["1"] = broken)))).toBe(`${prefix} neither a text, a number nor a formula.`);
    }
    expect(refusal(fileWith((file) => (cellOf(file)["1"] = { f: "SUM(A1)" })))).toBe(`${prefix} a formula that does not start with =.`);
  });

  it("with a broken sheet, row or part says which", () => {
    const damaged = '"ferry.soakbook" is damaged: ';
    const cases: [(file: ReturnType<typeof parsed>) => void, string][] = [
      [
        (file) => (file.workbook.sheets["s2"] = { id: "s2", name: "Design", cellData: { "4": "row" } }),
        'sheet "Design", row 5 is not a row of cells.',
      ],
      [(file) => (file.workbook.sheets["s2"] = { id: "s2", name: "Design", rowCount: -3 }), 'sheet "Design" has no proper "rowCount".'],
      [(file) => (file.workbook.sheets = {}), 'the workbook\'s "sheetOrder" is missing or not what it should be.'],
      [(file) => delete file.workbook["sheetOrder"], 'the workbook\'s "sheetOrder" is missing or not what it should be.'],
      [(file) => ((file as Record<string, unknown>)["workbook"] = "none"), "it holds no workbook."],
      [(file) => (file.savedAt = "yesterday"), 'its "savedAt" is missing or not what it should be.'],
      [(file) => (file.format = "one"), 'its "format" is missing or not what it should be.'],
    ];
    for (const [change, sentence] of cases) expect(refusal(fileWith(change))).toBe(damaged + sentence);
  });

  it("that would stop the page is refused: merged cells that are no list, a cell below the last row, parts that are no text of the grid", () => {
    const damaged = '"ferry.soakbook" is damaged: ';
    const sheetWith = (parts: Record<string, unknown>) => (file: ReturnType<typeof parsed>) =>
      (file.workbook.sheets["s2"] = { id: "s2", name: "Design", ...parts });
    const range = { startRow: 1, endRow: 2, startColumn: 0, endColumn: 1 };
    const cases: [(file: ReturnType<typeof parsed>) => void, string][] = [
      [sheetWith({ mergeData: { 0: range } }), 'sheet "Design" has no proper "mergeData".'],
      [sheetWith({ mergeData: [{ ...range, endRow: 0 }] }), 'sheet "Design" has no proper "mergeData".'],
      [sheetWith({ mergeData: [{ ...range, endColumn: "B" }] }), 'sheet "Design" has no proper "mergeData".'],
      [sheetWith({ cellData: { "9999998": { "0": { v: 1 } } } }), 'sheet "Design" has a cell in row 9999999, below the last row there is.'],
      [sheetWith({ cellData: { "3": { "16384": { v: 1 } } } }), /^sheet "Design", cell XFE4 holds/.source],
      [sheetWith({ rowData: { "1": "tall" } }), 'sheet "Design" has no proper "rowData".'],
      [sheetWith({ columnData: { "1": { w: "wide" } } }), 'sheet "Design" has no proper "columnData".'],
      [sheetWith({ freeze: { xSplit: 1 } }), 'sheet "Design" has no proper "freeze".'],
      [
        (file) => (file.workbook["resources"] = [{ name: "A", data: "{cut off" }]),
        'the workbook\'s "resources" is missing or not what it should be.',
      ],
      [(file) => (file.workbook["styles"] = { heading: "bold" }), 'the workbook\'s "styles" is missing or not what it should be.'],
    ];
    for (const [change, sentence] of cases) expect(refusal(fileWith(change))).toContain(damaged + sentence.replace(/^\^/, ""));
  });

  it("cannot smuggle in a name that every object has", () => {
    const text = writeWorkbookFile(workbook, SAVED_AT).replace('"s2":{"id":"s2"', '"__proto__":{"id":"__proto__"');
    expect(refusal(text)).toMatch(/is damaged/);
  });

  it("of any content whatever is opened or refused in a sentence", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(refusal(text)).toMatch(/^"ferry\.soakbook" (is|was) .*\.$/);
      }),
      { examples: [["{}"], [`{"kind":"${WORKBOOK_FILE_KIND}","format":1}`]] },
    );
  });
});

describe("What a workbook holds", () => {
  it("is the same where sorting left a place without a cell behind", () => {
    const holding = (cells: object) => contentsOf({ sheetOrder: ["s"], sheets: { s: { name: "Sites", cellData: { 4: cells } } } });
    expect(holding({ 0: { v: "Y-001" }, 1: undefined, 2: null })).toBe(holding({ 0: { v: "Y-001" } }));
  });

  it("is the same when only widths, styles and computed answers differ", () => {
    const shown = structuredClone(workbook);
    shown.sheets.s1.columnData["0"].w = 300;
    shown.sheets.s1.cellData["6"]["1"].s = "other";
    shown.sheets.s2.cellData["3"]["0"].v = 999;
    expect(contentsOf(shown)).toBe(contentsOf(workbook));
  });

  it("differs when a cell, a formula, a tab or a setting differs", () => {
    const changes: ((copy: typeof workbook) => void)[] = [
      (copy) => (copy.sheets.s1.cellData["6"]["1"].v = 1),
      (copy) => (copy.sheets.s2.cellData["3"]["0"].f = "=SOAK.DRAWDOWN(6,2)"),
      (copy) => (copy.sheets.s1.name = "Yards"),
      (copy) => copy.sheetOrder.reverse(),
      (copy) => (copy.custom.soakbookSettings = [["version", "2"]]),
    ];
    for (const change of changes) {
      const copy = structuredClone(workbook);
      change(copy);
      expect(contentsOf(copy)).not.toBe(contentsOf(workbook));
    }
  });

  it("tells 0 from blank", () => {
    const blank = structuredClone(workbook);
    Object.assign(blank.sheets.s1.cellData, { "6": {} });
    expect(contentsOf(blank)).not.toBe(contentsOf(workbook));
  });
});
