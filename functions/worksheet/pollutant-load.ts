import { medianConcentrations, newYorkStormwaterManual, POLLUTANTS } from "../published/new-york-stormwater-manual.ts";
import { minnesotaStormwaterManual } from "../published/minnesota-stormwater-manual.ts";
import { newHampshireEnvWq1504 } from "../published/documents.ts";
import { computedByHand } from "../published/source.ts";
import {
  LARGEST_SIMPLE_METHOD_SQUARE_FEET,
  runoffCoefficient,
  USUAL_RUNOFF_STORM_SHARE,
  yearlyLoadPounds,
  yearlyRunoffCubicFeet,
} from "../runoff/pollutant-load.ts";
import { area, depth, load, percent, share, text, units } from "./calling/arguments.ts";
import { invalid, isCellError, type CellError } from "./calling/cell.ts";
import { keyAmong } from "./calling/typed-words.ts";
import { YEARLY_INCHES } from "../rainfall/likely-rain.ts";
import { orList, quoted } from "./calling/sentences.ts";
import { stepsOf } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

import { numberFrom } from "./calling/reading.ts";

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
  working: ({ area: squareFeet, yearlyRain, imperviousPercent, pollutant, runoffStormShare }) =>
    stepsOf(concentrationOf(pollutant), (milligramsPerLitre) => [
      { label: "Runoff coefficient Rv", value: runoffCoefficient(imperviousPercent) },
      {
        label: "Runoff in a year",
        value: yearlyRunoffCubicFeet(squareFeet, yearlyRain, imperviousPercent, runoffStormShare),
        kind: "waterVolume",
      },
      { label: "Concentration C", value: milligramsPerLitre, unit: "mg/L" },
    ]),
  calculate({ area: squareFeet, yearlyRain, imperviousPercent, pollutant, runoffStormShare }) {
    const milligramsPerLitre = concentrationOf(pollutant);
    if (isCellError(milligramsPerLitre)) return milligramsPerLitre;
    return yearlyLoadPounds(squareFeet, yearlyRain, imperviousPercent, milligramsPerLitre, runoffStormShare);
  },
});

function concentrationOf(pollutant: string): number | CellError {
  const named = keyAmong(POLLUTANTS, pollutant);
  if (named !== undefined) return medianConcentrations.values[named];
  const typed = numberFrom(pollutant);
  return typed !== undefined && typed >= 0
    ? typed
    : invalid(`Pollutant must be ${orList(POLLUTANTS)}, or a concentration in mg/L of 0 or more; it is ${quoted(pollutant)}.`);
}
