import { metricPerUs } from "../../../functions/quantities.ts";
import { asWord } from "../../records/as-word.ts";
import { designSheet } from "../../records/design.ts";
import { holeTestsSheet } from "../../records/hole-tests.ts";
import type { Place } from "../../records/place.ts";
import { pricesSheet } from "../../records/prices.ts";
import type { Places, ProgramKey } from "../../records/program.ts";
import { rainRecordSheet } from "../../records/rain-record.ts";
import { sitesSheet } from "../../records/sites.ts";
import { surfacesSheet } from "../../records/surfaces.ts";
import type { Source } from "../../records/what-if-sources.ts";
import { absolute, addressOf } from "../../workbook/port.ts";

/** The factor as a formula: 1 in US units, `factor` where the units say metric. */
export function metricFactor(units: string, factor: number): string {
  return `IF(${asWord(units)}="metric",${factor},1)`;
}

/** An expression that is blank where the cell is, or what stands in for it. */
export function unlessBlank(cell: string, expression: string, otherwise: string | null): string {
  return `IF(TRIM(${cell})="",${otherwise ?? '""'},${expression})`;
}

/**
 * What a source holds for the yard whose Site ID stands in a cell, found by that ID, so that sorted rows change nothing.
 * Settings are in US units; `factor` makes them the yard's.
 */
export function sourceOfYard(source: Source, factor: number, places: Places, siteId: string | null, units: string | null): string {
  if (source.kind === "setting") return settingIn(source.key, factor, places, units);
  if (source.kind === "series") return seriesOf(source.series, places, siteId ?? '""', units);
  const cell =
    source.kind === "design"
      ? lookedUp(places.of(designSheet).columnReference(source.key), places.of(designSheet).columnReference("siteId"), siteId)
      : lookedUp(places.of(sitesSheet).columnReference(source.key), asWord(places.of(sitesSheet).columnReference("siteId")), siteId);
  const otherwise = source.kind === "site" && source.otherwise !== undefined ? settingIn(source.otherwise, factor, places, units) : null;
  // A reference to a blank cell would answer 0.
  return unlessBlank(cell, cell, otherwise);
}

function lookedUp(column: string, ids: string, siteId: string | null): string {
  return `XLOOKUP(${asWord(siteId ?? '""')},${ids},${column})`;
}

function settingIn(key: ProgramKey, factor: number, places: Places, units: string | null): string {
  const cell = absolute(addressOf(places.setting(key)));
  return unlessBlank(cell, factor === 1 || units === null ? cell : `${cell}*${metricFactor(units, factor)}`, null);
}

/** What a source holds for every yard, as a column beside Design's rows. */
export function sourceForEveryYard(source: Source, factor: number, places: Places): string {
  const design = places.of(designSheet);
  const units = design.columnReference("units");
  if (source.kind === "setting") return settingIn(source.key, factor, places, units);
  if (source.kind === "series") return seriesOf(source.series, places, '""', units);
  if (source.kind === "design") return design.columnReference(source.key);
  const column = besideDesign(places.of(sitesSheet), source.key, design.rows);
  return source.otherwise === undefined ? column : unlessBlank(column, column, settingIn(source.otherwise, factor, places, units));
}

/** Sites row for row beside Design, as many of them. */
function besideDesign(sites: Place<typeof sitesSheet>, key: keyof typeof sitesSheet.columns, rows: number): string {
  return absolute(addressOf({ ...sites.column(key), rows }));
}

function seriesOf(series: Extract<Source, { kind: "series" }>["series"], places: Places, siteId: string, units: string | null): string {
  const surfaces = places.of(surfacesSheet);
  const holeTests = places.of(holeTestsSheet);
  const rain = places.of(rainRecordSheet);
  const depths = rain.columnReference("depth");
  switch (series) {
    case "covers":
      return `IF(${asWord(surfaces.columnReference("siteId"))}=${asWord(siteId)},${surfaces.columnReference("cover")},"")`;
    case "areas":
      return `IF(${asWord(surfaces.columnReference("siteId"))}=${asWord(siteId)},${surfaces.columnReference("area")},"")`;
    case "shares":
      return `IF(${asWord(surfaces.columnReference("siteId"))}=${asWord(siteId)},${surfaces.columnReference("share")},"")`;
    case "infiltrationRates":
      return `IF(${asWord(holeTests.columnReference("siteId"))}=${asWord(siteId)},${holeTests.columnReference("infiltrationRate")},"")`;
    case "prices":
      return places.of(pricesSheet).tableReference("item", "priceDate");
    case "rains": {
      // Each reading says its own unit; one that says none is an error, not a guess.
      const inches = `IF(${rain.columnReference("unit")}="mm",${depths}/${metricPerUs("depth")},IF(${rain.columnReference("unit")}="in",${depths},NA()))`;
      return `IF(${depths}="","",${inches}${units === null ? "" : `*${metricFactor(units, metricPerUs("depth"))}`})`;
    }
  }
}
