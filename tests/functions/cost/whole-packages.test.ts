import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ROUNDING_SHARE, wholePackages } from "../../../functions/cost/whole-packages.ts";
import { measured } from "../measured.ts";

const quantity = measured(0, 1000);
const size = measured(0.1, 50);

describe("computed by hand", () => {
  test("10.0000001 packages are 10, and 10.001 are 11", () => {
    expect(wholePackages(10.0000001, 1)).toBe(10);
    expect(wholePackages(10.001, 1)).toBe(11);
  });

  test("packages of 0.1 for 0.3 are 3, although 0.3 / 0.1 computes a hair under 3 and (0.1 + 0.2) / 0.1 a hair over", () => {
    expect(wholePackages(0.3, 0.1)).toBe(3);
    expect(wholePackages(0.1 + 0.2, 0.1)).toBe(3);
  });

  test("nothing takes no package", () => {
    expect(wholePackages(0, 5)).toBe(0);
  });
});

describe("any packages", () => {
  test("hold the quantity but for rounding, with less than one to spare", () => {
    fc.assert(
      fc.property(quantity, size, (wanted, each) => {
        const packages = wholePackages(wanted, each);
        expect(Number.isInteger(packages)).toBe(true);
        expect(packages * each).toBeGreaterThanOrEqual(wanted * (1 - ROUNDING_SHARE) - 1e-9);
        expect((packages - 1) * each).toBeLessThan(wanted + 1e-9);
      }),
    );
  });

  test("are exactly as many as went in, whatever the size", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000 }), size, (count, each) => {
        expect(wholePackages(count * each, each)).toBe(count);
      }),
    );
  });

  test("are no fewer for more", () => {
    fc.assert(
      fc.property(quantity, size, quantity, (wanted, each, more) => {
        expect(wholePackages(wanted + more, each)).toBeGreaterThanOrEqual(wholePackages(wanted, each));
      }),
    );
  });
});
