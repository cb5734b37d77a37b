/**
 * Buttons of the grid that a coordinator has no use for, by the grid's own names.
 *
 * What is left: undo, redo, bold, colours, borders, alignment, wrapping, number formats, and the sheet's own menus.
 */
const HIDDEN: readonly string[] = [
  "sheet.command.set-once-format-painter",
  "sheet.command.clear-selection-all",
  "sheet.command.set-range-font-family",
  "sheet.command.set-range-fontsize",
  "sheet.command.set-range-font-increase",
  "sheet.command.set-range-font-decrease",
  "sheet.command.set-range-underline",
  "sheet.command.set-range-stroke",
  "sheet.command.set-vertical-text-align",
  "sheet.command.set-text-rotation",
  "sheet.command.add-worksheet-merge",
  "sheet.command.numfmt.set.currency",
  "sheet.command.add-range-protection-from-toolbar",
  "sheet.menu.data-validation",
  "sheet.menu.image",
  "sheet.command.re-calc-filter",
  "sheet.toolbar.text-to-number",
  "sheet.contextMenu.text-to-number",
  "sheet.contextMenu.permission",
];

/** Lists of the spreadsheet's own functions; all of them can be typed. */
const FUNCTION_LISTS = [
  "common",
  "financial",
  "logical",
  "text",
  "date",
  "lookup",
  "math",
  "statistical",
  "engineering",
  "information",
  "database",
];

/** The grid's menu settings with those buttons left out. */
export const toolbarMenus: Readonly<Record<string, { hidden: true }>> = Object.fromEntries(
  [...HIDDEN, ...FUNCTION_LISTS.map((list) => `formula-ui.operation.insert-function.${list}`)].map((name) => [name, { hidden: true }]),
);
