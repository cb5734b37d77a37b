import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { runoffDepthInches, storageInches } from "../../../functions/runoff/runoff-depth.ts";
import { tr55Table21, tr55Table21Cells } from "../../published/tr-55-table-2-1.ts";
import { tr55Table41 } from "../../published/tr-55-table-4-1.ts";
import { measured } from "../measured.ts";

const rain = measured(0, 40);
const curveNumber = measured(1, 100);
const lossRatio = fc.constantFrom(0.2, 0.05);

describe("TR-55, 2nd ed., 1986", () => {
  // Table 2-1, printed to 0.01 in; the closeness asked for is half of that.
  test.each(tr55Table21Cells)("rain of $rain in on curve number $cn runs off $runoff in", ({ rain, cn, runoff }) => {
    expect(Math.abs(runoffDepthInches(rain, cn) - runoff)).toBeLessThanOrEqual(tr55Table21.printedTo / 2 + 1e-9);
  });

  test("rain of 7 in on curve number 50 runs off 1.667 in, which table 2-1 misprints as 1.68", () => {
    const { rainInches, curveNumber, printed, equation } = tr55Table21.misprint;
    expect(runoffDepthInches(rainInches, curveNumber)).toBeCloseTo(equation, 3);
    expect(Math.abs(runoffDepthInches(rainInches, curveNumber) - printed)).toBeGreaterThan(tr55Table21.printedTo / 2);
  });

  // Table 4-1, printed to 0.001 in.
  test.each(tr55Table41)("curve number $cn takes up $initialAbstraction in before runoff starts", ({ cn, initialAbstraction }) => {
    expect(0.2 * storageInches(cn)).toBeCloseTo(initialAbstraction, 3);
    expect(runoffDepthInches(initialAbstraction - 0.001, cn)).toBe(0);
    expect(runoffDepthInches(initialAbstraction + 0.001, cn)).toBeGreaterThan(0);
  });

  // Chapter 2, examples 2-1 to 2-4; inputs read, answers from memory, printed to 0.01 in.
  test.each([
    {
      example: "2-1",
      parts: [
        [75, 61],
        [175, 74],
      ],
      weighted: 70.1,
      rounded: 70,
      runoff: 2.81,
      within: 0.005,
    },
    {
      example: "2-2",
      parts: [
        [75, 70],
        [100, 80],
        [75, 74],
      ],
      weighted: 75.2,
      rounded: 75,
      runoff: 3.28,
      within: 0.005,
    },
    {
      example: "2-3",
      parts: [
        [75, 74],
        [100, 82],
        [75, 74],
      ],
      weighted: 77.2,
      rounded: 77,
      runoff: 3.48,
      within: 0.005,
    },
    // The fourth answer was read off a graph: a further hundredth.
    {
      example: "2-4",
      parts: [
        [75, 70],
        [100, 78],
        [75, 74],
      ],
      weighted: 74.4,
      rounded: 74,
      runoff: 3.19,
      within: 0.01,
    },
  ])("example $example: 6 in of rain runs off $runoff in", ({ parts, weighted, rounded, runoff, within }) => {
    const acres = parts.reduce((sum, [area]) => sum + area!, 0);
    const average = parts.reduce((sum, [area, cn]) => sum + area! * cn!, 0) / acres;
    expect(average).toBeCloseTo(weighted, 1);
    expect(Math.round(average)).toBe(rounded);
    expect(Math.abs(runoffDepthInches(6, rounded) - runoff)).toBeLessThanOrEqual(within);
  });
});

