import { hawkins2002, nationalEngineeringHandbook630, newHampshireEnvWq1504 } from "../published/documents.ts";
import { computedByHand } from "../published/source.ts";
import { COVERS, coverCurveNumbers, SOIL_GROUPS, tr55, type Cover, type SoilGroup } from "../published/tr-55.ts";
import { tableCurveNumber } from "../runoff/curve-number.ts";
import {
  excessRainInches,
  INITIAL_ABSTRACTION_RATIO,
  initialAbstractionInches,
  LEAST_ACCURATE_RUNOFF_INCHES,
  LEAST_CURVE_NUMBER,
  PUBLISHED_LOSS_RATIOS,
  REVISED_LOSS_RATIO,
  runoffDepthInches,
  storageInches,
} from "../runoff/runoff-depth.ts";
import { ROOF_RUNOFF_SHARE, runoffVolumeCubicFeet } from "../runoff/runoff-volume.ts";
import { yardRunoffCubicFeet, type YardSurface } from "../runoff/yard-runoff.ts";
import { area, choice, depth, number, rangeOf, share, units, waterVolume } from "./calling/arguments.ts";
import { invalid, isCellError, missing, type CellError } from "./calling/cell.ts";
import { cannotBroadcast } from "./calling/sentences.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { unlikelyStorm } from "./storm-cautions.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

const limitations = tr55.chapter("2, limitations", "from memory");
const LOW_CURVE_NUMBER = `A curve number is under ${LEAST_CURVE_NUMBER}: TR-55 says to use another method.`;

export const curveNumber = worksheetFunction({
  name: "CURVENUMBER",
  summary: "TR-55 curve number of one surface of a yard.",
  arguments: [choice("cover", "Cover", COVERS), choice("soilGroup", "Soil group", SOIL_GROUPS)],
  result: number("Curve number"),
  sources: [coverCurveNumbers.from],
  cautions: [
    { when: ({ cover, soilGroup }) => tableCurveNumber(cover, soilGroup) < LEAST_CURVE_NUMBER, says: LOW_CURVE_NUMBER },
    {
      when: ({ cover }) => cover.endsWith("drive"),
      says: "The table's row counts the right-of-way beside the drive; the drive alone may run off more.",
    },
  ],
  example: { arguments: ["good lawn", "B"], result: 61, from: coverCurveNumbers.from },
  equation: ["CN = the table's value for the cover and the soil group   (0 to 100)"],
  calculate: ({ cover, soilGroup }) => tableCurveNumber(cover, soilGroup),
});

export const runoffDepth = worksheetFunction({
  name: "RUNOFFDEPTH",
  summary: "Runoff depth of one storm by the curve number method.",
  arguments: [
    depth("rain", "Rain"),
    number("curveNumber", "Curve number").moreThan(0).atMost(100),
    number("lossRatio", "Loss ratio").optional(INITIAL_ABSTRACTION_RATIO),
    units,
  ],
  result: depth("Runoff depth"),
  sources: [tr55.equation("2-3"), hawkins2002.equation("for the storage at a loss ratio of 0.05"), limitations],
  cautions: [
    ...unlikelyStorm<{ readonly rain: number }>(({ rain }) => rain),
    { when: ({ curveNumber: cn }) => cn < LEAST_CURVE_NUMBER, says: LOW_CURVE_NUMBER },
    {
      when: ({ rain, curveNumber: cn, lossRatio }) => rain > 0 && runoffDepthInches(rain, cn, lossRatio) < LEAST_ACCURATE_RUNOFF_INCHES,
      says: (_, speaker) => `Less than ${speaker.depth(LEAST_ACCURATE_RUNOFF_INCHES)} of runoff: TR-55 is less accurate here.`,
    },
  ],
  example: { arguments: [4, 80], result: 2.04, within: 0.005, from: tr55.table("2-1", "read in transcription") },
  equation: [
    "S = 1000 / CN - 10   (in)",
    "S at a loss ratio of 0.05 = 1.33 S^1.15   (in)",
    "Ia = loss ratio x S   (in)",
    "Q = (P - Ia)^2 / (P - Ia + S) where P > Ia, otherwise 0   (in)",
  ],
  working: ({ rain, curveNumber: cn, lossRatio }) => [
    ...(lossRatio === REVISED_LOSS_RATIO
      ? [{ label: "Storage S at a loss ratio of 0.2", value: storageInches(cn), kind: "depth" } as const]
      : []),
    { label: "Storage S", value: storageInches(cn, lossRatio), kind: "depth" },
    { label: "Initial abstraction Ia", value: initialAbstractionInches(cn, lossRatio), kind: "depth" },
    { label: "Rain in excess of Ia", value: excessRainInches(rain, cn, lossRatio), kind: "depth" },
    { label: "Runoff Q", value: runoffDepthInches(rain, cn, lossRatio), kind: "depth" },
  ],
  calculate: ({ rain, curveNumber: cn, lossRatio }) =>
    PUBLISHED_LOSS_RATIOS.includes(lossRatio)
      ? runoffDepthInches(rain, cn, lossRatio)
      : invalid(`Loss ratio must be ${PUBLISHED_LOSS_RATIOS.join(" or ")}: curve numbers are published for no other.`),
});

const roofByHand = computedByHand("0.95 x 1,000 sq ft x 1 in / 12");

