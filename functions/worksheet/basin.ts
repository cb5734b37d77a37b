import type { BasinShape } from "../basin/basin-shape.ts";
import { basinFloorSquareFeet, LONGEST_STORM_HOURS, USUAL_STORM_INCHES, type BasinStorm } from "../basin/basin-area.ts";
import { basinDepthInches } from "../basin/basin-depth.ts";
import { basinFloorSize } from "../basin/basin-size.ts";
import { basinVolumeCubicFeet } from "../basin/basin-volume.ts";
import {
  deepestPondingInches,
  drainsInTime,
  LONGEST_PUBLISHED_DRAIN_HOURS,
  LONGEST_PUBLISHED_EMPTYING_HOURS,
  USUAL_DRAIN_HOURS,
} from "../basin/deepest-ponding.ts";
import { drawdownHours, mediaWaterInches, USUAL_VOID_SHARE } from "../basin/drawdown.ts";
import { PRINTED_RULE_PERCENTS, ruleAreaSquareFeet, USUAL_RULE_PERCENT } from "../basin/rule-area.ts";
import { stormBalance } from "../basin/storm-balance.ts";
import { handbookOfMathematicalFunctions } from "../published/documents.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { sustainableTechnologiesWiki } from "../published/sustainable-technologies-wiki.ts";
import { ROOF_RUNOFF_SHARE, runoffVolumeCubicFeet } from "../runoff/runoff-volume.ts";
import { area, depth, flag, hours, length, percent, rate, share, units, waterVolume } from "./calling/arguments.ts";
import { drainHoursAllowed, lengthToWidth, shape, sideSlope } from "./basin-arguments.ts";
import { deepPonding, largeFloor, largeVoids, shortDrainTime, standsLong, steepSides, fasterThanSoil } from "./basin-cautions.ts";
import { drainLimit, prismoidal, ruleOfThumb, sizeLimit, stormStorage } from "./basin-sources.ts";
import { balanceSteps, prismoidSteps } from "./basin-working.ts";
import { invalid } from "./calling/cell.ts";
import { DOES_NOT_DRAIN, drainsTooSlowly, noAreaHolds } from "./draining.ts";
import { rowOf } from "./calling/results.ts";
import { unlikelyStorm } from "./storm-cautions.ts";
import { stepsOf } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

const floorArea = area("floorArea", "Floor area");

export const ruleArea = worksheetFunction({
  name: "RULEAREA",
  summary: "Garden area by the rule of thumb: a percent of the area that drains to it.",
  arguments: [area("contributingArea", "Contributing area"), percent("percent", "Percent").optional(USUAL_RULE_PERCENT), units],
  result: area("Garden area"),
  sources: [ruleOfThumb, sustainableTechnologiesWiki.place('page "Bioretention", 5 to 20 parts of paving to one of garden')],
  cautions: [
    {
      when: ({ percent: part }) => part < PRINTED_RULE_PERCENTS.least || part > PRINTED_RULE_PERCENTS.most,
      says: `Published rules run from ${PRINTED_RULE_PERCENTS.least} to ${PRINTED_RULE_PERCENTS.most} percent of the area that drains to the garden.`,
    },
  ],
  example: { arguments: [500], result: 50, from: ruleOfThumb },
  equation: ["A = percent / 100 x contributing area   (sq ft)"],
  calculate: ({ contributingArea: contributing, percent: part }) => ruleAreaSquareFeet(contributing, part),
});

