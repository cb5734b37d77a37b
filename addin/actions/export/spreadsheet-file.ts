import { largestOf } from "../../../functions/extremes.ts";
import { writeXlsx, type Cell, type CellStyle, type WriteSheet } from "hucre/xlsx";
import { isErrorCode } from "../../workbook/port.ts";

/** One cell of a spreadsheet file. A text is written as text, whatever it starts with. */
export interface FileCell {
  readonly value: string | number | null;
  /** Without the equals sign; `value` is then the answer that is shown until the file is computed. */
  readonly formula?: string;
  readonly format?: string;
  readonly look?: "title" | "heading" | "total" | "note";
  /** Runs on over the blank cells beside it instead of wrapping within its column. */
  readonly runsOn?: true;
}

export interface FileSheet {
  readonly name: string;
  readonly widths: readonly number[];
  readonly rows: readonly (readonly (FileCell | null)[])[];
  /** Counted from 0: printed again on every page. */
  readonly headingRow: number;
}

export type Paper = "letter" | "a4";

/** A spreadsheet file that opens anywhere: plain numbers, ordinary formulas, one page wide on paper. */
export function spreadsheetFile(title: string, sheets: readonly FileSheet[], paper: Paper): Promise<Uint8Array> {
  return writeXlsx({
    sheets: sheets.map((sheet) => writtenSheet(sheet, paper)),
    namedRanges: sheets.map(repeatedHeading),
    defaultFont: FONT,
    properties: { title: cellText(title), creator: "Soakbook" },
  });
}

type NamedRange = NonNullable<Parameters<typeof writeXlsx>[0]["namedRanges"]>[number];

const FONT = { name: "Calibri", size: 11 } as const;
const INCHES_MARGIN = { left: 0.5, right: 0.5, top: 0.6, bottom: 0.7, header: 0.3, footer: 0.3 } as const;

// A style states its whole font: the writer takes nothing from the default one.
const LOOKS: Readonly<Record<NonNullable<FileCell["look"]>, CellStyle>> = {
  title: { font: { ...FONT, size: 15, bold: true } },
  heading: {
    font: { ...FONT, bold: true },
    fill: { type: "pattern", pattern: "solid", fgColor: { rgb: "E6EFEA" } },
    border: { bottom: { style: "thin" } },
    alignment: { wrapText: true, vertical: "bottom" },
  },
  total: { font: { ...FONT, bold: true } },
  note: { font: { ...FONT, italic: true } },
};

function writtenSheet({ name, widths, rows, headingRow }: FileSheet, paper: Paper): WriteSheet {
  const cells = new Map<string, Partial<Cell>>();
  rows.forEach((row, rowIndex) => {
    row.forEach((cell, column) => {
      if (cell !== null) cells.set(`${rowIndex},${column}`, writtenCell(cell, row.length > 1 && cell.runsOn !== true));
    });
  });
  return {
    name,
    columns: widths.map((width) => ({ width })),
    rows: rows.map((row) => row.map(() => null)),
    rowDefs: new Map(rows.map((row, rowIndex) => [rowIndex, { height: LINE_POINTS * linesIn(row, widths) }])),
    cells,
    freezePane: { rows: headingRow + 1 },
    pageSetup: { paperSize: paper, orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0, margins: INCHES_MARGIN },
    headerFooter: { oddFooter: "&L&A&RPage &P of &N" },
  };
}

const LINE_POINTS = 16;
const MOST_LINES = 20;

/** Programs differ in whether they make a row as tall as its text, so the file says it. */
function linesIn(row: FileSheet["rows"][number], widths: FileSheet["widths"]): number {
  const [first] = row;
  if (row.length <= 1) return first?.look === "title" ? 1.4 : 1;
  const lines = row.map((cell, column) =>
    typeof cell?.value === "string" && cell.runsOn !== true
      ? Math.ceil((cell.value.length * 1.1) / (widths[column] ?? 10)) + cell.value.split("\n").length - 1
      : 1,
  );
  return Math.min(MOST_LINES, largestOf([1, ...lines]));
}

/** Text of a table wraps within its column; a line that stands alone runs on over the blank cells beside it. */
function writtenCell({ value, formula, format, look }: FileCell, wraps: boolean): Partial<Cell> {
  const style: CellStyle = {
    font: FONT,
    alignment: { vertical: "top", ...(wraps && typeof value === "string" ? { wrapText: true, indent: 1 } : {}) },
    ...(look === undefined ? {} : LOOKS[look]),
    ...(format === undefined ? {} : { numFmt: format }),
  };
  if (formula !== undefined) return { formula, formulaResult: value, type: "formula", style };
  if (typeof value !== "string") return { value, style };
  const words = cellText(value);
  // The writer makes an error of a text that reads like one; a run of text it leaves alone.
  return isErrorCode(words) ? { richText: [{ text: words }], type: "richText", style } : { value: words, type: "string", style };
}

// The writer's own setting for this leaves a sheet's name unquoted, and Excel then finds the file damaged.
function repeatedHeading({ name, headingRow }: FileSheet): NamedRange {
  const row = headingRow + 1;
  return { name: "_xlnm.Print_Titles", scope: name, range: `${quotedSheet(name)}!$${row}:$${row}` };
}

/** 'Y-001', as a formula names a sheet. */
export function quotedSheet(name: string): string {
  return `'${name.replaceAll("'", "''")}'`;
}

/** Names that every spreadsheet accepts, one for each text, in order, none twice whatever the case. */
export function sheetNames(texts: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return texts.map((text) => {
    const plain =
      cellText(text)
        .replace(/[[\]:*?/\\\n\t]/g, " ")
        .replace(/^[' ]+|[' ]+$/g, "") || "Sheet";
    let name = cut(plain, LONGEST_NAME);
    for (let copy = 2; taken.has(name.toLowerCase()) || name.toLowerCase() === "history"; copy += 1) {
      name = `${cut(plain, LONGEST_NAME - ` (${copy})`.length)} (${copy})`;
    }
    taken.add(name.toLowerCase());
    return name;
  });
}

const LONGEST_NAME = 31;
const LONGEST_TEXT = 32_767;

function cut(text: string, length: number): string {
  return [...text].reduce((kept, character) => (kept.length + character.length > length ? kept : kept + character), "").trim();
}

/**
 * A text as a cell of the file can hold it: no control characters or halves of a character, which the format cannot
 * carry; line breaks as line feeds; and what looks like the format's own escape kept as typed.
 */
export function cellText(text: string): string {
  const plain = text
    .replace(/\r\n?/g, "\n")
    .replace(/[^]/gu, (character) => (isUnwritable(character.codePointAt(0) ?? 0) ? "\ufffd" : character))
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_");
  return plain.length > LONGEST_TEXT ? plain.slice(0, LONGEST_TEXT) : plain;
}

function isUnwritable(code: number): boolean {
  return (code < 32 && code !== 9 && code !== 10) || (code >= 0xd800 && code <= 0xdfff) || code === 0xfffe || code === 0xffff;
}
