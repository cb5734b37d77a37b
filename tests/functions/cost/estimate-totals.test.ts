import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { costOfUnit, estimateTotals } from "../../../functions/cost/estimate-totals.ts";
import { measured } from "../measured.ts";

// By hand: 15 percent of 1,200 is 180; 1,200 + 180 = 1,380; less a share of 500 leaves 880.
test("a contingency of 15 percent on 1,200 makes 1,380, and a cost share of 500 leaves 880 to pay", () => {
  expect(estimateTotals(1200, 15, 500)).toEqual({ contingency: 180, cost: 1380, ownPart: 880 });
});

// By hand: 1,380 / 460 = 3.
test("1,380 for 460 square feet treated is 3 a square foot", () => {
  expect(costOfUnit(1380, 460)).toBe(3);
});

describe("any estimate", () => {
  const money = measured(0, 100_000);
  const percent = measured(0, 100);

  test("is paid by the cost share and the own part together", () => {
    fc.assert(
      fc.property(money, percent, money, (cash, share, paid) => {
        const { cost, ownPart } = estimateTotals(cash, share, paid);
        expect(ownPart + paid).toBeCloseTo(cost, 6);
      }),
    );
  });

  test("costs its cash alone without a contingency, and never less with one", () => {
    fc.assert(
      fc.property(money, percent, (cash, share) => {
        expect(estimateTotals(cash, 0, 0).cost).toBe(cash);
        expect(estimateTotals(cash, share, 0).cost).toBeGreaterThanOrEqual(cash);
      }),
    );
  });

  test("costs half as much a unit over twice the units", () => {
    fc.assert(
      fc.property(money, measured(1, 5000), (cost, quantity) => {
        expect(costOfUnit(cost, 2 * quantity) * 2).toBeCloseTo(costOfUnit(cost, quantity), 9);
      }),
    );
  });
});
