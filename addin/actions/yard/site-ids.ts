import { largestOf } from "../../../functions/extremes.ts";
import type { Workbook } from "../../workbook/port.ts";

/** The last ID given out is kept apart from the sheet, so that deleting the newest yard does not free its ID. */
export const LAST_SITE_ID_SETTING = "soakbook.lastSiteId";

/** A copy that was taken along gives out IDs of its own series, such as Y2-001: two copies never give two yards one ID. */
export const SERIES_SETTING = "soakbook.series";
const OWN_SERIES = "Y";

export async function seriesOf(workbook: Pick<Workbook, "readSetting">): Promise<string> {
  return (await workbook.readSetting(SERIES_SETTING)) ?? OWN_SERIES;
}

/** Gives out IDs one above the highest number ever used, "Y-017" after "Y-016", so that an ID in the records never means two yards. */
export function siteIdsAfter(used: readonly string[], series = OWN_SERIES): () => string {
  let last = highestNumber(used, series);
  return () => written((last += 1), series);
}

/** The ID with the highest number; "" where none has one. */
function lastSiteId(used: readonly string[], series: string): string {
  const highest = highestNumber(used, series);
  return highest === 0 ? "" : written(highest, series);
}

/** After rows were written that brought their IDs along. */
export async function keepLastSiteId(workbook: Workbook, used: readonly string[]): Promise<void> {
  const [given, series] = await Promise.all([workbook.readSetting(LAST_SITE_ID_SETTING), seriesOf(workbook)]);
  await workbook.writeSetting(LAST_SITE_ID_SETTING, lastSiteId([...used, given ?? ""], series));
}

function highestNumber(used: readonly string[], series: string): number {
  const start = `${series.toLowerCase()}-`;
  const numbers = used.map((siteId) => siteId.trim().toLowerCase()).filter((id) => id.startsWith(start));
  return largestOf([0, ...numbers.map((id) => Number(/^\d+$/.exec(id.slice(start.length))?.[0] ?? 0))]);
}

function written(number: number, series: string): string {
  return `${series}-${String(number).padStart(3, "0")}`;
}
