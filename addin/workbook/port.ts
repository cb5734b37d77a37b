/**
 * The port: everything Soakbook asks of a spreadsheet, whichever one is there.
 *
 * Rows and columns are counted from 0. A sheet is named by its tab. Every verb that touches several ranges
 * takes them together, because in Excel each call is a round trip.
 */

/** What a cell holds. Blank is null; an error arrives as its code, such as "#N/A". */
export type CellValue = string | number | boolean | null;

export interface CellRange {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** Rows and columns from A1 on; none for a blank sheet. */
export interface Extent {
  readonly rows: number;
  readonly columns: number;
}

/** How one column of a sheet is shown and what it accepts. Host-neutral: records derive it, adapters apply it. */
export interface ColumnLayout {
  readonly heading: string;
  readonly widthPixels: number;
  /** Excel number format, such as "0.00" or "yyyy-mm-dd". */
  readonly numberFormat?: string;
  /** Shown as a cell note on the heading. */
  readonly note?: string;
  /** Offered as a drop-down; other entries are refused. */
  readonly choices?: readonly string[];
  /** "input" is typed by people, "result" is computed and shown shaded. */
  readonly role: "input" | "result";
  /** Of a result: where to type instead, said to people who would type over it. What goes through the port passes. */
  readonly typedInstead?: string;
}

export interface SheetLayout {
  readonly name: string;
  /** 0-based row of the headings; rows above it hold a title and notes. */
  readonly headingRow: number;
  readonly columns: readonly ColumnLayout[];
  /** Rows below the headings that formats and drop-downs cover. */
  readonly rows: number;
  readonly frozenColumns: number;
  /** Text above the headings, a line a row, in column A. */
  readonly preface: readonly string[];
  /** Cells of the sheet that offer a drop-down of their own, where their column offers none. */
  readonly choicesIn?: readonly DropDown[];
  /** Each heading offers to show some of the rows alone. The embedded grid offers that from its toolbar instead. */
  readonly isFiltered?: boolean;
  /** Cells that stand out by what they hold. The embedded grid draws none: the words in the cells say the same. */
  readonly highlights?: readonly Highlight[];
  /**
   * Single cells that people's formulas may call by a name. One of its name from before gives way. The embedded grid has none:
   * it goes on reading the old cell after a row is inserted above, and a formula shows #NAME? there instead of a wrong number.
   */
  readonly names?: readonly CellName[];
}

export type Tone = "good" | "caution" | "stop";

/** Cells that take a color where a formula of the spreadsheet's own holds, written as for the first of them. */
export interface Highlight {
  readonly cells: CellRange;
  readonly formula: string;
  readonly tone: Tone;
}

export interface CellName {
  readonly name: string;
  readonly cell: CellRange;
}

/** One drop-down of a sheet, and the cells that offer it. */
export interface DropDown {
  readonly heading: string;
  readonly choices: readonly string[];
  readonly cells: CellRange;
}

/** Every drop-down of a sheet: of its columns, over all prepared rows, then of single cells. */
export function dropDownsOf(layout: SheetLayout): readonly DropDown[] {
  const { name, headingRow, columns, rows, choicesIn = [] } = layout;
  if (rows === 0) return choicesIn;
  const ofColumns = columns.flatMap(({ heading, choices }, column): DropDown[] =>
    choices === undefined ? [] : [{ heading, choices, cells: { sheet: name, row: headingRow + 1, column, rows, columns: 1 } }],
  );
  return [...ofColumns, ...choicesIn];
}

export interface ValueWrite {
  readonly range: CellRange;
  readonly values: readonly (readonly CellValue[])[];
}

export interface FormulaWrite {
  readonly range: CellRange;
  /** Each starts with "="; ranges spill as Excel spills. */
  readonly formulas: readonly (readonly string[])[];
}

/** A picture over the cells of a sheet, its top left corner at a cell's. */
export interface PictureWrite {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** One picture of a name stands on a sheet: another of that name takes its place. */
  readonly name: string;
  readonly pngBase64: string;
  readonly widthPixels: number;
  readonly heightPixels: number;
  /** What it shows, for those who cannot see it. */
  readonly description: string;
}

export type StopListening = () => void;

export interface Workbook {
  sheetNames(): Promise<readonly string[]>;

  /** Whether the answers of one formula fill the cells beside it, as the program's sheets need. Leaves nothing behind. */
  spills(): Promise<boolean>;

  /**
   * Adds the sheets in order, headings and layout included. Rejects with SheetExists if a name is taken; whatever it
   * rejects with, it has added none. `progress` is told the share that is done, and waited for.
   */
  addSheets(layouts: readonly SheetLayout[], progress?: (share: number) => Promise<void>): Promise<void>;

