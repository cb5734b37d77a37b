import { describe, expect, test } from "vitest";
import { saturatedConductivities } from "../../../functions/published/rawls-1982.ts";
import { greenAmptParameters } from "../../../functions/published/rawls-1983.ts";
import { TEXTURE_CLASSES } from "../../../functions/published/soil-survey-manual.ts";
import { isTabled, textureRateInchesPerHour } from "../../../functions/soil/texture-rate.ts";

const tabled = TEXTURE_CLASSES.filter(isTabled);

describe("Rawls, Brakensiek and Saxton 1982 (read in transcription)", () => {
  test.each([
    ["sand", 210, 8.27],
    ["loamy sand", 61.1, 2.41],
    ["sandy loam", 25.9, 1.02],
    ["loam", 13.2, 0.52],
    ["silt loam", 6.8, 0.27],
    ["sandy clay loam", 4.3, 0.17],
    ["clay loam", 2.3, 0.09],
    ["silty clay loam", 1.5, 0.06],
    ["sandy clay", 1.2, 0.05],
    ["silty clay", 0.9, 0.04],
    ["clay", 0.6, 0.02],
    // The second column is the widely quoted one in inches, to 0.01.
  ] as const)("%s lets %f mm/h through when saturated, which is %f in/h", (texture, millimetres, inches) => {
    expect(textureRateInchesPerHour(texture)! * 25.4).toBeCloseTo(millimetres, 9);
    expect(Math.abs(textureRateInchesPerHour(texture)! - inches)).toBeLessThanOrEqual(0.005);
  });

  test("silt has no row", () => {
    expect(textureRateInchesPerHour("silt")).toBeUndefined();
    expect(tabled).toHaveLength(11);
    expect(saturatedConductivities.printedTo).toBe(0.1);
  });

  test("sand is the fastest, clay the slowest, and no finer class of one family is faster", () => {
    const rates = tabled.map((texture) => textureRateInchesPerHour(texture)!);
    expect(Math.max(...rates)).toBe(textureRateInchesPerHour("sand"));
    expect(Math.min(...rates)).toBe(textureRateInchesPerHour("clay"));
    for (const family of [
      ["sand", "loamy sand", "sandy loam", "loam"],
      ["sandy clay loam", "clay loam", "silty clay loam", "silty clay", "clay"],
    ] as const) {
      const falling = family.map((texture) => textureRateInchesPerHour(texture)!);
      expect(falling).toEqual(falling.toSorted((one, other) => other - one));
    }
  });

  test("no class passes less when saturated than Green and Ampt's conductivity of 1983", () => {
    for (const texture of tabled) {
      expect(textureRateInchesPerHour(texture)! * 2.54).toBeGreaterThanOrEqual(
        greenAmptParameters.values[texture].conductivityCentimetresPerHour,
      );
    }
  });
});
