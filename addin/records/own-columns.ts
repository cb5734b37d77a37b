import type { CellValue } from "../workbook/port.ts";
import { headingText } from "./place.ts";
import type { Sheet } from "./sheet.ts";

/** A column that people have added to a sheet of ours. */
export interface OwnColumn {
  readonly heading: string;
  readonly column: number;
}

/** Those with a heading that is none of ours. */
export function ownColumnsIn(sheet: Sheet, headings: readonly CellValue[]): readonly OwnColumn[] {
  const ours = new Set(Object.values(sheet.columns).map(({ heading }) => heading));
  return headings.flatMap((cell, column) => {
    const heading = headingText(cell);
    return heading === "" || ours.has(heading) ? [] : [{ heading, column }];
  });
}