export const runoffVolume = worksheetFunction({
  name: "RUNOFFVOLUME",
  summary: "Water that runs off an area in one storm, by the share of rain that runs off.",
  arguments: [area("area", "Area"), depth("rain", "Rain"), share("runoffShare", "Runoff share").optional(ROOF_RUNOFF_SHARE), units],
  result: waterVolume("Runoff"),
  sources: [newHampshireEnvWq1504.equation("for the runoff coefficient")],
  cautions: unlikelyStorm<{ readonly rain: number }>(({ rain }) => rain),
  example: { arguments: [1000, 1], result: 79.17, within: 0.005, from: roofByHand },
  equation: ["V = runoff share x A x P / 12   (cu ft; A in sq ft, P in in)"],
  calculate: ({ area: squareFeet, rain: inches, runoffShare }) => runoffVolumeCubicFeet(squareFeet, inches, runoffShare),
});

export const yardRunoff = worksheetFunction({
  name: "YARDRUNOFF",
  summary: "Water one storm sends to the garden from all surfaces of a yard, weighted surface by surface.",
  arguments: [
    depth("rain", "Rain"),
    rangeOf(choice("covers", "Cover", COVERS)).keepingBlanks(),
    rangeOf(area("areas", "Area")).keepingBlanks(),
    choice("soilGroup", "Soil group", SOIL_GROUPS),
    rangeOf(share("shares", "Share draining here")).keepingBlanks().optional([1]),
    units,
  ],
  result: waterVolume("Runoff"),
  sources: [coverCurveNumbers.from, tr55.equation("2-3"), nationalEngineeringHandbook630.chapter("10, weighted runoff"), limitations],
  cautions: [
    ...unlikelyStorm<{ readonly rain: number }>(({ rain }) => rain),
    {
      when: ({ covers, soilGroup }) => covers.some((cover) => cover !== null && tableCurveNumber(cover, soilGroup) < LEAST_CURVE_NUMBER),
      says: LOW_CURVE_NUMBER,
    },
    {
      when: ({ rain, covers, areas, soilGroup, shares }) => isLittleRunoff(rain, surfacesOf(covers, areas, soilGroup, shares)),
      says: (_, speaker) =>
        `Less than ${speaker.depth(LEAST_ACCURATE_RUNOFF_INCHES)} of runoff from the yard: TR-55 is less accurate here.`,
    },
  ],
  example: {
    arguments: [1, [["roof"], ["good lawn"]], [[1000], [3000]], "B"],
    result: 65.91,
    within: 0.005,
    from: computedByHand("0.19773 in, the weighted runoff of curve numbers 98 and 61, on 4,000 sq ft"),
  },
  equation: [
    "S = 1000 / CN - 10   (in)",
    "Q = (P - 0.2 S)^2 / (P + 0.8 S) where P > 0.2 S, otherwise 0   (in)",
    "V = sum over the surfaces of share x A x Q / 12   (cu ft; A in sq ft)",
  ],
  working: ({ rain, covers, areas, soilGroup, shares }) =>
    stepsOf(surfacesOf(covers, areas, soilGroup, shares), (surfaces) => [
      ...surfaces.flatMap((surface, place) => stepsOfSurface(rain, surface, place + 1)),
      { label: "Runoff of the yard", value: yardRunoffCubicFeet(rain, surfaces), kind: "waterVolume" },
    ]),
  calculate({ rain, covers, areas, soilGroup, shares }) {
    const surfaces = surfacesOf(covers, areas, soilGroup, shares);
    return isCellError(surfaces) ? surfaces : yardRunoffCubicFeet(rain, surfaces);
  },
});

function stepsOfSurface(rain: number, surface: YardSurface, number: number): readonly WorkingStep[] {
  return [
    { label: `Surface ${number}, curve number`, value: surface.curveNumber },
    { label: `Surface ${number}, runoff depth Q`, value: runoffDepthInches(rain, surface.curveNumber), kind: "depth" },
    { label: `Surface ${number}, runoff`, value: yardRunoffCubicFeet(rain, [surface]), kind: "waterVolume" },
  ];
}

/** The surfaces row by row; a row with neither cover nor area is none. */
function surfacesOf(
  covers: readonly (Cover | null)[],
  areas: readonly (number | null)[],
  soilGroup: SoilGroup,
  shares: readonly (number | null)[],
): readonly YardSurface[] | CellError {
  if (covers.length !== areas.length) return cannotBroadcast("Covers", inCells(covers), "Areas", inCells(areas));
  if (shares.length !== 1 && shares.length !== covers.length) {
    return cannotBroadcast("Covers", inCells(covers), "Shares draining here", inCells(shares));
  }
  const surfaces: YardSurface[] = [];
  for (const [place, cover] of covers.entries()) {
    const areaSquareFeet = areas[place] ?? null;
    if (cover === null && areaSquareFeet === null) continue;
    if (cover === null) return missing(`Surface ${place + 1} has an area but no cover.`);
    if (areaSquareFeet === null) return missing(`Surface ${place + 1} has a cover but no area.`);
    const shareDrainingHere = shares[shares.length === 1 ? 0 : place] ?? 1;
    surfaces.push({ curveNumber: tableCurveNumber(cover, soilGroup), areaSquareFeet, shareDrainingHere });
  }
  return surfaces;
}

function isLittleRunoff(rain: number, surfaces: readonly YardSurface[] | CellError): boolean {
  if (isCellError(surfaces) || rain === 0) return false;
  const draining = surfaces.reduce((sum, { areaSquareFeet, shareDrainingHere }) => sum + areaSquareFeet * shareDrainingHere, 0);
  return yardRunoffCubicFeet(rain, surfaces) < runoffVolumeCubicFeet(draining, LEAST_ACCURATE_RUNOFF_INCHES, 1);
}

function inCells(series: readonly unknown[]): string {
  return `${series.length} ${series.length === 1 ? "cell" : "cells"}`;
}
