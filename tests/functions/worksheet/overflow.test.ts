import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { overflowWidth, pipeFlow, stoneSize } from "../../../functions/worksheet/overflow.ts";
import { measured } from "../measured.ts";
import { expectSameOnMetric } from "./same-on-metric.ts";
import { cellOf, column, refused, row } from "./sample-functions.ts";

const SEND_ASIDE = expect.stringContaining("where it does no harm");

describe("OVERFLOWWIDTH", () => {
  // San Diego State University, CIVE 530 (read).
  test("gives the published 20 ft at C of 3.09, and on a metric sheet at 0.552 of it", () => {
    expect(cellOf(overflowWidth, 44.22, 0.8, 3.09)).toBeCloseTo(20, 2);
    expect(cellOf(overflowWidth, 44.22 * 28.316846592, 0.8 * 0.3048, 3.09 * 0.552087, "metric")).toBeCloseTo(20 * 0.3048, 3);
  });

  test("takes 2.6 in US units, which is 1.44 in metric units, unless told otherwise", () => {
    expect(cellOf(overflowWidth, 0.132, 0.2)).toBe(cellOf(overflowWidth, 0.132, 0.2, 2.6));
    expect(cellOf(overflowWidth, 4, 0.06, null, "metric")).toBeCloseTo(cellOf(overflowWidth, 4, 0.06, 1.4354, "metric") as number, 4);
    expect(
      (cellOf(overflowWidth, 4, 0.06, null, "metric") as number) / (cellOf(overflowWidth, 4, 0.06, 1.44, "metric") as number),
    ).toBeCloseTo(1, 2);
  });

  test("gives the same spillway on a metric sheet", () => {
    fc.assert(
      fc.property(measured(0, 10), measured(0.02, 1), measured(2.3, 3.1), (cubicFeetPerSecond, feet, coefficient) => {
        expectSameOnMetric(overflowWidth, [cubicFeetPerSecond, feet]);
        const us = cellOf(overflowWidth, cubicFeetPerSecond, feet, coefficient) as number;
        const metric = cellOf(
          overflowWidth,
          cubicFeetPerSecond * 28.316846592,
          feet * 0.3048,
          coefficient * Math.sqrt(0.3048),
          "metric",
        ) as number;
        expect(metric).toBeCloseTo(us * 0.3048, 9);
      }),
    );
  });

  test("answers a what-if of flows and heads", () => {
    const grid = overflowWidth.evaluate([column(0.1, 0.2), row(0.1, 0.2, 0.4)]);
    expect(grid.map(({ length }) => length)).toEqual([3, 3]);
    expect(grid[1]![0]).toBeCloseTo(2 * (grid[0]![0] as number), 12);
  });

  test("refuses a head of nothing and a coefficient of nothing", () => {
    expect(cellOf(overflowWidth, 0.1, 0)).toEqual(refused("Head over the sill must be more than 0."));
    expect(cellOf(overflowWidth, 0.1, 0.2, 0)).toEqual(refused("Weir coefficient must be more than 0."));
  });

  test("cautions of a coefficient that is no broad sill's in either unit", () => {
    const range = expect.stringContaining("run from 2.3 to 3.32 in US units, 1.27 to 1.83 in metric units");
    for (const coefficient of [1, 2, 3.33]) expect(overflowWidth.cautionsFor([0.1, 0.1, coefficient])).toContainEqual(range);
    for (const coefficient of [null, 1.44, 2.6, 3.09, 3.32])
      expect(overflowWidth.cautionsFor([0.1, 0.1, coefficient])).toEqual([SEND_ASIDE]);
  });

  test("cautions of a head above the freeboard, and of one typed in inches", () => {
    expect(overflowWidth.cautionsFor([0.1, 0.2])).toEqual([expect.stringContaining("2 in of freeboard"), SEND_ASIDE]);
    expect(overflowWidth.cautionsFor([0.1, 3])[0]).toContain("head is in feet, so 3 in is 0.25");
    expect(overflowWidth.cautionsFor([0.1, 75, null, "metric"])[0]).toContain("head is in meters, so 75 mm is 0.075");
  });
});

