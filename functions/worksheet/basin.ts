import { layerVolumeCubicYards } from "../amendment/layer-volume.ts";
import { basinFloorSquareFeet, USUAL_STORM_INCHES, type BasinStorm } from "../basin/basin-area.ts";
import { basinDepthInches } from "../basin/basin-depth.ts";
import { BASIN_SHAPES, USUAL_LENGTH_TO_WIDTH, USUAL_OUTLINE, type BasinOutline, type BasinShape } from "../basin/basin-shape.ts";
import { basinFloorSize } from "../basin/basin-size.ts";
import { basinVolumeCubicFeet, USUAL_SIDE_SLOPE } from "../basin/basin-volume.ts";
import {
  deepestPondingInches,
  drainsInTime,
  LONGEST_PUBLISHED_DRAIN_HOURS,
  LONGEST_PUBLISHED_EMPTYING_HOURS,
  USUAL_DRAIN_HOURS,
} from "../basin/deepest-ponding.ts";
import { drawdownHours, mediaWaterInches, USUAL_VOID_SHARE } from "../basin/drawdown.ts";
import { PRINTED_RULE_PERCENTS, ruleAreaSquareFeet, USUAL_RULE_PERCENT } from "../basin/rule-area.ts";
import { designSite, siteStorm, type SiteDesign } from "../basin/site-design.ts";
import { stormBalance } from "../basin/storm-balance.ts";
import { digVolumeCubicYards } from "../earthwork/dig-volume.ts";
import { FASTEST_TREATING_INCHES_PER_HOUR, USUAL_REDUCTION_FACTOR } from "../infiltration/design-rate.ts";
import { handbookOfMathematicalFunctions, losAngelesLidSample, wisconsinExtensionPages } from "../published/documents.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { sustainableTechnologiesWiki } from "../published/sustainable-technologies-wiki.ts";
import { ROOF_RUNOFF_SHARE } from "../runoff/runoff-volume.ts";
import {
  area,
  choice,
  depth,
  earthVolume,
  flag,
  hours,
  length,
  number,
  percent,
  rate,
  share,
  text,
  waterVolume,
} from "./calling/arguments.ts";
import {
  callBeforeDigging,
  deepDig,
  deepPonding,
  fasterThanSoil,
  largeFloor,
  largeVoids,
  NOTHING_TAKEN_OFF,
  shortDrainTime,
  standsLong,
  steepSides,
} from "./basin-cautions.ts";
import { balanceSteps, prismoidSteps } from "./basin-working.ts";
import { invalid, missing } from "./calling/cell.ts";
import { DOES_NOT_DRAIN, drainsTooSlowly, NEVER_DRAINS, noAreaHolds } from "./draining.ts";
import { rowOf } from "./calling/results.ts";
import type { Speaker } from "./calling/speaker.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { worksheetFunction, type Caution } from "./calling/worksheet-function.ts";

const floorArea = area("floorArea", "Floor area");
const drainHoursAllowed = hours("drainHours", "Drain hours").moreThan(0).optional(USUAL_DRAIN_HOURS);
const sideSlope = number("sideSlope", "Side slope").atLeast(0).optional(USUAL_SIDE_SLOPE);
const shape = choice("shape", "Shape", BASIN_SHAPES).optional("ellipse");
const lengthToWidth = number("lengthToWidth", "Length to width").atLeast(1).optional(USUAL_LENGTH_TO_WIDTH);
const prismoidal = computedByHand("Prismoidal rule, exact for an ellipse or a rectangle whose sides share one slope");
const drainLimit = losAngelesLidSample.place("drain time of 48 h for surface ponding");

const ruleOfThumb = commonPractice("500 sq ft of roof and paving needs 50 to 60 sq ft of garden");

export const ruleArea = worksheetFunction({
  name: "RULEAREA",
  summary: "Garden area by the rule of thumb: a percent of the area that drains to it.",
  arguments: [area("contributingArea", "Contributing area"), percent("percent", "Percent").optional(USUAL_RULE_PERCENT)],
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
  calculate: (contributing, part) => ruleAreaSquareFeet(contributing, part),
});

