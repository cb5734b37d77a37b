import { describe, expect, test } from "vitest";
import {
  bloomMonths,
  isGrassLike,
  plantNamed,
  plantsFor,
  readPalette,
  suggestedFrom,
  sunLevels,
  type PlantWish,
} from "../../../../addin/actions/planting/palette.ts";
import type { Plant } from "../../../../addin/records/plants.ts";
import { startingPalette } from "./plants-of-tests.ts";

const anyIn = (zone: PlantWish["zone"]): PlantWish => ({
  zone,
  sun: null,
  region: null,
  atLeastAsWetAs: null,
  widestSpacing: null,
  bloomMonth: null,
});
const names = (wish: PlantWish) => plantsFor(startingPalette(), wish).map(({ name }) => name);

describe("bloom", () => {
  test.each([
    ["6 to 8", [6, 7, 8]],
    ["5", [5]],
    ["11 to 2", [11, 12, 1, 2]],
    ["6-8", [6, 7, 8]],
    // What a spreadsheet makes of 6-8: the eighth of June, as its day number.
    ["45816", []],
    ["summer", []],
    ["0 to 13", []],
    [null, []],
  ])("written %s is the months %j", (written, months) => {
    expect(bloomMonths(written)).toEqual(months);
  });
});

test.each([
  ["sun", ["sun"]],
  ["sun to part shade", ["sun", "part shade"]],
  ["Part shade to shade", ["part shade", "shade"]],
  ["sun to shade", ["sun", "part shade", "shade"]],
  ["bright", []],
  [null, []],
])("sun written %s is %j", (written, levels) => {
  expect(sunLevels(written)).toEqual(levels);
});

describe("choosing from the palette", () => {
  test("each filter leaves the plants that meet it: wet zone, sun, rating in the region, spacing, month", () => {
    expect(names(anyIn("A"))).toContain("Carex stricta");
    expect(names(anyIn("C"))).not.toContain("Carex stricta");
    expect(names({ ...anyIn("A"), sun: "part shade" })).toContain("Chelone glabra");
    expect(names({ ...anyIn("A"), sun: "part shade" })).not.toContain("Juncus effusus");
    // National Wetland Plant List 2020: Verbena hastata FAC in AGCP, FACW in MW.
    expect(names({ ...anyIn("A"), region: "atlanticAndGulfCoastalPlain", atLeastAsWetAs: "FACW" })).not.toContain("Verbena hastata");
    expect(names({ ...anyIn("A"), region: "midwest", atLeastAsWetAs: "FACW" })).toContain("Verbena hastata");
    expect(names({ ...anyIn("A"), widestSpacing: 2 })).not.toContain("Hibiscus moscheutos");
    expect(names({ ...anyIn("B"), bloomMonth: 10 })).toContain("Symphyotrichum novae-angliae");
  });

  test("the palette has no plant for the wet floor in full shade", () => {
    expect(names({ ...anyIn("A"), sun: "shade" })).toEqual([]);
  });

  test("plants of which zone, sun or spacing is not known are not chosen by it", () => {
    expect(names(anyIn("A"))).not.toContain("Carex obnupta");
  });

  test("a suggestion holds one sedge, rush or grass, no shrub, and blooms in as many months as it can", () => {
    const suggested = suggestedFrom(plantsFor(startingPalette(), { ...anyIn("B"), sun: "sun" }), 4);
    expect(suggested).toHaveLength(4);
    expect(suggested.filter(isGrassLike)).toHaveLength(1);
    expect(suggested.some(({ form }) => form === "shrub" || form === "tree")).toBe(false);
    expect(new Set(suggested.flatMap(({ bloomMonths: months }) => months)).size).toBeGreaterThanOrEqual(5);
    expect(suggested.every(({ cautions }) => cautions === null)).toBe(true);
  });
});

test("spacing is in the yard's own unit: 2 ft is 0.6096 m", () => {
  expect(plantNamed(startingPalette("metric"), "Asclepias incarnata")?.spacing).toBeCloseTo(0.6096, 9);
});

test("a name is found whatever its capitals and gaps, and hostile names are names like others", () => {
  const row = (scientificName: string) => ({ record: { scientificName, spacingFeet: 1, zone: "A" } as unknown as Plant });
  const palette = readPalette(
    ["__proto__", "constructor", "<img src=x onerror=alert(1)>", '=HYPERLINK("x")', "  Acorus  ", "acorus"].map(row),
    "us",
  );
  expect(palette.map(({ name }) => name)).toEqual([
    "__proto__",
    "constructor",
    "<img src=x onerror=alert(1)>",
    '=HYPERLINK("x")',
    "  Acorus  ",
  ]);
  expect(plantNamed(palette, "__PROTO__")?.name).toBe("__proto__");
  expect(plantNamed(palette, "toString")).toBeUndefined();
});
