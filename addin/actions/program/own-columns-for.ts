/** Where cells of people's own columns go: below the heading they have, or below a new one beside everything else. */
import { largestOf } from "../../../functions/extremes.ts";
import { ownColumnsIn } from "../../records/own-columns.ts";
import { headingText, type Place } from "../../records/place.ts";
import { isBlank } from "../../records/sheet.ts";
import type { CellValue, ValueWrite } from "../../workbook/port.ts";

export interface OwnColumnPlaces {
  readonly columnOf: (heading: string) => number;
  /** Headings that are not there yet. */
  readonly headings: readonly ValueWrite[];
}

export function ownColumnsFor(
  { sheet, headingRow }: Place,
  cells: readonly (readonly CellValue[])[],
  wanted: readonly string[],
): OwnColumnPlaces {
  const present = new Map(ownColumnsIn(sheet, cells[headingRow] ?? []).map(({ heading, column }) => [heading, column]));
  const ours = new Set(Object.values(sheet.columns).map(({ heading }) => heading));
  // Beside everything that stands there: a list of choices may stand in a hidden column that has no heading.
  let next = largestOf(cells.map((row) => row.findLastIndex((cell) => !isBlank(cell)))) + 1;
  const columns = new Map<string, number>();
  const headings: ValueWrite[] = [];
  for (const heading of wanted) {
    // A heading of ours that went nowhere else would be taken for ours.
    const name = ours.has(headingText(heading)) ? `${headingText(heading)} of the list` : headingText(heading);
    const known = present.get(name);
    columns.set(heading, known ?? next);
    if (known !== undefined) continue;
    headings.push({ range: { sheet: sheet.name, row: headingRow, column: next, rows: 1, columns: 1 }, values: [[name]] });
    present.set(name, next);
    next += 1;
  }
  return { columnOf: (heading) => columns.get(heading) ?? next, headings };
}
