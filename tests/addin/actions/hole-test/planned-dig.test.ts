/**
 * The test belongs at the bottom of the dig: Dover Township, Pennsylvania, stormwater code (test at the elevation of the
 * facility's bottom). The depths are sums by hand.
 */
import { expect, it, test } from "vitest";
import { endsAboveTheDig, plannedDig, shallowHole } from "../../../../addin/actions/hole-test/planned-dig.ts";
import { workbookOfOneYard, yardIn } from "../../one-yard.ts";

const settings = { mulchDepthInches: 3 };

async function designed(units: "us" | "metric", pondingDepth: unknown, mediaDepth: unknown) {
  const yard = await yardIn(await workbookOfOneYard());
  return { ...yard, units, design: { ...yard.design, pondingDepth, mediaDepth } } as typeof yard;
}

// 8 + 3 + 12 = 23 in; 8 + 3 = 11 in; 150 + 76.2 + 200 = 426.2 mm.
it.each([
  ["us", 8, 12, 23],
  ["us", 8, null, 11],
  ["metric", 150, 200, 426.2],
] as const)("in %s, %s of ponding and %s of mix under 3 in of mulch go down %s", async (units, ponding, mix, depth) => {
  expect(plannedDig(settings, await designed(units, ponding, mix))?.depth).toBeCloseTo(depth, 9);
});

test("without a basin nothing is planned, and no hole is too shallow for it", async () => {
  expect(plannedDig(settings, await designed("us", "#N/A", null))).toBeNull();
  expect(endsAboveTheDig(6, null)).toBe(false);
});

test("a hole of 18 in says so where the dig goes down 23 in, and a hole of 23 in or deeper says nothing", async () => {
  const yard = await designed("us", 8, 12);
  const dig = plannedDig(settings, yard);
  expect(shallowHole("A", 18, dig, yard)).toBe(
    "Hole A ends at 18 in, and the planned dig goes down 23 in: 8 in of ponding, 3 in of mulch and 12 in of soil mix. It tested soil that will be dug away: test at the bottom of the dig.",
  );
  expect(shallowHole("A", 23, dig, yard)).toBeNull();
  expect(shallowHole("A", 36, dig, yard)).toBeNull();
  expect(shallowHole("A", null, dig, yard)).toBeNull();
});
