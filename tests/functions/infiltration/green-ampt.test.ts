import fc from "fast-check";
import { Solver } from "odex";
import { describe, expect, test } from "vitest";
import {
  greenAmptSoil,
  pondingStart,
  soakedIn,
  USUAL_FILLED_SHARE,
  type GreenAmptSoil,
} from "../../../functions/infiltration/green-ampt.ts";
import { clayLoamPorosity } from "../../../functions/published/rawls-1982.ts";
import { greenAmptParameters } from "../../../functions/published/rawls-1983.ts";
import { TEXTURE_CLASSES } from "../../../functions/published/soil-survey-manual.ts";
import { isTabled } from "../../../functions/soil/texture-rate.ts";

const tabled = TEXTURE_CLASSES.filter(isTabled);
const soil: fc.Arbitrary<GreenAmptSoil> = fc.record({
  conductivity: fc.double({ min: 0.01, max: 12, noNaN: true }),
  suctionDeficit: fc.double({ min: 0.05, max: 20, noNaN: true }),
});
const hours = fc.double({ min: 0, max: 72, noNaN: true });
const rain = fc.double({ min: 0, max: 20, noNaN: true });

const capacity = ({ conductivity, suctionDeficit }: GreenAmptSoil, depth: number) => conductivity * (1 + suctionDeficit / depth);

/** Depth after the hours between, by odex 2.0.4: Hairer's extrapolation method for ordinary differential equations. */
function integrate(from: number, startHours: number, endHours: number, slope: (depth: number) => number): number {
  const solver = new Solver(1);
  solver.absoluteTolerance = 1e-12;
  solver.relativeTolerance = 1e-12;
  const { y } = solver.solve((_, [depth = 0]) => [slope(depth)], startHours, [from], endHours);
  return y[0] ?? Number.NaN;
}

describe("Chow, Maidment and Mays, Applied Hydrology, 1988 (inputs read in transcription, answers from memory), in cm", () => {
  const siltLoam = { conductivity: 0.65, suctionDeficit: 16.7 * 0.34 };

  // Example 4.3.1, printed to 0.01; the rate computes to 1.816 and is printed 1.81.
  test("3.17 cm soak into silt loam in the first hour, at 1.81 cm/h at its end", () => {
    const depth = soakedIn(1, siltLoam);
    expect(Math.abs(depth - 3.17)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(capacity(siltLoam, depth) - 1.81)).toBeLessThanOrEqual(0.01);
  });

  // Example 4.4.1, printed to 0.1 h and 0.1 cm, and to 0.01 h and 0.01 cm.
  test.each([
    { rainRate: 1, hours: 10.5, depth: 10.5, within: 0.05 },
    { rainRate: 5, hours: 0.17, depth: 0.85, within: 0.005 },
  ])("rain of $rainRate cm/h ponds after $hours h and $depth cm", ({ rainRate, hours: after, depth, within }) => {
    const start = pondingStart(siltLoam, rainRate);
    expect(Math.abs(start.hours - after)).toBeLessThanOrEqual(within);
    expect(Math.abs(start.depth - depth)).toBeLessThanOrEqual(within);
  });
});

describe("Oklahoma State University, Rain or Shine, section 6.5 (inputs read, answers computed by hand), in cm", () => {
  // Conductivity 0.65 cm/h, suction 17 cm, moisture from 0.15 to 0.49.
  test("under a pond of 2.5 cm the front is 30 cm deep after 6.190 h, with 10.20 cm in and 1.0725 cm/h going in", () => {
    const underPond = { conductivity: 0.65, suctionDeficit: (17 + 2.5) * 0.34 };
    const depth = soakedIn(6.19, underPond);
    expect(depth).toBeCloseTo(0.34 * 30, 2);
    expect(capacity(underPond, depth)).toBeCloseTo(1.0725, 3);
  });

  test.each([
    { conductivity: 0.65, hours: 2.947, depth: 4.42, front: 13 },
    { conductivity: 0.325, hours: 1.066, depth: 1.599, front: 4.702 },
  ])("rain of 1.5 cm/h on soil of $conductivity cm/h ponds after $hours h and $depth cm, its front at $front cm", (row) => {
    const start = pondingStart({ conductivity: row.conductivity, suctionDeficit: 17 * 0.34 }, 1.5);
    expect(start.hours).toBeCloseTo(row.hours, 3);
    expect(start.depth).toBeCloseTo(row.depth, 3);
    expect(start.depth / 0.34).toBeCloseTo(row.front, 2);
  });
});

describe("against odex 2.0.4 integrating dF/dt = K (1 + m / F)", () => {
  test.each(tabled)("a pond on %s", (texture) => {
    const table = greenAmptSoil(texture, USUAL_FILLED_SHARE);
    const { conductivity, suctionDeficit } = table;
    // The slope has no value at 0: begin a little later, at the depth and time that the equation itself joins.
    const from = suctionDeficit / 10;
    const after = (from - suctionDeficit * Math.log(1 + from / suctionDeficit)) / conductivity;
    expect(soakedIn(6, table) / integrate(from, after, 6, (reached) => capacity(table, reached))).toBeCloseTo(1, 9);
  });

  test.each([
    { texture: "loam", inchesPerHour: 0.5 },
    { texture: "silt loam", inchesPerHour: 2 },
    { texture: "clay", inchesPerHour: 0.1 },
    { texture: "clay", inchesPerHour: 5 },
    { texture: "sand", inchesPerHour: 4 },
  ] as const)("rain of $inchesPerHour in/h on $texture", ({ texture, inchesPerHour }) => {
    const table = greenAmptSoil(texture, 0.3);
    // All the rain soaks in until the soil takes no more than falls: there the capacity is the rain, whenever that is.
    const inRain = (depth: number) => Math.min(inchesPerHour, capacity(table, Math.max(depth, 1e-12)));
    expect(soakedIn(6, table, inchesPerHour) / integrate(0, 0, 6, inRain)).toBeCloseTo(1, 6);
  });
});