const sizeLimit = wisconsinExtensionPages.place("step 1, size of 100 to 300 sq ft");

const stormStorage = sustainableTechnologiesWiki.place('page "Infiltration", area from storage and soaking in the storm');

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
    hours("stormHours", "Storm hours").optional(0),
    number("sideSlope", "Side slope").atLeast(0).optional(0),
    flag("rainOnBasin", "Rain on the basin counted").optional(true),
    drainHoursAllowed,
  ],
  result: area("Floor area"),
  sources: [stormStorage, prismoidal, drainLimit, sizeLimit],
  cautions: [
    ...deepPonding<{ readonly ponding: number }>(({ ponding }) => ponding),
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
  working(contributingArea, designRate, pondingDepth, storm, runoffShare, mediaDepth, voidShare, stormHours, slope, rainOnBasin) {
    const balanced = stormOf({
      contributingArea,
      designRate,
      ponding: pondingDepth,
      storm,
      runoffShare,
      media: mediaDepth,
      voidShare,
      stormHours,
      sideSlope: slope,
      rainOnBasin,
    });
    return stepsOf(basinFloorSquareFeet(balanced), (floor) => balanceSteps(stormBalance(balanced, floor)));
  },
  calculate(
    contributingArea,
    designRate,
    ponding,
    storm,
    runoffShare,
    media,
    voidShare,
    stormHours,
    slope,
    rainOnBasin,
    drainHours,
    speaker,
  ) {
    if (!drainsInTime(ponding, designRate, drainHours)) {
      return invalid(designRate === 0 ? DOES_NOT_DRAIN : drainsTooSlowly(ponding, designRate, drainHours, speaker));
    }
    const inputs = {
      contributingArea,
      designRate,
      ponding,
      storm,
      runoffShare,
      media,
      voidShare,
      stormHours,
      sideSlope: slope,
      rainOnBasin,
    };
    return basinFloorSquareFeet(stormOf(inputs)) ?? invalid(noAreaHolds(storm, speaker));
  },
});

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
    contributingSquareFeet: inputs.contributingArea,
    designInchesPerHour: inputs.designRate,
    pondingInches: inputs.ponding,
    stormInches: inputs.storm,
    runoffShare: inputs.runoffShare,
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
  arguments: [rate("designRate", "Design rate"), drainHoursAllowed],
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
  calculate: (designRate, drainHours) => (designRate === 0 ? invalid(DOES_NOT_DRAIN) : deepestPondingInches(designRate, drainHours)),
});

