import { largestOf } from "../../../functions/extremes.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import { layoutOf } from "../../records/sheet.ts";
import { WorkbookRefused, type SheetLayout, type Workbook } from "../../workbook/port.ts";

/**
 * Adds a copy of the sheet in front that holds what its cells show and no formula, for people without the add-in.
 * Returns its name. The sheet itself stays as it is.
 */
export async function turnIntoValues(workbook: Workbook): Promise<string> {
  const selection = await workbook.selection();
  if (selection === null) throw new WorkbookRefused("Select a cell of the sheet to copy, then try again.");
  const { sheet } = selection;
  const [cells = []] = await workbook.readSheets([sheet]);
  if (cells.length === 0) throw new WorkbookRefused(`Sheet "${sheet}" is blank: there is nothing to copy.`);
  const name = freeName(sheet, await workbook.sheetNames());
  const columns = largestOf(cells.map((row) => row.length));
  await workbook.addSheets([layoutOfCopy(sheet, name, columns)]);
  const values = cells.map((row) => Array.from({ length: columns }, (_, column) => row[column] ?? null));
  await workbook.writeValues([{ range: { sheet: name, row: 0, column: 0, rows: values.length, columns }, values }]);
  await workbook.select({ sheet: name, row: 0, column: 0, rows: 1, columns: 1 });
  return name;
}

/** Spreadsheets take names of at most 31 characters. */
const LONGEST_NAME = 31;

function freeName(sheet: string, taken: readonly string[]): string {
  for (let number = 1; ; number += 1) {
    const ending = number === 1 ? " as values" : ` as values ${number}`;
    const name = sheet.slice(0, LONGEST_NAME - ending.length) + ending;
    if (!taken.some((other) => other.toLowerCase() === name.toLowerCase())) return name;
  }
}

/** The widths and number formats of a sheet of the program, wherever people moved nothing; plain columns otherwise. */
function layoutOfCopy(sheet: string, name: string, columns: number): SheetLayout {
  const record = recordSheets.find((candidate) => candidate.name === sheet);
  if (record === undefined) {
    const plain = { heading: "", widthPixels: PLAIN_WIDTH_PIXELS, role: "input" } as const;
    return {
      name,
      headingRow: 0,
      preface: [],
      rows: 0,
      frozenColumns: 0,
      columns: Array.from({ length: columns }, (): SheetLayout["columns"][number] => plain),
    };
  }
  const layout = layoutOf(record);
  return {
    ...layout,
    name,
    columns: layout.columns.map(({ heading, widthPixels, numberFormat }) => ({
      heading,
      widthPixels,
      role: "input",
      ...(numberFormat === undefined ? {} : { numberFormat }),
    })),
  };
}

const PLAIN_WIDTH_PIXELS = 96;
