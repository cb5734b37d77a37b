import { expect, test } from "vitest";
import { levelPoints, ratePoints } from "../../../../taskpane/views/hole-test/chart-points.ts";

test("the level chart shows whole readings and leaves out a half-typed one", () => {
  const readings = [
    { minutes: 0, waterDepth: 9 },
    { minutes: 10, waterDepth: null },
    { minutes: 20, waterDepth: 7.5 },
  ];
  expect(levelPoints(readings)).toEqual({ times: [0, 20], values: [9, 7.5] });
});

test("a reading out of order is not drawn: time never runs back", () => {
  const readings = [
    { minutes: 0, waterDepth: 9 },
    { minutes: 20, waterDepth: 8 },
    { minutes: 10, waterDepth: 7 },
  ];
  expect(levelPoints(readings).times).toEqual([0, 20]);
});

test("the rate chart has one level step for each interval, the first from the first reading", () => {
  const interval = { dropRate: 9, change: null, verdict: "not steady" } as const;
  const points = ratePoints(2, [
    { ...interval, minutes: 12, correctedRate: 1.1 },
    { ...interval, minutes: 22, correctedRate: 0.9 },
  ]);
  expect(points).toEqual({ times: [2, 12, 22], values: [1.1, 1.1, 0.9] });
});

test("without an interval there is no rate to draw", () => {
  expect(ratePoints(0, [])).toEqual({ times: [], values: [] });
});
