import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { depthFit, factorAreaSquareFeet, sizeFactor } from "../../../functions/basin/factor-area.ts";
import { FACTOR_SOILS, farFactors, nearFactors, type FactorSoil } from "../../../functions/published/wisconsin-size-factors.ts";
import { measured } from "../measured.ts";

const soil = fc.constantFrom(...FACTOR_SOILS);
const ponding = fc.double({ min: 0.1, max: 24, noNaN: true });
const contributing = measured(0, 5000);

const areaFor = (squareFeet: number, of: FactorSoil, inches: number, isFar = false): number =>
  factorAreaSquareFeet(squareFeet, sizeFactor(of, inches, isFar));

// Wisconsin homeowner manual GWQ037, 2003; the evidence of each factor is what the test says of it.
describe("the published factors", () => {
  test.each([
    ["sandy", 4, 0.19, "read"],
    ["sandy", 6, 0.15, "read"],
    ["sandy", 8, 0.08, "read"],
    ["silty", 4, 0.34, "read"],
    ["silty", 6, 0.25, "read"],
    ["silty", 8, 0.16, "from memory"],
    ["clayey", 4, 0.43, "from memory"],
    ["clayey", 6, 0.32, "read"],
    ["clayey", 8, 0.2, "from memory"],
  ] as const)("near the downspout, %s soil under %d in of ponding takes %d (%s)", (of, inches, factor, evidence) => {
    expect(sizeFactor(of, inches, false)).toEqual({ factor, evidence });
  });

  test.each([
    ["sandy", 0.03],
    ["silty", 0.06],
    ["clayey", 0.1],
  ] as const)("over 30 ft away, %s soil takes %d at any depth (from memory)", (of, factor) => {
    for (const inches of [3, 5.5, 8, 12]) expect(sizeFactor(of, inches, true)).toEqual({ factor, evidence: "from memory" });
  });

  test("factors are printed to 0.01", () => {
    expect([nearFactors.printedTo, farFactors.printedTo]).toEqual([0.01, 0.01]);
  });
});

describe("published examples", () => {
  // Illinois DNR, rain garden size requirement (read): 750 sq ft of roof, loam, 6 to 7 in.
  test("a roof of 750 sq ft on loam, 6 to 7 in deep, takes 187.5 sq ft", () => {
    expect(areaFor(750, "silty", 6)).toBe(187.5);
    expect(areaFor(750, "silty", 7)).toBe(187.5);
  });

  // Extension slides after Dietz, University of Connecticut (read): areas in sandy soils, printed to 1 sq ft.
  test.each([
    [200, 4, 38],
    [400, 4, 76],
    [600, 4, 114],
    [800, 4, 152],
    [1000, 4, 190],
    [200, 6, 30],
    [400, 6, 60],
    [600, 6, 90],
    [800, 6, 120],
    [1000, 6, 150],
    [200, 8, 16],
    [400, 8, 32],
    [600, 8, 48],
    [800, 8, 64],
    [1000, 8, 80],
  ])("%d sq ft draining to a sandy garden %d in deep take %d sq ft", (squareFeet, inches, printed) => {
    expect(Math.abs(areaFor(squareFeet, "sandy", inches) - printed)).toBeLessThanOrEqual(0.5);
  });

  // Input from the same slides, the answer computed by hand: 0.15 x 1,917.
  test("1,917 sq ft draining to a sandy garden 6 in deep take 287.55 sq ft", () => {
    expect(areaFor(1917, "sandy", 6)).toBeCloseTo(287.55, 9);
  });
});

describe("gaps in the table", () => {
  test.each([
    [5.01, 0.34],
    [5.5, 0.34],
    [5.99, 0.34],
    [7.01, 0.25],
    [7.5, 0.25],
    [7.99, 0.25],
  ])("%d in on silty soil lies between two bands and takes the larger factor, %d", (inches, factor) => {
    expect(depthFit(inches)).toBe("between bands");
    expect(sizeFactor("silty", inches, false).factor).toBe(factor);
  });

  test.each([
    [2.9, "shallower", 0.34],
    [8.1, "deeper", 0.16],
  ] as const)("%d in is %s than the bands and takes the factor of the nearest, %d", (inches, fit, factor) => {
    expect(depthFit(inches)).toBe(fit);
    expect(sizeFactor("silty", inches, false).factor).toBe(factor);
  });

  test.each([3, 4, 5, 6, 6.5, 7, 8])("%d in lies in a band, typed in millimeters too", (inches) => {
    expect(depthFit(inches)).toBe("in a band");
    expect(depthFit((inches * 25.4) / 25.4)).toBe("in a band");
    expect(depthFit(inches * (1 + 1e-12))).toBe("in a band");
    expect(depthFit(inches * (1 - 1e-12))).toBe("in a band");
  });
});

describe("any garden", () => {
  test("is no larger the deeper it ponds, and no smaller the slower its soil", () => {
    fc.assert(
      fc.property(contributing, ponding, ponding, soil, fc.boolean(), (squareFeet, one, other, of, isFar) => {
        expect(areaFor(squareFeet, of, Math.max(one, other), isFar)).toBeLessThanOrEqual(
          areaFor(squareFeet, of, Math.min(one, other), isFar),
        );
        expect(areaFor(squareFeet, "sandy", one, isFar)).toBeLessThanOrEqual(areaFor(squareFeet, "silty", one, isFar));
        expect(areaFor(squareFeet, "silty", one, isFar)).toBeLessThanOrEqual(areaFor(squareFeet, "clayey", one, isFar));
      }),
    );
  });

  test("grows in proportion to the area that drains to it", () => {
    fc.assert(
      fc.property(contributing, ponding, soil, fc.boolean(), (squareFeet, inches, of, isFar) => {
        expect(areaFor(2 * squareFeet, of, inches, isFar)).toBe(2 * areaFor(squareFeet, of, inches, isFar));
      }),
      { examples: [[0, 6, "silty", false]] },
    );
  });

  test("takes one of the printed factors, never one in between", () => {
    const printed = nearFactors.values.flatMap(({ factors }) => FACTOR_SOILS.map((of) => factors[of].factor));
    fc.assert(
      fc.property(ponding, soil, (inches, of) => {
        expect(printed).toContain(sizeFactor(of, inches, false).factor);
      }),
    );
  });

  test("is smaller over 30 ft away than near, for the same soil and depth", () => {
    fc.assert(
      fc.property(ponding, soil, (inches, of) => {
        expect(sizeFactor(of, inches, true).factor).toBeLessThan(sizeFactor(of, inches, false).factor);
      }),
    );
  });
});
