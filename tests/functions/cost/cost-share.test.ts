import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { COST_SHARE_KINDS, programShare } from "../../../functions/cost/cost-share.ts";
import { measured } from "../measured.ts";

const kind = fc.constantFrom(...COST_SHARE_KINDS);
const basis = measured(0, 5000);
const rate = measured(0, 100);
const cap = fc.option(measured(0, 5000), { nil: undefined });
const smallest = measured(0, 200);

describe("published programs", () => {
  // District of Columbia rebate page (read): $41 a sq ft, cap $3,000, gardens of 50 sq ft or more.
  test.each([
    [50, 2050],
    [80, 3000],
    [49, 0],
    [73, 2993],
    [74, 3000],
  ])("41 a sq ft, capped at 3,000, pays a garden of %d sq ft %d", (squareFeet, paid) => {
    expect(programShare("per area", squareFeet, 41, 3000, 50)).toBe(paid);
  });

  test("without its cap, 80 sq ft would earn 3,280", () => {
    expect(programShare("per area", 80, 41, undefined, 50)).toBe(3280);
  });

  // Seine-Rat Roseau Watershed District page (read): the whole cost to 750 for homes, half to 5,000 for schools.
  test.each([
    [600, 100, 750, 600],
    [900, 100, 750, 750],
    [8000, 50, 5000, 4000],
    [12_000, 50, 5000, 5000],
  ])("a cost of %d at %d percent, capped at %d, gets %d", (cost, percent, most, paid) => {
    expect(programShare("percent", cost, percent, most, 0)).toBe(paid);
  });
});

describe("computed by hand", () => {
  test("a flat sum is paid once the garden is large enough", () => {
    expect(programShare("flat", 120, 500, undefined, 100)).toBe(500);
    expect(programShare("flat", 100, 500, undefined, 100)).toBe(500);
    expect(programShare("flat", 99, 500, undefined, 100)).toBe(0);
  });

  test("2 a gallon held pays 800 for 400 gallons", () => {
    expect(programShare("per volume", 400, 2, undefined, 0)).toBe(800);
  });
});

describe("any program", () => {
  test("pays between nothing and its cap", () => {
    fc.assert(
      fc.property(kind, basis, rate, measured(0, 5000), smallest, (form, of, at, most, least) => {
        const paid = programShare(form, of, at, most, least);
        expect(paid).toBeGreaterThanOrEqual(0);
        expect(paid).toBeLessThanOrEqual(most);
      }),
    );
  });

  test("pays nothing under its smallest basis and no less for a larger one", () => {
    fc.assert(
      fc.property(kind, basis, rate, cap, smallest, basis, (form, of, at, most, least, more) => {
        if (of < least) expect(programShare(form, of, at, most, least)).toBe(0);
        expect(programShare(form, of + more, at, most, least)).toBeGreaterThanOrEqual(programShare(form, of, at, most, least));
      }),
    );
  });

  test("of a percent never pays more than the cost", () => {
    fc.assert(
      fc.property(basis, rate, cap, (cost, percent, most) => {
        expect(programShare("percent", cost, percent, most, 0)).toBeLessThanOrEqual(cost * (1 + 1e-12));
      }),
      { examples: [[750, 100, undefined]] },
    );
  });
});
