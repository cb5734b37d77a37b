import { largestOf } from "../../../functions/extremes.ts";

/** The last ID given out is kept apart from the sheet, so that deleting the newest yard does not free its ID. */
export const LAST_SITE_ID_SETTING = "soakbook.lastSiteId";

/** Gives out IDs one above the highest number ever used, "Y-017" after "Y-016", so that an ID in the records never means two yards. */
export function siteIdsAfter(used: readonly string[]): () => string {
  let last = highestNumber(used);
  return () => written((last += 1));
}

/** The ID with the highest number; "" where none has one. */
export function lastSiteId(used: readonly string[]): string {
  const highest = highestNumber(used);
  return highest === 0 ? "" : written(highest);
}

function highestNumber(used: readonly string[]): number {
  return largestOf([0, ...used.map((siteId) => Number(/^Y-(\d+)$/i.exec(siteId.trim())?.[1] ?? 0))]);
}

function written(number: number): string {
  return `Y-${String(number).padStart(3, "0")}`;
}
