/** A workbook put together as an .xlsx file, without a spreadsheet: the one that opens it works its formulas out. */
import { writeXlsx, type Cell, type CellStyle, type DataValidation, type WriteSheet } from "hucre/xlsx";
import { largestOf } from "../../../functions/extremes.ts";
import {
  absolute,
  addressOf,
  dropDownsOf,
  SheetExists,
  SheetMissing,
  type CellRange,
  type CellValue,
  type ColumnLayout,
  type DropDown,
  type FormulaWrite,
  type SheetLayout,
  type ValueWrite,
  type WorkbookWriting,
} from "../port.ts";
import { inFileSpelling } from "./formula-spelling.ts";
import { digitsWide, headingHeightPixels, pointsHigh, widthPixels } from "./measures.ts";

const FONT = { name: "Calibri", size: 11 } as const;
const solid = (rgb: string): NonNullable<CellStyle["fill"]> => ({ type: "pattern", pattern: "solid", fgColor: { rgb } });

// A style states its whole font: the writer takes nothing from the default one.
const TITLE: CellStyle = { font: { ...FONT, size: 14, bold: true } };
const PREFACE: CellStyle = { font: { ...FONT, color: { rgb: "55616B" } } };
const HEADING: CellStyle = {
  font: { ...FONT, bold: true },
  border: { bottom: { style: "thin" } },
  alignment: { wrapText: true, vertical: "bottom" },
};
const HEADINGS = { input: { ...HEADING, fill: solid("DCEBE4") }, result: { ...HEADING, fill: solid("D9DEE3") } } as const;
const RESULT_FILL = solid("EEF1F4");

/** A rule of a file holds up to 255 characters of choices, none with a comma. */
const MOST_IN_RULE = 255;

interface FileSheet {
  readonly layout: SheetLayout;
  readonly cells: Map<string, Partial<Cell>>;
}

export class WrittenFile implements WorkbookWriting {
  readonly #sheets = new Map<string, FileSheet>();
  readonly #settings = new Map<string, string>();

  /** `hidden` says which sheets people need not see. */
  constructor(private readonly hidden: (sheet: string) => boolean = () => false) {}

  addSheets(layouts: readonly SheetLayout[]): Promise<void> {
    const taken = layouts.find(({ name }) => this.#sheets.has(name));
    if (taken !== undefined) return Promise.reject(new SheetExists(taken.name));
    for (const layout of layouts) this.#sheets.set(layout.name, { layout, cells: startingCells(layout) });
    return Promise.resolve();
  }

  writeValues(writes: readonly ValueWrite[]): Promise<void> {
    return this.#write(writes.map(({ range, values }) => ({ range, cells: values.map((row) => row.map(valueCell)) })));
  }

  writeFormulas(writes: readonly FormulaWrite[]): Promise<void> {
    return this.#write(
      writes.map(({ range, formulas }) => ({
        range,
        cells: formulas.map((row, down) => row.map((formula, across) => formulaCell(formula, range, down, across))),
      })),
    );
  }

  writeSetting(key: string, text: string): Promise<void> {
    this.#settings.set(key, text);
    return Promise.resolve();
  }

