/** The sheets that a list can be brought into, and what other people call their columns. */
import { followUpsSheet } from "../../records/follow-ups.ts";
import { holeTestsSheet } from "../../records/hole-tests.ts";
import { plantsSheet } from "../../records/plants.ts";
import { pricesSheet } from "../../records/prices.ts";
import type { KeyOf, Sheet } from "../../records/sheet.ts";
import { sitesSheet } from "../../records/sites.ts";
import { surfacesSheet } from "../../records/surfaces.ts";

/** Words for a sheet's columns, besides their own headings. */
type Words<S extends Sheet> = { readonly [Key in KeyOf<S>]?: readonly string[] };

export interface ListTarget<S extends Sheet = Sheet> {
  readonly sheet: S;
  readonly words: Words<S>;
  /** Cells that say which thing a row is about: rows that agree in them are one. */
  readonly sameBy: readonly KeyOf<S>[];
  /** Whether each row belongs to a yard of Sites. */
  readonly ofYards: boolean;
  /** Whether no two rows may be about the same thing. */
  readonly isOnce: boolean;
}

const target = <S extends Sheet>(each: ListTarget<S>): ListTarget => each as unknown as ListTarget;

const SITE_ID = [
  "id",
  "no",
  "nr",
  "number",
  "site",
  "site number",
  "site no",
  "yard id",
  "yard number",
  "project id",
  "project number",
  "case",
  "case number",
  "ref",
];
const NOTES = ["note", "comment", "comments", "remarks", "remark"];

