import { largestOf, smallestOf } from "../extremes.ts";
import {
  designRateInchesPerHour,
  RATES_TAKEN,
  takenInchesPerHour,
  USUAL_REDUCTION_FACTOR,
  WIDE_SPREAD_RATIO,
} from "../infiltration/design-rate.ts";
import {
  dropRateInchesPerHour,
  holeIntervals,
  joined,
  readingsWithWater,
  steadyDropRun,
  steadyRunStart,
  type HoleInterval,
  type HoleReading,
} from "../infiltration/drop-rate.ts";
import {
  holeRateInchesPerHour,
  LEAST_LIKELY_DIAMETER_INCHES,
  MOST_LIKELY_DIAMETER_INCHES,
  radiusInches,
  steadyRateRun,
  wallCorrectedInchesPerHour,
} from "../infiltration/hole-rate.ts";
import { holeTestIntervals } from "../infiltration/hole-test.ts";
import { ilri16, riversideLidHandbook } from "../published/documents.ts";
import { minnesotaStormwaterManual } from "../published/minnesota-stormwater-manual.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { sustainableTechnologiesWiki } from "../published/sustainable-technologies-wiki.ts";
import { choice, depth, minutes, number, rangeOf, rate, type ResultValue, share, text, units } from "./calling/arguments.ts";
import { fasterThanSoil, NOTHING_TAKEN_OFF } from "./basin-cautions.ts";
import { isCellError } from "./calling/cell.ts";
import { readingsFrom, usableReadings, type TypedReadings } from "./hole-readings.ts";
import { tableOf } from "./calling/results.ts";
import type { WorkingStep } from "./calling/working.ts";
import { worksheetFunction, type Caution } from "./calling/worksheet-function.ts";

const readingArguments = [
  rangeOf(minutes("minutes", "Time in minutes")).keepingBlanks(),
  rangeOf(depth("waterDepths", "Water depth")).keepingBlanks(),
] as const;

const diameter = depth("diameter", "Hole diameter").moreThan(0);

const steadiness = sustainableTechnologiesWiki.place('page "Percolation test", two readings within 10 percent');
const porchet = ilri16.chapter("12, inverted auger hole");
const riversideExample = riversideLidHandbook.place("appendix A, example");

const ranDry: Caution<TypedReadings> = {
  when: (typed) => usableReadings(typed).at(-1)?.waterDepthInches === 0,
  says: "The hole ran dry: readings after that are not used, and the rate may be higher than shown. Fill deeper or read more often.",
};

const isWhileOneInterval: Caution<TypedReadings> = {
  when: (typed) => usableReadings(typed).length === 2,
  says: "One interval cannot show that the rate is steady: keep reading until two in a row agree within 10 percent.",
};

function notSteady<Inputs extends TypedReadings>(
  rates: (readings: readonly HoleReading[], inputs: Inputs) => readonly number[],
): Caution<Inputs> {
  return {
    when(inputs) {
      const readings = usableReadings(inputs);
      if (readings.length < 3) return false;
      const ofIntervals = rates(readings, inputs);
      return steadyRunStart(ofIntervals) === ofIntervals.length - 1;
    },
    says: "Not steady yet: the last two rates differ by more than 10 percent. Keep reading; the rate shown is of the last interval.",
  };
}

const likelyRadius: Caution<{ readonly diameter: number }> = {
  when: ({ diameter: across }) => across < LEAST_LIKELY_DIAMETER_INCHES,
  says: (_, speaker) => `A hole under ${speaker.depth(LEAST_LIKELY_DIAMETER_INCHES)} across is unusual: give its diameter, not its radius.`,
};

const likelyDiameter: Caution<{ readonly diameter: number }> = {
  when: ({ diameter: across }) => across > MOST_LIKELY_DIAMETER_INCHES,
  says: (_, speaker) =>
    `A hole over ${speaker.depth(MOST_LIKELY_DIAMETER_INCHES)} across is unusual: the diameter is in ${speaker.system === "us" ? "inches" : "mm"}.`,
};

type HoleInputs = TypedReadings & { readonly diameter: number };

