import { largestOf, smallestOf } from "../extremes.ts";
import { asceManual37, peakCoefficients } from "../published/asce-manual-37.ts";
import { epa841B09001, hec22, utahRainPercentile } from "../published/documents.ts";
import { stormCurves, stormCurveSources, STORM_TYPES } from "../published/scs-24-hour-storms.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import {
  countedRains,
  LEAST_RAINS_ABOVE,
  percentilePlace,
  rainPercentileInches,
  SMALLEST_COUNTED_INCHES,
  USUAL_PERCENT,
} from "../rainfall/rain-percentile.ts";
import { designStorm, heaviestStep, STORM_MINUTES, USUAL_STEP_MINUTES } from "../rainfall/storm-curve.ts";
import { LARGEST_RATIONAL_SQUARE_FEET, peakFlowCubicFeetPerSecond } from "../runoff/peak-flow.ts";
import { area, choice, depth, flow, minutes, percent, rangeOf, rate, share, units } from "./calling/arguments.ts";
import { invalid, missing } from "./calling/cell.ts";
import { tableOf } from "./calling/results.ts";
import { stepsOf } from "./calling/working.ts";
import { unlikelyIntensity, unlikelyStorm } from "./storm-cautions.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

/** The curves of all types have an ordinate where the heaviest quarter of an hour begins and where it ends. */
const HEAVIEST_MINUTES = 15;

export const stormCurve = worksheetFunction({
  name: "STORMCURVE",
  summary: "A 24-hour design storm of the Soil Conservation Service, step by step.",
  arguments: [
    depth("depth", "Storm depth"),
    choice("type", "Storm type", STORM_TYPES).optional("II"),
    minutes("stepMinutes", "Step").atLeast(1).atMost(STORM_MINUTES).optional(USUAL_STEP_MINUTES),
    units,
  ],
  result: tableOf([minutes("Minutes"), depth("Cumulative depth"), depth("Depth in the step")]),
  sources: stormCurveSources,
  cautions: [
    ...unlikelyStorm<{ readonly depth: number }>((inputs) => inputs.depth),
    { when: () => true, says: "Local rules may name a regional storm from NOAA Atlas 14 in place of these curves: ask." },
    {
      when: ({ stepMinutes }) => stepMinutes > HEAVIEST_MINUTES,
      says: `The heaviest quarter of an hour is spread over the whole step: a step of ${HEAVIEST_MINUTES} minutes or less shows it.`,
    },
  ],
  example: {
    arguments: [1, "II", 720],
    result: [
      [0, 0, 0],
      [720, 0.6632, 0.6632],
      [1440, 1, 0.3368],
    ],
    within: 0.00005,
    from: stormCurves.II.from,
  },
  equation: [
    "cumulative depth = P x F(t)   (in; F the share that has fallen by then, straight between the curve's ordinates)",
    "depth in a step = P x (F(t) - F(t before))   (in)",
  ],
  working({ depth: inches, type, stepMinutes }) {
    const storm = designStorm(inches, type, stepMinutes);
    const heaviest = heaviestStep(storm);
    return [
      { label: "Steps in 24 h", value: storm.length - 1, kind: "count" },
      { label: "Deepest step", value: heaviest.stepInches, kind: "depth" },
      { label: "Deepest step ends after", value: heaviest.minutes, kind: "minutes" },
    ];
  },
  calculate({ depth: inches, type, stepMinutes }) {
    const steps = STORM_MINUTES / stepMinutes;
    // A step typed as a decimal may miss a whole count by a hair.
    if (Math.abs(steps - Math.round(steps)) > 1e-9) {
      return invalid(`Step must divide the 1,440 minutes of the storm evenly; ${stepMinutes} does not.`);
    }
    return designStorm(inches, type, stepMinutes).map((step) => [step.minutes, step.cumulativeInches, step.stepInches] as const);
  },
});