export const listTargets: readonly ListTarget[] = [
  target<typeof sitesSheet>({
    sheet: sitesSheet,
    words: {
      siteId: SITE_ID,
      yard: ["name", "yard name", "site name", "garden", "garden name", "household", "project", "project name"],
      address: ["street address", "street", "location", "property", "property address", "site address", "addr"],
      units: ["unit", "unit system", "measurement system"],
      soilGroup: ["hsg", "hydrologic soil group", "soil type", "hydro group", "soil"],
      slopeDrop: ["drop", "fall", "rise"],
      slopeRun: ["run"],
      stormDepth: ["design storm", "storm", "rain depth", "design rain"],
      pondingDepth: ["ponding", "basin depth", "garden depth", "pond depth"],
      mediaDepth: ["mix depth", "media depth", "soil depth", "amended depth"],
      sideSlope: ["side slopes"],
      mixRecipe: ["mix", "soil mix", "recipe"],
      notes: NOTES,
      shape: ["shape"],
      lengthToWidth: ["length to width ratio", "aspect ratio"],
      roomLength: ["length available", "available length", "room length"],
      roomWidth: ["width available", "available width", "room width"],
      owner: ["homeowner", "owner name", "resident", "contact", "contact name", "applicant", "participant"],
      telephone: ["phone", "phone number", "tel", "mobile", "cell", "cell phone", "contact phone"],
      email: ["mail", "email address", "contact email"],
      language: ["preferred language", "spoken language"],
      tenure: ["owner renter", "tenure", "renter or owner", "own or rent", "occupancy"],
      latitude: ["lat", "y coordinate"],
      longitude: ["long", "lon", "lng", "x coordinate"],
      parcel: ["parcel", "parcel id", "apn", "lot", "tax id", "parcel no"],
      watershed: ["basin name", "subwatershed", "sub watershed", "catchment", "drainage basin"],
      funder: ["funding", "funding source", "grant", "sponsor", "paid by"],
    },
    sameBy: ["siteId"],
    ofYards: false,
    isOnce: true,
  }),
  target<typeof surfacesSheet>({
    sheet: surfacesSheet,
    words: {
      siteId: SITE_ID,
      surface: ["name", "part", "surface name", "area name", "description"],
      cover: ["surface type", "type", "material", "land cover", "cover type"],
      area: ["size", "surface area", "square feet", "square metres", "square meters", "sq ft", "sqft", "roof area", "drainage area"],
      share: ["share", "fraction", "portion", "percent", "percent draining"],
      howMeasured: ["measured", "method", "how measured"],
      downspout: ["downspout", "gutter"],
    },
    sameBy: ["siteId", "surface", "cover", "area"],
    ofYards: true,
    isOnce: false,
  }),
  target<typeof holeTestsSheet>({
    sheet: holeTestsSheet,
    words: {
      siteId: SITE_ID,
      hole: ["hole number", "hole id", "test hole", "test"],
      date: ["test date", "tested", "day", "date of test"],
      tester: ["tested by", "by", "inspector", "technician"],
      soaked: ["presoaked", "pre soaked", "presoak", "soaked"],
      holeDepth: ["depth", "depth of hole"],
      holeDiameter: ["diameter", "width", "diameter of hole"],
    },
    sameBy: ["siteId", "hole", "date"],
    ofYards: true,
    isOnce: false,
  }),
  target<typeof pricesSheet>({
    sheet: pricesSheet,
    words: {
      item: ["material", "product", "name", "description"],
      unitPrice: ["price", "cost", "unit cost", "price each", "rate"],
      unit: ["per", "uom", "unit of measure", "sold by"],
      packageSize: ["pack size", "package", "pack"],
      minimumOrder: ["minimum", "min order"],
      delivery: ["delivery fee", "delivery charge", "freight"],
      priceDate: ["date", "quoted", "quote date", "as of", "date of price"],
      supplier: ["vendor", "store", "source", "company"],
      note: NOTES,
    },
    sameBy: ["item"],
    ofYards: false,
    isOnce: true,
  }),
  target<typeof plantsSheet>({
    sheet: plantsSheet,
    words: {
      scientificName: ["botanical name", "latin name", "species", "scientific", "latin"],
      commonName: ["name", "common", "plant"],
      form: ["type", "habit", "plant type"],
      leastHeightFeet: ["least height", "minimum height", "min height"],
      mostHeightFeet: ["height", "most height", "maximum height", "max height"],
      spacingFeet: ["spread", "spacing", "on center"],
      sun: ["light", "exposure", "sun exposure"],
      bloom: ["bloom", "bloom time", "bloom months", "flowering"],
      zone: ["zone", "moisture", "planting zone"],
      cautions: ["caution", "warnings", ...NOTES],
    },
    sameBy: ["scientificName"],
    ofYards: false,
    isOnce: true,
  }),
  target<typeof followUpsSheet>({
    sheet: followUpsSheet,
    words: {
      siteId: SITE_ID,
      kind: ["type", "visit", "follow up", "visit type"],
      due: ["due date", "scheduled", "date due", "when"],
      done: ["done on", "completed", "date done", "visited", "completed on"],
      by: ["inspector", "visitor", "who", "done by"],
      finding: ["result", "outcome", "status"],
      action: ["action", "repair", "what to do", "to do"],
      note: NOTES,
    },
    sameBy: ["siteId", "kind", "due"],
    ofYards: true,
    isOnce: false,
  }),
];

/** A heading as it is compared: its unit and what is no letter or digit do not count. */
export function headingWords(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/\([^)]*\)|\[[^\]]*\]/g, " ")
    .replaceAll("#", " number ")
    .replace(/e-mail/g, "email")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}

/** Everything that the column may be called, as `headingWords` has it. */
export function namesOf({ sheet, words }: ListTarget, key: string): readonly string[] {
  const heading = sheet.columns[key]?.heading ?? "";
  return [headingWords(heading), ...(words[key] ?? [])];
}

export function isKnownHeading(target: ListTarget, heading: string): boolean {
  const words = headingWords(heading);
  return words !== "" && (words === "address" || inputKeys(target.sheet).some((key) => namesOf(target, key).includes(words)));
}

export function inputKeys(sheet: Sheet): readonly string[] {
  return Object.keys(sheet.columns).filter((key) => sheet.columns[key]?.role === "input");
}
