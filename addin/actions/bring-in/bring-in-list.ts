/** Brings a list into a sheet of the workbook, as one change. */
import { ownColumnsIn } from "../../records/own-columns.ts";
import { readRecords } from "../../records/read-records.ts";
import { sitesSheet } from "../../records/sites.ts";
import { WorkbookRefused, type CellValue, type ValueWrite, type Workbook } from "../../workbook/port.ts";
import { ownColumnsFor } from "../program/own-columns-for.ts";
import { appendRows } from "../program/write-records.ts";
import { keepLastSiteId, LAST_SITE_ID_SETTING, seriesOf } from "../yard/site-ids.ts";
import type { ListTarget } from "./known-columns.ts";
import type { ListPlan, PresentRecords } from "./plan-list.ts";

/** What the list is held against. Refused in words where the sheet cannot be read. */
export async function presentRecords(workbook: Workbook, { sheet }: ListTarget): Promise<PresentRecords> {
  const [sites = [], cells = []] = await workbook.readSheets([sitesSheet.name, sheet.name]);
  const lastSiteId = (await workbook.readSetting(LAST_SITE_ID_SETTING)) ?? "";
  const series = await seriesOf(workbook);
  const read = readRecords(sheet, cells);
  if (read.place === null) throw new WorkbookRefused(read.slips[0]?.sentence ?? `Sheet ${sheet.name} cannot be read.`);
  const yards = readRecords(sitesSheet, sites).rows.flatMap(({ record: { siteId, address, yard, units } }) =>
    siteId === null ? [] : [{ siteId, address, yard, units: units ?? ("us" as const) }],
  );
  return {
    yards,
    lastSiteId,
    series,
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
  const wanted = [...new Set(rows.flatMap(({ own }) => [...own.keys()]))];
  const { columnOf, headings } = ownColumnsFor(place, cells, wanted);
  const firstRow = written[0] ?? place.firstRow;
  const own = wanted.map(
    (heading): ValueWrite => ({
      range: { sheet: sheet.name, row: firstRow, column: columnOf(heading), rows: rows.length, columns: 1 },
      values: rows.map((row) => [row.own.get(heading) ?? null]),
    }),
  );
  if (own.length > 0) await workbook.writeValues([...headings, ...own]);
  if (sheet.name !== sitesSheet.name) return;
  await keepLastSiteId(
    workbook,
    rows.map(({ values }) => String(values["siteId"] ?? "")),
  );
}
