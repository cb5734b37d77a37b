import { BooleanNumber, VerticalAlign, WrapStrategy, type ICellData, type IStyleData, type IWorksheetData } from "@univerjs/core";
import { textCell } from "./cells.ts";
import { headingHeightPixels, widthPixels } from "../file/measures.ts";
import type { ColumnLayout, SheetLayout } from "../port.ts";

const DEFAULT_ROW_HEIGHT_PIXELS = 24;
/** Below its prepared rows a sheet has some more to type in. */
export const ROOM_BELOW_ROWS = 100;
export const ROOM_BESIDE_COLUMNS = 6;
export const SMALLEST_COLUMN_COUNT = 20;

const TITLE: IStyleData = { bl: BooleanNumber.TRUE, fs: 14 };
const PREFACE: IStyleData = { cl: { rgb: "#55616b" } };
const HEADING: IStyleData = {
  bl: BooleanNumber.TRUE,
  tb: WrapStrategy.WRAP,
  vt: VerticalAlign.BOTTOM,
  pd: { b: 4 },
  bd: { b: { s: 1, cl: { rgb: "#3d6b5c" } } },
};
const INPUT_HEADING: IStyleData = { ...HEADING, bg: { rgb: "#dcebe4" } };
const RESULT_HEADING: IStyleData = { ...HEADING, bg: { rgb: "#d9dee3" } };
const RESULT: IStyleData = { bg: { rgb: "#eef1f4" } };

/** A sheet as the grid takes it, and the styles its cells name. */
export interface LaidOutSheet {
  readonly sheet: Partial<IWorksheetData>;
  readonly styles: Readonly<Record<string, IStyleData>>;
}

/** Headings, notes, widths, formats and frozen panes of one sheet. Drop-downs are rules, not cells: see the adapter. */
export function layOut(layout: SheetLayout): LaidOutSheet {
  const styles = new Map<string, IStyleData>();
  const style = (name: string, value: IStyleData): string => {
    styles.set(name, value);
    return name;
  };
  const firstRow = layout.headingRow + 1;
  const cellData: Record<number, Record<number, ICellData>> = {};
  const put = (row: number, column: number, cell: ICellData): void => {
    (cellData[row] ??= {})[column] = cell;
  };

  layout.preface.forEach((line, row) => {
    put(row, 0, { ...textCell(line), s: row === 0 ? style("title", TITLE) : style("preface", PREFACE) });
  });
  layout.columns.forEach((column, index) => {
    put(layout.headingRow, index, headingCell(column, style));
    const bodyStyle = styleBelow(column);
    if (!bodyStyle) return;
    const name = style(`${column.role} ${column.numberFormat ?? ""}`, bodyStyle);
    for (let row = firstRow; row < firstRow + layout.rows; row += 1) put(row, index, { s: name });
  });

  return {
    sheet: {
      name: layout.name,
      rowCount: firstRow + layout.rows + ROOM_BELOW_ROWS,
      columnCount: Math.max(layout.columns.length + ROOM_BESIDE_COLUMNS, SMALLEST_COLUMN_COUNT),
      defaultRowHeight: DEFAULT_ROW_HEIGHT_PIXELS,
      defaultStyle: { vt: VerticalAlign.MIDDLE },
      cellData,
      columnData: Object.fromEntries(layout.columns.map((column, index) => [index, { w: widthPixels(column) }])),
      rowData: {
        ...(layout.preface.length > 0 ? { 0: { h: 30, ia: BooleanNumber.FALSE } } : {}),
        [layout.headingRow]: { h: headingHeightPixels(layout.columns), ia: BooleanNumber.FALSE },
      },
      freeze: {
        xSplit: layout.frozenColumns,
        ySplit: firstRow,
        startColumn: layout.frozenColumns > 0 ? layout.frozenColumns : -1,
        startRow: firstRow,
      },
    },
    styles: Object.fromEntries(styles),
  };
}

/** What the grid says when something else is typed than the drop-down offers. */
export function choiceRefusal(heading: string, choices: readonly string[]): string {
  return `${heading} must be one of: ${choices.join("; ")}.`;
}

function headingCell(column: ColumnLayout, style: (name: string, value: IStyleData) => string): ICellData {
  return {
    ...textCell(column.heading),
    s: column.role === "input" ? style("input heading", INPUT_HEADING) : style("result heading", RESULT_HEADING),
    ...(column.note === undefined ? {} : { custom: { note: column.note } }),
  };
}

function styleBelow(column: ColumnLayout): IStyleData | null {
  const format: IStyleData = column.numberFormat === undefined ? {} : { n: { pattern: column.numberFormat } };
  if (column.role === "result") return { ...RESULT, ...format };
  return column.numberFormat === undefined ? null : format;
}