export const basinArea = worksheetFunction({
  name: "BASINAREA",
  summary: "Floor area of the basin that holds a storm: runoff and rain on the basin equal ponding, voids of the soil mix and soaking.",
  arguments: [
    area("contributingArea", "Contributing area"),
    rate("designRate", "Design rate"),
    depth("ponding", "Ponding depth"),
    depth("storm", "Storm depth").optional(USUAL_STORM_INCHES),
    share("runoffShare", "Runoff share").optional(ROOF_RUNOFF_SHARE),
    depth("media", "Soil mix depth").optional(0),
    share("voidShare", "Void share").optional(USUAL_VOID_SHARE),
    hours("stormHours", "Storm hours").atMost(LONGEST_STORM_HOURS).optional(0),
    sideSlope,
    flag("rainOnBasin", "Rain on the basin counted").optional(true),
    drainHoursAllowed,
    units,
  ],
  result: area("Floor area"),
  sources: [stormStorage, prismoidal, drainLimit, sizeLimit],
  cautions: [
    ...deepPonding<{ readonly ponding: number }>(({ ponding }) => ponding),
    ...unlikelyStorm<{ readonly storm: number }>(({ storm }) => storm),
    steepSides,
    standsLong<{ readonly drainHours: number }>(({ drainHours }) => drainHours),
    shortDrainTime,
    largeVoids,
    fasterThanSoil<{ readonly designRate: number }>(({ designRate }) => designRate),
    {
      when: (inputs) => inputs.contributingArea > 0 && basinFloorSquareFeet(stormOf(inputs)) === 0,
      says: "The sloping sides alone hold this storm: no level floor is needed.",
    },
    largeFloor<BasinAreaInputs>((inputs) => basinFloorSquareFeet(stormOf(inputs)) ?? 0),
  ],
  example: {
    arguments: [1000, 0.25, 6, 1, 0.95, 18, 0.25, 6, 0, false],
    result: 79.2,
    within: 0.05,
    from: computedByHand("79.17 cu ft of runoff over 6 in + 18 in x 0.25 + 0.25 in/h x 6 h = 1.000 ft"),
  },
  equation: [
    "s Ad P + P Arim = V(d) + A (n m + f T)   (cu ft; areas in sq ft; storm P, ponding d and soil mix m in ft, f in ft/h, T in h)",
    "V(d) = A d + k (L + W) z d^2 + 4/3 k z^2 d^3   (cu ft; k = pi / 4, L = 2 W, A = k L W, z run to rise)",
    "Arim = k (L + 2 z d) (W + 2 z d)   (sq ft)",
    "solved for the floor area A; s runoff share, Ad contributing area, n void share",
  ],
  working(inputs) {
    const balanced = stormOf(inputs);
    return stepsOf(basinFloorSquareFeet(balanced), (floor) => balanceSteps(stormBalance(balanced, floor)));
  },
  calculate(inputs, speaker) {
    const { ponding, designRate, drainHours, storm } = inputs;
    if (!drainsInTime(ponding, designRate, drainHours)) {
      return invalid(designRate === 0 ? DOES_NOT_DRAIN : drainsTooSlowly(ponding, designRate, drainHours, speaker));
    }
    return basinFloorSquareFeet(stormOf(inputs)) ?? invalid(noAreaHolds(storm, speaker));
  },
});

interface BasinDepthInputs {
  readonly volume: number;
  readonly floorArea: number;
  readonly sideSlope: number;
  readonly shape: BasinShape;
  readonly lengthToWidth: number;
}

interface BasinAreaInputs {
  readonly contributingArea: number;
  readonly designRate: number;
  readonly ponding: number;
  readonly storm: number;
  readonly runoffShare: number;
  readonly media: number;
  readonly voidShare: number;
  readonly stormHours: number;
  readonly sideSlope: number;
  readonly rainOnBasin: boolean;
}

function stormOf(inputs: BasinAreaInputs): BasinStorm {
  return {
    runoffCubicFeet: runoffVolumeCubicFeet(inputs.contributingArea, inputs.storm, inputs.runoffShare),
    designInchesPerHour: inputs.designRate,
    pondingInches: inputs.ponding,
    stormInches: inputs.storm,
    mediaInches: inputs.media,
    voidShare: inputs.voidShare,
    stormHours: inputs.stormHours,
    sideSlope: inputs.sideSlope,
    rainOnBasinCounted: inputs.rainOnBasin,
  };
}

