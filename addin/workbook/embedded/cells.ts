import {
  CellValueType,
  getNumfmtParseValueFilter,
  isBooleanString,
  isRealNum,
  type ICellData,
  type IDocumentData,
  type Nullable,
} from "@univerjs/core";
import { isErrorCode, type CellValue } from "../port.ts";

const NOTHING = { v: null, t: null, f: null, si: null, p: null } as const satisfies ICellData;

/** A value as the grid takes it. What the cell held before is gone, a formula included. */
export function valueCell(value: CellValue): ICellData {
  if (value === null || value === "") return NOTHING;
  if (typeof value === "string") return { ...NOTHING, ...textCell(value) };
  if (typeof value === "boolean") return { ...NOTHING, v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { ...NOTHING, v: value, t: CellValueType.NUMBER };
}

export function formulaCell(formula: string): ICellData {
  if (!formula.startsWith("=")) throw new RangeError(`A formula starts with "=", and this does not: ${formula}`);
  return { ...NOTHING, f: formula };
}

/** A text that stays a text, also after somebody opens the cell and confirms it unchanged. */
export function textCell(text: string): ICellData {
  if (wouldBeReadAsMore(text)) return { v: text, t: CellValueType.FORCE_STRING };
  if (text.includes("\n")) return { p: linesOf(text), t: CellValueType.STRING };
  return { v: text, t: CellValueType.STRING };
}

export function holdsSomething(cell: Nullable<ICellData>): cell is ICellData {
  return cell?.p != null || (cell?.v != null && cell.v !== "");
}

export function cellValue(cell: Nullable<ICellData>): CellValue {
  const lines = cell?.p?.body?.dataStream;
  if (lines !== undefined) return lines.replace(/\r\n$/, "").replaceAll("\r", "\n") || null;
  const value = cell?.v ?? null;
  if (value === null || value === "") return null;
  return cell?.t === CellValueType.BOOLEAN ? Boolean(Number(value)) : value;
}

/** Typed as it is, the text would become a formula, a number, a date, TRUE or FALSE, or lose its apostrophe. */
function wouldBeReadAsMore(text: string): boolean {
  if (/^[=']/.test(text) || isBooleanString(text) || isErrorCode(text)) return true;
  // Reading dates is slow, and there is none without a digit.
  return /\d/.test(text) && (isRealNum(text) || getNumfmtParseValueFilter(text) !== null);
}

/** The grid keeps a text of several lines as a small document. */
function linesOf(text: string): IDocumentData {
  const lines = text.split("\n");
  let end = -1;
  const paragraphs = lines.map((line) => ({ startIndex: (end += line.length + 1) }));
  return {
    id: "lines",
    documentStyle: {},
    body: {
      dataStream: `${lines.join("\r")}\r\n`,
      paragraphs,
      sectionBreaks: [{ startIndex: end + 1 }],
    },
  };
}
