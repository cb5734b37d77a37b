import { choiceColumn, type Column, dateColumn, nameColumn, numberColumn, resultColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

/** Readings one hole's row has room for. */
export const READINGS = 10;

type ReadingKey<Prefix extends string> = `${Prefix}${1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10}`;

function readingColumns<Prefix extends string>(
  prefix: Prefix,
  heading: string,
  label: string,
): Record<ReadingKey<Prefix>, Column<number | null>> {
  const columns = Array.from({ length: READINGS }, (_, index) => [
    `${prefix}${index + 1}`,
    numberColumn(`${heading} ${index + 1}`, { label: `${label} ${index + 1}`, atLeast: 0 }, { widthPixels: 66 }),
  ]);
  return Object.fromEntries(columns) as Record<ReadingKey<Prefix>, Column<number | null>>;
}

/** One row a hole, its raw readings kept: minutes since the start, and water depth above the hole's floor. */
export const holeTestsSheet = {
  name: "Hole tests",
  preface: [
    "Hole tests: one row a hole, readings kept as taken. Have utilities marked before the hole is dug",
    "Minutes count from the start; water is measured up from the hole's floor, in the yard's units (in | mm). Diameter is right across the hole.",
  ],
  columns: {
    siteId: nameColumn("Site ID", { widthPixels: 76 }),
    hole: textColumn("Hole", { widthPixels: 60 }),
    date: dateColumn("Date", "Date", { widthPixels: 92 }),
    tester: textColumn("Tester", { widthPixels: 90 }),
    soaked: choiceColumn("Soaked first", "Soaked first", ["yes", "no"], { widthPixels: 76 }),
    holeDepth: numberColumn("Hole depth (in | mm)", { label: "Hole depth", moreThan: 0 }, { widthPixels: 84 }),
    holeDiameter: numberColumn("Hole diameter (in | mm)", { label: "Hole diameter", moreThan: 0 }, { widthPixels: 84 }),
    units: resultColumn("Units", { widthPixels: 66, typedInstead: "The units of a yard are typed in its row of Sites." }),
    infiltrationRate: resultColumn("Infiltration rate (in/h | mm/h)", {
      numberFormat: "0.00",
      widthPixels: 100,
      typedInstead: "The rate is computed from this row: type its minutes, its water depths and the hole diameter.",
    }),
    ...readingColumns("minutes", "Minutes", "Minutes of reading"),
    ...readingColumns("water", "Water", "Water depth of reading"),
  },
  rows: 120,
  frozenColumns: 2,
  together: [
    ["minutes1", "minutes10"],
    ["water1", "water10"],
  ],
} as const satisfies Sheet;

export type HoleTest = RecordOf<typeof holeTestsSheet>;
export type HoleTestRow = SheetRow<typeof holeTestsSheet>;

export function minutesKey(reading: number): ReadingKey<"minutes"> {
  return `minutes${reading}` as ReadingKey<"minutes">;
}

export function waterKey(reading: number): ReadingKey<"water"> {
  return `water${reading}` as ReadingKey<"water">;
}