export const deepestPonding = worksheetFunction({
  name: "DEEPESTPONDING",
  summary: "The deepest ponding that drains in time.",
  arguments: [rate("designRate", "Design rate"), drainHoursAllowed, units],
  result: depth("Deepest ponding"),
  sources: [drainLimit],
  cautions: [
    ...deepPonding<{ readonly designRate: number; readonly drainHours: number }>((inputs) =>
      deepestPondingInches(inputs.designRate, inputs.drainHours),
    ),
    standsLong<{ readonly drainHours: number }>(({ drainHours }) => drainHours),
    shortDrainTime,
    fasterThanSoil<{ readonly designRate: number }>(({ designRate }) => designRate),
  ],
  example: { arguments: [0.25, 24], result: 6, from: computedByHand("0.25 in/h x 24 h") },
  equation: ["d = f T   (in; f design rate in in/h, T drain hours)"],
  calculate: ({ designRate, drainHours }) => (designRate === 0 ? invalid(DOES_NOT_DRAIN) : deepestPondingInches(designRate, drainHours)),
});

export const drawdown = worksheetFunction({
  name: "DRAWDOWN",
  summary: "Hours from a full basin to an empty one.",
  arguments: [
    depth("ponding", "Ponding depth"),
    rate("designRate", "Design rate"),
    depth("media", "Soil mix depth").optional(0),
    share("voidShare", "Void share").optional(USUAL_VOID_SHARE),
    units,
  ],
  result: hours("Drawdown"),
  sources: [drainLimit, commonPractice("Water can fill and leave 0.20 to 0.25 of a bioretention soil")],
  cautions: [
    standsLong(pondingHours),
    {
      when: (inputs) => pondingHours(inputs) > USUAL_DRAIN_HOURS && pondingHours(inputs) <= LONGEST_PUBLISHED_DRAIN_HOURS,
      says: `The ponding stands longer than the usual ${USUAL_DRAIN_HOURS} h: ask what the local limit is.`,
    },
    {
      when: (inputs) =>
        inputs.designRate > 0 &&
        pondingHours(inputs) <= LONGEST_PUBLISHED_DRAIN_HOURS &&
        drawdownHours(inputs.ponding, inputs.designRate, inputs.media, inputs.voidShare) > LONGEST_PUBLISHED_EMPTYING_HOURS,
      says: `The soil mix is not empty after ${LONGEST_PUBLISHED_EMPTYING_HOURS} h, the longest printed limit: the next rain finds it wet.`,
    },
    largeVoids,
    fasterThanSoil<{ readonly designRate: number }>(({ designRate }) => designRate),
  ],
  example: { arguments: [6, 0.5], result: 12, from: computedByHand("6 in / 0.5 in/h") },
  equation: ["t = (ponding + void share x soil mix depth) / f   (h; depths in in, f design rate in in/h)"],
  working: ({ ponding: pondingDepth, designRate, media: mediaDepth, voidShare }) => [
    { label: "Water in the soil mix", value: mediaWaterInches(mediaDepth, voidShare), kind: "depth" },
    { label: "Hours for the ponding alone", value: pondingHours({ ponding: pondingDepth, designRate }), kind: "hours" },
  ],
  calculate: ({ ponding, designRate, media, voidShare }) =>
    designRate === 0 ? invalid(DOES_NOT_DRAIN) : drawdownHours(ponding, designRate, media, voidShare),
});

/** Hours the ponding alone stands; 0 where the answer is an error anyway. */
function pondingHours({ ponding, designRate }: { readonly ponding: number; readonly designRate: number }): number {
  return designRate === 0 ? 0 : drawdownHours(ponding, designRate, 0, 0);
}

export const basinVolume = worksheetFunction({
  name: "BASINVOLUME",
  summary: "Water a basin holds when it stands full to a depth, exactly for its shape.",
  arguments: [floorArea, depth("depth", "Depth"), sideSlope, shape, lengthToWidth, units],
  result: waterVolume("Water held"),
  sources: [prismoidal],
  cautions: [...deepPonding<{ readonly depth: number }>(({ depth: inches }) => inches), steepSides],
  example: {
    arguments: [119, 6, 3, "rectangle", 17 / 7],
    result: 79,
    within: 0.005,
    from: computedByHand("6 in / 6 x (119 + 4 x 157.25 + 200) sq ft, a 17 by 7 ft floor with 3 to 1 sides"),
  },
  equation: [
    "V = d / 6 x (area at the floor + 4 x area at half the depth + area at the full depth)   (cu ft; d in ft, areas in sq ft)",
    "area at height h = k (L + 2 z h) (W + 2 z h)   (sq ft; k = pi / 4 for an ellipse, 1 for a rectangle; z run to rise)",
  ],
  working: ({ floorArea: squareFeet, depth: inches, sideSlope: slope, shape: outline, lengthToWidth: ratio }) =>
    prismoidSteps(squareFeet, inches, slope, outline, ratio),
  calculate: ({ floorArea: squareFeet, depth: inches, sideSlope: slope, shape: outline, lengthToWidth: ratio }) =>
    basinVolumeCubicFeet(squareFeet, inches, slope, outline, ratio),
});

