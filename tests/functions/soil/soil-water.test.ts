import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { soilWaterCharacteristics } from "../../../functions/soil/soil-water.ts";
import { saxtonRawlsTable3 } from "../../published/saxton-rawls-table-3.ts";

/** Soils inside the published limits. */
const soil = fc
  .record({
    one: fc.double({ min: 0.01, max: 0.95, noNaN: true }),
    other: fc.double({ min: 0.01, max: 0.6, noNaN: true }),
    organic: fc.double({ min: 1, max: 8, noNaN: true }),
    density: fc.double({ min: 0.9, max: 1.1, noNaN: true }),
  })
  .map(({ one, other, organic, density }) => ({ clay: 100 * other, sand: 100 * one * (1 - other), organic, density }));

describe("Saxton and Rawls 2006, table 3, organic matter 2.5 percent (read in transcription)", () => {
  const half = { percent: saxtonRawlsTable3.percentPrintedTo / 2, rate: saxtonRawlsTable3.ratePrintedTo / 2 };

  test.each(saxtonRawlsTable3.rows)("$texture of $sand percent sand and $clay percent clay", (row) => {
    const water = soilWaterCharacteristics(row.sand, row.clay, 2.5, 1)!;
    expect(Math.abs(100 * water.wiltingPoint - row.wiltingPoint)).toBeLessThanOrEqual(half.percent);
    expect(Math.abs(100 * water.fieldCapacity - row.fieldCapacity)).toBeLessThanOrEqual(half.percent);
    expect(Math.abs(100 * water.saturation - row.saturation)).toBeLessThanOrEqual(half.percent);
    expect(Math.abs(25.4 * water.saturatedInchesPerHour - row.millimetresPerHour)).toBeLessThanOrEqual(half.rate + 0.003);
  });

  test("the field capacity of clay takes 1.283, not the 1.238 of one copy: 42.06 and not 41.39 percent", () => {
    expect(100 * soilWaterCharacteristics(25, 50, 2.5, 1)!.fieldCapacity).toBeCloseTo(42.06, 1);
  });
});

// SWCharEst, an open implementation of the same paper, prints these two to six and five decimals; its rate is in cm/s.
describe("against another implementation's worked soils", () => {
  test.each([
    {
      sand: 85,
      clay: 4,
      organic: 2.08,
      wiltingPoint: 0.039999,
      fieldCapacity: 0.097846,
      saturation: 0.454455,
      centimetresPerSecond: 0.003096,
    },
    { sand: 15, clay: 18, organic: 3.05, wiltingPoint: 0.1286, fieldCapacity: 0.33148, saturation: 0.50503, centimetresPerSecond: 0.00043 },
  ])("$sand percent sand, $clay percent clay and $organic percent organic matter", (row) => {
    const water = soilWaterCharacteristics(row.sand, row.clay, row.organic, 1)!;
    expect(water.wiltingPoint).toBeCloseTo(row.wiltingPoint, 5);
    expect(water.fieldCapacity).toBeCloseTo(row.fieldCapacity, 5);
    expect(water.saturation).toBeCloseTo(row.saturation, 5);
    expect((water.saturatedInchesPerHour * 2.54) / 3600).toBeCloseTo(row.centimetresPerSecond, 5);
  });
});

describe("compaction, computed by hand from the equations", () => {
  test("a loam a tenth denser loses a tenth of its solids' complement: saturation 0.4595 to 0.4055", () => {
    const [loose, dense] = [soilWaterCharacteristics(40, 20, 2.5, 1)!, soilWaterCharacteristics(40, 20, 2.5, 1.1)!];
    expect(dense.saturation).toBeCloseTo(1 - (1 - loose.saturation) * 1.1, 12);
    expect(dense.fieldCapacity).toBeCloseTo(loose.fieldCapacity - 0.2 * (loose.saturation - dense.saturation), 12);
    expect(dense.wiltingPoint).toBe(loose.wiltingPoint);
    expect(dense.saturation).toBeCloseTo(0.4055, 3);
  });

  test("a soil pressed until no pore is left is none", () => {
    expect(soilWaterCharacteristics(40, 20, 2.5, 1.9)).toBeUndefined();
    expect(soilWaterCharacteristics(40, 20, 2.5, 0.00001)).toBeDefined();
  });

  test("pure sand without organic matter is outside the regressions, which would have it hold less than nothing", () => {
    expect(soilWaterCharacteristics(100, 0, 0, 1)).toBeUndefined();
  });

  test("a soil so rich that it would hold more than its volume is none", () => {
    expect(soilWaterCharacteristics(0, 0, 60, 1)).toBeUndefined();
    expect(soilWaterCharacteristics(0, 100, 60, 1)).toBeUndefined();
  });
});

describe("any soil inside the limits", () => {
  test("wilts below its field capacity, which is below its saturation, and lets water through", () => {
    fc.assert(
      fc.property(soil, ({ sand, clay, organic, density }) => {
        const water = soilWaterCharacteristics(sand, clay, organic, density);
        if (water === undefined) return;
        expect(water.wiltingPoint).toBeGreaterThan(0);
        expect(water.fieldCapacity).toBeGreaterThan(water.wiltingPoint);
        expect(water.saturation).toBeGreaterThan(water.fieldCapacity);
        expect(water.saturation).toBeLessThan(1);
        expect(water.saturatedInchesPerHour).toBeGreaterThan(0);
        expect(water.saturatedInchesPerHour).toBeLessThan(40);
      }),
    );
  });

  test("holds less and passes less water the denser it is", () => {
    fc.assert(
      fc.property(soil, fc.double({ min: 0.001, max: 0.1, noNaN: true }), ({ sand, clay, organic }, denser) => {
        const [loose, dense] = [
          soilWaterCharacteristics(sand, clay, organic, 1),
          soilWaterCharacteristics(sand, clay, organic, 1 + denser),
        ];
        if (loose === undefined || dense === undefined) return;
        expect(dense.saturation).toBeLessThan(loose.saturation);
        expect(dense.fieldCapacity).toBeLessThan(loose.fieldCapacity);
        expect(dense.saturatedInchesPerHour).toBeLessThan(loose.saturatedInchesPerHour);
      }),
    );
  });

  test("wilts at a higher share the more clay it has, at the same sand", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), fc.double({ min: 1, max: 58, noNaN: true }), (sand, clay) => {
        const [less, more] = [soilWaterCharacteristics(sand, clay, 2.5, 1), soilWaterCharacteristics(sand, clay + 2, 2.5, 1)];
        if (less === undefined || more === undefined) return;
        expect(more.wiltingPoint).toBeGreaterThan(less.wiltingPoint);
      }),
    );
  });
});
