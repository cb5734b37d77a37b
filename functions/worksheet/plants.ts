import { basinFloor } from "../basin/basin-shape.ts";
import { SHARE_SUM_TOLERANCE } from "../amendment/soil-mix.ts";
import { PLANTING_PATTERNS, WIDEST_LIKELY_SPACING_FEET } from "../planting/plant-count.ts";
import { coveredSquareFeet, plantsOfKind, type PlantedKind } from "../planting/plant-mix.ts";
import {
  GALLONS_PER_CUBIC_FOOT,
  MOST_USUAL_WEEKLY_INCHES,
  USUAL_WEEKLY_INCHES,
  waterCubicFeet,
  waterGallons,
} from "../planting/water-need.ts";
import { plantingEdges, plantingZones, USUAL_BERM_TOP_FEET } from "../planting/zone-areas.ts";
import { nurserySpacingChart } from "../published/documents.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { westernWashingtonRainGardens } from "../published/western-washington-rain-gardens.ts";
import { metricPerUs } from "../quantities.ts";
import { area, choice, count, depth, length, number, rangeOf, type ResultValue, share, units } from "./calling/arguments.ts";
import { lengthToWidth, shape, sideSlope } from "./basin-arguments.ts";
import { deepPonding, largeFloor, steepSides } from "./basin-cautions.ts";
import { invalid, isCellError, missing, type CellError } from "./calling/cell.ts";
import { rowOf, tableOf } from "./calling/results.ts";
import { cannotBroadcast } from "./calling/sentences.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

const ellipseRing = computedByHand("Ellipse on axes that grow by 2 z d to the rim and by 2 w to the berm's outer edge");

export const zoneAreas = worksheetFunction({
  name: "ZONEAREAS",
  summary:
    "The planting zones of a basin in plan: A the floor, B the sloping sides up to the ponding level, C the top of the berm around it.",
  arguments: [
    area("floorArea", "Floor area"),
    depth("ponding", "Ponding depth"),
    sideSlope,
    length("bermTop", "Berm top width").optional(USUAL_BERM_TOP_FEET),
    shape,
    lengthToWidth,
    units,
  ],
  result: rowOf([area("Zone A, wettest"), area("Zone B, transition"), area("Zone C, berm")]),
  sources: [ellipseRing, westernWashingtonRainGardens.place("appendix A, zones 1 to 3", "read")],
  cautions: [
    steepSides,
    ...deepPonding<{ readonly ponding: number }>(({ ponding }) => ponding),
    largeFloor<{ readonly floorArea: number }>(({ floorArea }) => floorArea),
  ],
  example: {
    arguments: [119, 6, 3, 1, "rectangle", 17 / 7],
    result: [[119, 81, 64]],
    within: 0.0005,
    from: computedByHand("A 17 by 7 ft floor, a 20 by 10 ft rim, a 22 by 12 ft outer edge"),
  },
  equation: [
    "A = k L W   (sq ft; k = pi / 4 for an ellipse, 1 for a rectangle; L and W the floor's axes in ft)",
    "B = k (L + 2 z d) (W + 2 z d) - A   (sq ft; d ponding in ft, z run to rise)",
    "C = k (L + 2 z d + 2 w) (W + 2 z d + 2 w) - A - B   (sq ft; w berm top in ft)",
  ],
  working({ floorArea, ponding, sideSlope, bermTop, shape, lengthToWidth }) {
    const floor = basinFloor(floorArea, shape, lengthToWidth);
    const { reachFeet, rimSquareFeet, bermEdgeSquareFeet } = plantingEdges(floor, ponding, sideSlope, bermTop);
    return [
      { label: "Floor length L", value: floor.lengthFeet, kind: "length" },
      { label: "Floor width W", value: floor.widthFeet, kind: "length" },
      { label: "Sides reach outward z d", value: reachFeet, kind: "length" },
      { label: "Area inside the rim", value: rimSquareFeet, kind: "area" },
      { label: "Area inside the berm's outer edge", value: bermEdgeSquareFeet, kind: "area" },
    ];
  },
  calculate({ floorArea, ponding, sideSlope, bermTop, shape, lengthToWidth }) {
    const zones = plantingZones(floorArea, ponding, sideSlope, bermTop, shape, lengthToWidth);
    return [zones.wettestSquareFeet, zones.transitionSquareFeet, zones.bermSquareFeet];
  },
});

type TypedSeries = readonly (number | null)[];

/** A count for each kind, and nothing in the row of a kind that is not typed yet. */
const plants: ResultValue<number | string> = count("Plants");

const chart = nurserySpacingChart.place("12 and 24 in spacing");

