import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { limitInWords, speakers } from "../../../../functions/worksheet/calling/speaker.ts";

const { us, metric } = speakers;

describe("quantities in words", () => {
  test("each row speaks its own units", () => {
    expect([us.depth(6), metric.depth(6)]).toEqual(["6 in", "152 mm"]);
    expect([us.length(10), metric.length(10)]).toEqual(["10 ft", "3.05 m"]);
    expect([us.rate(0.25), metric.rate(0.25)]).toEqual(["0.25 in/h", "6.35 mm/h"]);
    expect([us.area(100), metric.area(100)]).toEqual(["100 sq ft", "9.29 m²"]);
    expect([us.waterVolume(50), metric.waterVolume(50)]).toEqual(["50 cu ft", "1.42 m³"]);
    expect([us.earthVolume(2), metric.earthVolume(2)]).toEqual(["2 cu yd", "1.53 m³"]);
    expect([us.hours(62.04), metric.hours(62.04)]).toEqual(["62 h", "62 h"]);
    expect([us.hours(47.96, "up"), us.say("share", 0.5), us.say("weight", 2)]).toEqual(["48 h", "0.5", "2 tons"]);
  });

  test.each([
    [4.634, "4.63 in"],
    [46.34, "46.3 in"],
    [463.4, "463 in"],
    [12345.6, "12,346 in"],
    [1234567, "1,234,567 in"],
    [0.012345, "0.0123 in"],
    [0, "0 in"],
    [-4.634, "-4.63 in"],
  ])("three digits are enough, and the whole part is never cut: %f", (inches, words) => {
    expect(us.depth(inches)).toBe(words);
  });

  test("a limit that must hold as printed is rounded to the safe side", () => {
    expect([us.depth(4.669, "down"), us.depth(4.661, "up")]).toEqual(["4.66 in", "4.67 in"]);
  });

  test("a number that is already short stays as it is, however it is rounded", () => {
    // 4.6 times 100 is 459.99999999999994 in binary arithmetic.
    for (const rounding of ["nearest", "down", "up"] as const) {
      expect([us.depth(4.6, rounding), us.depth(0.29, rounding), us.depth(8, rounding)]).toEqual(["4.6 in", "0.29 in", "8 in"]);
    }
  });

  test("a number too large or too small to write out is written in powers of ten", () => {
    expect(us.depth(1e30)).toBe("1e+30 in");
    expect(us.hours(Number.POSITIVE_INFINITY)).toBe("over 1e+308 h");
    expect(metric.depth(1e308)).toBe("over 1e+308 mm");
    expect(us.depth(1e-300)).toMatch(/ in$/);
  });

  test("rounding down never gives more, nor rounding up less, than a billionth part", () => {
    const inches = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
    const spoken = (words: string): number => Number.parseFloat(words.replaceAll(",", ""));
    fc.assert(
      fc.property(inches, (depth) => {
        expect(spoken(us.depth(depth, "down"))).toBeLessThanOrEqual(depth * (1 + 1e-9));
        expect(spoken(us.depth(depth, "up"))).toBeGreaterThanOrEqual(depth * (1 - 1e-9));
        expect(Math.abs(spoken(us.depth(depth)) / depth - 1)).toBeLessThan(0.0051);
      }),
    );
  });

  test("a limit is written in full, and zero needs no unit", () => {
    expect([
      limitInWords(152.4, "mm"),
      limitInWords(43560, ""),
      limitInWords(0, "in"),
      limitInWords(0.3048, "m"),
      limitInWords(-25400.5, "mm"),
    ]).toEqual(["152.4 mm", "43,560", "0", "0.3048 m", "-25,400.5 mm"]);
  });
});
