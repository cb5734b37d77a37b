import { mixRecipes } from "../../functions/amendment/mix-recipes.ts";
import { BASIN_SHAPES } from "../../functions/basin/basin-shape.ts";
import { choiceColumn, nameColumn, numberColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";
import { SOIL_GROUPS, TENURES, UNIT_SYSTEMS } from "./site-terms.ts";

/** One row a yard: everything typed about it that is not a surface, a hole or a visit answer. */
export const sitesSheet = {
  name: "Sites",
  preface: [
    "Sites: one row a yard. Blank design inputs take the value on Program; results are on Design",
    "Units are set row by row: us means in, ft and sq ft; metric means mm, m and m². Every number of that yard is in those units.",
  ],
  columns: {
    siteId: nameColumn("Site ID", { widthPixels: 76, note: "Never changes and is never used again." }),
    yard: textColumn("Yard", { widthPixels: 215 }),
    address: textColumn("Address", { widthPixels: 170 }),
    units: choiceColumn("Units", "Units", UNIT_SYSTEMS, { widthPixels: 76 }),
    soilGroup: choiceColumn("Soil group", "Soil group", SOIL_GROUPS, {
      widthPixels: 76,
      note: "Hydrologic soil group, A (fast) to D (slow), for runoff from lawn.",
    }),
    slopeDrop: numberColumn(
      "Slope: drop",
      { label: "Drop", atLeast: 0 },
      { widthPixels: 80, note: "How far the ground drops under the level string, in the same unit as the run." },
    ),
    slopeRun: numberColumn(
      "Slope: run",
      { label: "Run", moreThan: 0 },
      { widthPixels: 80, note: "Length of the level string, in the same unit as the drop." },
    ),
    stormDepth: numberColumn("Storm depth (in | mm)", { label: "Storm depth", moreThan: 0 }, { widthPixels: 84 }),
    pondingDepth: numberColumn(
      "Ponding depth (in | mm)",
      { label: "Ponding depth", moreThan: 0 },
      { note: "Blank: the deepest that drains in time, at most 8 in (203 mm)." },
    ),
    mediaDepth: numberColumn(
      "Soil mix depth (in | mm)",
      { label: "Soil mix depth", atLeast: 0 },
      { note: "Depth of amended soil under the floor. Blank: none." },
    ),
    sideSlope: numberColumn("Side slope (run to 1)", { label: "Side slope", atLeast: 0 }),
    mixRecipe: choiceColumn(
      "Mix recipe",
      "Mix recipe",
      mixRecipes.map(({ name }) => name),
      { widthPixels: 190, note: "A recipe of SOAK.SOILMIX. A soil sample decides which." },
    ),
    notes: textColumn("Notes", { widthPixels: 340 }),
    shape: choiceColumn("Basin shape", "Basin shape", BASIN_SHAPES, { note: "Blank: ellipse." }),
    lengthToWidth: numberColumn(
      "Length to width",
      { label: "Length to width", atLeast: 1 },
      { note: "How many times as long across the slope as wide down it. Blank: 2." },
    ),
    roomLength: numberColumn(
      "Room across the slope (ft | m)",
      { label: "Room across the slope", moreThan: 0 },
      { note: "Where the full water's edge may reach; the berm stands outside it." },
    ),
    roomWidth: numberColumn(
      "Room down the slope (ft | m)",
      { label: "Room down the slope", moreThan: 0 },
      { note: "Where the full water's edge may reach; the berm stands outside it." },
    ),
    owner: textColumn("Owner", { note: "Who to ask for at the door." }),
    telephone: textColumn("Telephone", { widthPixels: 120 }),
    email: textColumn("E-mail", { widthPixels: 190 }),
    language: textColumn("Language", { widthPixels: 90, note: "That the household would rather speak and read." }),
    tenure: choiceColumn("Owner or renter", "Owner or renter", TENURES, {
      widthPixels: 90,
      note: "A renter digs with the owner's written leave.",
    }),
    latitude: numberColumn(
      "Latitude",
      { label: "Latitude", atLeast: -90, atMost: 90 },
      { widthPixels: 84, numberFormat: "0.00000", note: "Degrees, WGS 84, north of the equator; south is negative." },
    ),
    longitude: numberColumn(
      "Longitude",
      { label: "Longitude", atLeast: -180, atMost: 180 },
      { widthPixels: 90, numberFormat: "0.00000", note: "Degrees, WGS 84, east of Greenwich; all of America is negative." },
    ),
    parcel: textColumn("Parcel number", { widthPixels: 110 }),
    watershed: textColumn("Watershed", { widthPixels: 130 }),
    funder: textColumn("Funder", { widthPixels: 130 }),
  },
  rows: 200,
  frozenColumns: 2,
} as const satisfies Sheet;

export type Site = RecordOf<typeof sitesSheet>;
export type SiteRow = SheetRow<typeof sitesSheet>;
