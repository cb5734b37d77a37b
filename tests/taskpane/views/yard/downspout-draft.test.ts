import { describe, expect, test } from "vitest";
import {
  BLANK_DOWNSPOUT,
  defaultsOf,
  downspoutRecord,
  downspoutVerdict,
  readDownspout,
  type TypedDownspout,
} from "../../../../taskpane/views/yard/downspout-draft.ts";
import type { SurfaceRow } from "../../../../taskpane/views/yard/surface-draft.ts";

const roof = (area: number | null, share: number | null) => ({ record: { area, share } }) as SurfaceRow;
const typed = (changed: Partial<TypedDownspout> = {}): TypedDownspout => ({
  ...BLANK_DOWNSPOUT,
  intensity: "6",
  source: "county table, 10 years",
  width: "4",
  slope: "1",
  ...changed,
});
const wholeRoof = roof(1000, 1);

// Rational method and Manning, by hand: 0.95 x 6 x 1,000 / 43,200 = 0.132 cfs; a smooth 4 in pipe on 1 percent carries 111.0 gpm / 448.83 =
// 0.247 cfs, a 3 in one 51.6 / 448.83 = 0.115 cfs.
describe("the answer in words", () => {
  test("for a 4 in pipe under 1,000 sq ft of roof", () => {
    expect(downspoutVerdict(readDownspout(typed(), wholeRoof, "us"))).toEqual({
      carries: true,
      inShort: "Carries it",
      sentences: ["The roof brings 0.132 cfs at its peak, and a pipe of 4 in takes 0.247 cfs."],
    });
  });

  test("for a 3 in pipe names the smallest usual size that does", () => {
    expect(downspoutVerdict(readDownspout(typed({ width: "3" }), wholeRoof, "us"))?.sentences).toEqual([
      "The roof brings 0.132 cfs at its peak, and a pipe of 3 in takes only 0.115 cfs.",
      "On the same slope a pipe of 4 in would carry it, the smallest usual size that does. (Usual sizes: common practice, no source.)",
    ]);
  });

  test("for a level pipe asks for a fall", () => {
    expect(downspoutVerdict(readDownspout(typed({ slope: "0" }), wholeRoof, "us"))?.sentences).toEqual([
      "Without a fall it carries nothing: give it a slope.",
    ]);
  });

  test("for a roof of an acre says that no usual size would", () => {
    expect(downspoutVerdict(readDownspout(typed(), roof(43_560, 1), "us"))?.sentences[1]).toMatch(
      /^No usual size up to 8 in would carry it/,
    );
  });

  // 92.9 m2 x 152.4 mm/h x 0.95 / 3,600 = 3.74 L/s.
  test("in a metric yard is in L/s and mm", () => {
    expect(downspoutVerdict(readDownspout(typed({ intensity: "152.4", width: "100" }), roof(92.9, 1), "metric"))?.sentences[0]).toMatch(
      /^The roof brings 3\.74 L\/s at its peak, and a pipe of 100 mm takes [67]\.\d+ L\/s\.$/,
    );
  });

  test.each(["intensity", "width", "slope"] as const)("waits while the %s is blank or wrong: no default is invented", (key) => {
    expect(downspoutVerdict(readDownspout(typed({ [key]: "" }), wholeRoof, "us"))).toBeNull();
    expect(downspoutVerdict(readDownspout(typed({ [key]: "a lot" }), wholeRoof, "us"))).toBeNull();
  });
});

describe("what a blank stands for", () => {
  test("is the part of the roof that drains elsewhere now", () => {
    expect(defaultsOf(roof(1180, 0.5), typed())).toMatchObject({ roofArea: 590, isElsewhere: true });
  });

  test("is the whole roof where all of it drains here", () => {
    expect(defaultsOf(wholeRoof, typed())).toMatchObject({ roofArea: 1000, isElsewhere: false });
  });

  test("is the lining's own roughness, which a typed one replaces", () => {
    expect(readDownspout(typed({ lining: "corrugated plastic" }), wholeRoof, "us").inputs.roughness).toBe(0.024);
    expect(readDownspout(typed({ lining: "corrugated plastic", roughness: "0.015" }), wholeRoof, "us").inputs.roughness).toBe(0.015);
  });
});

test("the sheet keeps the answer with all that it rests on", () => {
  expect(downspoutRecord(readDownspout(typed(), wholeRoof, "us"), typed(), "2027-04-03")).toBe(
    "Carries it. The roof brings 0.132 cfs at its peak, and a pipe of 4 in takes 0.247 cfs. 1,000 sq ft of roof, 6 in/h (county table, 10 years), coefficient 0.95. Slope 1 %, n 0.01, smooth plastic (PVC). Checked 2027-04-03.",
  );
});

test("no answer, nothing to keep", () => {
  expect(downspoutRecord(readDownspout(typed({ width: "" }), wholeRoof, "us"), typed(), "2027-04-03")).toBeNull();
});