const holeCautions = [
  ranDry,
  isWhileOneInterval,
  notSteady<HoleInputs>((readings, { diameter: across }) =>
    holeTestIntervals(readings, across).map(({ rateInchesPerHour }) => rateInchesPerHour),
  ),
  likelyRadius,
  likelyDiameter,
  fasterThanSoil<HoleInputs>((inputs) => {
    const readings = usableReadings(inputs);
    return readings.length < 2 ? 0 : holeRateInchesPerHour(readings, inputs.diameter);
  }),
];

/** A share for every interval but the first, which has none before it to differ from. */
const change: ResultValue<number | string> = share("Change in corrected rate");

export const holeTest = worksheetFunction({
  name: "HOLETEST",
  summary: "A hole test interval by interval: the drop, the rate corrected for the wall, and whether it is steady.",
  arguments: [...readingArguments, diameter, units],
  result: tableOf([minutes("Minutes"), rate("Drop rate"), rate("Wall-corrected rate"), change, text("Steady")]),
  sources: [porchet, steadiness],
  cautions: holeCautions,
  example: {
    arguments: [[[0], [10]], [[47.75], [46.25]], 8],
    result: [[10, 9, 0.37, "first interval", "not steady"]],
    within: 0.005,
    from: riversideExample,
  },
  equation: [
    "drop rate = (H1 - H2) / dt   (in/h; H water depth before and after in in, dt in h)",
    "f = r / (2 dt) x ln[(2 H1 + r) / (2 H2 + r)]   (in/h; r = diameter / 2 in in)",
    "change = (f - f before) / larger of the two   (share; steady at 0.10 or less)",
  ],
  working: ({ minutes: times, waterDepths, diameter: across }) => {
    const readings = usableReadings({ minutes: times, waterDepths });
    return [
      { label: "Hole radius r", value: radiusInches(across), kind: "depth" },
      { label: "Readings with water", value: readings.length, kind: "count" },
      { label: "Intervals in the last steady run", value: steadyRateRun(readings, across).length, kind: "count" },
    ];
  },
  calculate({ minutes: times, waterDepths, diameter: across }) {
    const readings = readingsFrom({ minutes: times, waterDepths });
    if (isCellError(readings)) return readings;
    return holeTestIntervals(readings, across).map(
      (interval) =>
        [
          interval.minutes,
          interval.dropInchesPerHour,
          interval.rateInchesPerHour,
          interval.change ?? "first interval",
          interval.verdict,
        ] as const,
    );
  },
});

export const dropRate = worksheetFunction({
  name: "DROPRATE",
  summary: "How fast the water level falls in a test hole, over the last steady readings.",
  arguments: [...readingArguments, units],
  result: rate("Drop rate"),
  sources: [steadiness],
  cautions: [
    ranDry,
    isWhileOneInterval,
    notSteady((readings) => holeIntervals(readings).map(({ dropInchesPerHour }) => dropInchesPerHour)),
  ],
  example: {
    arguments: [
      [[0], [10]],
      [[47.75], [46.25]],
    ],
    result: 9,
    within: 0.05,
    from: computedByHand("1.5 in in 10 min"),
  },
  equation: [
    "drop rate of an interval = (H1 - H2) / dt   (in/h; H water depth before and after in in, dt in h)",
    "drop rate = the same from the first to the last reading of the last steady run   (in/h)",
  ],
  working({ minutes: times, waterDepths }) {
    const readings = usableReadings({ minutes: times, waterDepths });
    return [...holeIntervals(readings).map(dropOf), ...readingsUsed(steadyDropRun(readings))];
  },
  calculate({ minutes: times, waterDepths }) {
    const readings = readingsFrom({ minutes: times, waterDepths });
    return isCellError(readings) ? readings : dropRateInchesPerHour(readingsWithWater(readings));
  },
});

