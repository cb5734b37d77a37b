import { PLANTING_PATTERNS, plantsPerArea, wholePlants, WIDEST_LIKELY_SPACING_FEET } from "../planting/plant-count.ts";
import { nurserySpacingChart } from "../published/documents.ts";
import { computedByHand } from "../published/source.ts";
import { area, choice, count, length, units } from "./calling/arguments.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

const chart = nurserySpacingChart.place("12 in spacing");

export const plantCount = worksheetFunction({
  name: "PLANTCOUNT",
  summary: "Whole plants that cover an area at an even spacing.",
  arguments: [
    area("area", "Area"),
    length("spacing", "Spacing").moreThan(0),
    choice("pattern", "Pattern", PLANTING_PATTERNS).optional("triangle"),
    units,
  ],
  result: count("Plants"),
  sources: [chart, computedByHand("A triangle of equal sides covers sin 60 degrees of the square on its side")],
  cautions: [
    {
      when: ({ spacing }) => spacing > WIDEST_LIKELY_SPACING_FEET,
      says: (_, speaker) =>
        `A spacing over ${speaker.length(WIDEST_LIKELY_SPACING_FEET)} suits trees alone: spacing is in ${speaker.system === "us" ? "feet, so 18 in is 1.5" : "meters, so 45 cm is 0.45"}.`,
    },
  ],
  example: { arguments: [100, 1, "square"], result: 100, from: chart },
  equation: [
    "n = A / (s^2 sin 60 degrees) on triangles   (plants, rounded up; A in sq ft, s spacing in ft)",
    "n = A / s^2 on squares   (plants, rounded up)",
  ],
  working: ({ area: squareFeet, spacing: spacingFeet, pattern }) => [
    { label: "Plants before rounding up", value: plantsPerArea(squareFeet, spacingFeet, pattern) },
  ],
  calculate: ({ area: squareFeet, spacing: spacingFeet, pattern }) => wholePlants(squareFeet, spacingFeet, pattern),
});