export const rainPercentile = worksheetFunction({
  name: "RAINPERCENTILE",
  summary: "The depth that a percent of the rains of a record do not exceed.",
  arguments: [
    rangeOf(depth("rains", "Rain")),
    percent("percent", "Percent").optional(USUAL_PERCENT),
    depth("smallestCounted", "Smallest counted").optional(SMALLEST_COUNTED_INCHES),
    units,
  ],
  result: depth("Rain not exceeded"),
  sources: [
    utahRainPercentile.place("definition of the 90th percentile storm"),
    epa841B09001.place("rains of 0.1 in or less left out"),
    commonPractice("A percentile with fewer than 10 rains above it rests on chance"),
  ],
  cautions: [
    { when: () => true, says: "Days and whole events give different depths: say which the record holds. Leave snow out." },
    { when: () => true, says: "This is not the depth that captures the same percent of the yearly rain." },
    {
      when: ({ rains, percent: part, smallestCounted }) =>
        countedRains(rains, smallestCounted).length * (100 - part) < 100 * LEAST_RAINS_ABOVE,
      says: `Fewer than ${LEAST_RAINS_ABOVE} counted rains are deeper than this: 20 to 30 years of record are advised.`,
    },
  ],
  example: {
    arguments: [[[0.05], [0.6], [0.2], [1], [0.8], [0.4]]],
    result: 0.92,
    within: 1e-9,
    from: computedByHand("Five rains over 0.1 in; the place 0.9 x 4 = 3.6 lies between 0.8 and 1 in"),
  },
  equation: [
    "place = percent / 100 x (n - 1), from the smallest of the n counted rains   (0 is the smallest)",
    "rain = rain below the place + (place - its whole part) x (rain above - rain below)   (in)",
  ],
  working: ({ rains, percent: part, smallestCounted }) =>
    stepsOf(percentilePlace(rains, part, smallestCounted), ({ counted, place, belowInches, aboveInches }) => [
      { label: "Rains counted n", value: counted, kind: "count" },
      { label: "Place from the smallest", value: place },
      { label: "Rain at or below the place", value: belowInches, kind: "depth" },
      { label: "Rain above the place", value: aboveInches, kind: "depth" },
    ]),
  calculate: ({ rains, percent: part, smallestCounted }, speaker) =>
    rainPercentileInches(rains, part, smallestCounted) ??
    missing(`No rain is deeper than ${speaker.depth(smallestCounted)}, so none is counted.`),
});

const coefficients = Object.values(peakCoefficients.values).flat();
const LEAST_COEFFICIENT = smallestOf(coefficients);
const MOST_COEFFICIENT = largestOf(coefficients);

export const peakFlow = worksheetFunction({
  name: "PEAKFLOW",
  summary: "Peak flow from an area by the rational method.",
  arguments: [area("area", "Area"), rate("intensity", "Rain intensity"), share("peakCoefficient", "Peak coefficient"), units],
  result: flow("Peak flow"),
  sources: [hec22.chapter("3, rational method"), asceManual37.table("of runoff coefficients by surface")],
  cautions: [
    unlikelyIntensity<{ readonly intensity: number }>(({ intensity }) => intensity),
    {
      when: ({ area: squareFeet }) => squareFeet > LARGEST_RATIONAL_SQUARE_FEET,
      says: "The rational method is for areas under about 200 acres (81 ha).",
    },
    {
      when: ({ peakCoefficient }) => peakCoefficient < LEAST_COEFFICIENT || peakCoefficient > MOST_COEFFICIENT,
      says: `Published peak coefficients of a yard's surfaces run from ${LEAST_COEFFICIENT} to ${MOST_COEFFICIENT}; a runoff share of volume is another number.`,
    },
  ],
  example: { arguments: [1000, 6, 0.95], result: 0.1319, within: 0.00005, from: computedByHand("0.95 x 6 in/h x 1,000 sq ft / 43,200") },
  equation: ["Q = C i A / 43,200   (cfs; i in in/h, A in sq ft)"],
  calculate: ({ area: squareFeet, intensity: inchesPerHour, peakCoefficient: coefficient }) =>
    peakFlowCubicFeetPerSecond(squareFeet, inchesPerHour, coefficient),
});
