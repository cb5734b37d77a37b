import { describe, expect, test } from "vitest";
import { draftBasin, type BasinInputs } from "../../../../addin/actions/basin/draft-basin.ts";
import { pulledNumber, pulledTo, steppedBy } from "../../../../taskpane/views/basin/pull-handles.ts";
import { roofInMetric, roofInUs, settings } from "./basin-examples.ts";

const draft = (inputs: BasinInputs) => draftBasin(inputs, settings);
const value = (answer: object) => ("value" in answer ? Number(answer.value) : Number.NaN);

describe("A handle of the basin's drawing", () => {
  test("pulled out by 2 ft, the end of the floor comes to within a hand of where it was pulled to, and the floor is narrower", () => {
    const before = draft(roofInUs);
    const after = draft({ ...roofInUs, lengthToWidth: Number(pulledTo("length", before, 2).lengthToWidth) });
    // Both ends move: 2 ft outward are 4 ft of length. A ratio in twentieths, and a shorter edge, leave less than 4 in.
    expect(Math.abs(value(after.floorLength) - (value(before.floorLength) + 4))).toBeLessThan(1 / 3);
    expect(value(after.floorWidth)).toBeLessThan(value(before.floorWidth));
  });

  test("of the width does the same across, and never makes the floor wider than it is long", () => {
    const before = draft(roofInUs);
    const after = draft({ ...roofInUs, lengthToWidth: Number(pulledTo("width", before, 0.5).lengthToWidth) });
    expect(Math.abs(value(after.floorWidth) - (value(before.floorWidth) + 1))).toBeLessThan(1 / 3);
    expect(pulledTo("width", before, 100)).toEqual({ lengthToWidth: "1" });
    expect(pulledTo("length", before, -100)).toEqual({ lengthToWidth: "1" });
  });

  test("of the floor sets the ponding by a quarter of an inch, or by 5 mm", () => {
    // An inch is a twelfth of a foot; 6 in and 1 in are 7 in.
    expect(pulledTo("ponding", draft(roofInUs), 1 / 12)).toEqual({ pondingDepth: "7" });
    // 152.4 mm and 50 mm are 202.4 mm, nearest to 200.
    expect(pulledTo("ponding", draft(roofInMetric), 0.05)).toEqual({ pondingDepth: "200" });
    expect(pulledTo("ponding", draft(roofInUs), -10)).toEqual({ pondingDepth: "0.25" });
  });

  test("of the water's edge flattens the sides by the run over the ponding", () => {
    // 6 in deep: 6 in outward are one more of run to 1 of rise.
    expect(pulledTo("sides", draft(roofInUs), 0.5)).toEqual({ sideSlope: "4" });
  });

  test("goes by steps of the arrow keys, the width's against the length's", () => {
    const before = draft({ ...roofInUs, lengthToWidth: 2 });
    expect(steppedBy("length", before, 1)).toEqual({ lengthToWidth: "2.05" });
    expect(steppedBy("width", before, 1)).toEqual({ lengthToWidth: "1.95" });
    expect(steppedBy("ponding", before, -1)).toEqual({ pondingDepth: "5.75" });
  });

  test("is not there while the basin has no size", () => {
    const unsized = draft({ ...roofInUs, testedRate: null });
    expect(pulledNumber("length", unsized)).toBeNull();
    expect(pulledTo("ponding", unsized, 1)).toEqual({});
  });
});
