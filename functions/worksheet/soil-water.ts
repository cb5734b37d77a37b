import { greenAmptSoil, moistureDeficit, pondingStart, soakedIn, suctionInches, USUAL_FILLED_SHARE } from "../infiltration/green-ampt.ts";
import { appliedHydrology } from "../published/documents.ts";
import { clayLoamPorosity, saturatedConductivities } from "../published/rawls-1982.ts";
import { greenAmptParameters } from "../published/rawls-1983.ts";
import { saxtonRawls2006, soilRegressions } from "../published/saxton-rawls-2006.ts";
import {
  benhamAhrensNettleton2009,
  idahoOnePlan,
  soilSurveyManual,
  TEXTURE_CLASSES,
  type TabledTexture,
  type TextureClass,
} from "../published/soil-survey-manual.ts";
import { siltPercent, textureClass } from "../soil/soil-texture.ts";
import {
  DENSEST_DENSITY_FACTOR,
  LOOSEST_DENSITY_FACTOR,
  MOST_CLAY_PERCENT,
  MOST_ORGANIC_PERCENT,
  retentionSlope,
  soilWaterCharacteristics,
  uncompactedWater,
  USUAL_ORGANIC_PERCENT,
} from "../soil/soil-water.ts";
import { isTabled, textureRateInchesPerHour } from "../soil/texture-rate.ts";
import { choice, depth, hours, number, percent, rate, share, text, units } from "./calling/arguments.ts";
import { invalid, isCellError, type CellError } from "./calling/cell.ts";
import { rowOf } from "./calling/results.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { unlikelyIntensity } from "./storm-cautions.ts";
import { worksheetFunction, type Caution } from "./calling/worksheet-function.ts";

const sand = percent("sandPercent", "Sand percent");
const clay = percent("clayPercent", "Clay percent");
const texture = choice("texture", "USDA class", TEXTURE_CLASSES);

function addUpTooHigh(sandPercent: number, clayPercent: number): CellError {
  return invalid(
    `Sand percent and clay percent together must be 100 or less; they are ${Number((sandPercent + clayPercent).toPrecision(12))}.`,
  );
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
  cautions: [
    {
      when: () => true,
      says: "Sand, silt and clay of the fine earth alone: gravel and organic matter are left out before the percents are taken.",
    },
  ],
  example: { arguments: [30, 30], result: "clay loam", from: idahoOnePlan.place("point of 30 percent sand and 30 percent clay") },
  equation: ["silt = 100 - sand - clay   (percent by mass)", "class = the one of the USDA triangle in which sand, silt and clay fall"],
  working: ({ sandPercent, clayPercent }) => [{ label: "Silt", value: siltPercent(sandPercent, clayPercent), kind: "percent" }],
  calculate: ({ sandPercent, clayPercent }) => textureClass(sandPercent, clayPercent) ?? addUpTooHigh(sandPercent, clayPercent),
});

export const textureRate = worksheetFunction({
  name: "TEXTURERATE",
  summary: "Published saturated rate of a USDA texture class.",
  arguments: [texture, units],
  result: rate("Saturated rate"),
  sources: [saturatedConductivities.from],
  cautions: [
    notATest,
    { when: () => true, says: "A saturated rate, not yet reduced for design, and about twice what Green and Ampt's equation takes." },
  ],
  example: { arguments: ["sandy loam"], result: 1.02, within: 0.005, from: saturatedConductivities.from },
  equation: ["rate = the table's value for the class   (printed in mm/h; 25.4 mm/h = 1 in/h)"],
  calculate: ({ texture: name }) => textureRateInchesPerHour(name) ?? invalid("No rate is published for silt: the table has no such row."),
});