export const plantMix = worksheetFunction({
  name: "PLANTMIX",
  summary: "Plants of each kind for a mix, each on its share of the area and at its own spacing.",
  arguments: [
    area("area", "Area"),
    rangeOf(length("spacings", "Spacing").moreThan(0)).keepingBlanks(),
    rangeOf(share("shares", "Share of the area")).keepingBlanks(),
    choice("pattern", "Pattern", PLANTING_PATTERNS).optional("triangle"),
    units,
  ],
  result: tableOf([plants]),
  sources: [chart, commonPractice("Round up kind by kind, then drop or add")],
  cautions: [
    {
      when: ({ spacings, shares }) => bareShare(kindsFrom(spacings, shares)) > SHARE_SUM_TOLERANCE,
      about: "The shares leave part of the area bare.",
      says: ({ spacings, shares }) =>
        `The shares leave ${Number((100 * bareShare(kindsFrom(spacings, shares))).toPrecision(3))}% of the area bare.`,
    },
    {
      when: ({ spacings }) => spacings.some((spacing) => spacing !== null && spacing > WIDEST_LIKELY_SPACING_FEET),
      says: (_, speaker) =>
        `A spacing over ${speaker.length(WIDEST_LIKELY_SPACING_FEET)} suits trees alone: spacing is in ${speaker.system === "us" ? "feet, so 18 in is 1.5" : "meters, so 45 cm is 0.45"}.`,
    },
  ],
  example: { arguments: [200, [[1], [2]], [[0.5], [0.5]], "square"], result: [[100], [25]], from: chart },
  equation: [
    "n of a kind = share x A / (s^2 sin 60 degrees) on triangles   (plants, rounded up; A in sq ft, s spacing in ft)",
    "n of a kind = share x A / s^2 on squares   (plants, rounded up)",
  ],
  working: ({ area: squareFeet, spacings, shares }) =>
    stepsOf(kindsFrom(spacings, shares), (kinds) => [
      ...kinds.flatMap((kind, place): readonly WorkingStep[] =>
        kind === null ? [] : [{ label: `Kind ${place + 1}, area`, value: coveredSquareFeet(squareFeet, kind), kind: "area" }],
      ),
      { label: "Share of the area planted", value: shareSum(kinds), kind: "share" },
    ]),
  calculate({ area: squareFeet, spacings, shares, pattern }) {
    const kinds = kindsFrom(spacings, shares);
    if (isCellError(kinds)) return kinds;
    return kinds.map((kind) => [kind === null ? "" : plantsOfKind(squareFeet, kind, pattern)] as const);
  },
});

/** The kinds row by row, null where a row has neither spacing nor share, or the sentence that says what is wrong. */
function kindsFrom(spacings: TypedSeries, shares: TypedSeries): readonly (PlantedKind | null)[] | CellError {
  if (spacings.length !== shares.length)
    return cannotBroadcast("Spacings", `${spacings.length} cells`, "Shares of the area", `${shares.length} cells`);
  const kinds: (PlantedKind | null)[] = [];
  for (const [place, spacingFeet] of spacings.entries()) {
    const part = shares[place] ?? null;
    if (spacingFeet === null && part !== null) return missing(`Kind ${place + 1} has a share but no spacing.`);
    if (spacingFeet !== null && part === null) return missing(`Kind ${place + 1} has a spacing but no share.`);
    kinds.push(spacingFeet === null || part === null ? null : { spacingFeet, share: part });
  }
  const sum = shareSum(kinds);
  return sum > 1 + SHARE_SUM_TOLERANCE
    ? invalid(`Shares of the area must add up to 1 or less; they add up to ${Number(sum.toPrecision(4))}.`)
    : kinds;
}

function shareSum(kinds: readonly (PlantedKind | null)[]): number {
  return kinds.reduce((sum, kind) => sum + (kind?.share ?? 0), 0);
}

function bareShare(kinds: readonly (PlantedKind | null)[] | CellError): number {
  return isCellError(kinds) ? 0 : 1 - shareSum(kinds);
}

const LITERS_PER_GALLON = (1000 * metricPerUs("waterVolume")) / GALLONS_PER_CUBIC_FOOT;

export const waterNeed = worksheetFunction({
  name: "WATERNEED",
  summary: "Water a planting takes in a week, rain included: gallons, on a metric sheet liters.",
  arguments: [area("area", "Area"), depth("weeklyDepth", "Depth a week").optional(USUAL_WEEKLY_INCHES), units],
  result: number("Water a week in gallons (metric: L)"),
  sources: [computedByHand("Area x depth; a US gallon is 231 cu in"), commonPractice("An inch a week in the first season, rain included")],
  cautions: [
    {
      when: ({ weeklyDepth }) => weeklyDepth > MOST_USUAL_WEEKLY_INCHES,
      says: (_, speaker) =>
        `Over ${speaker.depth(MOST_USUAL_WEEKLY_INCHES)} a week drowns young plants: the depth is in ${speaker.system === "us" ? "inches" : "mm"}, ${speaker.depth(USUAL_WEEKLY_INCHES)} as a rule.`,
    },
  ],
  example: { arguments: [150, 1, "us"], result: 93.5, within: 0.05, from: computedByHand("150 sq ft x 1 in x 0.6234 gal") },
  equation: ["V = A d / 12   (cu ft; A in sq ft, d in in)", "gallons = V x 1728 / 231   (a US gallon is 231 cu in)"],
  working: ({ area: squareFeet, weeklyDepth }) => [
    { label: "Volume V", value: waterCubicFeet(squareFeet, weeklyDepth), kind: "waterVolume" },
  ],
  calculate: ({ area: squareFeet, weeklyDepth }, speaker) =>
    waterGallons(squareFeet, weeklyDepth) * (speaker.system === "us" ? 1 : LITERS_PER_GALLON),
});
