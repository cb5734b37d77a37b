import { PublishedDocument, type Published } from "./source.ts";

export const tr55 = new PublishedDocument(
  "USDA Soil Conservation Service, Urban Hydrology for Small Watersheds, TR-55",
  "2nd ed., 1986",
  "read",
);

/** Hydrologic soil group, from A (fast) to D (slow). */
export type SoilGroup = "A" | "B" | "C" | "D";

export const SOIL_GROUPS: readonly SoilGroup[] = ["A", "B", "C", "D"];

type CurveNumbers = Readonly<Record<SoilGroup, number>>;

const groups = (A: number, B: number, C: number, D: number): CurveNumbers => ({ A, B, C, D });

const IMPERVIOUS = groups(98, 98, 98, 98);

/**
 * Curve numbers of a yard's surfaces, for average moisture and a loss ratio of 0.2. Tables 2-2a and 2-2c, in plain words.
 * Poor, fair and good lawn: grass on under 50, 50 to 75 and over 75 percent of the ground. Gravel and dirt drives are
 * the rows that count the right-of-way. Good brush and good woods on group A would run lower: 30 is the least to compute with.
 */
export const coverCurveNumbers = {
  values: {
    "roof or paving": IMPERVIOUS,
    roof: IMPERVIOUS,
    paving: IMPERVIOUS,
    "gravel drive": groups(76, 85, 89, 91),
    "dirt drive": groups(72, 82, 87, 89),
    "good lawn": groups(39, 61, 74, 80),
    "fair lawn": groups(49, 69, 79, 84),
    "poor lawn": groups(68, 79, 86, 89),
    "bare graded soil": groups(77, 86, 91, 94),
    meadow: groups(30, 58, 71, 78),
    "good brush": groups(30, 48, 65, 73),
    "fair brush": groups(35, 56, 70, 77),
    "poor brush": groups(48, 67, 77, 83),
    "good orchard": groups(32, 58, 72, 79),
    "fair orchard": groups(43, 65, 76, 82),
    "poor orchard": groups(57, 73, 82, 86),
    "good woods": groups(30, 55, 70, 77),
    "fair woods": groups(36, 60, 73, 79),
    "poor woods": groups(45, 66, 77, 83),
    farmstead: groups(59, 74, 82, 86),
    "lot of 1/8 acre": groups(77, 85, 90, 92),
    "lot of 1/4 acre": groups(61, 75, 83, 87),
    "lot of 1/3 acre": groups(57, 72, 81, 86),
    "lot of 1/2 acre": groups(54, 70, 80, 85),
    "lot of 1 acre": groups(51, 68, 79, 84),
    "lot of 2 acres": groups(46, 65, 77, 82),
  },
  printedTo: 1,
  from: tr55.table("2-2a and 2-2c", "read in transcription"),
} as const satisfies Published<Readonly<Record<string, CurveNumbers>>>;

export type Cover = keyof typeof coverCurveNumbers.values;

export const COVERS = Object.keys(coverCurveNumbers.values) as readonly Cover[];

/** Roofs and paving: covers that let nothing through. */
export const IMPERVIOUS_COVERS: readonly Cover[] = COVERS.filter((cover) => coverCurveNumbers.values[cover] === IMPERVIOUS);
