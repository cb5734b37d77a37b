import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { demoYards } from "../../../../addin/actions/demo/demo-program.ts";
import {
  figuresOf,
  followsMeasurement,
  howMeasured,
  measuredArea,
  measurementFrom,
  SHAPE_NAMES,
  type Measurement,
} from "../../../../addin/actions/yard/measure-surface.ts";
import { measured } from "../../../functions/measured.ts";

const areaOf = (measurement: Measurement, units: "us" | "metric" = "us") => {
  const { area } = measuredArea(measurement, units);
  return "value" in area ? area.value : area.sentence;
};

describe("an area from a tape", () => {
  // Computed by hand: 40 x 12; 20 x 9 / 2; half of pi 14^2 / 4 = 76.969; (78 + 90) / 2 x 36; (40 + 3) x (24 + 3); 40 x 15 x 4 / 5.
  test.each([
    ["a drive of 40 by 12 ft is 480 sq ft", { way: "rectangle", figures: [40, 12] }, 480],
    ["a corner bed of 20 ft base and 9 ft height is 90 sq ft", { way: "triangle", figures: [20, 9] }, 90],
    ["half a round patio 14 ft across is 77 sq ft", { way: "circle", figures: [14, 0.5] }, 76.969],
    ["a whole round patio 14 ft across is 153.9 sq ft", { way: "circle", figures: [14, null] }, 153.938],
    ["a walk that widens from 78 to 90 over 36 ft is 3,024 sq ft", { way: "trapezoid", figures: [78, 90, 36] }, 3024],
    ["a house of 40 by 24 ft with 1.5 ft of overhang has 1,161 sq ft of roof", { way: "roof footprint", figures: [40, 24, 1.5] }, 1161],
    ["the same house without overhang has 960 sq ft", { way: "roof footprint", figures: [40, 24, null] }, 960],
    ["40 ft of eave and 15 ft up a slope of 3 in 4 are 480 sq ft in plan", { way: "roof slope", figures: [40, 15, 3, 4] }, 480],
  ] as const)("%s", (_, measurement, area) => {
    expect(areaOf(measurement)).toBeCloseTo(area, 3);
  });

  // A surveying web page (read): Simpson's rule, printed to 0.01 sq m. A surveying examination, question 64713 (read): its key is 781 sq m.
  test("seven offsets every 25 m enclose 843.33 sq m, and it is said that Simpson's rule was used", () => {
    const lawn: Measurement = { way: "widths", step: 25, widths: [3.6, 5, 6.5, 5.5, 7.3, 6, 4] };
    expect(areaOf(lawn, "metric")).toBeCloseTo(843.33, 2);
    expect(measuredArea(lawn, "metric").notes.join(" ")).toMatch(/^Computed by Simpson's rule/);
  });

  test("eight offsets every 30 m enclose 781 sq m, and it is said that the last strip is a trapezoid", () => {
    const lawn: Measurement = { way: "widths", step: 30, widths: [0, 2.65, 3.8, 3.75, 4.65, 3.6, 5, 5.8] };
    expect(areaOf(lawn, "metric")).toBeCloseTo(781, 0);
    expect(measuredArea(lawn, "metric").notes.join(" ")).toMatch(/^Computed by Simpson's rule, and the last strip as a trapezoid/);
  });

  test("a shape in metres has as many square metres as the same in feet has square feet", () => {
    for (const way of SHAPE_NAMES) {
      const measurement: Measurement = { way, figures: figuresOf(way).map(({ kind }) => (kind === "part" ? 0.5 : 6)) };
      expect(areaOf(measurement, "metric")).toBe(areaOf(measurement, "us"));
    }
  });
});

describe("what cannot be measured so", () => {
  test.each([
    ["Width is missing.", { way: "rectangle", figures: [40, null] }],
    ["Height must be 0 or more.", { way: "triangle", figures: [20, -9] }],
    ["Part must be 1 or less.", { way: "circle", figures: [14, 50] }],
    ["Run must be more than 0.", { way: "roof slope", figures: [40, 15, 3, 0] }],
  ] as const)("says: %s", (sentence, measurement) => {
    expect(areaOf(measurement)).toBe(sentence);
  });

  test("widths without a step, or one width alone, say so", () => {
    expect(areaOf({ way: "widths", step: null, widths: [2, 3] })).toBe("Step is missing.");
    expect(String(areaOf({ way: "widths", step: 3, widths: [2] }))).toMatch(/width/i);
  });
});

describe("what the sheet keeps of it", () => {
  test.each([
    ["rectangle: length 40 ft, width 12 ft", { way: "rectangle", figures: [40, 12] }, "us"],
    ["circle: diameter 4.2 m, part 0.5", { way: "circle", figures: [4.2, 0.5] }, "metric"],
    ["roof slope: along the eave 40 ft, up the slope 15 ft, rise 6, run 12", { way: "roof slope", figures: [40, 15, 6, 12] }, "us"],
    ["widths: step 5 ft, widths 0 3.6 5 ft", { way: "widths", step: 5, widths: [0, 3.6, 5] }, "us"],
  ] as const)("reads %s", (text, measurement, units) => {
    expect(howMeasured(measurement, units)).toBe(text);
    expect(measurementFrom(text, units)).toEqual(measurement);
  });

  test("every measurement comes back as it was typed", () => {
    const shape = fc
      .constantFrom(...SHAPE_NAMES)
      .chain((way) =>
        fc
          .tuple(
            ...figuresOf(way).map(({ kind, blank }) =>
              blank === undefined ? measured(0, 90) : fc.option(measured(0, kind === "part" ? 1 : 3), { nil: null }),
            ),
          )
          .map((figures): Measurement => ({ way, figures })),
      );
    const widths = fc.record({
      way: fc.constant("widths" as const),
      step: measured(0.1, 20),
      widths: fc.array(measured(0, 40), { minLength: 2, maxLength: 12 }),
    });
    fc.assert(
      fc.property(fc.oneof(shape, widths), fc.constantFrom("us" as const, "metric" as const), (measurement, units) => {
        expect(measurementFrom(howMeasured(measurement, units), units)).toEqual(measurement);
      }),
    );
  });

  test("a person's own words, another unit and hostile text are no measurement", () => {
    for (const text of [
      "from the site plan",
      "rectangle: length 40 ft",
      "rectangle: length 40 m, width 12 m",
      "__proto__: length 1 ft",
      "widths: step 5 ft",
      '=HYPERLINK("x")',
      "",
    ]) {
      expect(measurementFrom(text, "us")).toBeNull();
    }
  });

  test("any text at all is read without a fault", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.constantFrom(...SHAPE_NAMES, "widths").chain((way) => fc.string().map((rest) => `${way}: ${rest}`)),
        ),
        (text) => {
          const measurement = measurementFrom(text, "us");
          if (measurement !== null) expect(howMeasured(measurement, "us")).toBe(text.trim());
        },
      ),
    );
  });

  test("an area typed over in the sheet no longer follows its measurements", () => {
    expect(followsMeasurement(480, "rectangle: length 40 ft, width 12 ft", "us")).toBe(true);
    expect(followsMeasurement(500, "rectangle: length 40 ft, width 12 ft", "us")).toBe(false);
    expect(followsMeasurement(500, "from the site plan", "us")).toBeNull();
    expect(followsMeasurement(500, null, "us")).toBeNull();
  });
});

// By hand: 20 x 12 = 240 sq ft; 8 x 1.5 = 12 sq m; (68 + 2) x (28 + 2) = 2,100 sq ft; 10 / 3 x (20 + 80 + 44 + 80 + 16) = 800 sq ft.
test("the measured surfaces of the invented program follow from their measurements", () => {
  const measuredSurfaces = demoYards.flatMap(({ surfaces, units = "us" }) =>
    surfaces.flatMap(([surface, , area, , how]) => (how === undefined ? [] : [[surface, area, followsMeasurement(area, how, units)]])),
  );
  expect(measuredSurfaces).toEqual([
    ["Drive", 240, true],
    ["Path", 12, true],
    ["Boathouse roof", 2100, true],
    ["Court", 800, true],
  ]);
});
