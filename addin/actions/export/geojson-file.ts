/**
 * Yards on a map, for any program that reads one.
 *
 * Source  RFC 7946, The GeoJSON Format, 2016: 3.1.1 (longitude first), 3.2 and 3.3 (features), 4 (WGS 84), 11.2 (six decimals
 *         are about ten centimetres).
 */
import { fromUs, type NumberKind } from "../../../functions/quantities.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { YardFigureKey } from "../../records/report-yards.ts";
import { sitesSheet } from "../../records/sites.ts";
import type { CellValue } from "../../workbook/port.ts";
import { isoDate } from "../dates.ts";
import type { Program, Yard } from "../program/read-program.ts";
import { ownCellsOf } from "../yard/own-columns.ts";
import { reportYard } from "../report/report-yard.ts";
import { yardPoints, type LeftOut } from "./yard-points.ts";

export interface MapChoices {
  readonly units: UnitSystem;
  /** Owner, telephone and e-mail too. */
  readonly withPersons: boolean;
  /** What people keep of a yard in columns of their own on Sites: nobody here can say how personal that is. */
  readonly withOwnColumns: boolean;
}

const DECIMALS = 1e6;

export function geoJsonFile(
  program: Program,
  yards: readonly Yard[],
  choices: MapChoices,
): { readonly content: string; readonly leftOut: readonly LeftOut[] } {
  const { points, leftOut } = yardPoints(program, yards);
  const features = points.map(({ yard, latitude, longitude }) => ({
    type: "Feature",
    id: yard.siteId,
    geometry: { type: "Point", coordinates: [longitude, latitude].map((degrees) => Math.round(degrees * DECIMALS) / DECIMALS) },
    properties: propertiesOf(program, yard, choices),
  }));
  return { content: `${JSON.stringify({ type: "FeatureCollection", features }, null, 1)}\n`, leftOut };
}

/** Each figure with its unit in its name: no reader of the file sees the headings of the sheet. */
const FIGURES: readonly {
  readonly key: YardFigureKey;
  readonly kind: NumberKind;
  readonly name: string;
  readonly us: string;
  readonly metric: string;
}[] = [
  { key: "contributingArea", kind: "area", name: "contributing_area", us: "sq_ft", metric: "m2" },
  { key: "imperviousArea", kind: "area", name: "roof_and_paving", us: "sq_ft", metric: "m2" },
  { key: "gardenArea", kind: "area", name: "floor_area", us: "sq_ft", metric: "m2" },
  { key: "storage", kind: "waterVolume", name: "water_held", us: "cu_ft", metric: "m3" },
  { key: "stormCapture", kind: "waterVolume", name: "captured_in_design_storm", us: "cu_ft", metric: "m3" },
  { key: "yearRunoff", kind: "waterVolume", name: "runoff_in_a_year", us: "cu_ft", metric: "m3" },
];

function propertiesOf(program: Program, yard: Yard, { units, withPersons, withOwnColumns }: MapChoices): Record<string, CellValue> {
  const { record } = yard.site;
  const { countsAs, date, figures } = reportYard(program, yard);
  return {
    site_id: yard.siteId,
    yard: record.yard,
    address: record.address,
    parcel: record.parcel,
    watershed: record.watershed,
    funder: record.funder,
    counts_as: countsAs,
    date: date === null ? null : isoDate(Math.floor(date)),
    ...Object.fromEntries(
      FIGURES.map(({ key, kind, name, us, metric }) => {
        const figure = figures[key];
        return [`${name}_${units === "us" ? us : metric}`, figure === null ? null : rounded(fromUs(kind, figure, units))];
      }),
    ),
    plants: figures.plants,
    volunteer_hours: figures.hours,
    ...(withPersons ? { owner: record.owner, telephone: record.telephone, email: record.email } : {}),
    ...(withOwnColumns ? Object.fromEntries(ownCells(program, yard)) : {}),
  };
}

/** No name of theirs takes the place of one of ours. */
function ownCells(program: Program, yard: Yard): readonly (readonly [string, CellValue])[] {
  return ownCellsOf(program, yard)
    .filter(({ sheet }) => sheet === sitesSheet.name)
    .map(({ heading, value }) => [`own: ${heading}`, value]);
}

/** Six digits say more than any tape; the rest shows how computers hold numbers. */
function rounded(value: number): number {
  return Number(value.toPrecision(6));
}
