import { expect, test } from "vitest";
import { basinDepth } from "../../../functions/worksheet/basin.ts";

test("a side slope of minus zero, as a spreadsheet can hold it, is a vertical side", () => {
  // A vertical-sided floor of 100 sq ft holds 50 cu ft at half a foot: computed by hand.
  expect(basinDepth.evaluate([50, 100, -0])).toEqual([[expect.closeTo(6, 9)]]);
});
