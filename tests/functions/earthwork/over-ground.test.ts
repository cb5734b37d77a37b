import { describe, expect, test } from "vitest";
import { basinFloor } from "../../../functions/basin/basin-shape.ts";
import { frustumVolume, gaussLegendre, groundAtFeet, volumeOverGround } from "../../../functions/earthwork/over-ground.ts";

const column = (topFeet: number) => ({
  bottom: { heightFeet: 0, wideningFeet: 0 },
  top: { heightFeet: topFeet, wideningFeet: 0 },
});

describe("over ground that falls", () => {
  // Archimedes, The Method, proposition 11 (from memory): the hoof cut off a cylinder by a plane through a diameter of its
  // base holds two thirds of the square of the radius times the height.
  test("half a cylinder's foot stands over the ground as Archimedes' hoof: 2/3 r^2 h", () => {
    const floor = basinFloor(Math.PI * 9, "ellipse", 1);
    // Ground level with the foot at the downhill end and 2 ft up in the middle; the hoof is what is over it from there up.
    const over = volumeOverGround(
      floor,
      { bottom: { heightFeet: 0, wideningFeet: 0 }, top: { heightFeet: 2, wideningFeet: 0 } },
      {
        middleFeet: 2,
        fall: 2 / 3,
      },
    );
    expect(over).toBeCloseTo((2 / 3) * 9 * 2, 10);
  });

  test("a box on ground that falls from one edge of its foot to the other stands over it by a wedge, half of 10 x 10 x 0.6 ft", () => {
    const floor = basinFloor(100, "rectangle", 1);
    expect(volumeOverGround(floor, column(0.6), { middleFeet: 0.3, fall: 0.06 })).toBeCloseTo(30, 10);
  });

  test("a body all under the ground has nothing over it, and one all over it has everything", () => {
    const floor = basinFloor(50, "ellipse", 2);
    expect(volumeOverGround(floor, column(1), { middleFeet: 5, fall: 0.1 })).toBe(0);
    expect(volumeOverGround(floor, column(1), { middleFeet: -5, fall: 0.1 })).toBeCloseTo(50, 10);
    expect(volumeOverGround(floor, column(1), { middleFeet: 0.25, fall: 0 })).toBeCloseTo(37.5, 10);
  });

  test("a layer of no height and a floor of no area hold nothing", () => {
    expect(volumeOverGround(basinFloor(50, "ellipse", 2), column(0), { middleFeet: 0, fall: 0.1 })).toBe(0);
    expect(volumeOverGround(basinFloor(0, "ellipse", 2), column(1), { middleFeet: 0.5, fall: 0.1 })).toBe(0);
  });

  test("ground falls away from the middle downhill, and rises uphill", () => {
    const ground = { middleFeet: 0.5, fall: 0.1 };
    expect([-5, 0, 5].map((down) => groundAtFeet(ground, down))).toEqual([1, 0.5, 0]);
  });
});

test("a frustum 17 by 7 ft below and 20 by 10 ft above, 6 in high, holds 79 cu ft", () => {
  const frustum = { bottom: { heightFeet: -0.5, wideningFeet: 0 }, top: { heightFeet: 0, wideningFeet: 1.5 } };
  expect(frustumVolume(basinFloor(119, "rectangle", 17 / 7), frustum)).toBeCloseTo(79, 12);
});

describe("Gauss's rule", () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4, n = 4 (from memory).
  test("has the four points and weights that are printed", () => {
    const [outer, inner] = gaussLegendre(4);
    expect(outer!.at).toBeCloseTo(0.861136311594053, 14);
    expect(outer!.weight).toBeCloseTo(0.347854845137454, 14);
    expect(inner!.at).toBeCloseTo(0.339981043584856, 14);
    expect(inner!.weight).toBeCloseTo(0.652145154862546, 14);
  });

  test("of 12 points is exact for powers up to 23", () => {
    for (let power = 0; power <= 23; power += 1) {
      const sum = gaussLegendre(12).reduce((total, { at, weight }) => total + weight * at ** power, 0);
      expect(sum).toBeCloseTo(power % 2 === 0 ? 2 / (power + 1) : 0, 13);
    }
  });
});
