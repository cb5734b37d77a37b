import { asWord } from "./as-word.ts";
import type { designSheet } from "./design.ts";
import type { Place } from "./place.ts";

/** The units of the yard whose Site ID stands in a cell, as a formula; blank where there is no such yard. */
export function unitsOfSite(design: Place<typeof designSheet>, siteId: string): string {
  // Not MATCH, to which an ID with a * is any yard's.
  return `=IF(${siteId}="","",XLOOKUP(${asWord(siteId)},${design.listReference("siteId")},${design.listReference("units")},""))`;
}
