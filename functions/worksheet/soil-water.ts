import { greenAmptSoil, soakedIn, USUAL_FILLED_SHARE } from "../infiltration/green-ampt.ts";
import { appliedHydrology } from "../published/applied-hydrology.ts";
import { clayLoamPorosity, saturatedConductivities } from "../published/rawls-1982.ts";
import { greenAmptParameters } from "../published/rawls-1983.ts";
import { saxtonRawls2006, soilRegressions } from "../published/saxton-rawls-2006.ts";
import { benhamAhrensNettleton2009, idahoOnePlan, soilSurveyManual, TEXTURE_CLASSES } from "../published/soil-survey-manual.ts";
import { textureClass } from "../soil/soil-texture.ts";
import {
  DENSEST_DENSITY_FACTOR, LOOSEST_DENSITY_FACTOR, MOST_CLAY_PERCENT, MOST_ORGANIC_PERCENT, soilWaterCharacteristics, USUAL_ORGANIC_PERCENT,
} from "../soil/soil-water.ts";
import { isTabled, textureRateInchesPerHour } from "../soil/texture-rate.ts";
import { choice, depth, hours, number, percent, rate, share, text } from "./arguments.ts";
import { invalid, type CellError } from "./cell.ts";
import { rowOf } from "./results.ts";
import { worksheetFunction, type Caution } from "./worksheet-function.ts";

const sand = percent("sandPercent", "Sand percent");
const clay = percent("clayPercent", "Clay percent");
const texture = choice("texture", "USDA class", TEXTURE_CLASSES);

function addUpTooHigh(sandPercent: number, clayPercent: number): CellError {
  return invalid(`Sand percent and clay percent together must be 100 or less; they are ${Number((sandPercent + clayPercent).toPrecision(12))}.`);
}

/** A table is no test: said wherever a soil is looked up instead of measured. */
const notATest: Caution<unknown> = {
  when: () => true,
  says: "A mean of soil samples, not of this yard, where soil may be compacted or filled: test a hole before designing.",
};

export const soilTexture = worksheetFunction({
  name: "SOILTEXTURE",
  summary: "USDA texture class of a soil from its sand and clay.",
  arguments: [sand, clay],
  result: text("USDA class"),
  sources: [soilSurveyManual.chapter("3, texture classes"), benhamAhrensNettleton2009.place("points on a class boundary")],
  cautions: [{ when: () => true, says: "Sand, silt and clay of the fine earth alone: gravel and organic matter are left out before the percents are taken." }],
  example: { arguments: [30, 30], result: "clay loam", from: idahoOnePlan.place("point of 30 percent sand and 30 percent clay") },
  calculate: (sandPercent, clayPercent) => textureClass(sandPercent, clayPercent) ?? addUpTooHigh(sandPercent, clayPercent),
});

export const textureRate = worksheetFunction({
  name: "TEXTURERATE",
  summary: "Published saturated rate of a USDA texture class.",
  arguments: [texture],
  result: rate("Saturated rate"),
  sources: [saturatedConductivities.from],
  cautions: [
    notATest,
    { when: () => true, says: "A saturated rate, not yet reduced for design, and about twice what Green and Ampt's equation takes." },
  ],
  example: { arguments: ["sandy loam"], result: 1.02, within: 0.005, from: saturatedConductivities.from },
  calculate: (name) => textureRateInchesPerHour(name) ?? invalid("No rate is published for silt: the table has no such row."),
});

export const soilWater = worksheetFunction({
  name: "SOILWATER",
  summary: "What a soil holds and lets through, from its texture, organic matter and compaction.",
  arguments: [
    sand,
    clay,
    percent("organicPercent", "Organic percent").optional(USUAL_ORGANIC_PERCENT),
    number("compaction", "Compaction").moreThan(0).optional(1),
  ],
  result: rowOf([share("Wilting point"), share("Field capacity"), share("Saturation"), rate("Saturated rate")]),
  sources: [soilRegressions.from, saxtonRawls2006.table("1, effect of density", "from memory"), saxtonRawls2006.place("limits of the regressions", "from memory")],
  cautions: [
    notATest,
    {
      when: ({ organicPercent }) => organicPercent > MOST_ORGANIC_PERCENT,
      says: `The regressions were made for organic matter up to ${MOST_ORGANIC_PERCENT} percent.`,
    },
    { when: ({ clayPercent }) => clayPercent > MOST_CLAY_PERCENT, says: `The regressions were made for clay up to ${MOST_CLAY_PERCENT} percent.` },
    {
      when: ({ compaction }) => compaction < LOOSEST_DENSITY_FACTOR || compaction > DENSEST_DENSITY_FACTOR,
      says: `Compaction is published from ${LOOSEST_DENSITY_FACTOR} (loosened) to ${DENSEST_DENSITY_FACTOR} (hard).`,
    },
  ],
  example: { arguments: [40, 20], result: [[0.14, 0.28, 0.46, 0.61]], within: 0.005, from: saxtonRawls2006.table("3, loam") },
  calculate(sandPercent, clayPercent, organicPercent, compaction) {
    if (textureClass(sandPercent, clayPercent) === undefined) return addUpTooHigh(sandPercent, clayPercent);
    const water = soilWaterCharacteristics(sandPercent, clayPercent, organicPercent, compaction);
    if (water === undefined) {
      return invalid("Sand, clay and organic percent and compaction are outside what the regressions can describe: they give no possible soil.");
    }
    return [water.wiltingPoint, water.fieldCapacity, water.saturation, water.saturatedInchesPerHour] as const;
  },
});

export const soakIn = worksheetFunction({
  name: "SOAKIN",
  summary: "Depth of water that soaks into a soil in a time, under a pond or under steady rain (Green and Ampt).",
  arguments: [
    hours("hours", "Hours"),
    texture,
    share("filledShare", "Filled share of the pores").optional(USUAL_FILLED_SHARE),
    rate("rainRate", "Rain rate").leftOutMeans("water stands on the soil from the start"),
  ],
  result: depth("Depth soaked in"),
  sources: [greenAmptParameters.from, clayLoamPorosity.from, appliedHydrology.place("sections 4.3 and 4.4, Green and Ampt's method")],
  cautions: [
    notATest,
    {
      when: ({ texture: name }) => name === "clay loam",
      says: `The table of 1983 prints an effective porosity of 0.309 for clay loam, likely a misprint: ${clayLoamPorosity.values} of 1982 is used.`,
    },
  ],
  example: { arguments: [1, "silt loam"], result: 1.25, within: 0.005, from: appliedHydrology.example("4.3.1, 3.17 cm") },
  calculate(time, name, filledShare, rainRate) {
    if (!isTabled(name)) return invalid("No Green and Ampt values are published for silt: the table has no such row.");
    return soakedIn(time, greenAmptSoil(name, filledShare), rainRate);
  },
});
