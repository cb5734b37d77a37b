/** How a sheet looks in Excel, and what its cells accept. */
import { asTyped } from "./cells.ts";
import { layOutPage } from "./page-layout.ts";
import { inExcel, POINTS_PER_PIXEL, rangeIn } from "./run.ts";
import {
  absolute,
  addressOf,
  dropDownsOf,
  type CellRange,
  type ColumnLayout,
  type DropDown,
  type Highlight,
  type SheetLayout,
  type Tone,
} from "../port.ts";

const TITLE_POINTS = 14;
const PREFACE_COLOR = "#55616B";
const HEADING_COLORS = { input: "#DCEBE4", result: "#D9DEE3" } as const;
const RESULT_COLOR = "#EEF1F4";
const TONES: Readonly<Record<Tone, { readonly fill: string; readonly font: string }>> = {
  good: { fill: "#DDEFE3", font: "#1E5B3A" },
  caution: { fill: "#FBEFD5", font: "#6B4A00" },
  stop: { fill: "#F8DEDC", font: "#8A1C16" },
};
/** Excel draws the button of a filter over the end of the heading. */
const FILTER_BUTTON_PIXELS = 18;

/** Headings, notes, widths, formats, rules, frozen panes and the printed page of a sheet that was just added. */
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
    layOutHeading(sheet.getRangeByIndexes(headingRow, index, 1, 1), column, layout.isFiltered === true ? FILTER_BUTTON_PIXELS : 0);
    if (rows > 0) layOutBody(sheet.getRangeByIndexes(headingRow + 1, index, rows, 1), column, rows);
  });
  for (const dropDown of dropDownsOf(layout)) {
    const { row, column, rows: offered } = dropDown.cells;
    offer(sheet.getRangeByIndexes(row, column, offered, 1), dropDown.heading, choiceSource(sheet, layout, dropDown));
  }
  if (layout.isFiltered === true) sheet.autoFilter.apply(sheet.getRangeByIndexes(headingRow, 0, rows + 1, columns.length));
  for (const highlight of layout.highlights ?? []) show(sheet, highlight);
  if (layout.frozenColumns > 0) sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, headingRow + 1, layout.frozenColumns));
  else sheet.freezePanes.freezeRows(headingRow + 1);
  layOutPage(sheet, layout);
}

function layOutHeading(heading: Excel.Range, column: ColumnLayout, extraPixels: number): void {
  heading.format.columnWidth = (column.widthPixels + extraPixels) * POINTS_PER_PIXEL;
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
  const { heading, numberFormat, role, typedInstead } = column;
  if (numberFormat !== undefined) body.numberFormat = Array.from({ length: rows }, () => [numberFormat]);
  if (role === "result") body.format.fill.color = RESULT_COLOR;
  if (typedInstead !== undefined) refuseTyping(body, heading, typedInstead);
}

/** Excel holds typed entries against a rule, and neither formulas that spill nor what an add-in writes. */
function refuseTyping(body: Excel.Range, heading: string, typedInstead: string): void {
  body.dataValidation.rule = { custom: { formula: "=FALSE" } };
  body.dataValidation.errorAlert = stop(heading, typedInstead);
}

function show(sheet: Excel.Worksheet, { cells, formula, tone }: Highlight): void {
  const { row, column, rows, columns } = cells;
  const { custom } = sheet.getRangeByIndexes(row, column, rows, columns).conditionalFormats.add("Custom");
  custom.rule.formula = formula;
  custom.format.fill.color = TONES[tone].fill;
  custom.format.font.color = TONES[tone].font;
}

function offer(body: Excel.Range, heading: string, source: string): void {
  body.dataValidation.rule = { list: { inCellDropDown: true, source } };
  body.dataValidation.errorAlert = stop(heading, "This is not in the list. Choose an entry of the list, or leave the cell empty.");
}

function stop(heading: string, message: string): Excel.DataValidationErrorAlert {
  return { showAlert: true, style: "Stop", title: within(TITLE_LIMIT, heading), message: within(MESSAGE_LIMIT, message) };
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
 * Two round trips, however many ranges: which rules stand above, then everything. Excel copies formats, colors by rule among
 * them, from one row to many, but no drop-down without the contents.
 */
export function continueLayout(ranges: readonly CellRange[]): Promise<void> {
  return inExcel([...new Set(ranges.map(({ sheet }) => sheet))], async (context) => {
    const parts = ranges.flatMap((range) =>
      Array.from({ length: range.columns }, (_, index) => {
        const below = { ...range, column: range.column + index, columns: 1 };
        return { below, above: rangeIn(context, rowAbove(below)).dataValidation.load("type, rule, errorAlert") };
      }),
    );
    const filters = ranges.map((range) => {
      const { autoFilter } = context.workbook.worksheets.getItem(range.sheet);
      const filtered = autoFilter.load("isDataFiltered").getRangeOrNullObject();
      return { range, autoFilter, filtered: filtered.load("rowIndex, columnIndex, rowCount, columnCount") };
    });
    await context.sync();
    for (const { range, autoFilter, filtered } of filters) {
      // Applied anew a filter forgets what somebody chose, so one that hides rows stays as it is.
      if (filtered.isNullObject || autoFilter.isDataFiltered || filtered.rowIndex + filtered.rowCount !== range.row) continue;
      const { rowIndex: row, columnIndex: column, rowCount, columnCount: columns } = filtered;
      autoFilter.apply(rangeIn(context, { sheet: range.sheet, row, column, rows: rowCount + range.rows, columns }));
    }
    for (const range of ranges) rangeIn(context, range).copyFrom(rangeIn(context, rowAbove(range)), "Formats");
    for (const { below, above } of parts) {
      if (above.type !== "List" && above.type !== "Custom") continue;
      const { dataValidation } = rangeIn(context, below);
      dataValidation.rule = above.rule;
      dataValidation.errorAlert = above.errorAlert;
    }
  });
}

function rowAbove(range: CellRange): CellRange {
  return { ...range, row: range.row - 1, rows: 1 };
}
