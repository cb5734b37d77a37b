import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { peakFlowCubicFeetPerSecond } from "../../../functions/runoff/peak-flow.ts";

const area = fc.double({ min: 0, max: 1e7, noNaN: true });
const intensity = fc.double({ min: 0, max: 20, noNaN: true });
const coefficient = fc.double({ min: 0, max: 1, noNaN: true });

describe("FHWA Hydraulic Engineering Circular 22, 2nd ed., 2001 (from memory)", () => {
  const squareFeetPerHectare = 10_000 / 0.3048 ** 2;

  // Examples 3-1 and 3-3, printed to 0.01 m3/s; the weighted coefficients to 0.001.
  test.each([
    {
      site: "existing",
      parts: [
        [8.95, 0.25],
        [8.6, 0.22],
      ],
      hectares: 17.55,
      weighted: 0.235,
      millimetresPerHour: 48,
      flow: 0.55,
    },
    {
      site: "proposed",
      parts: [
        [2.2, 0.9],
        [0.66, 0.15],
        [7.52, 0.25],
        [7.17, 0.22],
      ],
      hectares: 17.55,
      weighted: 0.315,
      millimetresPerHour: 58,
      flow: 0.89,
    },
  ])("the $site site peaks at $flow cubic metres a second", ({ parts, hectares, weighted, millimetresPerHour, flow }) => {
    const average = parts.reduce((sum, [part, c]) => sum + part! * c!, 0) / hectares;
    expect(Math.abs(average - weighted)).toBeLessThanOrEqual(0.0006);
    const cubicFeet = peakFlowCubicFeetPerSecond(hectares * squareFeetPerHectare, millimetresPerHour / 25.4, weighted);
    expect(Math.abs(cubicFeet * 0.3048 ** 3 - flow)).toBeLessThanOrEqual(0.005);
  });
});

describe("computed by hand", () => {
  test("1,000 sq ft of roof at 0.95 under 6 in/h peaks at 0.1319 cfs, which is 59.2 gallons a minute", () => {
    const flow = peakFlowCubicFeetPerSecond(1000, 6, 0.95);
    expect(flow).toBeCloseTo(0.1319, 4);
    expect(flow * (1728 / 231) * 60).toBeCloseTo(59.2, 1);
  });

  test("an acre under 1 in/h that all runs off peaks at 121/120 cfs, not at 1", () => {
    expect(peakFlowCubicFeetPerSecond(43_560, 1, 1)).toBeCloseTo(121 / 120, 12);
  });

  test("a square metre under 3,600 mm/h peaks at 1 L/s", () => {
    expect(peakFlowCubicFeetPerSecond(1 / 0.09290304, 3600 / 25.4, 1) * 28.316846592).toBeCloseTo(1, 12);
  });
});

describe("any area", () => {
  test("peaks no higher than the rain falls on it", () => {
    fc.assert(
      fc.property(area, intensity, coefficient, (squareFeet, inchesPerHour, c) => {
        const flow = peakFlowCubicFeetPerSecond(squareFeet, inchesPerHour, c);
        expect(flow).toBeGreaterThanOrEqual(0);
        expect(flow).toBeLessThanOrEqual(((squareFeet * inchesPerHour) / 12 / 3600) * (1 + 1e-12));
      }),
      {
        examples: [
          [0, 0, 0],
          [1000, 6, 1],
        ],
      },
    );
  });

  test("peaks as high as its parts together", () => {
    fc.assert(
      fc.property(area, area, intensity, coefficient, (one, other, inchesPerHour, c) => {
        const together = peakFlowCubicFeetPerSecond(one + other, inchesPerHour, c);
        const apart = peakFlowCubicFeetPerSecond(one, inchesPerHour, c) + peakFlowCubicFeetPerSecond(other, inchesPerHour, c);
        expect(together).toBeCloseTo(apart, 8);
      }),
    );
  });

  test("peaks higher under heavier rain and on a harder surface", () => {
    fc.assert(
      fc.property(area, intensity, coefficient, (squareFeet, inchesPerHour, c) => {
        const flow = peakFlowCubicFeetPerSecond(squareFeet, inchesPerHour, c);
        expect(peakFlowCubicFeetPerSecond(squareFeet, inchesPerHour + 1, c)).toBeGreaterThanOrEqual(flow);
        expect(peakFlowCubicFeetPerSecond(squareFeet, inchesPerHour, Math.min(1, c + 0.1))).toBeGreaterThanOrEqual(flow);
      }),
    );
  });
});
