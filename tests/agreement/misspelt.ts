/** Words as people type and paste them: the same word to every reader. */
import { findPlace } from "../../addin/records/place.ts";
import { recordSheets } from "../../addin/records/program-sheets.ts";
import type { Sheet } from "../../addin/records/sheet.ts";
import type { ValueWrite, Workbook } from "../../addin/workbook/port.ts";

type Spelling = (word: string) => string;

const NBSP = "\u00a0";
const SPELLINGS: readonly Spelling[] = [
  (word) => `${word} `,
  (word) => ` ${word.toUpperCase()}`,
  (word) => `${NBSP}${word}${NBSP} `,
  (word) => word.toUpperCase(),
];
/** Sheets that are summed by SUMIFS, which no space can be taken out for: there an ID with one is told. */
const SUMMED = ["Planting", "Estimate lines", "Dig days", "As-built", "Follow-ups"];

/** Every choice of every sheet; how many cells it was. */
export async function misspellChoices(workbook: Workbook): Promise<number> {
  let changed = 0;
  for (const sheet of recordSheets.filter(({ name }) => name !== "Change log")) {
    const choices = Object.entries(sheet.columns).flatMap(([key, { choices: listed, role }]) =>
      listed !== undefined && role === "input" ? [key] : [],
    );
    changed += await misspell(workbook, sheet, choices);
  }
  return changed;
}

/** Items on Prices and estimates, and Site IDs; how many cells it was. */
export async function misspellNames(workbook: Workbook): Promise<number> {
  let changed = 0;
  for (const sheet of recordSheets.filter(({ name }) => name !== "Change log")) {
    if (["Estimate lines", "Prices"].includes(sheet.name)) changed += await misspell(workbook, sheet, ["item"]);
    const lower = SUMMED.includes(sheet.name) ? [(word: string) => word.toLowerCase()] : SPELLINGS;
    if (sheet.columns.siteId?.role === "input") changed += await misspell(workbook, sheet, ["siteId"], lower);
  }
  return changed;
}

/** Writes the words of the columns in other spellings, each cell in another. */
async function misspell(workbook: Workbook, sheet: Sheet, keys: readonly string[], spellings = SPELLINGS): Promise<number> {
  const [cells = []] = await workbook.readSheets([sheet.name]);
  const found = findPlace(sheet, cells);
  if (!("place" in found)) throw new Error(`${sheet.name} has lost a heading.`);
  const { place } = found;
  const writes = keys.flatMap((key, column) =>
    cells.slice(place.firstRow).flatMap((row, line): ValueWrite[] => {
      const typed = row[place.columnIndex(key)];
      const spell = spellings[(line + column) % spellings.length];
      if (typeof typed !== "string" || typed === "" || spell === undefined) return [];
      return [{ range: place.cell(place.firstRow + line, key), values: [[spell(typed)]] }];
    }),
  );
  await workbook.writeValues(writes);
  return writes.length;
}
