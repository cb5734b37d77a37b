import { largestOf, smallestOf } from "../extremes.ts";
import { LEAST_FREEBOARD_INCHES } from "../earthwork/cut-fill.ts";
import {
  flowOverEachFoot,
  HIGHEST_PRINTED_HEAD_FEET,
  overflowWidthFeet,
  USUAL_WEIR_COEFFICIENT,
  WEIR_COEFFICIENTS,
} from "../overflow/overflow-width.ts";
import { fullPipe, fullPipeCubicFeetPerSecond, USUAL_ROUGHNESS, YARD_PIPE_INCHES } from "../overflow/pipe-flow.ts";
import { countedTailwater, LEAST_USUAL_STONE_INCHES, medianStoneInches, stoneFlowTerm, TAILWATER_SHARES } from "../overflow/stone-size.ts";
import { hec14, sdsuOpenChannelProblems } from "../published/documents.ts";
import { broadCrestedCoefficients } from "../published/hec-22-weirs.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { pipeRoughness } from "../published/winchester-stormwater-code.ts";
import { INCHES_PER_FOOT, metricPerUs, type UnitSystem } from "../quantities.ts";
import { depth, flow, length, number, percent, units } from "./calling/arguments.ts";
import { worksheetFunction, type Caution } from "./calling/worksheet-function.ts";

/** A weir coefficient is the root of a length over a time: this many metric ones make one in US units. */
const METRIC_COEFFICIENT_PER_US = Math.sqrt(metricPerUs("length"));

const isPrintedCoefficient = (inUs: number): boolean => inUs >= WEIR_COEFFICIENTS.least && inUs <= WEIR_COEFFICIENTS.most;

const stoneOrSod = commonPractice("Coefficient 2.6 (metric 1.44) for an overflow of stone or sod");

export const overflowWidth = worksheetFunction({
  name: "OVERFLOWWIDTH",
  summary: "Width of the level stone spillway that passes a flow at a head over its sill.",
  arguments: [
    flow("flow", "Flow"),
    length("head", "Head over the sill").moreThan(0),
    number("coefficient", "Weir coefficient").moreThan(0).leftOutMeans("2.6 in US units, which is 1.44 in metric units, for stone or sod"),
    units,
  ],
  result: length("Overflow width"),
  sources: [sdsuOpenChannelProblems.place("broad-crested weir"), broadCrestedCoefficients.from, stoneOrSod],
  cautions: [
    {
      when: ({ coefficient }) =>
        coefficient !== undefined && !isPrintedCoefficient(coefficient) && !isPrintedCoefficient(coefficient / METRIC_COEFFICIENT_PER_US),
      says: `Printed coefficients of broad sills run from ${WEIR_COEFFICIENTS.least} to ${WEIR_COEFFICIENTS.most} in US units, ${metricLimit(WEIR_COEFFICIENTS.least)} to ${metricLimit(WEIR_COEFFICIENTS.most)} in metric units.`,
    },
    {
      when: ({ head }) => head > HIGHEST_PRINTED_HEAD_FEET,
      says: (_, speaker) =>
        `A head over ${speaker.length(HIGHEST_PRINTED_HEAD_FEET)} is beyond the printed coefficients: head is in ${speaker.system === "us" ? "feet, so 3 in is 0.25" : "meters, so 75 mm is 0.075"}.`,
    },
    {
      when: ({ head }) => INCHES_PER_FOOT * head > LEAST_FREEBOARD_INCHES,
      says: (_, speaker) =>
        `The head is more than ${speaker.depth(LEAST_FREEBOARD_INCHES)} of freeboard: raise the berm, or make the overflow wider and the head lower.`,
    },
    { when: () => true, says: "Send the overflow where it does no harm: not at a foundation, a sidewalk, a septic field or a neighbor." },
  ],
  example: { arguments: [0.132, 0.2], result: 0.5676, within: 0.00005, from: computedByHand("0.132 / (2.6 x 0.2^1.5)") },
  equation: ["L = Q / (C H^1.5)   (ft; Q in cfs, H head over the sill in ft, C weir coefficient in US units)"],
  working({ head, coefficient }, { system }) {
    const used = usedCoefficient(coefficient, system);
    return [
      { label: "Weir coefficient C", value: used, unit: "in US units" },
      { label: "Flow over each foot of sill C H^1.5", value: flowOverEachFoot(head, used), unit: "cfs/ft" },
    ];
  },
  calculate: ({ flow: cubicFeetPerSecond, head, coefficient }, { system }) =>
    overflowWidthFeet(cubicFeetPerSecond, head, usedCoefficient(coefficient, system)),
});

/** In US units. */
function usedCoefficient(coefficient: number | undefined, system: UnitSystem): number {
  if (coefficient === undefined) return USUAL_WEIR_COEFFICIENT;
  return system === "us" ? coefficient : coefficient / METRIC_COEFFICIENT_PER_US;
}

function metricLimit(coefficient: number): number {
  return Number((coefficient * METRIC_COEFFICIENT_PER_US).toFixed(2));
}

