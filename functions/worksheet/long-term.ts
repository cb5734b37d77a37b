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
import { computedByHand } from "../published/source.ts";
import { area, hours, number, share, units, waterVolume } from "./calling/arguments.ts";
import { sideSlope } from "./basin-arguments.ts";
import { largeFloor } from "./basin-cautions.ts";
import { invalid, isCellError, missing, type CellError } from "./calling/cell.ts";
import { rainSeries } from "./rain-series.ts";
import { rowOf } from "./calling/results.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { worksheetFunction, type Caution } from "./calling/worksheet-function.ts";

import {
  contributingArea,
  runoffShare,
  floorArea,
  ponding,
  designRate,
  media,
  voidShare,
  rains,
  stepHours,
  evapotranspiration,
  gardenOf,
  waterBalance,
  mediaVoids,
  recordAdvice,
  basinCautions,
  storeSteps,
  type BasinInputs,
} from "./garden-inputs.ts";

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
    arguments: [[[4], [0], [0], [0]], 2191.5, 1000, 0.95, 100, 6, 0.01, 0, 0.25, 0],
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
  working(inputs) {
    const garden = { ...gardenOf(inputs), floorSquareFeet: inputs.floorArea };
    return stepsOf(recordOf(inputs.rains, inputs.stepHours), (record) => [
      ...storeSteps(garden),
      ...recordSteps(longTermBalance(record, garden)),
    ]);
  },
  calculate(inputs) {
    const record = recordOf(inputs.rains, inputs.stepHours);
    if (isCellError(record)) return record;
    const balance = longTermBalance(record, { ...gardenOf(inputs), floorSquareFeet: inputs.floorArea });
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
  working(inputs) {
    return stepsOf(recordOf(inputs.rains, inputs.stepHours), (record) =>
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
  calculate: floorFor,
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