export const drawdown = worksheetFunction({
  name: "DRAWDOWN",
  summary: "Hours from a full basin to an empty one.",
  arguments: [
    depth("ponding", "Ponding depth"),
    rate("designRate", "Design rate"),
    depth("media", "Soil mix depth").optional(0),
    share("voidShare", "Void share").optional(USUAL_VOID_SHARE),
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
  working: (pondingDepth, designRate, mediaDepth, voidShare) => [
    { label: "Water in the soil mix", value: mediaWaterInches(mediaDepth, voidShare), kind: "depth" },
    { label: "Hours for the ponding alone", value: pondingHours({ ponding: pondingDepth, designRate }), kind: "hours" },
  ],
  calculate: (ponding, designRate, media, voidShare) =>
    designRate === 0 ? invalid(DOES_NOT_DRAIN) : drawdownHours(ponding, designRate, media, voidShare),
});

/** Hours the ponding alone stands; 0 where the answer is an error anyway. */
function pondingHours({ ponding, designRate }: { readonly ponding: number; readonly designRate: number }): number {
  return designRate === 0 ? 0 : drawdownHours(ponding, designRate, 0, 0);
}

export const basinVolume = worksheetFunction({
  name: "BASINVOLUME",
  summary: "Water a basin holds when it stands full to a depth, exactly for its shape.",
  arguments: [floorArea, depth("depth", "Depth"), sideSlope, shape, lengthToWidth],
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
  working: (squareFeet, inches, slope, outline, ratio) => prismoidSteps(squareFeet, inches, slope, outline, ratio),
  calculate: (squareFeet, inches, slope, outline, ratio) => basinVolumeCubicFeet(squareFeet, inches, slope, outline, ratio),
});

export const basinDepth = worksheetFunction({
  name: "BASINDEPTH",
  summary: "The depth at which a basin holds a volume of water.",
  arguments: [waterVolume("volume", "Volume"), area("floorArea", "Floor area").moreThan(0), sideSlope, shape, lengthToWidth],
  result: depth("Depth"),
  sources: [prismoidal],
  cautions: [steepSides],
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
  working(cubicFeet, squareFeet, slope, outline, ratio) {
    const inches = basinDepthInches(cubicFeet, squareFeet, slope, outline, ratio);
    return [
      ...prismoidSteps(squareFeet, inches, slope, outline, ratio),
      { label: "Volume at that depth", value: basinVolumeCubicFeet(squareFeet, inches, slope, outline, ratio), kind: "waterVolume" },
    ];
  },
  calculate: (cubicFeet, squareFeet, slope, outline, ratio) => basinDepthInches(cubicFeet, squareFeet, slope, outline, ratio),
});

export const basinSize = worksheetFunction({
  name: "BASINSIZE",
  summary: "Length, width and edge length of a basin floor, for stakes and string.",
  arguments: [floorArea, shape, lengthToWidth],
  result: rowOf([length("Length"), length("Width"), length("Edge length")]),
  sources: [handbookOfMathematicalFunctions.chapter("17.6, arithmetic-geometric mean"), sizeLimit],
  cautions: [largeFloor<{ readonly floorArea: number }>(({ floorArea: squareFeet }) => squareFeet)],
  example: { arguments: [200, "rectangle", 2], result: [[20, 10, 60]], from: computedByHand("20 x 10 ft is 200 sq ft") },
  equation: [
    "rectangle: A = L W, edge = 2 (L + W)   (sq ft, ft; L = length to width x W)",
    "ellipse: A = pi / 4 L W, edge = 2 pi / M x (a^2 - sum of 2^(n-1) c_n^2)   (sq ft, ft)",
    "a = L / 2, b = W / 2, M arithmetic-geometric mean of a and b, c_0^2 = a^2 - b^2, c_(n+1) = (a_n - b_n) / 2   (ft)",
  ],
  calculate(squareFeet, outline, ratio) {
    const { lengthFeet, widthFeet, edgeFeet } = basinFloorSize(squareFeet, outline, ratio);
    return [lengthFeet, widthFeet, edgeFeet] as const;
  },
});

interface SiteInputs {
  readonly contributingArea: number;
  readonly testedRate: number;
  readonly reductionFactor: number;
  readonly storm: number;
  readonly ponding: number | undefined;
  readonly media: number;
  readonly sideSlope: number;
  readonly drainHours: number;
  readonly shape?: BasinShape;
  readonly lengthToWidth?: number;
}

const siteArguments = [
  area("contributingArea", "Contributing area"),
  rate("testedRate", "Tested rate"),
  number("reductionFactor", "Reduction factor").atLeast(1).optional(USUAL_REDUCTION_FACTOR),
  depth("storm", "Storm depth").optional(USUAL_STORM_INCHES),
  depth("ponding", "Ponding depth").leftOutMeans("the deepest that drains in time, at most 8 in"),
  depth("media", "Soil mix depth").optional(0),
  sideSlope,
  drainHoursAllowed,
] as const;

const siteResult = rowOf([
  rate("Design rate"),
  depth("Ponding depth used"),
  area("Floor area"),
  area("Rim area"),
  waterVolume("Runoff"),
  waterVolume("Water held"),
  hours("Drawdown"),
  area("Rule-of-thumb area"),
  earthVolume("Dig volume in place"),
  text("Status"),
]);

const siteSources = [stormStorage, prismoidal, drainLimit, sizeLimit, ruleOfThumb, commonPractice("Ponding of 8 in at most")];

const siteCautions: readonly Caution<SiteInputs>[] = [
  callBeforeDigging,
  ...deepPonding<SiteInputs>(({ ponding }) => ponding ?? 0),
  steepSides,
  standsLong<SiteInputs>(({ drainHours }) => drainHours),
  shortDrainTime,
  fasterThanSoil<SiteInputs>(({ testedRate }) => testedRate),
  { when: ({ reductionFactor }) => reductionFactor === 1, says: NOTHING_TAKEN_OFF },
  {
    when: ({ testedRate }) => testedRate > FASTEST_TREATING_INCHES_PER_HOUR,
    says: (_, speaker) =>
      `Faster than ${speaker.rate(FASTEST_TREATING_INCHES_PER_HOUR)}: water passes too quickly to be cleaned. Compost slows it.`,
  },
  largeFloor<SiteInputs>((inputs) => designOf(inputs).basin?.floorSquareFeet ?? 0),
  deepDig<SiteInputs>((inputs) => designOf(inputs).pondingInches + inputs.media),
];

export const siteDesign = worksheetFunction({
  name: "SITEDESIGN",
  summary: "A whole basin for each yard: from the area that drains to it and the tested rate to its size, its dig and whether it fits.",
  arguments: siteArguments,
  result: siteResult,
  sources: siteSources,
  cautions: siteCautions,
  example: {
    arguments: [1000, 0.5, 2, 1, 6, 0, 0, 48],
    result: [[0.25, 6, 190, 190, 79.17, 95, 24, 100, 3.519, "fits"]],
    within: 0.005,
    from: computedByHand("79.17 cu ft of runoff over 6 in of vertical-sided ponding less 1 in of rain on it: 190 sq ft"),
  },
  equation: [
    "design rate f = tested rate / reduction factor   (in/h)",
    "ponding d = as given, or the smaller of f x drain hours and 8   (in)",
    "0.95 Ad P + P Arim = V(d) + 0.25 A m, solved for the floor area A   (cu ft; areas in sq ft; storm P, ponding d and soil mix m in ft)",
    "V(d) = A d + k (L + W) z d^2 + 4/3 k z^2 d^3, Arim = k (L + 2 z d) (W + 2 z d)   (cu ft, sq ft; k = pi / 4, L = 2 W, A = k L W)",
    "drawdown = (d + 0.25 m) / f   (h; d and m in in)",
    "dig = (V(d) + A m) / 27   (cu yd)",
  ],
  working: (contributing, tested, reductionFactor, storm, pondingDepth, mediaDepth, slope, drainHours) =>
    siteSteps({
      contributingArea: contributing,
      testedRate: tested,
      reductionFactor,
      storm,
      ponding: pondingDepth,
      media: mediaDepth,
      sideSlope: slope,
      drainHours,
    }),
  calculate: (contributing, tested, reductionFactor, storm, pondingDepth, mediaDepth, slope, drainHours, speaker) =>
    siteRow(
      designSite(contributing, tested, reductionFactor, storm, pondingDepth, mediaDepth, slope, drainHours),
      storm,
      drainHours,
      speaker,
    ),
});

export const basinDesign = worksheetFunction({
  name: "BASINDESIGN",
  summary: "SITEDESIGN for a basin of a shape of your own: sized, dug and judged as an ellipse or a rectangle of a length to width.",
  arguments: [...siteArguments, shape, lengthToWidth],
  result: siteResult,
  sources: siteSources,
  cautions: siteCautions,
  example: {
    arguments: [787.368421, 0.5, 2, 1, 6, 0, 3, 48, "rectangle", 17 / 7],
    result: [[0.25, 6, 119, 200, 62.333, 79, 24, 78.737, 2.926, "fits"]],
    within: 0.005,
    from: computedByHand(
      "A 17 by 7 ft floor with 3 to 1 sides holds 79.00 cu ft at 6 in: 62.333 cu ft of runoff and 1 in of rain on its 20 by 10 ft rim",
    ),
  },
  equation: ["as SITEDESIGN, with k = pi / 4 for an ellipse and 1 for a rectangle, and L = length to width x W"],
  working: (contributing, tested, reductionFactor, storm, pondingDepth, mediaDepth, slope, drainHours, outline, ratio) =>
    siteSteps({
      contributingArea: contributing,
      testedRate: tested,
      reductionFactor,
      storm,
      ponding: pondingDepth,
      media: mediaDepth,
      sideSlope: slope,
      drainHours,
      shape: outline,
      lengthToWidth: ratio,
    }),
  calculate: (contributing, tested, reductionFactor, storm, pondingDepth, mediaDepth, slope, drainHours, outline, ratio, speaker) =>
    siteRow(
      designSite(contributing, tested, reductionFactor, storm, pondingDepth, mediaDepth, slope, drainHours, {
        shape: outline,
        lengthToWidth: ratio,
      }),
      storm,
      drainHours,
      speaker,
    ),
});

function designOf(inputs: SiteInputs): SiteDesign {
  const { contributingArea, testedRate, reductionFactor, storm, ponding, media, drainHours } = inputs;
  return designSite(contributingArea, testedRate, reductionFactor, storm, ponding, media, inputs.sideSlope, drainHours, outlineOf(inputs));
}

function outlineOf({ shape: outline = USUAL_OUTLINE.shape, lengthToWidth: ratio = USUAL_OUTLINE.lengthToWidth }: SiteInputs): BasinOutline {
  return { shape: outline, lengthToWidth: ratio };
}

function siteSteps(inputs: SiteInputs): readonly WorkingStep[] {
  const { contributingArea, storm, media, sideSlope: slope, drainHours } = inputs;
  const { designInchesPerHour, pondingInches, basin } = designOf(inputs);
  const outline = outlineOf(inputs);
  return [
    { label: "Design rate", value: designInchesPerHour, kind: "rate" },
    { label: "Deepest ponding that drains", value: deepestPondingInches(designInchesPerHour, drainHours), kind: "depth" },
    { label: "Ponding depth used", value: pondingInches, kind: "depth" },
    ...stepsOf(basin, ({ floorSquareFeet }): readonly WorkingStep[] => [
      { label: "Floor area", value: floorSquareFeet, kind: "area" },
      ...balanceSteps(
        stormBalance(siteStorm(contributingArea, designInchesPerHour, pondingInches, storm, media, slope, outline), floorSquareFeet),
      ),
      {
        label: "Dig down to the floor",
        value: digVolumeCubicYards(floorSquareFeet, pondingInches, slope, outline.shape, outline.lengthToWidth),
        kind: "earthVolume",
      },
      { label: "Dig for the soil mix", value: layerVolumeCubicYards(floorSquareFeet, media, 0), kind: "earthVolume" },
    ]),
  ];
}

function siteRow(design: SiteDesign, storm: number, drainHours: number, speaker: Speaker) {
  const status = statusOf(design, storm, drainHours, speaker);
  const { designInchesPerHour, pondingInches, runoffCubicFeet, ruleSquareFeet, basin } = design;
  if (basin === undefined) {
    const none = missing(status);
    return [designInchesPerHour, pondingInches, none, none, runoffCubicFeet, none, none, ruleSquareFeet, none, status] as const;
  }
  return [
    designInchesPerHour,
    pondingInches,
    basin.floorSquareFeet,
    basin.rimSquareFeet,
    runoffCubicFeet,
    basin.heldCubicFeet,
    basin.drawdownHours,
    ruleSquareFeet,
    basin.digCubicYards,
    status,
  ] as const;
}

function statusOf(
  { verdict, pondingInches, designInchesPerHour }: SiteDesign,
  storm: number,
  drainHours: number,
  speaker: Speaker,
): string {
  if (verdict === "fits") return verdict;
  if (verdict === "drains too slowly") return drainsTooSlowly(pondingInches, designInchesPerHour, drainHours, speaker);
  return verdict === "never drains" ? NEVER_DRAINS : noAreaHolds(storm, speaker);
}
