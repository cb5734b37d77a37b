import { LONGEST_PUBLISHED_DRAIN_HOURS } from "../basin/deepest-ponding.ts";
import {
  LARGEST_STEP_MINUTES,
  LEAST_STEP_MINUTES,
  routedTotals,
  routeStorm,
  typedStormRains,
  type RoutedStep,
  type StepRains,
} from "../basin/storm-route.ts";
import { stormCurveSources, STORM_TYPES } from "../published/scs-24-hour-storms.ts";
import { computedByHand } from "../published/source.ts";
import { depth, hours, rangeOf, text, units, waterVolume } from "./calling/arguments.ts";
import { sideSlope } from "./basin-arguments.ts";
import { invalid, isCellError, type CellError } from "./calling/cell.ts";
import { keyAmong } from "./calling/typed-words.ts";
import { rainSeries } from "./rain-series.ts";
import { tableOf } from "./calling/results.ts";
import { orList, quoted } from "./calling/sentences.ts";
import { unlikelyStorm } from "./storm-cautions.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

import { numberFrom } from "./calling/reading.ts";
import {
  contributingArea,
  runoffShare,
  floorArea,
  ponding,
  designRate,
  media,
  voidShare,
  gardenOf,
  waterBalance,
  mediaVoids,
  basinCautions,
  storeSteps,
  type BasinInputs,
} from "./garden-inputs.ts";

interface RouteInputs extends BasinInputs {
  readonly stormRains: readonly (number | null)[];
  readonly typeOrMinutes: string;
  readonly floorArea: number;
}

export const stormRoute = worksheetFunction({
  name: "STORMROUTE",
  summary: "One storm through a basin, step by step, until the basin is empty or 72 h after the rain.",
  arguments: [
    rangeOf(depth("stormRains", "Storm depth, or rain in each step")).keepingBlanks(),
    text("typeOrMinutes", "Storm type, or minutes in a step"),
    contributingArea,
    runoffShare,
    floorArea,
    ponding,
    designRate,
    media,
    voidShare,
    sideSlope,
    units,
  ],
  result: tableOf([
    hours("Hours"),
    waterVolume("Inflow"),
    waterVolume("Stored"),
    depth("Depth of ponding"),
    waterVolume("Soaked in"),
    waterVolume("Overflow"),
  ]),
  sources: [waterBalance, ...stormCurveSources, mediaVoids],
  cautions: [
    ...basinCautions,
    ...unlikelyStorm<RouteInputs>(({ stormRains }) => stormRains.reduce<number>((sum, inches) => sum + (inches ?? 0), 0)),
    {
      when: (inputs: RouteInputs) => routed(inputs).some(({ overflowCubicFeet }) => overflowCubicFeet > 0),
      says: "The basin overflows in this storm: lead the overflow over a stone sill to where it does no harm, and off the neighbor's lot.",
    },
    {
      when: (inputs: RouteInputs) => (routed(inputs).at(-1)?.storedCubicFeet ?? 0) > 0,
      says: `Water is still stored ${LONGEST_PUBLISHED_DRAIN_HOURS} h after the rain, the longest printed limit for water on the surface.`,
    },
  ],
  example: {
    arguments: [[[1]], 360, 1000, 0.95, 100, 6, 0.5, 24, 0.25, 0],
    result: [
      [6, 87.5, 62.5, 1.5, 25, 0],
      [12, 0, 37.5, 0, 25, 0],
      [18, 0, 12.5, 0, 25, 0],
      [24, 0, 0, 0, 12.5, 0],
    ],
    within: 1e-9,
    from: computedByHand(
      "1 in in 6 h on 1,000 sq ft of roof at 0.95 and a basin of 100 sq ft: 87.5 cu ft in, 4.1667 cu ft/h out, soil mix voids of 50 cu ft",
    ),
  },
  equation: [
    "inflow of a step = (runoff share x contributing area + rim area) x rain / 12   (cu ft; areas in sq ft, rain in in)",
    "soaked in = the smaller of f A / 12 x hours and what is there   (cu ft; f in in/h, floor A in sq ft)",
    "overflow = what is then left over the ponding and the soil mix's voids; the rest is stored   (cu ft)",
    "stored before + inflow = soaked in + overflow + stored after   (cu ft, every step)",
  ],
  working(inputs) {
    const totals = routedTotals(routed(inputs));
    return [
      ...storeSteps({ ...gardenOf(inputs), floorSquareFeet: inputs.floorArea }),
      { label: "Inflow of the storm", value: totals.inflowCubicFeet, kind: "waterVolume" },
      { label: "Soaked in", value: totals.soakedCubicFeet, kind: "waterVolume" },
      { label: "Overflow", value: totals.overflowCubicFeet, kind: "waterVolume" },
      { label: "Still stored", value: totals.storedCubicFeet, kind: "waterVolume" },
    ];
  },
  calculate(inputs) {
    const steps = stepRainsOf(inputs.stormRains, inputs.typeOrMinutes);
    if (isCellError(steps)) return steps;
    return routeStorm(steps, { ...gardenOf(inputs), floorSquareFeet: inputs.floorArea }).map(
      (step) =>
        [step.hours, step.inflowCubicFeet, step.storedCubicFeet, step.pondingInches, step.soakedCubicFeet, step.overflowCubicFeet] as const,
    );
  },
});

function routed(inputs: RouteInputs): readonly RoutedStep[] {
  const steps = stepRainsOf(inputs.stormRains, inputs.typeOrMinutes);
  return isCellError(steps) ? [] : routeStorm(steps, { ...gardenOf(inputs), floorSquareFeet: inputs.floorArea });
}

/** One depth with the type of its storm, or depths with the minutes of their steps. */
function stepRainsOf(stormRains: readonly (number | null)[], typeOrMinutes: string): StepRains | CellError {
  const inches = rainSeries(stormRains);
  if (isCellError(inches)) return inches;
  const type = keyAmong(STORM_TYPES, typeOrMinutes);
  if (type !== undefined) {
    const [stormInches = 0, ...more] = inches;
    return more.length === 0
      ? typedStormRains(stormInches, type)
      : invalid("A storm type takes a single storm depth: for rain in each step, give the minutes in a step.");
  }
  const stepMinutes = numberFrom(typeOrMinutes);
  return stepMinutes !== undefined && stepMinutes >= LEAST_STEP_MINUTES && stepMinutes <= LARGEST_STEP_MINUTES
    ? { stepMinutes, inches }
    : invalid(`Storm type must be ${orList(STORM_TYPES)}, or the minutes in a step, 1 to 1,440; it is ${quoted(typeOrMinutes)}.`);
}
