import { largestOf } from "../../../functions/extremes.ts";
import { designSheet } from "../../records/design.ts";
import { headingText } from "../../records/place.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import { reportTexts } from "../../records/report-formulas.ts";
import { reportYardsSheet } from "../../records/report-yards.ts";
import { reportSheet } from "../../records/report.ts";
import type { Sheet } from "../../records/sheet.ts";
import type { CellValue, Workbook } from "../../workbook/port.ts";
import type { Finding } from "./finding.ts";
import { RECORDS_VERSION, recordsVersion } from "./set-up-workbook.ts";

type Cells = readonly (readonly CellValue[])[];

/** Sheets that hold no input: an earlier layout of one gives way whole. */
const computed: readonly Sheet[] = [designSheet, reportSheet, reportYardsSheet];

/** Columns that sheets people type in held a formula in, and hold no longer. */
const NO_LONGER: readonly { readonly sheet: string; readonly heading: string; readonly now: string }[] = [
  { sheet: "Surfaces", heading: "Contributing area (sq ft | m²)", now: "Design works it out from the areas and shares typed" },
  { sheet: "Hole tests", heading: "Drop rate (in/h | mm/h)", now: "the Hole test tab shows it" },
  { sheet: "Estimate lines", heading: "Counts as", now: "Report yards says it for each yard" },
];

/** What a workbook of an earlier version holds that this one lays out in another way. */
export async function earlierLayoutFindings(workbook: Workbook, cells: readonly Cells[]): Promise<readonly Finding[]> {
  const version = await recordsVersion(workbook);
  if (version === null || version >= RECORDS_VERSION) return [];
  const cellsOf = (name: string) => cells[recordSheets.findIndex((sheet) => sheet.name === name)] ?? [];
  const leftOver = await Promise.all(NO_LONGER.map((column) => leftOverFinding(workbook, column, cellsOf(column.sheet))));
  return [...computed.flatMap((sheet) => computedFinding(sheet, cellsOf(sheet.name))), ...leftOver.flat()];
}

function computedFinding(sheet: Sheet, cells: Cells): Finding[] {
  const headings = Object.values(sheet.columns).map(({ heading }) => heading);
  const row = sheet.preface.length;
  const present = (cells[row] ?? []).map(headingText);
  if (headings.every((heading, column) => present[column] === heading)) return [];
  const columns = largestOf([headings.length, ...cells.map((line) => line.length)]);
  const rows = Math.max(cells.length, row + 1) - row;
  const blank = Array.from({ length: rows }, (_, place) =>
    Array.from({ length: columns }, (__, column) => (place === 0 ? (headings[column] ?? null) : null)),
  );
  return [
    {
      where: { sheet: sheet.name, row, column: 0, rows: 1, columns: 1 },
      sentence: `Sheet ${sheet.name} is laid out as an earlier version of the records had it.`,
      repair: {
        says: `Write the headings of sheet ${sheet.name} in their present order, and its formulas anew. The sheet is computed: nothing that anybody typed belongs on it.`,
        run: async (target) => {
          await target.writeValues([{ range: { sheet: sheet.name, row, column: 0, rows, columns }, values: blank }]);
          if (sheet === reportSheet) await target.writeValues(reportTexts());
        },
      },
    },
  ];
}

async function leftOverFinding(workbook: Workbook, { sheet, heading, now }: (typeof NO_LONGER)[number], cells: Cells): Promise<Finding[]> {
  const row = recordSheets.find(({ name }) => name === sheet)?.preface.length ?? 0;
  const column = (cells[row] ?? []).findIndex((cell) => headingText(cell) === heading);
  if (column < 0) return [];
  const range = { sheet, row, column, rows: Math.max(1, cells.length - row), columns: 1 };
  const formulas = await workbook.readFormulas(range);
  const own = formulas.flatMap(([formula = ""], place) =>
    place === 0 || formula !== "" ? [{ range: { ...range, row: row + place, rows: 1 }, values: [[null]] }] : [],
  );
  return [
    {
      where: { ...range, rows: 1 },
      sentence: `Column "${heading}" of sheet ${sheet} is no longer computed there: ${now}.`,
      repair: {
        says: `Take the heading and the formula of column "${heading}" off sheet ${sheet}. What was typed there stays.`,
        run: (target) => target.writeValues(own),
      },
    },
  ];
}
