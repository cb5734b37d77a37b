import { USUAL_STORM_INCHES } from "../basin/basin-area.ts";
import { deepestPondingInches } from "../basin/deepest-ponding.ts";
import type { BasinShape } from "../basin/basin-shape.ts";
import { LARGEST_FLOOR_SHARE, LEAST_DESIGN_INCHES_PER_HOUR, LEAST_FLOOR_SQUARE_FEET, LONGEST_EMPTY_HOURS } from "../basin/design-limits.ts";
import { designSite, siteHole, siteStorm, type Site, type SiteDesign } from "../basin/site-design.ts";
import { stormBalance } from "../basin/storm-balance.ts";
import { deepestDigFeet, USUAL_MULCH_INCHES } from "../earthwork/basin-dig.ts";
import { DESIGN_STORM_INCHES } from "../rainfall/likely-rain.ts";
import { FASTEST_TREATING_INCHES_PER_HOUR, USUAL_REDUCTION_FACTOR } from "../infiltration/design-rate.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { INCHES_PER_FOOT } from "../quantities.ts";
import { area, depth, earthVolume, hours, number, percent, rate, share, text, units, waterVolume } from "./calling/arguments.ts";
import { missing } from "./calling/cell.ts";
import { rowOf } from "./calling/results.ts";
import type { Speaker } from "./calling/speaker.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";
import { drainHoursAllowed, lengthToWidth, shape, sideSlope } from "./basin-arguments.ts";
import {
  callBeforeDigging,
  deepDig,
  deepPonding,
  largeFloor,
  NOTHING_TAKEN_OFF,
  fasterThanSoil,
  shortDrainTime,
  standsLong,
  steepSides,
} from "./basin-cautions.ts";
import {
  drainLimit,
  emptyLimit,
  largestFloor,
  leastFloorPages,
  leastRate,
  prismoidal,
  ruleOfThumb,
  sizeLimit,
  stormStorage,
} from "./basin-sources.ts";
import { balanceSteps } from "./basin-working.ts";
import { digEquation, digSteps, tooSteepToDig } from "./digging.ts";
import { statusOf } from "./design-status.ts";

export const siteDesign = worksheetFunction({
  name: "SITEDESIGN",
  summary: "A whole basin for each yard: from the water that drains to it and the tested rate to its size, its dig and whether it fits.",
  arguments: [
    area("contributingArea", "Contributing area"),
    rate("testedRate", "Tested rate"),
    number("reductionFactor", "Reduction factor").atLeast(1).optional(USUAL_REDUCTION_FACTOR),
    depth("storm", "Storm depth").optional(USUAL_STORM_INCHES),
    waterVolume("runoff", "Runoff").leftOutMeans("0.95 of the storm over the contributing area, as from roofs and paving"),
    depth("ponding", "Ponding depth").leftOutMeans("the deepest that drains in time, at most 8 in"),
    depth("media", "Soil mix depth").optional(0),
    depth("mulch", "Mulch depth").optional(USUAL_MULCH_INCHES),
    sideSlope,
    drainHoursAllowed,
    shape,
    lengthToWidth,
    percent("groundSlope", "Ground slope").optional(0),
    share("largestFloorShare", "Largest floor as a share of the contributing area").optional(LARGEST_FLOOR_SHARE),
    area("leastFloor", "Least floor area").optional(LEAST_FLOOR_SQUARE_FEET),
    rate("leastDesignRate", "Least design rate without an underdrain").optional(LEAST_DESIGN_INCHES_PER_HOUR),
    hours("longestEmptyHours", "Longest hours to empty with the soil mix").optional(LONGEST_EMPTY_HOURS),
    depth("leastStorm", "Least likely storm").optional(DESIGN_STORM_INCHES.least),
    depth("largestStorm", "Largest likely storm").optional(DESIGN_STORM_INCHES.most),
    text("notCounted", "What is typed for the yard and not counted").optional(""),
    units,
  ],
  result: rowOf([
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
  ]),
  sources: [
    stormStorage,
    prismoidal,
    drainLimit,
    sizeLimit,
    largestFloor,
    leastFloorPages,
    leastRate,
    emptyLimit,
    ruleOfThumb,
    commonPractice("Ponding of 8 in at most"),
    commonPractice("Mulch of 2 to 4 in, dug for under the finished floor and sides"),
  ],
  cautions: [
    callBeforeDigging,
    ...deepPonding<SiteInputs>((inputs) => designSite(siteOf(inputs)).pondingInches),
    {
      when: ({ ponding, ...inputs }) => ponding !== undefined && designSite(siteOf({ ponding, ...inputs })).pondingInches < ponding,
      says: (inputs, speaker) =>
        `Less ponding than asked for: the least floor of ${speaker.area(inputs.leastFloor)} holds this storm at ${speaker.depth(designSite(siteOf(inputs)).pondingInches, "up")}.`,
      about: "Less ponding than asked for, where the least floor holds the storm with less.",
    },
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
    largeFloor<SiteInputs>((inputs) => designSite(siteOf(inputs)).basin?.floorSquareFeet ?? 0),
    deepDig<SiteInputs>((inputs) => deepestDigInches(siteOf(inputs))),
  ],
  example: {
    arguments: [787.368421, 0.5, 2, 1, null, 6, 0, 3, 3, 48, "rectangle", 17 / 7],
    result: [[0.25, 6, 119, 200, 62.333, 79, 24, 78.737, 4.778, "fits"]],
    within: 0.005,
    from: computedByHand(
      "A 17 by 7 ft floor with 3 to 1 sides holds 79.00 cu ft at 6 in: 62.333 cu ft of runoff and 1 in of rain on its 20 by 10 ft rim; dug 79 cu ft and 3 in for mulch under the rim, 50 cu ft",
    ),
  },
  equation: [
    "design rate f = tested rate / reduction factor   (in/h)",
    "ponding d = as given, or the smaller of f x drain hours and 8; on the least floor what the storm needs, at least 3   (in)",
    "runoff R = as given, or 0.95 x contributing area x P   (cu ft; area in sq ft, storm P in ft)",
    "R + P Arim = V(d) + 0.25 A m, solved for the floor area A, at least the least floor   (cu ft; areas in sq ft; ponding d and soil mix m in ft)",
    "V(d) = A d + k (L + W) z d^2 + 4/3 k z^2 d^3, Arim = k (L + 2 z d) (W + 2 z d)   (cu ft, sq ft; A = k L W, L = length to width x W)",
    "drawdown = (d + 0.25 m) / f   (h; d and m in in)",
    ...digEquation,
  ],
  working: (inputs) => siteSteps(siteOf(inputs)),
  calculate: (inputs, speaker) => {
    const site = siteOf(inputs);
    return tooSteepToDig(site.groundSlopePercent, site.sideSlope) ?? siteRow(designSite(site), site, inputs.notCounted, speaker);
  },
});

