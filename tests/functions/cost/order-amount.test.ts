import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { orderAmount, orderedQuantity, type Price } from "../../../functions/cost/order-amount.ts";
import { measured } from "../measured.ts";

const loose: Price = { unitPrice: 32, packageSize: undefined, minimumOrder: 0, delivery: 0 };
const quantity = measured(0, 200);
const price: fc.Arbitrary<Price> = fc.record({
  unitPrice: measured(0, 100),
  packageSize: fc.option(measured(0.1, 20), { nil: undefined }),
  minimumOrder: measured(0, 30),
  delivery: measured(0, 150),
});

// Computed by hand from the definition; whole packages and minimum orders are common practice, no source.
describe("computed by hand", () => {
  test("2.3 cu yd of compost at 32 a cu yd is 73.60", () => {
    expect(orderAmount(2.3, loose)).toBeCloseTo(73.6, 10);
  });

  test("sold by the half yard it is 2.5 cu yd, 80", () => {
    expect(orderAmount(2.3, { ...loose, packageSize: 0.5 })).toBe(80);
  });

  test("with a minimum of 3 cu yd it is 96, and with 60 for delivery 156", () => {
    expect(orderAmount(2.3, { ...loose, minimumOrder: 3 })).toBe(96);
    expect(orderAmount(2.3, { ...loose, minimumOrder: 3, delivery: 60 })).toBe(156);
  });

  test("a minimum between two packages is rounded up to whole packages", () => {
    expect(orderedQuantity(1, { ...loose, packageSize: 38, minimumOrder: 50 })).toBe(76);
  });

  test("an order of nothing costs nothing, delivery included", () => {
    expect(orderAmount(0, { ...loose, minimumOrder: 3, delivery: 60 })).toBe(0);
  });
});

describe("any order", () => {
  test("buys no less than asked and no less than the minimum", () => {
    fc.assert(
      fc.property(quantity, price, (asked, of) => {
        const bought = orderedQuantity(asked, of);
        expect(bought).toBeGreaterThanOrEqual(asked * (1 - 2e-6));
        expect(bought).toBeGreaterThanOrEqual(of.minimumOrder * (1 - 2e-6));
      }),
    );
  });

  test("buys less than a package more than asked, or the minimum", () => {
    fc.assert(
      fc.property(quantity, price, (asked, of) => {
        expect(orderedQuantity(asked, of)).toBeLessThan(Math.max(asked, of.minimumOrder) + (of.packageSize ?? 1e-9) + 1e-9);
      }),
    );
  });

  test("costs its units and one delivery, and no less for more", () => {
    fc.assert(
      fc.property(measured(0.001, 200), price, quantity, (asked, of, more) => {
        const amount = orderAmount(asked, of);
        expect(amount).toBeCloseTo(orderedQuantity(asked, of) * of.unitPrice + of.delivery, 9);
        expect(orderAmount(asked + more, of)).toBeGreaterThanOrEqual(amount);
      }),
    );
  });
});
