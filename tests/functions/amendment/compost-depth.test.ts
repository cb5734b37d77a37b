import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compostDepthInches, RICHEST_PUBLISHED_TARGET_PERCENT } from "../../../functions/amendment/compost-depth.ts";
import { measured } from "../measured.ts";

const depth = measured(1, 24);
const soilPercent = measured(0, 8);
const shortPercent = measured(0.1, 10);
const richerPercent = measured(1, 60);
const density = measured(300, 3000);

/** Percent organic matter of the mixture, by weighing both parts: an independent way back. */
function mixedPercent(
  depthInches: number,
  compostInches: number,
  organic: { soilPercent: number; compostPercent: number },
  soilDensity: number,
  compostDensity: number,
): number {
  const soilMass = (depthInches - compostInches) * soilDensity;
  const compostMass = compostInches * compostDensity;
  return (soilMass * organic.soilPercent + compostMass * organic.compostPercent) / (soilMass + compostMass);
}

// Computed by hand from the balance of dry mass; the published standard rates were read in the Minnesota Stormwater Manual,
// "Application guidelines": 3 in of compost into 5 in of soil for planting, 1.75 into 6.25 in for lawn.
describe("computed by hand, beside the published standard rates", () => {
  test("2 percent soil to 10 percent in 8 in takes 2.977 in, the planting rate of 3 in", () => {
    const inches = compostDepthInches(8, { soilPercent: 2, targetPercent: 10, compostPercent: 55 }, 2000, 600);
    expect(inches).toBeCloseTo(2.977, 3);
    expect(Math.abs(inches - 3)).toBeLessThan(0.05);
    expect(mixedPercent(8, inches, { soilPercent: 2, compostPercent: 55 }, 2000, 600)).toBeCloseTo(10, 12);
  });

  test("1 percent soil to 5 percent in 8 in takes 1.684 in, near the lawn rate of 1.75 in", () => {
    const inches = compostDepthInches(8, { soilPercent: 1, targetPercent: 5, compostPercent: 55 }, 2000, 600);
    expect(inches).toBeCloseTo(1.684, 3);
    expect(Math.abs(inches - 1.75)).toBeLessThan(0.1);
  });

  test.each([10, 12, 100])("a soil of %d percent that is to have 10 needs no compost", (percent) => {
    expect(compostDepthInches(8, { soilPercent: percent, targetPercent: 10, compostPercent: 5 }, 2000, 600)).toBe(0);
  });

  // Older Everett manual (read): 10 percent for planting, 5 percent for lawn.
  test("the richest published target is 10 percent", () => {
    expect(RICHEST_PUBLISHED_TARGET_PERCENT).toBe(10);
  });
});

describe("any amended soil", () => {
  test("has the target's organic matter when both parts are weighed", () => {
    fc.assert(
      fc.property(
        depth,
        soilPercent,
        shortPercent,
        richerPercent,
        density,
        density,
        (inches, soil, short, richer, soilDensity, compostDensity) => {
          const target = soil + short;
          const organic = { soilPercent: soil, targetPercent: target, compostPercent: target + richer };
          const compost = compostDepthInches(inches, organic, soilDensity, compostDensity);
          expect(mixedPercent(inches, compost, organic, soilDensity, compostDensity)).toBeCloseTo(target, 8);
        },
      ),
    );
  });

  test("holds less compost than its depth, and more than none", () => {
    fc.assert(
      fc.property(
        depth,
        soilPercent,
        shortPercent,
        richerPercent,
        density,
        density,
        (inches, soil, short, richer, soilDensity, compostDensity) => {
          const target = soil + short;
          const compost = compostDepthInches(
            inches,
            { soilPercent: soil, targetPercent: target, compostPercent: target + richer },
            soilDensity,
            compostDensity,
          );
          expect(compost).toBeGreaterThan(0);
          expect(compost).toBeLessThan(inches);
        },
      ),
    );
  });

  test("takes more of a poorer compost, and the same whatever unit the densities are in", () => {
    fc.assert(
      fc.property(
        depth,
        soilPercent,
        shortPercent,
        richerPercent,
        density,
        density,
        (inches, soil, short, richer, soilDensity, compostDensity) => {
          const target = soil + short;
          const of = (compostPercent: number, unit: number): number =>
            compostDepthInches(
              inches,
              { soilPercent: soil, targetPercent: target, compostPercent },
              soilDensity * unit,
              compostDensity * unit,
            );
          expect(of(target + richer, 1)).toBeGreaterThan(of(target + richer + 1, 1));
          expect(of(target + richer, 0.593276)).toBeCloseTo(of(target + richer, 1), 9);
        },
      ),
    );
  });
});
