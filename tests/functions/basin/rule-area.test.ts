import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ruleAreaSquareFeet, USUAL_RULE_PERCENT } from "../../../functions/basin/rule-area.ts";
import { measured } from "../measured.ts";

describe("rules of thumb", () => {
  // Common practice, no source.
  test("500 sq ft of roof and paving needs 50 to 60 sq ft of garden", () => {
    expect(ruleAreaSquareFeet(500, USUAL_RULE_PERCENT)).toBeCloseTo(50, 12);
    expect(ruleAreaSquareFeet(500, 12)).toBeCloseTo(60, 12);
  });

  // District of Columbia rain garden rebate (read): at least 1 to 10, so 50 sq ft serve 500 at most.
  test("a garden of 50 sq ft serves 500 sq ft at 1 to 10", () => {
    expect(ruleAreaSquareFeet(500, 10)).toBe(50);
  });

  // Illinois DNR (read): 25 percent of a roof of 50 by 15 ft is 187.5 sq ft.
  test("a quarter of 750 sq ft is 187.5 sq ft", () => {
    expect(ruleAreaSquareFeet(750, 25)).toBe(187.5);
  });
});

describe("any area", () => {
  const area = measured(0, 100_000);
  const percent = measured(0, 100);

  test("needs a garden no larger than itself and no smaller than nothing", () => {
    fc.assert(
      fc.property(area, percent, (contributing, part) => {
        expect(ruleAreaSquareFeet(contributing, part)).toBeGreaterThanOrEqual(0);
        expect(ruleAreaSquareFeet(contributing, part)).toBeLessThanOrEqual(contributing);
      }),
      {
        examples: [
          [0, 0],
          [1e5, 100],
        ],
      },
    );
  });

  test("needs a larger garden by a larger percent", () => {
    fc.assert(
      fc.property(area, measured(0, 90), (contributing, part) => {
        expect(ruleAreaSquareFeet(contributing, part + 10)).toBeGreaterThanOrEqual(ruleAreaSquareFeet(contributing, part));
      }),
    );
  });

  test("needs as much garden in two halves as whole", () => {
    fc.assert(
      fc.property(area, percent, (contributing, part) => {
        expect(2 * ruleAreaSquareFeet(contributing / 2, part)).toBeCloseTo(ruleAreaSquareFeet(contributing, part), 8);
      }),
    );
  });
});