export const holeRate = worksheetFunction({
  name: "HOLERATE",
  summary: "Infiltration rate of a test hole: the steady drop corrected for water lost through the wall (Porchet).",
  arguments: [...readingArguments, diameter, units],
  result: rate("Infiltration rate"),
  sources: [porchet, riversideExample, steadiness],
  cautions: holeCautions,
  example: { arguments: [[[0], [10]], [[47.75], [46.25]], 8], result: 0.37, within: 0.005, from: riversideExample },
  equation: [
    "f = r / (2 dt) x ln[(2 H1 + r) / (2 H2 + r)]   (in/h; H water depth before and after and r = diameter / 2 in in, dt in h)",
    "f is taken from the first to the last reading of the last steady run",
  ],
  working({ minutes: times, waterDepths, diameter: across }) {
    const readings = usableReadings({ minutes: times, waterDepths });
    return [
      { label: "Hole radius r", value: radiusInches(across), kind: "depth" },
      ...holeIntervals(readings).flatMap((interval, place): readonly WorkingStep[] => [
        dropOf(interval, place),
        {
          label: `Interval ${place + 1}, wall-corrected rate`,
          value: wallCorrectedInchesPerHour(interval.from, interval.to, across),
          kind: "rate",
        },
      ]),
      ...readingsUsed(steadyRateRun(readings, across)),
    ];
  },
  calculate({ minutes: times, waterDepths, diameter: across }) {
    const readings = readingsFrom({ minutes: times, waterDepths });
    return isCellError(readings) ? readings : holeRateInchesPerHour(readingsWithWater(readings), across);
  },
});

function dropOf({ dropInchesPerHour }: HoleInterval, place: number): WorkingStep {
  return { label: `Interval ${place + 1}, drop rate`, value: dropInchesPerHour, kind: "rate" };
}

/** What the rate is taken from: the last steady run as one interval. */
function readingsUsed(run: readonly HoleInterval[]): readonly WorkingStep[] {
  const { from, to } = joined(run);
  return [
    { label: "Intervals in the last steady run", value: run.length, kind: "count" },
    { label: "Steady run starts at", value: from.minutes, kind: "minutes" },
    { label: "Steady run ends at", value: to.minutes, kind: "minutes" },
    { label: "Water depth at its start H1", value: from.waterDepthInches, kind: "depth" },
    { label: "Water depth at its end H2", value: to.waterDepthInches, kind: "depth" },
  ];
}

const halved = minnesotaStormwaterManual.place('page "Determining soil infiltration rates"');

export const designRate = worksheetFunction({
  name: "DESIGNRATE",
  summary: "The infiltration rate to design with, from the rates tested in one yard and reduced once.",
  arguments: [
    rangeOf(rate("testedRates", "Tested rate")),
    number("reductionFactor", "Reduction factor").atLeast(1).optional(USUAL_REDUCTION_FACTOR),
    choice("take", "Take", RATES_TAKEN).optional("geometric mean"),
    units,
  ],
  result: rate("Design rate"),
  sources: [
    halved,
    sustainableTechnologiesWiki.place('page "Design infiltration rate", reduction of 2 to 3'),
    commonPractice("The geometric mean of several tests"),
  ],
  cautions: [
    { when: ({ reductionFactor }) => reductionFactor === 1, says: NOTHING_TAKEN_OFF },
    fasterThanSoil<{ readonly testedRates: readonly number[] }>(({ testedRates }) => largestOf(testedRates)),
    {
      when({ testedRates }) {
        const lowest = smallestOf(testedRates);
        return lowest > 0 && largestOf(testedRates) > WIDE_SPREAD_RATIO * lowest;
      },
      says: `The highest tested rate is more than ${WIDE_SPREAD_RATIO} times the lowest: the yard may hold two soils. Test again between the holes, or take the lowest.`,
    },
    {
      when: ({ testedRates }) => testedRates.includes(0),
      says: "A hole took no water at all: check it before relying on the others.",
    },
  ],
  example: { arguments: [1], result: 0.5, from: halved },
  equation: [
    "design rate = rate taken / reduction factor   (in/h)",
    "geometric mean = (f1 x f2 x ... x fn)^(1/n); median and lowest likewise of the same rates   (in/h)",
  ],
  working: ({ testedRates, take }) => [
    { label: "Tests", value: testedRates.length, kind: "count" },
    { label: `Tested rate, ${take}`, value: takenInchesPerHour(testedRates, take), kind: "rate" },
  ],
  calculate: ({ testedRates, reductionFactor, take }) => designRateInchesPerHour(testedRates, reductionFactor, take),
});
