import { largestOf } from "../../../functions/extremes.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import { layoutOf } from "../../records/sheet.ts";
import { freeSheetName } from "./free-sheet-name.ts";
import { WorkbookRefused, type CellValue, type SheetLayout, type Workbook } from "../../workbook/port.ts";

/**
 * Adds a copy of the sheet in front that holds what its cells show and no formula, for people without the add-in.
 * Returns its name. The sheet itself stays as it is.
 */
export async function turnIntoValues(workbook: Workbook): Promise<string> {
  const selection = await workbook.selection();
  if (selection === null) throw new WorkbookRefused("Select a cell of the sheet to copy, then try again.");
  const { sheet } = selection;
  const cells = await answeredCells(workbook, sheet);
  if (cells.length === 0) throw new WorkbookRefused(`Sheet "${sheet}" is blank: there is nothing to copy.`);
  const name = freeSheetName(sheet, await workbook.sheetNames(), " as values");
  const columns = largestOf(cells.map((row) => row.length));
  await workbook.addSheets([layoutOfCopy(sheet, name, columns)]);
  const values = cells.map((row) => Array.from({ length: columns }, (_, column) => row[column] ?? null));
  await workbook.writeValues([{ range: { sheet: name, row: 0, column: 0, rows: values.length, columns }, values }]);
  await workbook.select({ sheet: name, row: 0, column: 0, rows: 1, columns: 1 });
  return name;
}

type Cells = readonly (readonly CellValue[])[];

/** What the sheet shows once no answer of a function is on its way: Excel shows #BUSY! until then, also after it has calculated. */
async function answeredCells(workbook: Workbook, sheet: string): Promise<Cells> {
  for (let look = 1; look <= MOST_LOOKS; look += 1) {
    await workbook.calculated();
    const [cells = []] = await workbook.readSheets([sheet]);
    if (!cells.some((row) => row.some((cell) => cell === "#BUSY!" || cell === "#GETTING_DATA"))) return cells;
    await new Promise((resolve) => setTimeout(resolve, BETWEEN_LOOKS_MILLISECONDS));
  }
  throw new WorkbookRefused(`Sheet "${sheet}" is still being computed. Wait until no cell shows #BUSY!, then try again.`);
}

const MOST_LOOKS = 40;
const BETWEEN_LOOKS_MILLISECONDS = 250;

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
