import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { basinStore } from "../../../functions/basin/water-balance.ts";
import { longTermBalance } from "../../../functions/long-term/long-term-balance.ts";
import { rainRecord } from "../../../functions/long-term/rain-record.ts";
import { waterGrid, wholeUnits } from "../../../functions/long-term/water-grid.ts";
import { garden, roofGarden } from "../basin/garden.ts";
import { inventedHours } from "./rain-series.ts";

const size = fc.double({ min: -(2 ** 51), max: 2 ** 51, noNaN: true });

describe("whole units", () => {
  // IEEE 754, roundTiesToEven.
  test.each([
    [0.5, 0],
    [1.5, 2],
    [2.5, 2],
    [-0.5, 0],
    [0.49999999999999994, 0],
    [2 ** 51 - 0.5, 2 ** 51],
    [7, 7],
  ])("of %f are %f", (units, whole) => {
    expect(wholeUnits(units) + 0).toBe(whole);
  });

  test("are the nearest whole number, as far as the grid goes", () => {
    fc.assert(
      fc.property(size, (units) => {
        const whole = wholeUnits(units);
        expect(Number.isInteger(whole)).toBe(true);
        expect(Math.abs(whole - units)).toBeLessThanOrEqual(0.5);
      }),
    );
  });

  test("never swap two numbers, and leave whole ones as they are", () => {
    fc.assert(
      fc.property(size, size, (one, other) => {
        expect(wholeUnits(Math.min(one, other))).toBeLessThanOrEqual(wholeUnits(Math.max(one, other)));
        expect(wholeUnits(Math.trunc(one))).toBe(Math.trunc(one) + 0);
      }),
    );
  });
});

const rain = fc.array(fc.oneof(fc.constant(0), fc.double({ min: 0, max: 100, noNaN: true })), { maxLength: 40 });
const times = fc.integer({ min: -300, max: 300 }).map((exponent) => 2 ** exponent);

describe("the grid", () => {
  test("holds all the water of a record in whole units that a double keeps exactly, however large or small the site", () => {
    fc.assert(
      fc.property(rain, garden, times, (inches, any, factor) => {
        const one = { ...any, contributingSquareFeet: any.contributingSquareFeet * factor, floorSquareFeet: any.floorSquareFeet * factor };
        const record = rainRecord(inches, 1);
        const grid = waterGrid(record, one);
        const reached = record.totalRunoffInches * grid.runoffPerInch + record.totalRainInches * grid.directPerInch;
        expect(reached).toBeLessThanOrEqual(2 ** 49 + 1);
        // Stored and a step's inflow at most, and every sum of them.
        expect(Math.max(2 * reached, grid.draw)).toBeLessThanOrEqual(2 ** 51);
        for (const whole of [grid.media, grid.capacity, grid.draw]) expect(whole >= 0 && Number.isSafeInteger(whole)).toBe(true);
        expect((Math.log2(grid.unitCubicFeet) % 1) + 0).toBe(0);
      }),
    );
  });

  test("is as fine as 2^-48 of the water of the record, or of what a step draws where that is more", () => {
    fc.assert(
      fc.property(rain, garden, (inches, one) => {
        const record = rainRecord(inches, 1);
        const grid = waterGrid(record, one);
        const store = basinStore(one);
        const reached =
          (record.totalRunoffInches * one.contributingSquareFeet * one.runoffShare + record.totalRainInches * store.rimSquareFeet) / 12;
        const most = Math.max(reached, store.drawCubicFeetPerHour);
        if (most > 0) expect(grid.unitCubicFeet).toBeLessThanOrEqual(most * 2 ** -48);
      }),
    );
  });

  test("keeps the basin's volumes to half a unit, up to twice the water that could fill it", () => {
    fc.assert(
      fc.property(rain, garden, (inches, one) => {
        const record = rainRecord(inches, 1);
        const { unitCubicFeet, media, capacity, runoffPerInch, directPerInch } = waterGrid(record, one);
        const store = basinStore(one);
        const most = 2 * (record.totalRunoffInches * runoffPerInch + record.totalRainInches * directPerInch);
        expect(Math.abs(media - Math.min(store.mediaCubicFeet / unitCubicFeet, most))).toBeLessThanOrEqual(0.5 + 1e-9);
        expect(Math.abs(capacity - Math.min(store.capacityCubicFeet / unitCubicFeet, most))).toBeLessThanOrEqual(0.5 + 1e-9);
      }),
    );
  });

  test("moves thirty years of hours by far less than 1e-9 of the water, against sums in plain doubles", () => {
    const { inches, stepHours } = inventedHours(30);
    const one = { ...roofGarden, designInchesPerHour: 0.03, evapotranspirationInchesPerDay: 0.1 };
    const store = basinStore(one);
    const inflowPerInch = (one.contributingSquareFeet * one.runoffShare + store.rimSquareFeet) / 12;
    let [stored, spilled, reached] = [0, 0, 0];
    for (const depth of inches) {
      reached += depth * inflowPerInch;
      stored = Math.max(stored + depth * inflowPerInch - store.drawCubicFeetPerHour * stepHours, 0);
      spilled += Math.max(stored - store.capacityCubicFeet, 0);
      stored = Math.min(stored, store.capacityCubicFeet);
    }
    const balance = longTermBalance(rainRecord(inches, stepHours), one);
    expect(spilled).toBeGreaterThan(0.05 * reached);
    expect(Math.abs(balance.overflowCubicFeet - spilled)).toBeLessThan(1e-9 * reached);
  });
});