const roughest = largestOf(Object.values(pipeRoughness.values));
const smoothest = smallestOf(Object.values(pipeRoughness.values));

const unlikelyPipe: Caution<{ readonly diameter: number }> = {
  when: ({ diameter }) => diameter < YARD_PIPE_INCHES.least || diameter > YARD_PIPE_INCHES.most,
  says: (_, speaker) =>
    `Pipes in a yard are ${speaker.depth(2)} to ${speaker.depth(12)} across: the diameter is in ${speaker.system === "us" ? "inches" : "mm"}.`,
};

export const pipeFlow = worksheetFunction({
  name: "PIPEFLOW",
  summary: "Flow of a round pipe that runs just full by its own slope (Manning).",
  arguments: [
    depth("diameter", "Inside diameter").moreThan(0),
    percent("slope", "Pipe slope"),
    number("roughness", "Roughness").moreThan(0).optional(USUAL_ROUGHNESS),
    units,
  ],
  result: flow("Full flow"),
  sources: [computedByHand("Manning's equation, 1.486 in US units"), pipeRoughness.from],
  cautions: [
    unlikelyPipe,
    {
      when: ({ roughness }) => roughness < smoothest || roughness > roughest,
      says: `Printed roughness of pipes runs from ${smoothest.toFixed(3)} (smooth plastic) to ${roughest.toFixed(3)} (corrugated metal).`,
    },
  ],
  example: {
    arguments: [4, 1],
    result: 0.2474,
    within: 0.0001,
    from: computedByHand("4 in smooth plastic at 1 percent, 111.0 gpm / 448.83"),
  },
  equation: ["Q = 1.486 / n x A R^(2/3) S^(1/2)   (cfs; A = pi D^2 / 4 in sq ft, R = D / 4 in ft, S slope as a fraction, n roughness)"],
  working({ diameter }) {
    const { areaSquareFeet, hydraulicRadiusFeet } = fullPipe(diameter);
    return [
      { label: "Area of the pipe A", value: areaSquareFeet, kind: "area" },
      { label: "Hydraulic radius R", value: hydraulicRadiusFeet, kind: "length" },
    ];
  },
  calculate: ({ diameter, slope, roughness }) => fullPipeCubicFeetPerSecond(diameter, slope, roughness),
});

export const stoneSize = worksheetFunction({
  name: "STONESIZE",
  summary: "Median stone size of an apron at a pipe's outlet (HEC-14).",
  arguments: [
    flow("flow", "Flow"),
    depth("diameter", "Pipe diameter").moreThan(0),
    depth("tailwater", "Tailwater depth").leftOutMeans("0.4 of the diameter"),
    units,
  ],
  result: depth("Median stone size"),
  sources: [hec14.equation("10.4"), commonPractice("River stone of 2 to 4 in at a downspout")],
  cautions: [
    unlikelyPipe,
    {
      when: ({ diameter, tailwater }) => tailwater !== undefined && tailwater < TAILWATER_SHARES.least * diameter,
      says: "Tailwater is under 0.4 of the diameter: 0.4 is counted, as HEC-14 asks.",
    },
    {
      when: ({ diameter, tailwater }) => tailwater !== undefined && tailwater > TAILWATER_SHARES.most * diameter,
      says: "Tailwater stands above the pipe: the diameter is counted, as HEC-14 asks.",
    },
    {
      when: ({ flow: cubicFeetPerSecond, diameter, tailwater }) =>
        medianStoneInches(cubicFeetPerSecond, diameter, tailwater) < LEAST_USUAL_STONE_INCHES,
      says: (_, speaker) =>
        `Stone under ${speaker.depth(LEAST_USUAL_STONE_INCHES)} washes and clogs in practice: river stone of ${speaker.depth(2)} to ${speaker.depth(4)} is laid at a downspout.`,
    },
    { when: () => true, says: "A steep pipe that runs part full asks for larger stone than this: HEC-14 then counts a smaller pipe." },
  ],
  example: {
    arguments: [59 / 448.83, 4],
    result: 0.51,
    within: 0.005,
    from: computedByHand("Equation 10.4, 59 gpm from a 4 in pipe, tailwater unknown"),
  },
  equation: [
    "D50 = 0.2 D (Q / (sqrt(g) D^2.5))^(4/3) (D / TW)   (ft; Q in cfs, D diameter and TW tailwater in ft, g = 32.2 ft/s^2)",
    "which is D50 = 0.2 (Q / sqrt(g))^(4/3) / D^(7/3) / (TW / D)   (ft; TW / D no less than 0.4 and no more than 1)",
  ],
  working: ({ flow: cubicFeetPerSecond, diameter, tailwater }) => [
    { label: "Tailwater over diameter TW / D", value: countedTailwater(diameter, tailwater) },
    { label: "Flow term (Q / sqrt(g))^(4/3)", value: stoneFlowTerm(cubicFeetPerSecond), unit: "in US units" },
  ],
  calculate: ({ flow: cubicFeetPerSecond, diameter, tailwater }) => medianStoneInches(cubicFeetPerSecond, diameter, tailwater),
});
