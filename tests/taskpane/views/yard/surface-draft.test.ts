import { describe, expect, test } from "vitest";
import {
  BLANK_SURFACE,
  differenceWords,
  readSurface,
  typedFrom,
  type SurfaceRow,
  type TypedSurface,
} from "../../../../taskpane/views/yard/surface-draft.ts";

const typed = (changed: Partial<TypedSurface>): TypedSurface => ({ ...BLANK_SURFACE, surface: "Drive", cover: "paving", ...changed });

/** A row of Surfaces as it is read; the fields that these tests do not ask for are left out. */
function rowOf(cells: { area: number | null; howMeasured: string | null }): SurfaceRow {
  const all = { siteId: "Y-001", surface: "Drive", cover: "paving", share: null, drainingArea: null, downspout: null, ...cells };
  return { row: 3, record: all, cells: all } as unknown as SurfaceRow;
}

describe("a surface as typed", () => {
  test("of a known area is written with the words on how it was measured", () => {
    expect(readSurface(typed({ area: "480", words: " from the site plan ", share: "0.5" }), "us").entry).toEqual({
      surface: "Drive",
      cover: "paving",
      area: 480,
      share: 0.5,
      howMeasured: "from the site plan",
    });
  });

  // 40 x 12 = 480.
  test("of 40 by 12 ft is written as 480 sq ft, with both lengths beside it", () => {
    expect(readSurface(typed({ way: "rectangle", figures: ["40", "12"] }), "us").entry).toMatchObject({
      area: 480,
      share: null,
      howMeasured: "rectangle: length 40 ft, width 12 ft",
    });
  });

  // 4 x 3 = 12.
  test("in a metric yard keeps its metres", () => {
    expect(readSurface(typed({ way: "rectangle", figures: ["4", "3"] }), "metric").entry).toMatchObject({
      area: 12,
      howMeasured: "rectangle: length 4 m, width 3 m",
    });
  });

  // Simpson's rule, by hand: 5 / 3 x (0 + 4 x 6 + 2 x 8 + 4 x 6 + 0) = 5 / 3 x 64 = 106.67.
  test.each(["0 6 8 6 0", "0, 6, 8, 6, 0", "0; 6;8 ;6; 0"])("by widths %s every 5 ft is 106.67 sq ft, by Simpson's rule", (widths) => {
    const { entry, notes } = readSurface(typed({ way: "widths", step: "5", widths }), "us");
    expect(entry?.area).toBeCloseTo(106.667, 3);
    expect(entry?.howMeasured).toBe("widths: step 5 ft, widths 0 6 8 6 0 ft");
    expect(notes[0]).toMatch(/^Computed by Simpson's rule/);
  });

  test("keeps what was typed one way when another is chosen", () => {
    const both = typed({ way: "widths", area: "480", figures: ["40", "12"], step: "5", widths: "0 6 0" });
    expect(readSurface({ ...both, way: "rectangle" }, "us").entry?.area).toBe(480);
    expect(readSurface({ ...both, way: "area" }, "us").entry?.area).toBe(480);
  });
});

describe("what is at fault", () => {
  test("is said at its own field, and nothing is written", () => {
    const { entry, faults, measured } = readSurface(typed({ way: "roof slope", figures: ["40", "", "6", "0"], share: "50" }), "us");
    expect(entry).toBeNull();
    expect(measured).toBeNull();
    expect(faults.figures).toEqual([null, "Up the slope is missing.", null, "Run must be more than 0."]);
    expect(faults.share).toBe("Share draining here must be 1 or less.");
  });

  test.each([
    ["0 6,5 8", 'Width 2 must be a number without a comma, such as 1.5 or 1200; it is "6,5".'],
    ["0 six 8", 'Width 2 must be a number; it is the text "six".'],
    ["0 -6 8", "Width 2 must be 0 or more."],
    ["", "Widths are missing."],
  ])("widths typed as %j say: %s", (widths, sentence) => {
    expect(readSurface(typed({ way: "widths", step: "5", widths }), "us").faults.widths).toBe(sentence);
  });

  test("one width alone gives no area, in the function's own words", () => {
    const { entry, faults } = readSurface(typed({ way: "widths", step: "5", widths: "6" }), "us");
    expect(entry).toBeNull();
    expect(faults.measurement).toMatch(/width/i);
  });
});

describe("a surface from the sheet", () => {
  test("opens the way it was measured, and comes back the same", () => {
    const held = typedFrom(rowOf({ area: 480, howMeasured: "rectangle: length 40 ft, width 12 ft" }), "us");
    expect(held).toMatchObject({ way: "rectangle", figures: ["40", "12"] });
    expect(readSurface(held, "us").entry).toMatchObject({ area: 480, howMeasured: "rectangle: length 40 ft, width 12 ft" });
  });

  test("with an area that was typed over opens as that area, keeps the text, and says that the two differ", () => {
    const row = rowOf({ area: 500, howMeasured: "rectangle: length 40 ft, width 12 ft" });
    expect(typedFrom(row, "us")).toMatchObject({ way: "area", area: "500", words: "rectangle: length 40 ft, width 12 ft" });
    expect(differenceWords(row, "us")).toBe(
      "The measurements kept here give 480 sq ft and the sheet holds 500 sq ft: one of them was changed.",
    );
  });

  test("measured in a person's own words says nothing", () => {
    expect(differenceWords(rowOf({ area: 500, howMeasured: "paced out" }), "us")).toBeNull();
    expect(differenceWords(rowOf({ area: null, howMeasured: null }), "us")).toBeNull();
  });
});
