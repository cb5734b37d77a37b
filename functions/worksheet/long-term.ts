import { LONGEST_PUBLISHED_DRAIN_HOURS } from "../basin/deepest-ponding.ts";
import { USUAL_VOID_SHARE } from "../basin/drawdown.ts";
import {
  LARGEST_STEP_MINUTES,
  LEAST_STEP_MINUTES,
  routedTotals,
  routeStorm,
  typedStormRains,
  type RoutedStep,
  type StepRains,
} from "../basin/storm-route.ts";
import { basinStore, type Garden } from "../basin/water-balance.ts";
import { areaForCaptureSquareFeet, LARGEST_TIMES_CONTRIBUTING } from "../long-term/area-for-capture.ts";
import {
  accountedCubicFeet,
  capturedShare,
  LEAST_RECORD_YEARS,
  LONGEST_TELLING_STEP_HOURS,
  longTermBalance,
  reachedCubicFeet,
  yearsOf,
  type LongTermBalance,
} from "../long-term/long-term-balance.ts";
import { rainRecord, type RainRecord } from "../long-term/rain-record.ts";
import { medianConcentrations, newYorkStormwaterManual, POLLUTANTS } from "../published/new-york-stormwater-manual.ts";
import { minnesotaStormwaterManual } from "../published/minnesota-stormwater-manual.ts";
import { newHampshireEnvWq1504 } from "../published/documents.ts";
import { stormCurveSources, STORM_TYPES } from "../published/scs-24-hour-storms.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import {
  LARGEST_SIMPLE_METHOD_SQUARE_FEET,
  runoffCoefficient,
  USUAL_RUNOFF_STORM_SHARE,
  yearlyLoadPounds,
  yearlyRunoffCubicFeet,
} from "../runoff/pollutant-load.ts";
import { area, depth, hours, load, number, percent, rangeOf, rate, share, text, units, waterVolume } from "./calling/arguments.ts";
import { deepPonding, fasterThanSoil, largeFloor, largeVoids, steepSides } from "./basin-cautions.ts";
import { invalid, isCellError, missing, type CellError } from "./calling/cell.ts";
import { plainKey } from "./calling/nearest-keys.ts";
import { YEARLY_INCHES } from "../rainfall/likely-rain.ts";
import { rainSeries } from "./rain-series.ts";
import { rowOf, tableOf } from "./calling/results.ts";
import { orList, quoted } from "./calling/sentences.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { worksheetFunction, type Caution } from "./calling/worksheet-function.ts";

export const pollutantLoad = worksheetFunction({
  name: "POLLUTANTLOAD",
  summary: "Pollutant that a year's storm runoff carries off an area, by the simple method.",
  arguments: [
    area("area", "Area"),
    depth("yearlyRain", "Yearly rain"),
    percent("imperviousPercent", "Impervious percent"),
    text("pollutant", "Pollutant, or concentration in mg/L"),
    share("runoffStormShare", "Share of storms that run off").optional(USUAL_RUNOFF_STORM_SHARE),
    units,
  ],
  result: load("Load in a year"),
  sources: [
    newYorkStormwaterManual.place("appendix A, simple method"),
    medianConcentrations.from,
    newHampshireEnvWq1504.equation("for the runoff coefficient"),
    minnesotaStormwaterManual.place('page "Simple Method", limits'),
  ],
  cautions: [
    {
      when: () => true,
      says: "A long-run mean of storm runoff alone: concentrations scatter widely from place to place and storm to storm.",
    },
    {
      when: ({ yearlyRain }) => yearlyRain > 0 && (yearlyRain < YEARLY_INCHES.least || yearlyRain > YEARLY_INCHES.most),
      says: (_, speaker) =>
        `Towns get ${speaker.depth(YEARLY_INCHES.least)} to ${speaker.depth(YEARLY_INCHES.most)} of rain in a year: look at the unit.`,
    },
    {
      when: ({ area: squareFeet }) => squareFeet > LARGEST_SIMPLE_METHOD_SQUARE_FEET,
      says: "The simple method is for areas under about a square mile (2.6 square kilometers).",
    },
  ],
  example: {
    arguments: [435_600, 40, 30, "TP"],
    result: 6.79,
    within: 0.005,
    from: computedByHand("0.2266 lb x 11.52 in x 0.26 mg/L x 10 acres; 6.77 with the printed factor 0.226"),
  },
  equation: [
    "Rv = 0.05 + 0.009 I   (share; I percent impervious)",
    "R = P Pj Rv   (in; P yearly rain in in, Pj share of storms that run off)",
    "L = R / 12 x A x C, mg in 1 L to lb: 0.2266 lb for each in, acre and mg/L   (lb; A in sq ft, C in mg/L)",
  ],
  working: (squareFeet, yearlyRain, imperviousPercent, pollutant, runoffStormShare) =>
    stepsOf(concentrationOf(pollutant), (milligramsPerLitre) => [
      { label: "Runoff coefficient Rv", value: runoffCoefficient(imperviousPercent) },
      {
        label: "Runoff in a year",
        value: yearlyRunoffCubicFeet(squareFeet, yearlyRain, imperviousPercent, runoffStormShare),
        kind: "waterVolume",
      },
      { label: "Concentration C", value: milligramsPerLitre, unit: "mg/L" },
    ]),
  calculate(squareFeet, yearlyRain, imperviousPercent, pollutant, runoffStormShare) {
    const milligramsPerLitre = concentrationOf(pollutant);
    if (isCellError(milligramsPerLitre)) return milligramsPerLitre;
    return yearlyLoadPounds(squareFeet, yearlyRain, imperviousPercent, milligramsPerLitre, runoffStormShare);
  },
});

