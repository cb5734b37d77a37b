import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { captureKnee } from "../../../functions/basin/capture-knee.ts";

const curve = (areas: readonly number[], shareAt: (area: number) => number) =>
  areas.map((area) => ({ area, capturedShare: shareAt(area) }));
const hundredths = Array.from({ length: 101 }, (_, step) => step / 100);

describe("computed by hand", () => {
  // y - x = sqrt(x) - x is largest where 1 / (2 sqrt(x)) = 1: x = 1/4.
  test("a share that rises with the square root of the area has its knee at a quarter of the end's area", () => {
    expect(
      captureKnee(
        curve(
          hundredths.map((part) => 400 * part),
          Math.sqrt,
        ),
      )?.area,
    ).toBe(100);
  });

  // Worked in Satopää et al. from memory: y = -1/x + 5 on 0.1 to 1 lies farthest above its chord where x^2 = 0.1, at 0.316.
  test("the share 5 - 1/x between 0.1 and 1 has its knee at 0.32, the hundredth nearest to the root of 0.1", () => {
    expect(captureKnee(curve(hundredths.slice(10), (area) => 5 - 1 / area))?.area).toBe(0.32);
  });

  // Two straight pieces, 0 to 0.8 at area 20 and 0.8 to 1 at area 100: above the chord by 0.8 - 0.2 at their corner.
  test("of two straight pieces the corner is the knee", () => {
    expect(
      captureKnee([
        { area: 0, capturedShare: 0 },
        { area: 10, capturedShare: 0.4 },
        { area: 20, capturedShare: 0.8 },
        { area: 60, capturedShare: 0.9 },
        { area: 100, capturedShare: 1 },
      ]),
    ).toEqual({ area: 20, capturedShare: 0.8 });
  });
});

describe("properties", () => {
  test("a straight line has no knee, nor a curve that bends the other way, nor one without a rise, nor no points", () => {
    expect(captureKnee(curve([0, 25, 50, 100], (area) => area / 128))).toBeUndefined();
    expect(captureKnee(curve(hundredths, (area) => area ** 2))).toBeUndefined();
    expect(captureKnee(curve([0, 50, 100], () => 0.5))).toBeUndefined();
    expect(captureKnee([])).toBeUndefined();
  });

  test("the unit of area does not move the knee", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 3, maxLength: 30 }),
        fc.constantFrom(0.5, 2, 1024),
        (rises, unit) => {
          let share = 0;
          const points = rises.map((rise, index) => ({ area: index, capturedShare: (share += rise / (index + 1)) }));
          const scaled = points.map((point) => ({ ...point, area: point.area * unit }));
          expect(captureKnee(scaled)?.capturedShare).toBe(captureKnee(points)?.capturedShare);
        },
      ),
    );
  });
});
