/**
 * What every adapter of the workbook port must do, whichever spreadsheet is behind it. Each case is given a workbook
 * of its own with nothing in it but the sheet a new workbook comes with.
 */
import type { CellRange, CellValue, SheetLayout, Workbook } from "../../addin/workbook/port.ts";
import { expectEqual, expectRefusal, expectSoon, pause } from "./expectations.ts";
import type { CellLook, LookAt } from "./looks.ts";
import { pictureCases } from "./picture-cases.ts";

export interface AgreementCase {
  readonly title: string;
  /** The case reads what formulas answer, so the spreadsheet behind the adapter has to compute. */
  readonly needsComputing?: true;
  run(workbook: Workbook, lookAt: LookAt): Promise<void>;
}

export const cases: readonly AgreementCase[] = [
  {
    title: "sheets are added in order and named by their tab",
    async run(workbook) {
      const before = await workbook.sheetNames();
      await workbook.addSheets([yards("Sites"), yards("Ferry's 2nd round"), yards("Löss")]);
      expectEqual(await workbook.sheetNames(), [...before, "Sites", "Ferry's 2nd round", "Löss"], "the tabs");
    },
  },
  {
    title: "a new sheet shows its preface above its headings and nothing below them",
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      expectEqual(
        await values(workbook, range("Sites", 0, 0, 4, 4)),
        [
          ["Yards", null, null, null],
          ["One row a yard", null, null, null],
          ["Yard", "Soil", "Area", "Tested on"],
          [null, null, null, null],
        ],
        "the top of the sheet",
      );
    },
  },
  {
    title: "no sheet is added when one of the names is taken",
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      const before = await workbook.sheetNames();
      await expectRefusal(workbook.addSheets([yards("Rules"), yards("Sites")]), "SheetExists");
      expectEqual(await workbook.sheetNames(), before, "the tabs");
    },
  },
  {
    title: "no sheet is added when two of them have one name",
    async run(workbook) {
      const before = await workbook.sheetNames();
      await expectRefusal(workbook.addSheets([yards("Rules"), yards("Rules")]), "SheetExists");
      expectEqual(await workbook.sheetNames(), before, "the tabs");
    },
  },
  {
    title: "numbers, texts, yes and no, and blanks are read as they were written",
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      const rows = [
        ["Alder Row 4", 0, true, null],
        ["two\nlines", -3.5, false, 0.1],
        ["  spaces  ", 1e-7, null, 123456789.123],
      ];
      await workbook.writeValues([{ range: range("Sites", 3, 0, 3, 4), values: rows }]);
      expectEqual(await values(workbook, range("Sites", 3, 0, 3, 4)), rows, "the cells");
    },
  },
  {
    title: "a text that starts with = is a text and no formula",
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      const rows = [["=1+1"], ['=HYPERLINK("x")'], ["="], ["+1"], ["-1+2"], ["@SUM(1)"]];
      await workbook.writeValues([{ range: range("Sites", 3, 0, 6, 1), values: rows }]);
      await workbook.calculated();
      expectEqual(await values(workbook, range("Sites", 3, 0, 6, 1)), rows, "the cells");
      expectEqual(
        await workbook.readFormulas(range("Sites", 3, 0, 6, 1)),
        rows.map(() => [""]),
        "the formulas",
      );
    },
  },
  {
    title: "a text that looks like a number, a date, an answer or a quote stays a text",
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      const rows = [["12"], ["007"], ["1/2"], ["2025-05-01"], ["TRUE"], ["5%"], ["'tis"], ["__proto__"]];
      await workbook.writeValues([{ range: range("Sites", 3, 0, 8, 1), values: rows }]);
      expectEqual(await values(workbook, range("Sites", 3, 0, 8, 1)), rows, "the cells");
    },
  },
  {
    title: "a null empties a cell, whether it held a value or a formula",
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      await workbook.writeValues([{ range: range("Sites", 3, 0, 1, 2), values: [["Alder Row 4", 7]] }]);
      await workbook.writeFormulas([{ range: range("Sites", 3, 2, 1, 1), formulas: [["=1+1"]] }]);
      await workbook.calculated();
      await workbook.writeValues([{ range: range("Sites", 3, 0, 1, 3), values: [[null, null, null]] }]);
      await workbook.calculated();
      expectEqual(await values(workbook, range("Sites", 3, 0, 1, 3)), [[null, null, null]], "the cells");
      expectEqual(await workbook.readFormulas(range("Sites", 3, 0, 1, 3)), [["", "", ""]], "the formulas");
    },
  },
  {
    title: "ranges of several sheets are written and read together, in the order asked for",
    async run(workbook) {
      await workbook.addSheets([yards("Sites"), yards("Rules")]);
      await workbook.writeValues([
        { range: range("Rules", 3, 0, 1, 2), values: [["Slope", 12]] },
        { range: range("Sites", 3, 0, 2, 1), values: [["Alder Row 4"], ["Quay 9"]] },
      ]);
      expectEqual(
        await workbook.read([range("Sites", 3, 0, 2, 1), range("Rules", 3, 0, 1, 2), range("Sites", 4, 0)]),
        [[["Alder Row 4"], ["Quay 9"]], [["Slope", 12]], [["Quay 9"]]],
        "the ranges",
      );
    },
  },
  {
    title: "a whole sheet is read from A1 to the last cell that holds something, and a blank sheet is nothing",
    async run(workbook) {
      const [blank = ""] = await workbook.sheetNames();
      await workbook.addSheets([yards("Sites"), yards("Rules")]);
      await workbook.writeValues([{ range: range("Rules", 5, 9), values: [[0]] }]);
      const [rules = [], sites = [], nothing] = await workbook.readSheets(["Rules", "Sites", blank]);
      expectEqual([rules.length, rules.map((row) => row.length)], [6, [10, 10, 10, 10, 10, 10]], "how far Rules reaches");
      expectEqual([rules[5]?.[8], rules[5]?.[9]], [null, 0], "the last row of Rules");
      expectEqual(
        sites.slice(0, 3).map((row) => row.slice(0, 4)),
        [
          ["Yards", null, null, null],
          ["One row a yard", null, null, null],
          ["Yard", "Soil", "Area", "Tested on"],
        ],
        "the top of Sites",
      );
      expectEqual(nothing, [], "the blank sheet");
      expectEqual(
        await workbook.extents(["Rules", blank]),
        [
          { rows: 6, columns: 10 },
          { rows: 0, columns: 0 },
        ],
        "how far Rules and the blank sheet reach",
      );
      await expectRefusal(workbook.readSheets(["Sites", "Basins"]), "SheetMissing");
      await expectRefusal(workbook.extents(["Sites", "Basins"]), "SheetMissing");
    },
  },
  {
    title: "a single cell offers a drop-down of its own, and the cells around it none",
    async run(workbook, lookAt) {
      const cells = range("Sites", FIRST_ROW + 1, 0);
      await workbook.addSheets([{ ...yards("Sites"), choicesIn: [{ heading: "Place", choices: TWO_CHOICES, cells }] }]);
      const offered = [0, 1, 2].map((row) => lookAt(range("Sites", FIRST_ROW + row, 0)).choices);
      expectEqual(offered, [null, TWO_CHOICES, null], "the choices down the first column");
    },
  },
  {
    title: "prepared rows have the formats and drop-downs of their columns, and the row below them has none",
    async run(workbook, lookAt) {
      await workbook.addSheets([yards("Sites")]);
      for (const row of [FIRST_ROW, LAST_ROW]) expectEqual(looksAcross(lookAt, row), PREPARED, `row ${row}`);
      expectEqual(looksAcross(lookAt, LAST_ROW + 1), [BARE, BARE, BARE, BARE], "the row below");
    },
  },
  {
    title: "formats and drop-downs go on over further rows, once and once more, and what stands there stays",
    async run(workbook, lookAt) {
      await workbook.addSheets([yards("Sites"), yards("Ferry's 2nd round")]);
      const typed = [["Quay 9", "clay", 7.25, 46_000]];
      await workbook.writeValues([{ range: range("Sites", LAST_ROW + 3, 0, 1, 4), values: typed }]);
      const further = { row: LAST_ROW + 1, column: 0, rows: 20, columns: 4 };
      await workbook.continueLayout([
        { ...further, sheet: "Sites" },
        { ...further, sheet: "Ferry's 2nd round" },
      ]);
      await workbook.continueLayout([{ ...further, sheet: "Sites", row: LAST_ROW + 21, rows: 2000 }]);
      for (const row of [FIRST_ROW, LAST_ROW + 1, LAST_ROW + 3, LAST_ROW + 20, LAST_ROW + 21, LAST_ROW + 2020])
        expectEqual(looksAcross(lookAt, row), PREPARED, `row ${row}`);
      expectEqual(looksAcross(lookAt, LAST_ROW + 2021), [BARE, BARE, BARE, BARE], "the row below");
      expectEqual(looksAcross(lookAt, LAST_ROW + 20, "Ferry's 2nd round"), PREPARED, "the last row of the other sheet");
      expectEqual(looksAcross(lookAt, LAST_ROW + 21, "Ferry's 2nd round"), [BARE, BARE, BARE, BARE], "the row below it");
      expectEqual(await values(workbook, range("Sites", LAST_ROW + 3, 0, 1, 4)), typed, "the row that was typed");
      await expectRefusal(workbook.continueLayout([{ ...further, sheet: "Basins" }]), "SheetMissing");
    },
  },
  {
    title: "cells far beyond what a sheet was laid out for can be written and read",
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      await workbook.writeValues([{ range: range("Sites", 1500, 60), values: [["far"]] }]);
      expectEqual(await values(workbook, range("Sites", 1500, 60)), [["far"]], "the cell");
      expectEqual(await values(workbook, range("Sites", 2400, 90)), [[null]], "a cell further out");
    },
  },
  {
    title: "a sheet that is not there is named in the refusal, and nothing is written",
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      const here = range("Sites", 3, 0);
      const gone = range("Basins", 3, 0);
      await expectRefusal(workbook.read([here, gone]), "SheetMissing");
      await expectRefusal(workbook.readFormulas(gone), "SheetMissing");
      await expectRefusal(workbook.select(gone), "SheetMissing");
      await expectRefusal(workbook.writeFormulas([{ range: gone, formulas: [["=1"]] }]), "SheetMissing");
      const writes = [here, gone].map((where) => ({ range: where, values: [["typed"]] }));
      await expectRefusal(workbook.writeValues(writes), "SheetMissing");
      expectEqual(await values(workbook, here), [[null]], "the cell on the sheet that is there");
    },
  },
  {
    title: "a formula is read back as it was typed, and a value in its place removes it",
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      const where = range("Sites", 3, 0, 1, 2);
      await workbook.writeFormulas([{ range: where, formulas: [["=C4*2", '=IF(C4="","",C4)']] }]);
      expectEqual(await workbook.readFormulas(where), [["=C4*2", '=IF(C4="","",C4)']], "the formulas");
      await workbook.writeValues([{ range: range("Sites", 3, 0), values: [[5]] }]);
      expectEqual(await workbook.readFormulas(where), [["", '=IF(C4="","",C4)']], "the formulas left");
      expectEqual(await values(workbook, range("Sites", 3, 0)), [[5]], "the value");
    },
  },
  {
    title: "selecting a range brings its sheet to the front",
    async run(workbook) {
      await workbook.addSheets([yards("Sites"), yards("Rules")]);
      await workbook.select(range("Rules", 4, 1, 2, 2));
      expectEqual(await workbook.selection(), range("Rules", 4, 1, 2, 2), "the selection");
      await workbook.select(range("Sites", 5, 0));
      expectEqual(await workbook.selection(), range("Sites", 5, 0), "the selection");
    },
  },
  {
    title: "a change of selection is told until nobody listens",
    async run(workbook) {
      await workbook.addSheets([yards("Sites"), yards("Rules")]);
      const heard: CellRange[] = [];
      const stop = workbook.onSelectionChanged((selection) => heard.push(selection));
      await workbook.select(range("Sites", 4, 0));
      await workbook.select(range("Rules", 3, 1));
      await expectSoon(() => heard.some(({ sheet, row }) => sheet === "Rules" && row === 3), "hearing of the second selection");
      expectEqual(heard.at(-1), range("Rules", 3, 1), "the last selection told");
      stop();
      const count = heard.length;
      await workbook.select(range("Sites", 6, 0));
      await pause(200);
      expectEqual(heard.length, count, "how many were told");
    },
  },
  {
    title: "a burst of changes is told once, with every sheet that changed, until nobody listens",
    async run(workbook) {
      await workbook.addSheets([yards("Sites"), yards("Rules"), yards("Quiet")]);
      await workbook.calculated();
      await pause(300);
      const heard: (readonly string[])[] = [];
      const stop = workbook.onCellsChanged((sheets) => heard.push([...sheets].sort()));
      await workbook.writeValues([
        { range: range("Sites", 3, 0), values: [["Alder Row 4"]] },
        { range: range("Rules", 3, 0), values: [["Slope"]] },
      ]);
      await workbook.writeValues([{ range: range("Sites", 4, 0), values: [["Quay 9"]] }]);
      await expectSoon(() => heard.length > 0, "hearing of the changes");
      await pause(300);
      expectEqual(heard, [["Rules", "Sites"]], "what was told");
      stop();
      await workbook.writeValues([{ range: range("Sites", 5, 0), values: [["Mill Lane 2"]] }]);
      await pause(300);
      expectEqual(heard.length, 1, "how often it was told");
    },
  },
  {
    title: "a text kept in the workbook is read back, and one never kept is null",
    async run(workbook) {
      expectEqual(await workbook.readSetting("version"), null, "a setting never written");
      for (const key of ["version", "a key with spaces", "__proto__"]) {
        await workbook.writeSetting(key, `first ${key}`);
        await workbook.writeSetting(key, `second ${key}`);
      }
      expectEqual(await workbook.readSetting("version"), "second version", "a setting");
      expectEqual(await workbook.readSetting("a key with spaces"), "second a key with spaces", "a setting");
      expectEqual(await workbook.readSetting("__proto__"), "second __proto__", "a setting");
      expectEqual(await workbook.readSetting("constructor"), null, "a setting never written");
    },
  },
  {
    title: "waiting for answers ends when there is nothing to compute",
    async run(workbook) {
      await workbook.calculated();
      await workbook.addSheets([yards("Sites")]);
      await workbook.writeValues([{ range: range("Sites", 3, 0), values: [["Alder Row 4"]] }]);
      await workbook.calculated();
      await workbook.calculated();
    },
  },
  {
    title: "formulas show their answers to everything written so far",
    needsComputing: true,
    async run(workbook) {
      await workbook.addSheets([yards("Sites"), yards("Design")]);
      await workbook.writeFormulas([
        { range: range("Design", 3, 0, 1, 3), formulas: [["=Sites!C4*2", "=A4>10", '=IF(A4>10,"","small")']] },
      ]);
      for (const area of [3, 8]) {
        await workbook.writeValues([{ range: range("Sites", 3, 2), values: [[area]] }]);
        await workbook.calculated();
        const expected = [[area * 2, area > 5, area > 5 ? null : "small"]];
        expectEqual(await values(workbook, range("Design", 3, 0, 1, 3)), expected, `the answers for ${area}`);
      }
    },
  },
  {
    title: "a whole sheet is read with what formulas spill",
    needsComputing: true,
    async run(workbook) {
      await workbook.addSheets([yards("Sites"), yards("Design")]);
      await workbook.writeValues([{ range: range("Sites", 3, 2, 3, 1), values: [[3], [8], [5]] }]);
      await workbook.writeFormulas([{ range: range("Design", 3, 1), formulas: [["=Sites!C4:C6*2"]] }]);
      await workbook.calculated();
      const [design = []] = await workbook.readSheets(["Design"]);
      expectEqual(
        design.slice(3).map((row) => row[1]),
        [6, 16, 10],
        "the spilled column",
      );
    },
  },
  {
    title: "an error is read as its code",
    needsComputing: true,
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      const formulas = [["=1/0", "=NA()", '=VALUE("x")', "=NOSUCHFUNCTION(1)"]];
      await workbook.writeFormulas([{ range: range("Sites", 3, 0, 1, 4), formulas }]);
      await workbook.calculated();
      expectEqual(await values(workbook, range("Sites", 3, 0, 1, 4)), [["#DIV/0!", "#N/A", "#VALUE!", "#NAME?"]], "the cells");
    },
  },
  {
    title: "a measured 0 is not blank to a formula, and a blank is",
    needsComputing: true,
    async run(workbook) {
      await workbook.addSheets([yards("Sites")]);
      await workbook.writeValues([{ range: range("Sites", 3, 0, 2, 1), values: [[0], [null]] }]);
      await workbook.writeFormulas([
        { range: range("Sites", 3, 1, 2, 1), formulas: [['=A4=""'], ['=A5=""']] },
        { range: range("Sites", 3, 2), formulas: [['=A4:A5=""']] },
      ]);
      await workbook.calculated();
      expectEqual(
        await values(workbook, range("Sites", 3, 1, 2, 2)),
        [
          [false, false],
          [true, true],
        ],
        "which are blank",
      );
    },
  },
  {
    title: "spilled cells are read like any other and hold no formula",
    needsComputing: true,
    async run(workbook) {
      await workbook.addSheets([yards("Sites"), yards("Design")]);
      await workbook.writeValues([{ range: range("Sites", 3, 2, 4, 1), values: [[1], [0], [null], [4]] }]);
      await workbook.writeFormulas([{ range: range("Design", 3, 0), formulas: [['=IF(Sites!C4:C7="","",Sites!C4:C7*10)']] }]);
      await workbook.calculated();
      expectEqual(await values(workbook, range("Design", 3, 0, 4, 1)), [[10], [0], [null], [40]], "the spilled cells");
      expectEqual(
        (await workbook.readFormulas(range("Design", 3, 0, 4, 1))).map(([formula]) => formula !== ""),
        [true, false, false, false],
        "which hold a formula",
      );
    },
  },
  ...pictureCases,
];