interface SiteInputs {
  readonly contributingArea: number;
  readonly testedRate: number;
  readonly reductionFactor: number;
  readonly storm: number;
  readonly runoff: number | undefined;
  readonly ponding: number | undefined;
  readonly media: number;
  readonly mulch: number;
  readonly sideSlope: number;
  readonly drainHours: number;
  readonly shape: BasinShape;
  readonly lengthToWidth: number;
  readonly groundSlope: number;
  readonly largestFloorShare: number;
  readonly leastFloor: number;
  readonly leastDesignRate: number;
  readonly longestEmptyHours: number;
  readonly leastStorm: number;
  readonly largestStorm: number;
}

function siteOf(inputs: SiteInputs): Site {
  return {
    contributingSquareFeet: inputs.contributingArea,
    testedInchesPerHour: inputs.testedRate,
    reductionFactor: inputs.reductionFactor,
    stormInches: inputs.storm,
    runoffCubicFeet: inputs.runoff,
    pondingInches: inputs.ponding,
    mediaInches: inputs.media,
    mulchInches: inputs.mulch,
    sideSlope: inputs.sideSlope,
    drainHours: inputs.drainHours,
    outline: { shape: inputs.shape, lengthToWidth: inputs.lengthToWidth },
    groundSlopePercent: inputs.groundSlope,
    limits: {
      largestFloorShare: inputs.largestFloorShare,
      leastFloorSquareFeet: inputs.leastFloor,
      leastDesignInchesPerHour: inputs.leastDesignRate,
      longestEmptyHours: inputs.longestEmptyHours,
      leastStormInches: inputs.leastStorm,
      largestStormInches: inputs.largestStorm,
    },
  };
}

/** Under the ground uphill; 0 where there is nothing to dig. */
function deepestDigInches(site: Site): number {
  const { basin, pondingInches } = designSite(site);
  return basin === undefined ? 0 : INCHES_PER_FOOT * deepestDigFeet(siteHole(site, basin.floorSquareFeet, pondingInches));
}

function siteSteps(site: Site): readonly WorkingStep[] {
  const { designInchesPerHour, pondingInches, runoffCubicFeet, basin } = designSite(site);
  return [
    { label: "Design rate", value: designInchesPerHour, kind: "rate" },
    { label: "Deepest ponding that drains", value: deepestPondingInches(designInchesPerHour, site.drainHours), kind: "depth" },
    { label: "Ponding depth used", value: pondingInches, kind: "depth" },
    ...stepsOf(basin, ({ floorSquareFeet, dig }): readonly WorkingStep[] => [
      { label: "Floor area", value: floorSquareFeet, kind: "area" },
      ...balanceSteps(stormBalance(siteStorm(site, runoffCubicFeet, designInchesPerHour, pondingInches), floorSquareFeet)),
      ...digSteps(dig),
    ]),
  ];
}

function siteRow(design: SiteDesign, site: Site, notCounted: string, speaker: Speaker) {
  const status = statusOf(design, site, notCounted, speaker);
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
    basin.dig.wholeCubicYards,
    status,
  ] as const;
}