export const soilWater = worksheetFunction({
  name: "SOILWATER",
  summary: "What a soil holds and lets through, from its texture, organic matter and compaction.",
  arguments: [
    sand,
    clay,
    percent("organicPercent", "Organic percent").optional(USUAL_ORGANIC_PERCENT),
    number("compaction", "Compaction").moreThan(0).optional(1),
    units,
  ],
  result: rowOf([share("Wilting point"), share("Field capacity"), share("Saturation"), rate("Saturated rate")]),
  sources: [
    soilRegressions.from,
    saxtonRawls2006.table("1, effect of density", "from memory"),
    saxtonRawls2006.place("limits of the regressions", "from memory"),
  ],
  cautions: [
    notATest,
    {
      when: ({ organicPercent }) => organicPercent > MOST_ORGANIC_PERCENT,
      says: `The regressions were made for organic matter up to ${MOST_ORGANIC_PERCENT} percent.`,
    },
    {
      when: ({ clayPercent }) => clayPercent > MOST_CLAY_PERCENT,
      says: `The regressions were made for clay up to ${MOST_CLAY_PERCENT} percent.`,
    },
    {
      when: ({ compaction }) => compaction < LOOSEST_DENSITY_FACTOR || compaction > DENSEST_DENSITY_FACTOR,
      says: `Compaction is published from ${LOOSEST_DENSITY_FACTOR} (loosened) to ${DENSEST_DENSITY_FACTOR} (hard).`,
    },
  ],
  example: { arguments: [40, 20], result: [[0.14, 0.28, 0.46, 0.61]], within: 0.005, from: saxtonRawls2006.table("3, loam") },
  equation: [
    "w15, w33, w0 - w33 = regressions on sand, clay and organic matter   (shares of the volume at 1,500 kPa, 33 kPa and saturation)",
    "w0 = w33 + (w0 - w33) - 0.097 S + 0.043   (share; S sand fraction)",
    "w0' = 1 - (1 - w0) DF; w33' = w33 - 0.2 (w0 - w0')   (shares; DF compaction)",
    "L = (ln w33' - ln w15) / (ln 1500 - ln 33)",
    "Ks = 1930 (w0' - w33')^(3 - L)   (mm/h; 25.4 mm/h = 1 in/h)",
  ],
  working: ({ sandPercent, clayPercent, organicPercent, compaction }) =>
    stepsOf(
      soilWaterCharacteristics(sandPercent, clayPercent, organicPercent, compaction),
      ({ wiltingPoint, fieldCapacity, saturation }) => {
        const uncompacted = uncompactedWater(sandPercent, clayPercent, organicPercent);
        return [
          { label: "Wilting point w15", value: wiltingPoint, kind: "share" },
          { label: "Field capacity w33 before compaction", value: uncompacted.fieldCapacity, kind: "share" },
          { label: "Saturation w0 before compaction", value: uncompacted.saturation, kind: "share" },
          { label: "Saturation w0'", value: saturation, kind: "share" },
          { label: "Field capacity w33'", value: fieldCapacity, kind: "share" },
          { label: "Slope L", value: retentionSlope(wiltingPoint, fieldCapacity) },
        ];
      },
    ),
  calculate({ sandPercent, clayPercent, organicPercent, compaction }) {
    if (textureClass(sandPercent, clayPercent) === undefined) return addUpTooHigh(sandPercent, clayPercent);
    const water = soilWaterCharacteristics(sandPercent, clayPercent, organicPercent, compaction);
    if (water === undefined) {
      return invalid(
        "Sand, clay and organic percent and compaction are outside what the regressions can describe: they give no possible soil.",
      );
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
    units,
  ],
  result: depth("Depth soaked in"),
  sources: [greenAmptParameters.from, clayLoamPorosity.from, appliedHydrology.place("sections 4.3 and 4.4, Green and Ampt's method")],
  cautions: [
    notATest,
    unlikelyIntensity<{ readonly rainRate: number | undefined }>(({ rainRate = 0 }) => rainRate),
    {
      when: ({ texture: name }) => name === "clay loam",
      says: `The table of 1983 prints an effective porosity of 0.309 for clay loam, likely a misprint: ${clayLoamPorosity.values} of 1982 is used.`,
    },
  ],
  example: { arguments: [1, "silt loam"], result: 1.25, within: 0.005, from: appliedHydrology.example("4.3.1, 3.17 cm") },
  equation: [
    "m = suction x moisture deficit   (in); moisture deficit = effective porosity x (1 - filled share)",
    "F - m ln(1 + F / m) = K t under a pond   (in; K in in/h, t in h)",
    "Fp = K m / (i - K), tp = Fp / i: steady rain of i > K ponds then   (in, h; i in in/h)",
    "F - m ln(1 + F / m) = K (t - tp) + Fp - m ln(1 + Fp / m) from then on; F = i t before   (in)",
  ],
  working: ({ texture: name, filledShare, rainRate }) =>
    stepsOf(tabledTexture(name), (tabled) => {
      const soil = greenAmptSoil(tabled, filledShare);
      return [
        { label: "Conductivity K", value: soil.conductivity, kind: "rate" },
        { label: "Suction at the wetting front", value: suctionInches(tabled), kind: "depth" },
        { label: "Moisture deficit", value: moistureDeficit(tabled, filledShare), kind: "share" },
        { label: "Suction x moisture deficit m", value: soil.suctionDeficit, kind: "depth" },
        ...stepsOf(rainRate, (rain): readonly WorkingStep[] => {
          const { hours: ponds, depth: soaked } = pondingStart(soil, rain);
          if (ponds === Infinity) return [{ label: "Rain ponds", value: "never: the soil keeps up with it" }];
          return [
            { label: "Soaked in when the rain ponds Fp", value: soaked, kind: "depth" },
            { label: "Rain ponds after tp", value: ponds, kind: "hours" },
          ];
        }),
      ];
    }),
  calculate({ hours: time, texture: name, filledShare, rainRate }) {
    const tabled = tabledTexture(name);
    return isCellError(tabled) ? tabled : soakedIn(time, greenAmptSoil(tabled, filledShare), rainRate);
  },
});

function tabledTexture(name: TextureClass): TabledTexture | CellError {
  return isTabled(name) ? name : invalid("No Green and Ampt values are published for silt: the table has no such row.");
}