const TWO_CHOICES = ["Osier, east", "Osier, west"];

function range(sheet: string, row: number, column: number, rows = 1, columns = 1): CellRange {
  return { sheet, row, column, rows, columns };
}

const FIRST_ROW = 3;
const LAST_ROW = 22;
const BARE: CellLook = { format: null, fill: null, choices: null };
/** A row of `yards`: words, a list, a computed number, a date. */
const PREPARED: readonly CellLook[] = [
  BARE,
  { ...BARE, choices: ["sand", "loam, silty", "clay"] },
  { ...BARE, format: "0.0", fill: "#eef1f4" },
  { ...BARE, format: "yyyy-mm-dd" },
];

function looksAcross(lookAt: LookAt, row: number, sheet = "Sites"): readonly CellLook[] {
  return [0, 1, 2, 3].map((column) => lookAt(range(sheet, row, column)));
}

async function values(workbook: Workbook, where: CellRange): Promise<readonly (readonly CellValue[])[]> {
  const [read] = await workbook.read([where]);
  return read ?? [];
}

function yards(name: string): SheetLayout {
  return {
    name,
    headingRow: 2,
    preface: ["Yards", "One row a yard"],
    rows: 20,
    frozenColumns: 1,
    columns: [
      { heading: "Yard", widthPixels: 120, role: "input", note: "The address as the program writes it." },
      { heading: "Soil", widthPixels: 80, role: "input", choices: ["sand", "loam, silty", "clay"] },
      { heading: "Area", widthPixels: 80, role: "result", numberFormat: "0.0" },
      { heading: "Tested on", widthPixels: 90, role: "input", numberFormat: "yyyy-mm-dd" },
    ],
  };
}
