/** How a sheet looks in Excel, and what its cells accept. */
import { asTyped } from "./cells.ts";
import { inExcel, POINTS_PER_PIXEL, rangeIn } from "./run.ts";
import { absolute, addressOf, dropDownsOf, type CellRange, type ColumnLayout, type DropDown, type SheetLayout } from "../port.ts";

const TITLE_POINTS = 14;
const PREFACE_COLOR = "#55616B";
const HEADING_COLORS = { input: "#DCEBE4", result: "#D9DEE3" } as const;
const RESULT_COLOR = "#EEF1F4";

/** Headings, notes, widths, formats, drop-downs and frozen panes of a sheet that was just added. */
export function layOut(sheet: Excel.Worksheet, layout: SheetLayout): void {
  const { preface, headingRow, columns, rows } = layout;
  if (preface.length > 0) {
    const lines = sheet.getRangeByIndexes(0, 0, preface.length, 1);
    lines.values = preface.map((line) => [asTyped(line)]);
    lines.format.font.color = PREFACE_COLOR;
    sheet.getRangeByIndexes(0, 0, 1, 1).format.font.set({ bold: true, size: TITLE_POINTS });
  }
  const headings = sheet.getRangeByIndexes(headingRow, 0, 1, columns.length);
  headings.values = [columns.map((column) => asTyped(column.heading))];
  headings.format.set({ wrapText: true, verticalAlignment: "Bottom" });
  headings.format.font.bold = true;
  columns.forEach((column, index) => {
    layOutHeading(sheet.getRangeByIndexes(headingRow, index, 1, 1), column);
    if (rows > 0) layOutBody(sheet.getRangeByIndexes(headingRow + 1, index, rows, 1), column, rows);
  });
  for (const dropDown of dropDownsOf(layout)) {
    const { row, column, rows: offered } = dropDown.cells;
    offer(sheet.getRangeByIndexes(row, column, offered, 1), dropDown.heading, choiceSource(sheet, layout, dropDown));
  }
  if (layout.frozenColumns > 0) sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, headingRow + 1, layout.frozenColumns));
  else sheet.freezePanes.freezeRows(headingRow + 1);
}

function layOutHeading(heading: Excel.Range, column: ColumnLayout): void {
  heading.format.columnWidth = column.widthPixels * POINTS_PER_PIXEL;
  heading.format.fill.color = HEADING_COLORS[column.role];
  // A cell note needs ExcelApi 1.18; an input message shows in the same place, and everywhere.
  if (column.note !== undefined) {
    heading.dataValidation.prompt = {
      showPrompt: true,
      title: within(TITLE_LIMIT, column.heading),
      message: within(MESSAGE_LIMIT, column.note),
    };
  }
}

function layOutBody(body: Excel.Range, column: ColumnLayout, rows: number): void {
  const { numberFormat, role } = column;
  if (numberFormat !== undefined) body.numberFormat = Array.from({ length: rows }, () => [numberFormat]);
  if (role === "result") body.format.fill.color = RESULT_COLOR;
}

function offer(body: Excel.Range, heading: string, source: string): void {
  body.dataValidation.rule = { list: { inCellDropDown: true, source } };
  body.dataValidation.errorAlert = {
    showAlert: true,
    style: "Stop",
    title: within(TITLE_LIMIT, heading),
    message: "This is not in the list. Choose an entry of the list, or leave the cell empty.",
  };
}

/** Excel takes up to 255 characters of choices itself; longer lists stand in a hidden column beside the sheet's own. */
function choiceSource(sheet: Excel.Worksheet, layout: SheetLayout, { choices, cells: offered }: DropDown): string {
  const list = choices.join(",");
  if (list.length <= MESSAGE_LIMIT && !choices.some((choice) => choice.includes(","))) return list;
  const range = {
    sheet: layout.name,
    row: layout.headingRow + 1,
    column: layout.columns.length + 1 + offered.column,
    rows: choices.length,
    columns: 1,
  };
  const cells = sheet.getRangeByIndexes(range.row, range.column, range.rows, range.columns);
  cells.values = choices.map((choice) => [asTyped(choice)]);
  cells.columnHidden = true;
  return `=${absolute(addressOf(range))}`;
}

/** Excel's limits for the title and the text of a validation message. */
const TITLE_LIMIT = 32;
const MESSAGE_LIMIT = 255;

function within(limit: number, text: string): string {
  return text.length <= limit ? text : `${text.slice(0, limit - 1)}…`;
}

/**
 * Two round trips, however many ranges: which drop-downs stand above, then everything. Excel copies formats from one row
 * to many, but no drop-down without the contents.
 */
export function continueLayout(ranges: readonly CellRange[]): Promise<void> {
  return inExcel([...new Set(ranges.map(({ sheet }) => sheet))], async (context) => {
    const parts = ranges.flatMap((range) =>
      Array.from({ length: range.columns }, (_, index) => {
        const below = { ...range, column: range.column + index, columns: 1 };
        return { below, above: rangeIn(context, rowAbove(below)).dataValidation.load("type, rule, errorAlert") };
      }),
    );
    await context.sync();
    for (const range of ranges) rangeIn(context, range).copyFrom(rangeIn(context, rowAbove(range)), "Formats");
    for (const { below, above } of parts) {
      if (above.type !== "List") continue;
      const { dataValidation } = rangeIn(context, below);
      dataValidation.rule = above.rule;
      dataValidation.errorAlert = above.errorAlert;
    }
  });
}

function rowAbove(range: CellRange): CellRange {
  return { ...range, row: range.row - 1, rows: 1 };
}
