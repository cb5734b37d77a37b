import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { wholeBags } from "../../../functions/amendment/whole-bags.ts";
import { layerVolumeCubicYards } from "../../../functions/amendment/layer-volume.ts";
import { measured } from "../measured.ts";

const volume = measured(0, 50);
const bag = measured(0.25, 3);

// Computed by hand: 27 cu ft in a cu yd. The bag sizes are common practice, no source.
describe("computed by hand", () => {
  test.each([
    [2, 13.5, 14],
    [1, 27, 27],
    [1.5, 18, 18],
    [0.5, 54, 54],
  ])("a cubic yard in bags of %d cu ft is %d bags, so %d", (size, exact, whole) => {
    expect(27 / size).toBe(exact);
    expect(wholeBags(1, size)).toBe(whole);
  });

  test("3 in of mulch on 200 sq ft is 25 bags of 2 cu ft", () => {
    expect(wholeBags(layerVolumeCubicYards(200, 3, 0), 2)).toBe(25);
  });

  test("10.0000001 bags are 10, and 10.01 are 11", () => {
    expect(wholeBags(10.0000001 / 27, 1)).toBe(10);
    expect(wholeBags(10.01 / 27, 1)).toBe(11);
  });

  test("a bag of 40 L holds what 1.4126 cu ft hold", () => {
    expect(wholeBags(1, 40 / 28.316846592)).toBe(Math.ceil(764.554857984 / 40));
  });
});

describe("any order of bags", () => {
  test("holds the material, with less than a bag to spare", () => {
    fc.assert(
      fc.property(volume, bag, (cubicYards, size) => {
        const bags = wholeBags(cubicYards, size);
        expect(Number.isInteger(bags)).toBe(true);
        expect(bags * size).toBeGreaterThanOrEqual(27 * cubicYards * (1 - 2e-6));
        expect((bags - 1) * size).toBeLessThan(27 * cubicYards + 1e-12);
      }),
      { examples: [[1, 1]] },
    );
  });

  test("is none for no material, and one for a handful", () => {
    fc.assert(
      fc.property(bag, (size) => {
        expect(wholeBags(0, size)).toBe(0);
        expect(wholeBags(1e-9, size)).toBe(1);
      }),
    );
  });

  test("is no smaller for more material or smaller bags", () => {
    fc.assert(
      fc.property(volume, bag, measured(0, 5), (cubicYards, size, more) => {
        expect(wholeBags(cubicYards + more, size)).toBeGreaterThanOrEqual(wholeBags(cubicYards, size));
        expect(wholeBags(cubicYards, size + more)).toBeLessThanOrEqual(wholeBags(cubicYards, size));
      }),
    );
  });
});
