import { choiceColumn, nameColumn, numberColumn, textColumn } from "./column.ts";
import { plantCautions, plantPalette, RATING_LIST_YEAR } from "./plant-palette.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

const INDICATORS = ["OBL", "FACW", "FAC", "FACU", "UPL", "NL"] as const;

function rating(region: string, label: string) {
  return choiceColumn(region, label, INDICATORS, {
    widthPixels: 66,
    note: `Wetland indicator, ${label}. Blank: not rated there. NL: not on the list.`,
  });
}

/** The plants a program chooses from: a starter palette to edit, one row a plant. */
export const plantsSheet = {
  name: "Plants",
  preface: [
    "Plants: a starter palette. Zone A is the wettest floor, B the sloped sides, C rim and berm",
    "Sizes, spacing, sun, bloom and zone are from memory for the most part: check before use. Check your state's invasive list before planting.",
  ],
  columns: {
    scientificName: nameColumn("Scientific name", { widthPixels: 215 }),
    commonName: textColumn("Common name", { widthPixels: 190 }),
    form: textColumn("Form", { widthPixels: 90 }),
    leastHeightFeet: numberColumn("Height from (ft)", { label: "Height from", atLeast: 0 }, { widthPixels: 76 }),
    mostHeightFeet: numberColumn("Height to (ft)", { label: "Height to", atLeast: 0 }, { widthPixels: 76 }),
    spacingFeet: numberColumn("Spacing (ft)", { label: "Spacing", moreThan: 0 }, { widthPixels: 76 }),
    sun: textColumn("Sun", { widthPixels: 130 }),
    bloom: textColumn("Bloom, months", { widthPixels: 80 }),
    zone: textColumn("Moisture zone", {
      widthPixels: 80,
      note: "A wettest, B transition, C rim and berm. Garden use, not the wetland rating.",
    }),
    midwest: rating("MW", "Midwest"),
    northcentralAndNortheast: rating("NCNE", "Northcentral and Northeast"),
    easternMountainsAndPiedmont: rating("EMP", "Eastern Mountains and Piedmont"),
    atlanticAndGulfCoastalPlain: rating("AGCP", "Atlantic and Gulf Coastal Plain"),
    westernMountainsValleysAndCoast: rating("WMVC", "Western Mountains, Valleys and Coast"),
    aridWest: rating("AW", "Arid West"),
    listYear: numberColumn("List year", { label: "List year", atLeast: 1988 }, { widthPixels: 66, numberFormat: "0" }),
    ratingSource: textColumn("Source of the ratings", { widthPixels: 380 }),
    cautions: textColumn("Cautions", {
      widthPixels: 320,
      note: "What to know before planting it: spreads in a small bed, poisonous if eaten. From memory.",
    }),
  },
  rows: 120,
  frozenColumns: 1,
} as const satisfies Sheet;

export type Plant = RecordOf<typeof plantsSheet>;
export type PlantRow = SheetRow<typeof plantsSheet>;

const RATING_SOURCE = "U.S. Army Corps of Engineers, National Wetland Plant List, 2020 v1, read in transcription";

export const startingPlants = plantPalette.map((plant) => [...plant, RATING_LIST_YEAR, RATING_SOURCE, plantCautions.get(plant[0]) ?? null]);
