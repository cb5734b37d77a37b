import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  CUBIC_FEET_PER_CUBIC_YARD,
  fromUs,
  hasDimension,
  INCHES_PER_FOOT,
  kinds,
  metricPerUs,
  toUs,
  unitOf,
  type NumberKind,
} from "../../functions/quantities.ts";

const everyKind = Object.keys(kinds) as NumberKind[];

// NIST Special Publication 811, 2008 edition, appendix B.8 (from memory): the factors printed in bold are exact.
// The inch, foot and pound are themselves; the others are exact products of them, computed by hand from the definitions.
describe("units of the trade", () => {
  test.each<[NumberKind, string, string, number]>([
    ["depth", "in", "mm", 25.4],
    ["length", "ft", "m", 0.3048],
    ["rate", "in/h", "mm/h", 25.4],
    ["area", "sq ft", "m²", 0.09290304],
    ["waterVolume", "cu ft", "m³", 0.028316846592],
    ["earthVolume", "cu yd", "m³", 0.764554857984],
    ["flow", "cfs", "L/s", 28.316846592],
    ["weight", "tons", "t", 0.90718474],
    ["load", "lb", "kg", 0.45359237],
  ])("%s: one %s is so many %s", (kind, us, metric, factor) => {
    expect([unitOf(kind, "us"), unitOf(kind, "metric"), metricPerUs(kind)]).toEqual([us, metric, factor]);
  });

  test("areas and volumes are the foot squared and cubed, and 27 cubic feet make a cubic yard", () => {
    expect(metricPerUs("area")).toBeCloseTo(0.3048 ** 2, 15);
    expect(metricPerUs("waterVolume")).toBeCloseTo(0.3048 ** 3, 15);
    expect(metricPerUs("earthVolume")).toBeCloseTo(CUBIC_FEET_PER_CUBIC_YARD * 0.3048 ** 3, 15);
    expect(metricPerUs("flow")).toBeCloseTo(1000 * 0.3048 ** 3, 12);
  });

  test("a foot is 12 inches, in metric too", () => {
    expect(INCHES_PER_FOOT * metricPerUs("depth")).toBeCloseTo(1000 * metricPerUs("length"), 12);
  });

  test("a US ton is 2,000 pounds", () => {
    expect(metricPerUs("weight") * 1000).toBeCloseTo(2000 * metricPerUs("load"), 9);
  });

  test("25.4 mm is exactly 1 in", () => {
    expect(toUs("depth", 25.4, "metric")).toBe(1);
    expect(fromUs("depth", 1, "metric")).toBe(25.4);
  });

  test.each(["money", "hours", "minutes", "share", "percent", "number", "count", "lengthInSameUnit"] as const)(
    "%s is the same number in both systems and has no unit to write",
    (kind) => {
      expect(hasDimension(kind)).toBe(false);
      expect([toUs(kind, 7, "metric"), fromUs(kind, 7, "metric")]).toEqual([7, 7]);
      expect([unitOf(kind, "us"), unitOf(kind, "metric")]).toEqual(["", ""]);
    },
  );

  test("a kind has both units or neither", () => {
    for (const kind of everyKind) expect(unitOf(kind, "us") === "").toBe(unitOf(kind, "metric") === "");
  });

  test("converting there and back gives the same quantity", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...everyKind),
        fc.constantFrom("us" as const, "metric" as const),
        fc.double({ min: 1e-9, max: 1e9, noNaN: true }),
        (kind, system, value) => {
          expect(Math.abs(fromUs(kind, toUs(kind, value, system), system) / value - 1)).toBeLessThan(1e-15 * 4);
        },
      ),
    );
  });
});
