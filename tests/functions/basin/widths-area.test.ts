import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaFromWidths, simpsonWidths } from "../../../functions/basin/widths-area.ts";
import { measured } from "../measured.ts";

const widths = fc.array(measured(0, 40), { minLength: 2, maxLength: 15 });
const step = measured(0.1, 20);

describe("published examples", () => {
  // A surveying web page, December 2017 (read): offsets every 25 m, printed to 0.01 sq m.
  test("offsets of 3.6, 5, 6.5, 5.5, 7.3, 6 and 4 m every 25 m enclose 843.33 sq m by Simpson's rule", () => {
    expect(Math.abs(areaFromWidths([3.6, 5, 6.5, 5.5, 7.3, 6, 4], 25) - 843.33)).toBeLessThanOrEqual(0.005);
  });

  // A surveying examination, question 64713 of a public question bank (read): the printed key is 781 sq m.
  test("offsets of 0, 2.65, 3.8, 3.75, 4.65, 3.6, 5 and 5.8 m every 30 m enclose 781 sq m, the last strip a trapezoid", () => {
    expect(Math.abs(areaFromWidths([0, 2.65, 3.8, 3.75, 4.65, 3.6, 5, 5.8], 30) - 781)).toBeLessThanOrEqual(0.5);
  });

  // Besavilla, Surveying, page 5-177 (read): by Simpson's rule, printed to 0.01 sq m.
  test("offsets of 2, 3.2, 4, 3.5, 5, 4.5 and 6 m every 9 m enclose 212.40 sq m", () => {
    expect(Math.abs(areaFromWidths([2, 3.2, 4, 3.5, 5, 4.5, 6], 9) - 212.4)).toBeLessThanOrEqual(0.005);
  });
});

describe("computed by hand", () => {
  test("Simpson's rule takes all widths of an odd number, and all but the last of an even one", () => {
    expect(simpsonWidths([1, 2, 3])).toEqual([1, 2, 3]);
    expect(simpsonWidths([1, 2, 3, 4])).toEqual([1, 2, 3]);
    expect(simpsonWidths([1, 2])).toEqual([1]);
  });

  test("two widths of 4 and 6 ft, 10 ft apart, enclose 50 sq ft", () => {
    expect(areaFromWidths([4, 6], 10)).toBe(50);
  });

  test("a parabola 12 ft wide at the middle of 20 ft encloses two thirds of 240 sq ft", () => {
    expect(areaFromWidths([0, 12, 0], 10)).toBeCloseTo(160, 10);
  });

  test("five widths of an ellipse on axes of 20 and 10 ft come within 7 percent of its area", () => {
    const ellipse = [-10, -5, 0, 5, 10].map((along) => 10 * Math.sqrt(1 - (along / 10) ** 2));
    expect(areaFromWidths(ellipse, 5)).toBeGreaterThan((0.93 * Math.PI * 200) / 4);
    expect(areaFromWidths(ellipse, 5)).toBeLessThan((Math.PI * 200) / 4);
  });
});

describe("any outline", () => {
  test("of one width is a rectangle by either rule", () => {
    fc.assert(
      fc.property(measured(0, 40), fc.integer({ min: 2, max: 15 }), step, (width, count, apart) => {
        expect(areaFromWidths(new Array<number>(count).fill(width), apart)).toBeCloseTo(width * (count - 1) * apart, 6);
      }),
    );
  });

  test("that widens evenly is a trapezoid by either rule", () => {
    fc.assert(
      fc.property(measured(0, 10), measured(0, 3), fc.integer({ min: 2, max: 15 }), step, (start, more, count, apart) => {
        const even = Array.from({ length: count }, (_, place) => start + more * place);
        expect(areaFromWidths(even, apart)).toBeCloseTo(((even[0]! + even.at(-1)!) / 2) * (count - 1) * apart, 6);
      }),
    );
  });

  test("of a cubic edge is exact by Simpson's rule", () => {
    fc.assert(
      fc.property(measured(0, 5), measured(0, 3), measured(0, 1), fc.integer({ min: 1, max: 6 }), (a, b, c, pairs) => {
        const cubic = Array.from({ length: 2 * pairs + 1 }, (_, x) => a + b * x + c * x ** 3);
        const end = 2 * pairs;
        expect(areaFromWidths(cubic, 1)).toBeCloseTo(a * end + (b * end ** 2) / 2 + (c * end ** 4) / 4, 5);
      }),
    );
  });

  test("of an odd number of widths encloses the same measured from either end, and any no less when a width is more", () => {
    fc.assert(
      fc.property(widths, step, fc.nat(14), (measuredWidths, apart, place) => {
        const odd = simpsonWidths(measuredWidths);
        expect(areaFromWidths([...odd].reverse(), apart)).toBeCloseTo(areaFromWidths(odd, apart), 6);
        const wider = measuredWidths.map((width, at) => (at === place ? width + 1 : width));
        expect(areaFromWidths(wider, apart)).toBeGreaterThanOrEqual(areaFromWidths(measuredWidths, apart));
      }),
    );
  });
});
