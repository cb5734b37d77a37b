/** Brings a list into a sheet of the workbook, as one change. */
import { largestOf } from "../../../functions/extremes.ts";
import { ownColumnsIn } from "../../records/own-columns.ts";
import { headingText } from "../../records/place.ts";
import { readRecords } from "../../records/read-records.ts";
import { isBlank, type Sheet } from "../../records/sheet.ts";
import { sitesSheet } from "../../records/sites.ts";
import { WorkbookRefused, type CellValue, type ValueWrite, type Workbook } from "../../workbook/port.ts";
import { appendRows } from "../program/write-records.ts";
import { LAST_SITE_ID_SETTING, lastSiteId } from "../yard/site-ids.ts";
import type { ListTarget } from "./known-columns.ts";
import type { ListPlan, PlannedRow, PresentRecords } from "./plan-list.ts";

/** What the list is held against. Refused in words where the sheet cannot be read. */
export async function presentRecords(workbook: Workbook, { sheet }: ListTarget): Promise<PresentRecords> {
  const [sites = [], cells = []] = await workbook.readSheets([sitesSheet.name, sheet.name]);
  const lastSiteId = (await workbook.readSetting(LAST_SITE_ID_SETTING)) ?? "";
  const read = readRecords(sheet, cells);
  if (read.place === null) throw new WorkbookRefused(read.slips[0]?.sentence ?? `Sheet ${sheet.name} cannot be read.`);
  const yards = readRecords(sitesSheet, sites).rows.flatMap(({ record: { siteId, address, yard, units } }) =>
    siteId === null ? [] : [{ siteId, address, yard, units: units ?? ("us" as const) }],
  );
  return {
    yards,
    lastSiteId,
    rows: read.rows.map((row) => row.cells as Readonly<Record<string, CellValue>>),
    ownHeadings: ownColumnsIn(sheet, cells[read.place.headingRow] ?? []).map(({ heading }) => heading),
  };
}

/** Ours go below the last row, and theirs beside them in the same rows. */
export async function bringInList(workbook: Workbook, { sheet }: ListTarget, { rows }: ListPlan): Promise<void> {
  if (rows.length === 0) return;
  const written = await appendRows(
    workbook,
    sheet,
    rows.map(({ values }) => values),
  );
  const [cells = []] = await workbook.readSheets([sheet.name]);
  const { place } = readRecords(sheet, cells);
  if (place === null) return;
  const own = ownWrites(sheet, rows, written[0] ?? place.firstRow, place.headingRow, cells);
  if (own.length > 0) await workbook.writeValues(own);
  if (sheet.name !== sitesSheet.name) return;
  const used = rows.map(({ values }) => String(values["siteId"] ?? ""));
  await workbook.writeSetting(LAST_SITE_ID_SETTING, lastSiteId([...used, (await workbook.readSetting(LAST_SITE_ID_SETTING)) ?? ""]));
}

function ownWrites(
  sheet: Sheet,
  rows: readonly PlannedRow[],
  firstRow: number,
  headingRow: number,
  cells: readonly (readonly CellValue[])[],
): readonly ValueWrite[] {
  const headings = cells[headingRow] ?? [];
  const present = new Map(ownColumnsIn(sheet, headings).map(({ heading, column }) => [heading, column]));
  const ours = new Set(Object.values(sheet.columns).map(({ heading }) => heading));
  // Beside everything that stands there: a list of choices may stand in a hidden column that has no heading.
  let next = largestOf(cells.map((row) => row.findLastIndex((cell) => !isBlank(cell)))) + 1;
  const wanted = [...new Set(rows.flatMap(({ own }) => [...own.keys()]))];
  return wanted.flatMap((heading) => {
    // A heading of ours that went nowhere else would be taken for ours.
    const name = ours.has(headingText(heading)) ? `${headingText(heading)} of the list` : headingText(heading);
    const known = present.get(name);
    const column = known ?? next;
    if (known === undefined) next += 1;
    const values = rows.map(({ own }) => [own.get(heading) ?? null]);
    const cell = (row: number, count: number) => ({ sheet: sheet.name, row, column, rows: count, columns: 1 });
    return [
      ...(known === undefined ? [{ range: cell(headingRow, 1), values: [[name]] }] : []),
      { range: cell(firstRow, rows.length), values },
    ];
  });
}
