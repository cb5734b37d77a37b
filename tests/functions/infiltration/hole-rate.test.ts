import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { holeIntervals } from "../../../functions/infiltration/drop-rate.ts";
import { holeRateInchesPerHour, wallCorrectedInchesPerHour } from "../../../functions/infiltration/hole-rate.ts";
import { measured } from "../measured.ts";
import { fallingLevel, readingsOf } from "./falling-level.ts";

const diameter = measured(3, 48);

describe("Riverside County, Design Handbook for Low Impact Development, 2011, appendix A (from memory)", () => {
  // Hole 60 in deep, radius 4 in, water 12.25 then 13.75 in below its top, 10 min apart.
  const readings = readingsOf([0, 60 - 12.25], [10, 60 - 13.75]);

  test("the example's infiltration rate is 0.37 in/h", () => {
    expect(holeRateInchesPerHour(readings, 8)).toBeCloseTo(0.37, 2);
  });

  test("the logarithmic form gives 0.36738 in/h, computed by hand", () => {
    expect(holeRateInchesPerHour(readings, 8)).toBeCloseTo(0.36738, 5);
  });

  test("the raw drop is 24.5 times the infiltration rate", () => {
    expect(9 / holeRateInchesPerHour(readings, 8)).toBeCloseTo(24.5, 1);
  });

  test("a radius typed as the diameter gives about half the rate", () => {
    expect(holeRateInchesPerHour(readings, 4)).toBeLessThan(0.53 * holeRateInchesPerHour(readings, 8));
  });
});

describe("ILRI Publication 16, 1994, chapter 12 (from memory)", () => {
  test("the inverted auger hole is the same within the rounding of its 1.15", () => {
    const [r, h0, h1, hours] = [5, 11, 7.5, 0.75];
    const auger = (1.15 * r * (Math.log10(h0 + r / 2) - Math.log10(h1 + r / 2))) / hours;
    expect(
      wallCorrectedInchesPerHour({ minutes: 0, waterDepthInches: h0 }, { minutes: 45, waterDepthInches: h1 }, 2 * r) / auger,
    ).toBeCloseTo(1.1513 / 1.15, 4);
  });
});

describe("the last steady run", () => {
  test("is judged on the corrected rate, so a soil of one rate is steady while its drop slows", () => {
    // A soil of 2 in/h and a hole of 8 in: (2 H + r) shrinks by exp(-2 f t / r).
    const level = (hours: number) => ((2 * 12 + 4) * Math.exp(-hours) - 4) / 2;
    const readings = [0, 15, 30, 45, 60, 75].map((minutes) => ({ minutes, waterDepthInches: level(minutes / 60) }));
    const drops = holeIntervals(readings).map(({ dropInchesPerHour }) => dropInchesPerHour);
    expect(drops.at(-1)! / drops.at(-2)!).toBeLessThan(0.9);
    expect(holeRateInchesPerHour(readings, 8)).toBeCloseTo(2, 10);
  });

  test("leaves the fast start out", () => {
    const readings = readingsOf([0, 12], [30, 9], [60, 7.5], [90, 6.3], [120, 5.25]);
    const steady = wallCorrectedInchesPerHour({ minutes: 30, waterDepthInches: 9 }, { minutes: 120, waterDepthInches: 5.25 }, 8);
    expect(holeRateInchesPerHour(readings, 8)).toBe(steady);
  });

  test("is 0 when the water does not move", () => {
    expect(holeRateInchesPerHour(readingsOf([0, 6], [60, 6]), 8)).toBe(0);
  });

  test("is a finite rate when the hole empties", () => {
    expect(holeRateInchesPerHour(readingsOf([0, 6], [60, 0]), 8)).toBeCloseTo((4 / 2) * Math.log((2 * 6 + 4) / 4), 12);
  });
});

describe("any hole", () => {
  test("infiltrates no faster than its water drops", () => {
    fc.assert(
      fc.property(fallingLevel, diameter, (readings, across) => {
        for (const { from, to, dropInchesPerHour } of holeIntervals(readings)) {
          const rate = wallCorrectedInchesPerHour(from, to, across);
          expect(rate).toBeGreaterThanOrEqual(0);
          expect(rate).toBeLessThanOrEqual(dropInchesPerHour + 1e-12);
        }
      }),
    );
  });

  test("infiltrates nearly as fast as its water drops when it is wide as a pond", () => {
    fc.assert(
      fc.property(fallingLevel, (readings) => {
        for (const { from, to, dropInchesPerHour } of holeIntervals(readings)) {
          expect(wallCorrectedInchesPerHour(from, to, 1e9)).toBeCloseTo(dropInchesPerHour, 3);
        }
      }),
    );
  });

  test("counts more of the drop as infiltration the wider it is", () => {
    fc.assert(
      fc.property(fallingLevel, diameter, (readings, across) => {
        const { from, to } = holeIntervals(readings)[0]!;
        expect(wallCorrectedInchesPerHour(from, to, across * 1.5)).toBeGreaterThanOrEqual(
          wallCorrectedInchesPerHour(from, to, across) - 1e-12,
        );
      }),
    );
  });

  test("infiltrates at one rate in inches and in millimetres", () => {
    fc.assert(
      fc.property(fallingLevel, diameter, (readings, across) => {
        const metric = readings.map(({ minutes, waterDepthInches }) => ({ minutes, waterDepthInches: waterDepthInches * 25.4 }));
        expect(holeRateInchesPerHour(metric, across * 25.4) / 25.4).toBeCloseTo(holeRateInchesPerHour(readings, across), 6);
      }),
    );
  });

  test("conserves water: the rate over the wetted wall and floor empties what the level shows", () => {
    fc.assert(
      fc.property(diameter, measured(1, 40), measured(0.01, 0.99), (across, full, part) => {
        // Step the level down at the corrected rate and see where it stands after the hour.
        const rate = wallCorrectedInchesPerHour(
          { minutes: 0, waterDepthInches: full },
          { minutes: 60, waterDepthInches: full * part },
          across,
        );
        const radius = across / 2;
        let level = full;
        const steps = 4000;
        for (let step = 0; step < steps; step += 1) {
          const fall = (h: number) => (rate * (radius + 2 * h)) / radius / steps;
          level -= fall(level - fall(level) / 2);
        }
        expect(level).toBeCloseTo(full * part, 3);
      }),
      { numRuns: 25 },
    );
  });
});