describe("computed by hand from the equations", () => {
  test.each([
    { cn: 39, storage: 15.641, converted: 31.4237, at1: 0, converted1: 0, at2: 0, converted2: 0.0058 },
    { cn: 61, storage: 6.3934, converted: 11.2317, at1: 0, converted1: 0.0165, at2: 0.0731, converted2: 0.1633 },
    { cn: 74, storage: 3.5135, converted: 5.6423, at1: 0.0232, converted1: 0.081, at2: 0.3498, converted2: 0.401 },
    { cn: 80, storage: 2.5, converted: 3.8149, at1: 0.0833, converted1: 0.1416, at2: 0.5625, converted2: 0.582 },
    { cn: 90, storage: 1.1111, converted: 1.5013, at1: 0.3203, converted1: 0.3526, at2: 1.094, converted2: 1.0815 },
    { cn: 98, storage: 0.2041, converted: 0.2139, at1: 0.7909, converted1: 0.8135, at2: 1.7744, converted2: 1.7962 },
  ])("curve number $cn stores $storage in at loss ratio 0.2 and $converted in at 0.05", (row) => {
    expect(storageInches(row.cn)).toBeCloseTo(row.storage, 4);
    expect(storageInches(row.cn, 0.05)).toBeCloseTo(row.converted, 4);
    expect(runoffDepthInches(1, row.cn)).toBeCloseTo(row.at1, 4);
    expect(runoffDepthInches(1, row.cn, 0.05)).toBeCloseTo(row.converted1, 4);
    expect(runoffDepthInches(2, row.cn)).toBeCloseTo(row.at2, 4);
    expect(runoffDepthInches(2, row.cn, 0.05)).toBeCloseTo(row.converted2, 4);
  });

  test("curve number 74 at loss ratio 0.2 is curve number 63.93 at 0.05 by the second published form", () => {
    const converted = 100 / (1.879 * (100 / 74 - 1) ** 1.15 + 1);
    expect(converted).toBeCloseTo(63.93, 2);
    expect(1000 / (storageInches(74, 0.05) + 10)).toBeCloseTo(converted, 2);
  });

  test("152.4 mm of rain on curve number 75 runs off 83.364 mm", () => {
    expect(runoffDepthInches(152.4 / 25.4, 75) * 25.4).toBeCloseTo(83.364, 3);
  });
});

describe("any storm", () => {
  test("never runs off more than it rained, nor less than nothing", () => {
    fc.assert(
      fc.property(rain, curveNumber, lossRatio, (depth, cn, ratio) => {
        const runoff = runoffDepthInches(depth, cn, ratio);
        expect(runoff).toBeGreaterThanOrEqual(0);
        expect(runoff).toBeLessThanOrEqual(depth);
      }),
      {
        examples: [
          [0, 100, 0.2],
          [0, 100, 0.05],
          [0, 1, 0.2],
        ],
      },
    );
  });

  test("runs off whole when the curve number is 100", () => {
    fc.assert(
      fc.property(rain, lossRatio, (depth, ratio) => {
        expect(runoffDepthInches(depth, 100, ratio)).toBe(depth);
      }),
      { examples: [[0, 0.2]] },
    );
  });

  test("runs off nothing when it is no deeper than the initial abstraction", () => {
    fc.assert(
      fc.property(curveNumber, lossRatio, measured(0, 1), (cn, ratio, part) => {
        expect(runoffDepthInches(part * ratio * storageInches(cn, ratio), cn, ratio)).toBe(0);
      }),
      { examples: [[61, 0.2, 1]] },
    );
  });

  test("runs off more when it is deeper or the curve number is higher", () => {
    fc.assert(
      fc.property(rain, curveNumber, lossRatio, measured(0.01, 5), (depth, cn, ratio, more) => {
        expect(runoffDepthInches(depth + more, cn, ratio)).toBeGreaterThanOrEqual(runoffDepthInches(depth, cn, ratio));
        expect(runoffDepthInches(depth, Math.min(cn + more, 100), ratio)).toBeGreaterThanOrEqual(
          runoffDepthInches(depth, cn, ratio) - 1e-12,
        );
      }),
    );
  });

  test("too deep to exist still runs off a finite depth", () => {
    expect(runoffDepthInches(1e300, 61)).toBeCloseTo(1e300, -290);
  });
});