describe("Rawls, Brakensiek and Miller 1983 (read in transcription)", () => {
  test("silt loam filled to 30 percent takes 0.65 cm/h with 16.68 x 0.486 x 0.7 cm of suction, in inches", () => {
    const { conductivity, suctionDeficit } = greenAmptSoil("silt loam", 0.3);
    expect(conductivity * 2.54).toBeCloseTo(0.65, 12);
    expect(suctionDeficit * 2.54).toBeCloseTo(16.68 * 0.486 * 0.7, 12);
  });

  test("clay loam has the effective porosity 0.390 of 1982, not the misprinted 0.309", () => {
    expect(greenAmptParameters.values["clay loam"].effectivePorosity).toBe(0.39);
    expect(clayLoamPorosity.values).toBeCloseTo((0.279 + 0.501) / 2, 12);
  });
});

describe("any soil", () => {
  test("soaks in nothing in no time, and as the saturated column alone draws when its pores are full", () => {
    fc.assert(
      fc.property(soil, hours, ({ conductivity, suctionDeficit }, time) => {
        expect(soakedIn(0, { conductivity, suctionDeficit })).toBe(0);
        expect(soakedIn(time, { conductivity, suctionDeficit: 0 })).toBeCloseTo(conductivity * time, 9);
        expect(soakedIn(time, { conductivity, suctionDeficit: 0 }, 2 * conductivity)).toBeCloseTo(conductivity * time, 9);
      }),
      { examples: [[{ conductivity: 1, suctionDeficit: 1 }, 0]] },
    );
  });

  test("meets the equation under a pond", () => {
    fc.assert(
      fc.property(soil, fc.double({ min: 0.001, max: 72, noNaN: true }), (one, time) => {
        const depth = soakedIn(time, one);
        const drawn = depth - one.suctionDeficit * Math.log(1 + depth / one.suctionDeficit);
        expect(drawn / (one.conductivity * time)).toBeCloseTo(1, 6);
      }),
    );
  });

  test("takes no more than rains, nor more than it takes under a pond, and all of a rain it keeps up with", () => {
    fc.assert(
      fc.property(soil, hours, rain, (one, time, rainRate) => {
        const depth = soakedIn(time, one, rainRate);
        expect(depth).toBeLessThanOrEqual(rainRate * time * (1 + 1e-9) + 1e-12);
        expect(depth).toBeLessThanOrEqual(soakedIn(time, one) * (1 + 1e-9) + 1e-12);
        if (rainRate <= one.conductivity) expect(depth).toBe(rainRate * time);
      }),
      {
        examples: [
          [{ conductivity: 1, suctionDeficit: 1 }, 5, 1],
          [{ conductivity: 1, suctionDeficit: 1 }, 5, 0],
        ],
      },
    );
  });

  test("takes more in more time, in drier soil and under heavier rain", () => {
    fc.assert(
      fc.property(soil, hours, rain, (one, time, rainRate) => {
        const depth = soakedIn(time, one, rainRate);
        const drier = { ...one, suctionDeficit: one.suctionDeficit + 1 };
        expect(soakedIn(time + 1, one, rainRate)).toBeGreaterThanOrEqual(depth - 1e-9);
        expect(soakedIn(time, drier, rainRate)).toBeGreaterThanOrEqual(depth - 1e-9);
        expect(soakedIn(time, one, rainRate + 1)).toBeGreaterThanOrEqual(depth - 1e-9);
      }),
    );
  });

  test("takes the same in inches and in centimetres", () => {
    fc.assert(
      fc.property(soil, hours, rain, (one, time, rainRate) => {
        const metric = { conductivity: one.conductivity * 2.54, suctionDeficit: one.suctionDeficit * 2.54 };
        expect(soakedIn(time, metric, rainRate * 2.54) / 2.54).toBeCloseTo(soakedIn(time, one, rainRate), 8);
        expect(soakedIn(time, metric) / 2.54).toBeCloseTo(soakedIn(time, one), 8);
      }),
    );
  });

  test("goes on without a jump where the rain begins to pond", () => {
    fc.assert(
      fc.property(soil, fc.double({ min: 0.1, max: 20, noNaN: true }), (one, above) => {
        const rainRate = one.conductivity + above;
        const start = pondingStart(one, rainRate);
        expect(soakedIn(start.hours * (1 + 1e-7), one, rainRate) / start.depth).toBeCloseTo(1, 5);
        expect(soakedIn(start.hours, one, rainRate)).toBeCloseTo(start.depth, 9);
      }),
    );
  });
});
