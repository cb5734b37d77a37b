import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stockpileCone, USUAL_RESTING_DEGREES } from "../../../functions/earthwork/stockpile.ts";
import { measured } from "../measured.ts";

const loose = measured(0, 100);
const degrees = measured(5, 60);

// Computed by hand from the definition.
describe("computed by hand", () => {
  test("10 cu yd loose at 37 degrees stand 5.27 ft high on a radius of 6.99 ft and cover 153.7 sq ft", () => {
    const { radiusFeet, heightFeet, groundSquareFeet } = stockpileCone(10, USUAL_RESTING_DEGREES);
    expect(radiusFeet).toBeCloseTo(6.99, 2);
    expect(heightFeet).toBeCloseTo(5.27, 2);
    expect(groundSquareFeet).toBeCloseTo(153.7, 0);
  });

  test("at 45 degrees a heap is as high as its radius", () => {
    const { radiusFeet, heightFeet } = stockpileCone(3, 45);
    expect(heightFeet).toBeCloseTo(radiusFeet, 12);
  });

  test("no earth makes no heap", () => {
    expect(stockpileCone(0, 37)).toEqual({ radiusFeet: 0, heightFeet: 0, groundSquareFeet: 0 });
  });
});

describe("any heap", () => {
  test("holds its volume, a third of ground times height", () => {
    fc.assert(
      fc.property(loose, degrees, (cubicYards, angle) => {
        const { heightFeet, groundSquareFeet } = stockpileCone(cubicYards, angle);
        expect(Math.abs((groundSquareFeet * heightFeet) / 3 - 27 * cubicYards)).toBeLessThanOrEqual(1e-9 * 27 * cubicYards);
      }),
    );
  });

  test("lies lower and wider the flatter it rests", () => {
    fc.assert(
      fc.property(measured(0.1, 100), degrees, measured(0.1, 20), (cubicYards, angle, steeper) => {
        const flat = stockpileCone(cubicYards, angle);
        const steep = stockpileCone(cubicYards, angle + steeper);
        expect(steep.heightFeet).toBeGreaterThan(flat.heightFeet);
        expect(steep.radiusFeet).toBeLessThan(flat.radiusFeet);
      }),
    );
  });

  test("of eight times the earth is twice as high and covers four times the ground", () => {
    fc.assert(
      fc.property(loose, degrees, (cubicYards, angle) => {
        const one = stockpileCone(cubicYards, angle);
        const eight = stockpileCone(8 * cubicYards, angle);
        expect(eight.heightFeet).toBeCloseTo(2 * one.heightFeet, 9);
        expect(eight.groundSquareFeet).toBeCloseTo(4 * one.groundSquareFeet, 6);
      }),
    );
  });
});