function concentrationOf(pollutant: string): number | CellError {
  const named = POLLUTANTS.find((name) => plainKey(name) === plainKey(pollutant));
  if (named !== undefined) return medianConcentrations.values[named];
  const typed = numberFrom(pollutant);
  return typed !== undefined && typed >= 0
    ? typed
    : invalid(`Pollutant must be ${orList(POLLUTANTS)}, or a concentration in mg/L of 0 or more; it is ${quoted(pollutant)}.`);
}

/** A number that stands where a word might as well. */
function numberFrom(typed: string): number | undefined {
  const value = typed.trim() === "" ? NaN : Number(typed);
  return Number.isFinite(value) ? value : undefined;
}

const contributingArea = area("contributingArea", "Contributing area");
const runoffShare = share("runoffShare", "Runoff share");
const floorArea = area("floorArea", "Floor area").moreThan(0);
const ponding = depth("ponding", "Ponding depth");
const designRate = rate("designRate", "Design rate");
const media = depth("media", "Soil mix depth").optional(0);
const voidShare = share("voidShare", "Void share").optional(USUAL_VOID_SHARE);
const sideSlope = number("sideSlope", "Side slope").atLeast(0).optional(0);
const rains = rangeOf(depth("rains", "Rain")).keepingBlanks();
const stepHours = hours("stepHours", "Hours in a step").moreThan(0);
const evapotranspiration = depth("evapotranspiration", "Evapotranspiration a day").optional(0);

interface BasinInputs {
  readonly contributingArea: number;
  readonly runoffShare: number;
  readonly ponding: number;
  readonly designRate: number;
  readonly media: number;
  readonly voidShare: number;
  readonly sideSlope: number;
  readonly evapotranspiration?: number;
}

function gardenOf<Inputs extends BasinInputs>(inputs: Inputs): Omit<Garden, "floorSquareFeet"> {
  return {
    contributingSquareFeet: inputs.contributingArea,
    runoffShare: inputs.runoffShare,
    pondingInches: inputs.ponding,
    designInchesPerHour: inputs.designRate,
    mediaInches: inputs.media,
    voidShare: inputs.voidShare,
    sideSlope: inputs.sideSlope,
    evapotranspirationInchesPerDay: inputs.evapotranspiration ?? 0,
  };
}

