import { DEEPEST_USUAL_PONDING_INCHES, USUAL_DRAIN_HOURS } from "../basin/deepest-ponding.ts";
import { depthFit, factorAreaSquareFeet, sizeFactor, type DepthFit } from "../basin/factor-area.ts";
import { filterAreaSquareFeet, hydraulicGradient } from "../basin/filter-area.ts";
import { areaFromWidths, simpsonWidths } from "../basin/widths-area.ts";
import { largestOf, smallestOf } from "../extremes.ts";
import { georgiaStormwaterManual, mediaFeetPerDay } from "../published/georgia-stormwater-manual.ts";
import { besavillaSurveying, simpsonsRulePage, surveyingExamination } from "../published/documents.ts";
import { FACTOR_SOILS, farFactors, nearFactors, type FactorSoil } from "../published/wisconsin-size-factors.ts";
import { INCHES_PER_FOOT } from "../quantities.ts";
import { area, choice, depth, flag, hours, length, rangeOf, rate, units, waterVolume } from "./calling/arguments.ts";
import { largeFloor, shortDrainTime, standsLong } from "./basin-cautions.ts";
import { invalid, isCellError, missing, type CellError } from "./calling/cell.ts";
import { stepsOf } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

interface FactorInputs {
  readonly contributingArea: number;
  readonly soil: FactorSoil;
  readonly ponding: number;
  readonly isFar: boolean;
}

const fits =
  (fit: DepthFit) =>
  ({ ponding, isFar }: FactorInputs): boolean =>
    !isFar && depthFit(ponding) === fit;

export const factorArea = worksheetFunction({
  name: "FACTORAREA",
  summary: "Garden area by the size factors of an older homeowner manual (2003): soil, ponding depth and distance.",
  arguments: [
    area("contributingArea", "Contributing area"),
    choice("soil", "Soil", FACTOR_SOILS),
    depth("ponding", "Ponding depth").moreThan(0),
    flag("isFar", "Over 30 ft from the downspout").optional(false),
    units,
  ],
  result: area("Garden area"),
  sources: [nearFactors.from, farFactors.from],
  cautions: [
    {
      when: ({ soil, ponding, isFar }) => sizeFactor(soil, ponding, isFar).evidence === "from memory",
      about: "The factor for this soil and depth is from memory: check it in the manual before use.",
      says: ({ soil, ponding, isFar }) =>
        `The factor ${sizeFactor(soil, ponding, isFar).factor} is from memory: check it in the manual before use.`,
    },
    {
      when: fits("between bands"),
      says: "The depth lies between two published bands (3 to 5, 6 to 7, 8 in): the larger of the two areas is given.",
    },
    { when: fits("shallower"), says: "The depth is under the published bands: so shallow a garden needs more area than this." },
    { when: fits("deeper"), says: "The depth is over the published bands: the area for the deepest band is given." },
    {
      when: ({ isFar }) => isFar,
      says: "Over 30 ft away the factors count the lawn uphill: the contributing area is the roof and that lawn.",
    },
    largeFloor<FactorInputs>(({ contributingArea, soil, ponding, isFar }) =>
      factorAreaSquareFeet(contributingArea, sizeFactor(soil, ponding, isFar)),
    ),
  ],
  example: { arguments: [750, "silty", 6], result: 187.5, from: nearFactors.from },
  equation: ["A = F x contributing area   (sq ft; F by soil and ponding depth within 30 ft of the downspout, by soil alone beyond)"],
  working: ({ soil, ponding, isFar }) => [{ label: "Size factor F", value: sizeFactor(soil, ponding, isFar).factor }],
  calculate: ({ contributingArea: contributing, soil, ponding, isFar }) =>
    factorAreaSquareFeet(contributing, sizeFactor(soil, ponding, isFar)),
});

const printedMediaRates = Object.values(mediaFeetPerDay.values).map((feetPerDay) => (feetPerDay * INCHES_PER_FOOT) / 24);
const slowestMedia = smallestOf(printedMediaRates);
const fastestMedia = largestOf(printedMediaRates);