export const basinDepth = worksheetFunction({
  name: "BASINDEPTH",
  summary: "The depth at which a basin holds a volume of water.",
  arguments: [waterVolume("volume", "Volume"), area("floorArea", "Floor area").moreThan(0), sideSlope, shape, lengthToWidth, units],
  result: depth("Depth"),
  sources: [prismoidal],
  cautions: [
    ...deepPonding<BasinDepthInputs>(({ volume, floorArea: squareFeet, sideSlope: slope, shape: outline, lengthToWidth: ratio }) =>
      basinDepthInches(volume, squareFeet, slope, outline, ratio),
    ),
    steepSides,
  ],
  example: {
    arguments: [79, 119, 3, "rectangle", 17 / 7],
    result: 6,
    within: 0.005,
    from: computedByHand("79.00 cu ft fill a 17 by 7 ft floor with 3 to 1 sides to 6 in"),
  },
  equation: [
    "V = d / 6 x (area at the floor + 4 x area at half the depth + area at the full depth), solved for d   (cu ft; d in ft, areas in sq ft)",
    "area at height h = k (L + 2 z h) (W + 2 z h)   (sq ft; k = pi / 4 for an ellipse, 1 for a rectangle; z run to rise)",
  ],
  working({ volume: cubicFeet, floorArea: squareFeet, sideSlope: slope, shape: outline, lengthToWidth: ratio }) {
    const inches = basinDepthInches(cubicFeet, squareFeet, slope, outline, ratio);
    return [
      ...prismoidSteps(squareFeet, inches, slope, outline, ratio),
      { label: "Volume at that depth", value: basinVolumeCubicFeet(squareFeet, inches, slope, outline, ratio), kind: "waterVolume" },
    ];
  },
  calculate: ({ volume: cubicFeet, floorArea: squareFeet, sideSlope: slope, shape: outline, lengthToWidth: ratio }) =>
    basinDepthInches(cubicFeet, squareFeet, slope, outline, ratio),
});

export const basinSize = worksheetFunction({
  name: "BASINSIZE",
  summary: "Length, width and edge length of a basin floor, for stakes and string.",
  arguments: [floorArea, shape, lengthToWidth, units],
  result: rowOf([length("Length"), length("Width"), length("Edge length")]),
  sources: [handbookOfMathematicalFunctions.chapter("17.6, arithmetic-geometric mean"), sizeLimit],
  cautions: [largeFloor<{ readonly floorArea: number }>(({ floorArea: squareFeet }) => squareFeet)],
  example: { arguments: [200, "rectangle", 2], result: [[20, 10, 60]], from: computedByHand("20 x 10 ft is 200 sq ft") },
  equation: [
    "rectangle: A = L W, edge = 2 (L + W)   (sq ft, ft; L = length to width x W)",
    "ellipse: A = pi / 4 L W, edge = 2 pi / M x (a^2 - sum of 2^(n-1) c_n^2)   (sq ft, ft)",
    "a = L / 2, b = W / 2, M arithmetic-geometric mean of a and b, c_0^2 = a^2 - b^2, c_(n+1) = (a_n - b_n) / 2   (ft)",
  ],
  calculate({ floorArea: squareFeet, shape: outline, lengthToWidth: ratio }) {
    const { lengthFeet, widthFeet, edgeFeet } = basinFloorSize(squareFeet, outline, ratio);
    return [lengthFeet, widthFeet, edgeFeet] as const;
  },
});