const waterBalance = computedByHand(
  "Conservation of water, step by step: inflow = soaking + evapotranspiration + overflow + what is stored",
);
const mediaVoids = commonPractice("Water can fill and leave 0.20 to 0.25 of a bioretention soil");
const recordAdvice = commonPractice("A record of 20 to 30 years is advised, in steps of an hour or less");
const basinCautions = [
  ...deepPonding<BasinInputs>((inputs) => inputs.ponding),
  steepSides,
  largeVoids,
  fasterThanSoil<BasinInputs>((inputs) => inputs.designRate),
];

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
    arguments: [[[1]], 360, 1000, 0.95, 100, 6, 0.5, 24],
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
  working(stormRains, typeOrMinutes, contributing, runoff, floor, pond, soaking, soil, voids, slope) {
    const inputs = {
      stormRains,
      typeOrMinutes,
      contributingArea: contributing,
      runoffShare: runoff,
      floorArea: floor,
      ponding: pond,
      designRate: soaking,
      media: soil,
      voidShare: voids,
      sideSlope: slope,
    };
    const totals = routedTotals(routed(inputs));
    return [
      ...storeSteps({ ...gardenOf(inputs), floorSquareFeet: floor }),
      { label: "Inflow of the storm", value: totals.inflowCubicFeet, kind: "waterVolume" },
      { label: "Soaked in", value: totals.soakedCubicFeet, kind: "waterVolume" },
      { label: "Overflow", value: totals.overflowCubicFeet, kind: "waterVolume" },
      { label: "Still stored", value: totals.storedCubicFeet, kind: "waterVolume" },
    ];
  },
  calculate(stormRains, typeOrMinutes, contributing, runoff, floor, pond, soaking, soil, voids, slope) {
    const steps = stepRainsOf(stormRains, typeOrMinutes);
    if (isCellError(steps)) return steps;
    const inputs = {
      contributingArea: contributing,
      runoffShare: runoff,
      ponding: pond,
      designRate: soaking,
      media: soil,
      voidShare: voids,
      sideSlope: slope,
    };
    return routeStorm(steps, { ...gardenOf(inputs), floorSquareFeet: floor }).map(
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
  const type = STORM_TYPES.find((name) => plainKey(name) === plainKey(typeOrMinutes));
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

interface RecordInputs {
  readonly rains: readonly (number | null)[];
  readonly stepHours: number;
}

/** All rows of a call share one range of rain, so its record is made once. */
function recordOf(typed: readonly (number | null)[], stepHours: number): RainRecord | CellError {
  const known = records.get(typed);
  if (known?.stepHours === stepHours) return known;
  const inches = rainSeries(typed);
  if (isCellError(inches)) return inches;
  const record = rainRecord(inches, stepHours);
  records.set(typed, record);
  return record;
}

const records = new WeakMap<readonly (number | null)[], RainRecord>();

const recordCautions: readonly Caution<RecordInputs>[] = [
  {
    when: (inputs) => inputs.stepHours > LONGEST_TELLING_STEP_HOURS,
    says: "Rain is spread evenly over each step, so steps longer than an hour hide bursts: more will overflow than this shows.",
  },
  {
    when: (inputs) => yearsOf(inputs.rains.length, inputs.stepHours) < LEAST_RECORD_YEARS,
    says: `The record covers fewer than ${LEAST_RECORD_YEARS} years: 20 to 30 are advised before a design rests on it.`,
  },
];

const NO_RAIN = missing("It did not rain in this record: there is nothing to capture.");

export const longTerm = worksheetFunction({
  name: "LONGTERM",
  summary: "What a basin does with years of rain: how much it captures, soaks in and spills, and how long it ponds.",
  arguments: [
    rains,
    stepHours,
    contributingArea,
    runoffShare,
    floorArea,
    ponding,
    designRate,
    media,
    voidShare,
    sideSlope,
    evapotranspiration,
    units,
  ],
  result: rowOf([
    waterVolume("Runoff in a year"),
    share("Captured share"),
    number("Overflows a year"),
    waterVolume("Overflow in a year"),
    hours("Longest ponding"),
    waterVolume("Soaked in a year"),
  ]),
  sources: [waterBalance, mediaVoids, recordAdvice],
  cautions: [...basinCautions, ...recordCautions],
  example: {
    arguments: [[[4], [0], [0], [0]], 2191.5, 1000, 0.95, 100, 6, 0.01],
    result: [[316.67, 0.6646, 1, 117.38, 2791.5, 232.63]],
    within: 0.01,
    from: computedByHand(
      "A year in four quarters: 350 cu ft arrive in the first, 182.6 soak in, 50 stay and the rest spills; then the pond takes 600 h to drain",
    ),
  },
  equation: [
    "each step as in STORMROUTE, with evapotranspiration from the floor while water is stored   (cu ft)",
    "captured share = 1 - overflow / (runoff + rain on the basin)",
    "runoff + rain on the basin = soaked in + evapotranspiration + overflow + still stored   (cu ft, whole record)",
  ],
  working(typed, step, contributing, runoff, floor, pond, soaking, soil, voids, slope, evaporating) {
    const garden = {
      ...gardenOf({
        contributingArea: contributing,
        runoffShare: runoff,
        ponding: pond,
        designRate: soaking,
        media: soil,
        voidShare: voids,
        sideSlope: slope,
        evapotranspiration: evaporating,
      }),
      floorSquareFeet: floor,
    };
    return stepsOf(recordOf(typed, step), (record) => [...storeSteps(garden), ...recordSteps(longTermBalance(record, garden))]);
  },
  calculate(typed, step, contributing, runoff, floor, pond, soaking, soil, voids, slope, evaporating) {
    const record = recordOf(typed, step);
    if (isCellError(record)) return record;
    const inputs = {
      contributingArea: contributing,
      runoffShare: runoff,
      ponding: pond,
      designRate: soaking,
      media: soil,
      voidShare: voids,
      sideSlope: slope,
      evapotranspiration: evaporating,
    };
    const balance = longTermBalance(record, { ...gardenOf(inputs), floorSquareFeet: floor });
    const { years } = balance;
    return [
      balance.runoffCubicFeet / years,
      capturedShare(balance) ?? NO_RAIN,
      balance.overflows / years,
      balance.overflowCubicFeet / years,
      balance.longestPondingHours,
      balance.soakedCubicFeet / years,
    ] as const;
  },
});

export const areaForCapture = worksheetFunction({
  name: "AREAFORCAPTURE",
  summary: "The smallest basin floor that captures a share of the water of years of rain.",
  arguments: [
    share("shareWanted", "Captured share wanted"),
    rains,
    stepHours,
    area("contributingArea", "Contributing area").moreThan(0),
    runoffShare,
    ponding,
    designRate,
    media,
    voidShare,
    sideSlope,
    evapotranspiration,
    units,
  ],
  result: area("Floor area"),
  sources: [waterBalance, mediaVoids, recordAdvice],
  cautions: [...basinCautions, ...recordCautions, largeFloor<CaptureInputs>(floorOrNone)],
  example: {
    arguments: [0.5, [[1.2], [0]], 24, 1000, 1, 0, 0.05],
    result: 1000,
    within: 1e-6,
    from: computedByHand(
      "A floor that soaks 1.2 in a day takes half of 1.2 in on it and on 1,000 sq ft of roof when it is as large as the roof",
    ),
  },
  equation: [
    "captured share = 1 - overflow / (runoff + rain on the basin), each step as in LONGTERM",
    "floor area = the smallest whose captured share is the share wanted, in a bracket that is narrowed to 1e-10 of it   (sq ft)",
  ],
  working(shareWanted, typed, step, contributing, runoff, pond, soaking, soil, voids, slope, evaporating) {
    const inputs = {
      shareWanted,
      rains: typed,
      stepHours: step,
      contributingArea: contributing,
      runoffShare: runoff,
      ponding: pond,
      designRate: soaking,
      media: soil,
      voidShare: voids,
      sideSlope: slope,
      evapotranspiration: evaporating,
    };
    return stepsOf(recordOf(typed, step), (record) =>
      stepsOf(floorFor(inputs), (floorSquareFeet) => {
        const balance = longTermBalance(record, { ...gardenOf(inputs), floorSquareFeet });
        return [
          ...recordSteps(balance),
          ...stepsOf(capturedShare(balance), (captured): readonly WorkingStep[] => [
            { label: "Captured share", value: captured, kind: "share" },
          ]),
        ];
      }),
    );
  },
  calculate(shareWanted, typed, step, contributing, runoff, pond, soaking, soil, voids, slope, evaporating) {
    return floorFor({
      shareWanted,
      rains: typed,
      stepHours: step,
      contributingArea: contributing,
      runoffShare: runoff,
      ponding: pond,
      designRate: soaking,
      media: soil,
      voidShare: voids,
      sideSlope: slope,
      evapotranspiration: evaporating,
    });
  },
});

interface CaptureInputs extends BasinInputs, RecordInputs {
  readonly shareWanted: number;
}

function floorOrNone(inputs: CaptureInputs): number {
  const floor = floorFor(inputs);
  return isCellError(floor) ? 0 : floor;
}

function floorFor(inputs: CaptureInputs): number | CellError {
  const record = recordOf(inputs.rains, inputs.stepHours);
  if (isCellError(record)) return record;
  if (record.totalRainInches === 0) return NO_RAIN;
  return (
    areaForCaptureSquareFeet(inputs.shareWanted, record, gardenOf(inputs)) ??
    invalid(
      `No floor up to ${LARGEST_TIMES_CONTRIBUTING} times the contributing area captures that share: pond deeper, add soil mix or find a faster soil.`,
    )
  );
}

/** The basin as its water sees it. */
function storeSteps(garden: Garden): readonly WorkingStep[] {
  const store = basinStore(garden);
  return [
    { label: "Rim area", value: store.rimSquareFeet, kind: "area" },
    { label: "Held in the soil mix's voids", value: store.mediaCubicFeet, kind: "waterVolume" },
    { label: "Held when full", value: store.capacityCubicFeet, kind: "waterVolume" },
    { label: "Drawn in an hour", value: store.drawCubicFeetPerHour, kind: "waterVolume" },
  ];
}

/** The water of a whole record, what came and where it went. */
function recordSteps(balance: LongTermBalance): readonly WorkingStep[] {
  return [
    { label: "Years of record", value: balance.years },
    { label: "Runoff of the record", value: balance.runoffCubicFeet, kind: "waterVolume" },
    { label: "Rain on the basin", value: balance.directCubicFeet, kind: "waterVolume" },
    { label: "Soaked in", value: balance.soakedCubicFeet, kind: "waterVolume" },
    { label: "Evapotranspiration", value: balance.evaporatedCubicFeet, kind: "waterVolume" },
    { label: "Overflow", value: balance.overflowCubicFeet, kind: "waterVolume" },
    { label: "Still stored", value: balance.storedCubicFeet, kind: "waterVolume" },
    { label: "All that came", value: reachedCubicFeet(balance), kind: "waterVolume" },
    { label: "All that left or is stored", value: accountedCubicFeet(balance), kind: "waterVolume" },
  ];
}