export const filterArea = worksheetFunction({
  name: "FILTERAREA",
  summary: "Area of a filter bed that passes a volume of water through its soil mix in time (Darcy).",
  arguments: [
    waterVolume("waterVolume", "Water volume"),
    depth("media", "Soil mix depth").moreThan(0),
    rate("mediaRate", "Soil mix rate").moreThan(0),
    depth("averagePonding", "Average ponding"),
    hours("drainHours", "Drain hours").moreThan(0),
    units,
  ],
  result: area("Filter bed area"),
  sources: [georgiaStormwaterManual.place("filter bed area, after Claytor and Schueler 1996"), mediaFeetPerDay.from],
  cautions: [
    {
      when: ({ averagePonding }) => 2 * averagePonding > DEEPEST_USUAL_PONDING_INCHES,
      about: "Average ponding is half of the deepest: this one means deeper ponding than usual.",
      says: ({ averagePonding }, speaker) =>
        `Average ponding is half of the deepest: this one means ${speaker.depth(2 * averagePonding)} at the deepest.`,
    },
    {
      when: ({ mediaRate }) => mediaRate < slowestMedia || mediaRate > fastestMedia,
      says: (_, speaker) =>
        `Published rates run from ${speaker.rate(slowestMedia)} (bioretention soil) to ${speaker.rate(fastestMedia)} (leaf compost): give the rate of the soil mix, not of the native soil.`,
    },
    { when: () => true, says: "The method holds where the soil mix is what slows the water and an outlet below lets it go." },
    standsLong<{ readonly drainHours: number }>(({ drainHours }) => drainHours),
    shortDrainTime,
  ],
  example: {
    arguments: [8102, 60, 0.25, 3, USUAL_DRAIN_HOURS],
    result: 7716,
    within: 0.5,
    from: georgiaStormwaterManual.place("appendix D, bioretention example"),
  },
  equation: [
    "A = V df / (k (hf + df) tf)   (sq ft; V in cu ft, df soil mix depth and hf average ponding in ft, k soil mix rate in ft/h, tf in h)",
  ],
  working: ({ media, averagePonding }) => [{ label: "Hydraulic gradient (hf + df) / df", value: hydraulicGradient(averagePonding, media) }],
  calculate: ({ waterVolume: water, media, mediaRate, averagePonding, drainHours }) =>
    filterAreaSquareFeet(water, media, mediaRate, averagePonding, drainHours),
});

export const widthsArea = worksheetFunction({
  name: "WIDTHSAREA",
  summary: "Area of any outline from widths at equal steps, by Simpson's rule; of an even number of widths the last strip is a trapezoid.",
  arguments: [rangeOf(length("widths", "Width")).keepingBlanks(), length("step", "Step").moreThan(0), units],
  result: area("Area"),
  sources: [
    simpsonsRulePage.place("Simpson's rule, with an example"),
    surveyingExamination.place("key of Simpson's rule over eight offsets"),
    besavillaSurveying.place("first seven offsets of an example by Simpson's rule"),
  ],
  cautions: [
    {
      when: ({ widths }) => countOf(widths) % 2 === 1,
      says: "Computed by Simpson's rule, for an edge that curves smoothly. The first and the last width count: give 0 where the outline ends in a point.",
    },
    {
      when: ({ widths }) => countOf(widths) > 2 && countOf(widths) % 2 === 0,
      says: "Computed by Simpson's rule, and the last strip as a trapezoid, because the number of widths is even: let the straighter end be the last, or measure one width more.",
    },
    {
      when: ({ widths }) => countOf(widths) === 2,
      says: "Computed as one trapezoid between two widths: measure more of them where the edge curves.",
    },
  ],
  example: {
    arguments: [[[0], [2.65], [3.8], [3.75], [4.65], [3.6], [5], [5.8]], 30],
    result: 781,
    within: 0.5,
    from: surveyingExamination.place("key of Simpson's rule over eight offsets"),
  },
  equation: [
    "A = s / 3 (w1 + 4 w2 + 2 w3 + ... + 4 w(n-1) + wn) for an odd number of widths   (sq ft; s and w in ft)",
    "of an even number: the same without the last width, and s (w(n-1) + wn) / 2 for the last strip   (sq ft)",
  ],
  working: ({ widths: typed, step }) =>
    stepsOf(widthsFrom(typed), (widths) => [
      { label: "Widths used n", value: widths.length, kind: "count" },
      { label: "Widths by Simpson's rule", value: simpsonWidths(widths).length, kind: "count" },
      { label: "Area by Simpson's rule", value: areaFromWidths(simpsonWidths(widths), step), kind: "area" },
    ]),
  calculate({ widths: typed, step }) {
    const widths = widthsFrom(typed);
    return isCellError(widths) ? widths : areaFromWidths(widths, step);
  },
});

/** The widths in order, or the sentence that says which one is missing. Cells after the last width are not there yet. */
function widthsFrom(typed: readonly (number | null)[]): readonly number[] | CellError {
  const widths: number[] = [];
  for (const [place, width] of typed.slice(0, typed.findLastIndex((cell) => cell !== null) + 1).entries()) {
    if (width === null) return missing(`Width ${place + 1} is missing: write 0 where the outline closes.`);
    widths.push(width);
  }
  return widths.length < 2 ? invalid("An outline needs at least two widths.") : widths;
}

/** How many widths are used; 0 where the cell says what is wrong. */
function countOf(typed: readonly (number | null)[]): number {
  const widths = widthsFrom(typed);
  return isCellError(widths) ? 0 : widths.length;
}
