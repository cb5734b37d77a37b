import type { Place } from "./place.ts";
import type { sitesSheet } from "./sites.ts";

/** The units of the yard whose Site ID stands in a cell, as a formula; blank where no row of Sites has it. */
export function unitsOfSite(sites: Place<typeof sitesSheet>, siteId: string): string {
  // The &"" keeps a blank unit blank: a bare reference to a blank cell would answer 0.
  return `=IF(${siteId}="","",IFERROR(INDEX(${sites.listReference("units")},MATCH(${siteId},${sites.listReference("siteId")},0))&"",""))`;
}