describe("PIPEFLOW", () => {
  test("takes smooth plastic unless told otherwise, and slopes under 1 percent", () => {
    expect(pipeFlow.evaluate([4, row(0.5, 1, 2, 4)])).toEqual([
      [78.5, 111, 157, 222.1].map((gallons) => expect.closeTo(gallons / 448.83, 3)),
    ]);
    expect(cellOf(pipeFlow, 4, 1)).toBe(cellOf(pipeFlow, 4, 1, 0.01));
  });

  test("gives the same flow on a metric sheet", () => {
    fc.assert(
      fc.property(measured(2, 48), measured(0.1, 10), measured(0.009, 0.03), (...inputs) => {
        expectSameOnMetric(pipeFlow, inputs);
      }),
    );
  });

  test("cautions of a slope under 1 percent, which may be a share", () => {
    expect(pipeFlow.cautionsFor([4, 0.02])).toEqual(["Pipe slope is taken as 0.02%: write a percent as 2, not 0.02."]);
    for (const slope of [0, 1, 2]) expect(pipeFlow.cautionsFor([4, slope])).toEqual([]);
  });

  test("cautions of a diameter typed in feet or in millimeters", () => {
    for (const diameter of [0.33, 100])
      expect(pipeFlow.cautionsFor([diameter, 1])).toEqual(["Pipes in a yard are 2 in to 12 in across: the diameter is in inches."]);
    expect(pipeFlow.cautionsFor([4, 1, null, "metric"])[0]).toContain("the diameter is in mm");
    expect(stoneSize.cautionsFor([1, 100])).toContainEqual(expect.stringContaining("Pipes in a yard"));
  });

  test("cautions of a roughness that no printed pipe has", () => {
    for (const roughness of [0.009, 0.03])
      expect(pipeFlow.cautionsFor([4, 1, roughness])).toEqual([expect.stringContaining("0.010 (smooth plastic) to 0.024")]);
    expect(pipeFlow.cautionsFor([4, 1, 0.024])).toEqual([]);
  });

  test("refuses a pipe of nothing and a slope over 100 percent", () => {
    expect(cellOf(pipeFlow, 0, 1)).toEqual(refused("Inside diameter must be more than 0."));
    expect(cellOf(pipeFlow, 4, 101)).toEqual(refused("Pipe slope must be 100 or less."));
    expect(cellOf(pipeFlow, 4, -1)).toEqual(refused("Pipe slope must be 0 or more."));
  });
});

describe("STONESIZE", () => {
  const steep = expect.stringContaining("asks for larger stone");

  test("counts 0.4 of the diameter where tailwater is unknown", () => {
    expect(cellOf(stoneSize, 1, 12)).toBe(cellOf(stoneSize, 1, 12, 4.8));
  });

  test("gives the same stone on a metric sheet", () => {
    fc.assert(
      fc.property(measured(0, 5), measured(2, 24), measured(0, 36), (...inputs) => {
        expectSameOnMetric(stoneSize, inputs);
      }),
    );
  });

  test("says when tailwater is counted otherwise than it was given", () => {
    expect(stoneSize.cautionsFor([5, 12, 3])).toEqual([expect.stringContaining("0.4 is counted"), steep]);
    expect(stoneSize.cautionsFor([10, 12, 13])).toEqual([expect.stringContaining("the diameter is counted"), steep]);
    expect(stoneSize.cautionsFor([10, 12, 6])).toEqual([steep]);
  });

  test("says that stone under 2 in is not laid in practice", () => {
    expect(stoneSize.cautionsFor([0.13, 4])).toEqual([expect.stringContaining("Stone under 2 in"), steep]);
    expect(stoneSize.cautionsFor([4, 102, null, "metric"])).toContainEqual(expect.stringContaining("50.8 mm"));
  });
});
