import fc from "fast-check";
import { expect, test } from "vitest";
import { halfRoundTrenchFlow } from "../../../functions/overflow/half-round-trench.ts";
import { fullPipeCubicFeetPerSecond, MANNING_US } from "../../../functions/overflow/pipe-flow.ts";
import { channelRoughness } from "../../../functions/published/winchester-stormwater-code.ts";
import { measured } from "../measured.ts";

// Computed by hand from Manning's equation: a half circle 1 ft across has A = pi / 8 = 0.3927 sq ft and P = pi / 2 = 1.5708 ft, so
// R = 0.25 ft; on 2 percent with n 0.05, Q = 1.486 / 0.05 x 0.3927 x 0.25^(2/3) x 0.02^(1/2) = 29.72 x 0.3927 x 0.3969 x 0.14142 = 0.6550.
test("a grassed half-round trench 12 in across on 2 percent carries 0.655 cfs", () => {
  expect(halfRoundTrenchFlow(fullPipeCubicFeetPerSecond(12, 2, 0.05))).toBeCloseTo(0.655, 3);
});

test("any such trench carries what Manning's equation gives for half a circle", () => {
  fc.assert(
    fc.property(measured(4, 48), measured(0.1, 10), measured(0.02, 0.1), (inches, percent, n) => {
      const radiusFeet = inches / 24;
      const area = (Math.PI * radiusFeet ** 2) / 2;
      const wetted = Math.PI * radiusFeet;
      const byHand = (MANNING_US / n) * area * (area / wetted) ** (2 / 3) * (percent / 100) ** 0.5;
      expect(halfRoundTrenchFlow(fullPipeCubicFeetPerSecond(inches, percent, n)) / byHand).toBeCloseTo(1, 9);
    }),
  );
});

// City of Winchester, Indiana, stormwater code, table 4 (read).
test("a swale with grass is twice as rough as short grass, and dumped stone rougher than placed", () => {
  expect(channelRoughness.values).toEqual({
    "short grass": 0.025,
    "stone, placed": 0.03,
    "stone, dumped": 0.035,
    "swale with grass": 0.05,
  });
});