  bytes(): Promise<Uint8Array> {
    return writeXlsx({
      sheets: [...this.#sheets].map(([name, sheet]) => ({ ...writtenSheet(sheet), ...(this.hidden(name) ? { hidden: true } : {}) })),
      defaultFont: FONT,
      properties: { creator: "Soakbook", custom: Object.fromEntries(this.#settings) },
    });
  }

  #write(writes: readonly { readonly range: CellRange; readonly cells: readonly (readonly Partial<Cell>[])[] }[]): Promise<void> {
    const missing = writes.find(({ range }) => !this.#sheets.has(range.sheet));
    if (missing !== undefined) return Promise.reject(new SheetMissing(missing.range.sheet));
    for (const { range, cells } of writes) {
      const held = this.#sheets.get(range.sheet)?.cells;
      cells.forEach((row, down) => {
        row.forEach((cell, across) => {
          const key = `${range.row + down},${range.column + across}`;
          const { style, comment } = held?.get(key) ?? {};
          held?.set(key, { ...cell, ...(style === undefined ? {} : { style }), ...(comment === undefined ? {} : { comment }) });
        });
      });
    }
    return Promise.resolve();
  }
}

/** Title, notes and headings, and what the cells of each column look like. */
function startingCells({ preface, headingRow, columns, rows }: SheetLayout): Map<string, Partial<Cell>> {
  const cells = new Map<string, Partial<Cell>>();
  preface.forEach((line, row) => cells.set(`${row},0`, { ...valueCell(line), style: row === 0 ? TITLE : PREFACE }));
  columns.forEach((column, at) => {
    const { heading, role, note } = column;
    cells.set(`${headingRow},${at}`, {
      ...valueCell(heading),
      style: HEADINGS[role],
      ...(note === undefined ? {} : { comment: { author: "Soakbook", text: note } }),
    });
    const style = styleBelow(column);
    if (style === null) return;
    for (let row = headingRow + 1; row <= headingRow + rows; row += 1) cells.set(`${row},${at}`, { style });
  });
  return cells;
}

function styleBelow({ role, numberFormat }: ColumnLayout): CellStyle | null {
  const format = numberFormat === undefined ? {} : { numFmt: numberFormat };
  if (role === "result") return { font: FONT, fill: RESULT_FILL, ...format };
  return numberFormat === undefined ? null : { font: FONT, ...format };
}

function writtenSheet({ layout, cells }: FileSheet): WriteSheet {
  const own = layout.columns.length;
  const beside = largestOf([own - 1, ...[...cells.keys()].map((key) => Number(key.split(",")[1]))]) + 2;
  const lists = new LongLists(layout.headingRow + 1, beside);
  const dataValidations = dropDownsOf(layout).map((dropDown) => ruleOf(dropDown, lists));
  const written = new Map([...cells, ...lists.cells()]);
  const places = [...written.keys()].map((key) => key.split(",").map(Number));
  const rows = largestOf([0, ...places.map(([row = 0]) => row + 1)]);
  const columns = largestOf([own, ...places.map(([, column = 0]) => column + 1)]);
  return {
    name: layout.name,
    rows: Array.from({ length: rows }, () => Array<null>(columns).fill(null)),
    cells: written,
    columns: Array.from({ length: columns }, (_, at) => {
      const column = layout.columns[at];
      return { ...(column === undefined ? {} : { width: digitsWide(widthPixels(column)) }), ...(lists.isIn(at) ? { hidden: true } : {}) };
    }),
    rowDefs: new Map([[layout.headingRow, { height: pointsHigh(headingHeightPixels(layout.columns)) }]]),
    freezePane: { rows: layout.headingRow + 1, columns: layout.frozenColumns },
    ...(dataValidations.length === 0 ? {} : { dataValidations }),
  };
}

/** Lists that are too long for a rule stand in hidden columns beside everything else, one each. */
class LongLists {
  readonly #choices = new Map<string, readonly string[]>();

  constructor(
    private readonly row: number,
    private readonly beside: number,
  ) {}

  rangeOf(choices: readonly string[]): CellRange {
    const key = choices.join("\n");
    this.#choices.set(key, choices);
    const column = this.beside + [...this.#choices.keys()].indexOf(key);
    return { sheet: "", row: this.row, column, rows: choices.length, columns: 1 };
  }

  isIn(column: number): boolean {
    return column >= this.beside && column < this.beside + this.#choices.size;
  }

  cells(): readonly (readonly [string, Partial<Cell>])[] {
    return [...this.#choices.values()].flatMap((choices, list) =>
      choices.map((choice, down) => [`${this.row + down},${this.beside + list}`, valueCell(choice)] as const),
    );
  }
}

function ruleOf({ heading, choices, cells }: DropDown, lists: LongLists): DataValidation {
  const shared = {
    type: "list",
    range: addressOf(cells).replace(/^.*!/, ""),
    allowBlank: true,
    showErrorMessage: true,
    errorStyle: "stop",
    errorMessage: `${heading} must be one of: ${choices.join("; ")}.`.slice(0, MOST_IN_RULE),
  } as const;
  if (choices.join(",").length <= MOST_IN_RULE && !choices.some((choice) => choice.includes(",")))
    return { ...shared, values: [...choices] };
  return { ...shared, formula1: absolute(addressOf(lists.rangeOf(choices))).replace(/^.*!/, "") };
}

/** A text that reads like an error stays a text: a run of text is left alone. */
function valueCell(value: CellValue): Partial<Cell> {
  if (value === null || value === "") return {};
  if (typeof value !== "string") return { value, type: typeof value === "number" ? "number" : "boolean" };
  return value.startsWith("#") ? { richText: [{ text: value }], type: "richText" } : { value, type: "string" };
}

/** Every one is a dynamic array: otherwise Excel would take one cell of each range by itself. */
function formulaCell(formula: string, { row, column }: CellRange, down: number, across: number): Partial<Cell> {
  const own = addressOf({ sheet: "", row: row + down, column: column + across, rows: 1, columns: 1 }).replace(/^.*!/, "");
  return {
    type: "formula",
    formula: inFileSpelling(formula),
    formulaType: "array",
    formulaDynamic: true,
    formulaRef: own,
  };
}
