import fc from "fast-check";
import { expect, test } from "vitest";
import { COVERS, SOIL_GROUPS } from "../../../functions/published/tr-55.ts";
import { siteRunoff, type SiteSurface } from "../../../functions/runoff/site-runoff.ts";
import { measured } from "../measured.ts";

const roof: SiteSurface = { cover: "roof", areaSquareFeet: 1000, shareDrainingHere: 1 };

// Simple method at 100 percent impervious, as printed in New Hampshire Env-Wq 1504.10: 0.95 x 1,000 sq ft x 1 in / 12.
test("a roof of 1,000 sq ft sends 79.17 cu ft of a 1 in storm, whatever the soil", () => {
  for (const group of SOIL_GROUPS) expect(siteRunoff(1, [roof], group).runoffCubicFeet).toBeCloseTo(79.1667, 4);
});

// TR-55, 2nd ed., 1986, table 2-1: 4 in of rain on curve number 80 run off 2.04 in; a good lawn on group D has 80 (table 2-2a).
test("a good lawn on group D sends 2.04 in of a 4 in storm, as TR-55 prints", () => {
  const lawn: SiteSurface = { cover: "good lawn", areaSquareFeet: 12, shareDrainingHere: 1 };
  expect(Math.abs(siteRunoff(4, [lawn], "D").runoffCubicFeet - 2.04)).toBeLessThan(0.005);
});

test("half a surface sends half its water and counts half its area", () => {
  expect(siteRunoff(2, [{ ...roof, shareDrainingHere: 0.5 }], "B")).toEqual({
    contributingSquareFeet: 500,
    hardSquareFeet: 500,
    runoffCubicFeet: siteRunoff(2, [roof], "B").runoffCubicFeet / 2,
  });
});

test("a surface without a cover runs off as a roof, and is no hard ground", () => {
  const bare = siteRunoff(1, [{ ...roof, cover: null }], "A");
  expect(bare).toEqual({ ...siteRunoff(1, [roof], "A"), hardSquareFeet: 0 });
});

test("no yard sends more than the rain that falls on it, and group D never less than another", () => {
  const surface = fc.record({
    cover: fc.constantFrom(...COVERS, null),
    areaSquareFeet: measured(0, 10_000),
    shareDrainingHere: measured(0, 1),
  });
  fc.assert(
    fc.property(measured(0, 15), fc.array(surface, { maxLength: 6 }), fc.constantFrom(...SOIL_GROUPS), (rain, surfaces, group) => {
      const { contributingSquareFeet, hardSquareFeet, runoffCubicFeet } = siteRunoff(rain, surfaces, group);
      expect(runoffCubicFeet).toBeLessThanOrEqual((contributingSquareFeet * rain) / 12 + 1e-9);
      expect(hardSquareFeet).toBeLessThanOrEqual(contributingSquareFeet + 1e-9);
      expect(siteRunoff(rain, surfaces, "D").runoffCubicFeet).toBeGreaterThanOrEqual(runoffCubicFeet - 1e-9);
    }),
  );
});
