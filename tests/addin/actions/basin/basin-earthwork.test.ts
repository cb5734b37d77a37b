import { describe, expect, test } from "vitest";
import { draftBasin, type BasinInputs } from "../../../../addin/actions/basin/draft-basin.ts";
import { cutFill } from "../../../../functions/worksheet/earthwork.ts";
import { sectionGeometry } from "../../../../taskpane/views/basin/section-geometry.ts";
import { drawn, roofInMetric, settings } from "../../../taskpane/views/basin/basin-examples.ts";

/** Handbook section 3c, G2: 17 by 7 ft of rectangle, 3 to 1 to 6 in: 18.5 by 8.5 ft at half the depth, 20 by 10 ft at the rim. */
const rectangle: BasinInputs = {
  units: "us",
  contributingArea: ((79 - 200 / 12) * 12) / 0.95,
  testedRate: 0.5,
  stormDepth: null,
  pondingDepth: 6,
  mediaDepth: null,
  sideSlope: 3,
  mixRecipe: null,
  shape: "rectangle",
  lengthToWidth: 17 / 7,
  groundSlopePercent: 6,
  plannedPlants: null,
};

const valueOf = (answer: { readonly value: number } | { readonly sentence: string } | undefined) =>
  answer !== undefined && "value" in answer ? answer.value : Number.NaN;

describe("cut and fill of a rim 20 by 10 ft on ground that falls 6 %", () => {
  const { earthwork } = draftBasin(rectangle, settings);

  test("is SOAK.CUTFILL of the 17 by 7 ft floor, with the mulch of Program", () => {
    const [cut, fill, leftOver, bermHeight] = cutFill.evaluate([17, 7, 6, 6, 3, 3, 0, "rectangle"])[0] as number[];
    expect(valueOf(earthwork?.cut)).toBeCloseTo(cut!, 9);
    expect(valueOf(earthwork?.fill)).toBeCloseTo(fill!, 9);
    expect(valueOf(earthwork?.leftOver)).toBeCloseTo(leftOver!, 9);
    expect(valueOf(earthwork?.bermHeight)).toBeCloseTo(bermHeight!, 9);
  });

  // Handbook section 3c, G9: on a pad of 10 ft at 6 % and a shrink of 0.10, 5.132 ft are in cut.
  test("has the ground 0.06 x 5.132 ft over the water uphill, and the berm 2 in over a fall of 0.06 x 4.868 ft", () => {
    expect(earthwork?.uphillRise).toBeCloseTo(0.06 * 5.132, 4);
    expect(valueOf(earthwork?.bermHeight)).toBeCloseTo(2 / 12 + 0.06 * (10 - 5.132), 4);
  });

  test("is drawn as it is computed: the section's berm and cut are CUTFILL's", () => {
    const section = sectionGeometry(drawn(rectangle, 6));
    expect(section.bermHeight).toBeCloseTo(valueOf(earthwork?.bermHeight), 9);
    expect(section.groundDrop).toBeCloseTo(0.6, 9);
  });
});

// 79 cu ft of water, and 200 sq ft of rim x 3 in of mulch.
test("on level ground what is cut is the water's volume and the mulch under the rim: 129 / 27 cu yd", () => {
  const level = draftBasin({ ...rectangle, groundSlopePercent: 0 }, settings);
  expect(valueOf(level.earthwork?.cut)).toBeCloseTo(129 / 27, 9);
  expect(level.earthwork?.uphillRise).toBeCloseTo(0, 12);
});

test("nothing is said of cut and fill while the ground slope is not measured", () => {
  expect(draftBasin({ ...rectangle, groundSlopePercent: null }, settings).earthwork).toBeNull();
});

test("a metric yard has the same earthwork in cubic meters", () => {
  const metric = draftBasin({ ...roofInMetric, groundSlopePercent: 8 }, settings).earthwork;
  const us = draftBasin(
    { ...roofInMetric, units: "us", contributingArea: 1000, testedRate: 0.5, pondingDepth: 6, mediaDepth: 18, groundSlopePercent: 8 },
    settings,
  ).earthwork;
  expect(valueOf(metric?.cut) / valueOf(us?.cut)).toBeCloseTo(0.764554857984, 9);
  expect((metric?.uphillRise ?? 0) / (us?.uphillRise ?? 1)).toBeCloseTo(0.3048, 9);
});

test("the three planting zones of a rectangle are its floor, its sides and a ring of the crest", () => {
  const { zones } = draftBasin(rectangle, settings);
  expect(valueOf(zones.A)).toBeCloseTo(119, 9);
  expect(valueOf(zones.B)).toBeCloseTo(200 - 119, 9);
  // 1 ft of crest around 20 by 10 ft: 22 x 12 - 200.
  expect(valueOf(zones.C)).toBeCloseTo(64, 9);
});