  /** The values of each range, blank cells as null, errors as their code. Rejects with SheetMissing. */
  read(ranges: readonly CellRange[]): Promise<readonly (readonly (readonly CellValue[])[])[]>;

  /** How far each sheet reaches from A1: to the last row and the last column that hold something. Rejects with SheetMissing. */
  extents(names: readonly string[]): Promise<readonly Extent[]>;

  /** All cells of each sheet that hold something, from A1 to the last of them; [] for a blank sheet. Rejects with SheetMissing. */
  readSheets(names: readonly string[]): Promise<readonly (readonly (readonly CellValue[])[])[]>;

  /** The formula of each cell as typed, or "" where it holds none. A spilled cell holds none. */
  readFormulas(range: CellRange): Promise<readonly (readonly string[])[]>;

  /** Writes values; a text stays text even when it starts with "=". A null empties the cell. */
  writeValues(writes: readonly ValueWrite[]): Promise<void>;

  /** Writes formulas: a verb of its own, so that nothing a person typed can become one. */
  writeFormulas(writes: readonly FormulaWrite[]): Promise<void>;

  /** Gives each range the formats, colors and drop-downs of the row above it. What its cells hold stays. Rejects with SheetMissing. */
  continueLayout(ranges: readonly CellRange[]): Promise<void>;

  /** Places the picture in the workbook file itself, instead of an earlier one of its name. Rejects with SheetMissing. */
  placePicture(picture: PictureWrite): Promise<void>;

  /** The names of the pictures on the sheet, the lowest first. Rejects with SheetMissing. */
  pictureNames(sheet: string): Promise<readonly string[]>;

  /** Resolves when every formula shows its answer to the writes so far. */
  calculated(): Promise<void>;

  /** The selected range of the sheet in front, or null when no cells are selected. */
  selection(): Promise<CellRange | null>;

  /** Brings the sheet to the front and selects the range. */
  select(range: CellRange): Promise<void>;

  onSelectionChanged(listener: (selection: CellRange) => void): StopListening;

  /** Somebody or some formula changed cells of the sheet, this add-in included. Bursts arrive as one call. */
  onCellsChanged(listener: (sheets: readonly string[]) => void): StopListening;

  /** A text kept inside the workbook file, or null. */
  readSetting(key: string): Promise<string | null>;
  writeSetting(key: string, text: string): Promise<void>;
}

/** The verbs that a workbook is put together with. */
export type WorkbookWriting = Pick<Workbook, "addSheets" | "writeValues" | "writeFormulas" | "writeSetting">;

export class SheetMissing extends Error {
  constructor(readonly sheet: string) {
    super(`This workbook has no sheet named "${sheet}".`);
    this.name = "SheetMissing";
  }
}

export class SheetExists extends Error {
  constructor(readonly sheet: string) {
    super(`This workbook already has a sheet named "${sheet}".`);
    this.name = "SheetExists";
  }
}

/** The spreadsheet refused a change for a reason a person can act on (a protected sheet, a cell being edited). */
export class WorkbookRefused extends Error {
  constructor(message: string) {
    super(message);
    this.name = "WorkbookRefused";
  }
}

/** "Sites!B3" as people write it, for sentences that say where something is. */
export function addressOf(range: CellRange): string {
  const sheet = /^[A-Za-z_][A-Za-z0-9_]*$/.test(range.sheet) ? range.sheet : `'${range.sheet.replaceAll("'", "''")}'`;
  const first = `${columnLetters(range.column)}${range.row + 1}`;
  if (range.rows === 1 && range.columns === 1) return `${sheet}!${first}`;
  return `${sheet}!${first}:${columnLetters(range.column + range.columns - 1)}${range.row + range.rows}`;
}

/** The same address with $ before every column and row, so that copying a formula does not move it. */
export function absolute(address: string): string {
  const bang = address.lastIndexOf("!") + 1;
  return address.slice(0, bang) + address.slice(bang).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
}

export function columnLetters(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnLetters(Math.floor(column / 26) - 1) + letter;
}

export function isErrorCode(value: CellValue): value is string {
  return typeof value === "string" && ERROR_CODES.has(value);
}

const ERROR_CODES: ReadonlySet<string> = new Set([
  "#NULL!",
  "#DIV/0!",
  "#VALUE!",
  "#REF!",
  "#NAME?",
  "#NUM!",
  "#N/A",
  "#SPILL!",
  "#CALC!",
  "#BUSY!",
  "#GETTING_DATA",
  "#CONNECT!",
  "#BLOCKED!",
  "#UNKNOWN!",
  "#FIELD!",
]);
