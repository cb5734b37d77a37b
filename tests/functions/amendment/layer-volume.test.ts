import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { layerVolumeCubicYards } from "../../../functions/amendment/layer-volume.ts";
import { measured } from "../measured.ts";

const area = measured(0, 5000);
const depth = measured(0, 48);
const waste = measured(0, 1);

describe("computed by hand: 1 cu yd covers 324 sq ft an inch deep", () => {
  test("200 sq ft at 3 in take 1.852 cu yd, which is 1.416 m3", () => {
    expect(layerVolumeCubicYards(200, 3, 0)).toBeCloseTo(1.852, 3);
    expect(layerVolumeCubicYards(200, 3, 0) * 0.764554857984).toBeCloseTo(1.416, 3);
  });

  test("108 sq ft at 3 in take 1 cu yd", () => {
    expect(layerVolumeCubicYards(108, 3, 0)).toBe(1);
  });

  test("a tenth of waste takes a tenth more", () => {
    expect(layerVolumeCubicYards(108, 3, 0.1)).toBeCloseTo(1.1, 12);
  });
});

describe("any layer", () => {
  test("takes as much in two thin layers as in one thick", () => {
    fc.assert(
      fc.property(area, depth, waste, (squareFeet, inches, share) => {
        expect(2 * layerVolumeCubicYards(squareFeet, inches / 2, share)).toBeCloseTo(layerVolumeCubicYards(squareFeet, inches, share), 9);
      }),
      { examples: [[0, 0, 0]] },
    );
  });

  test("takes one amount of material in feet and in metres", () => {
    fc.assert(
      fc.property(area, depth, (squareFeet, inches) => {
        const cubicMetres = squareFeet * 0.09290304 * inches * 0.0254;
        expect(layerVolumeCubicYards(squareFeet, inches, 0) * 0.764554857984).toBeCloseTo(cubicMetres, 8);
      }),
    );
  });

  test("takes at most twice its volume, waste and all, and more the more is wasted", () => {
    fc.assert(
      fc.property(measured(1, 5000), measured(0.1, 48), measured(0, 0.9), (squareFeet, inches, share) => {
        const volume = layerVolumeCubicYards(squareFeet, inches, share);
        expect(volume).toBeLessThanOrEqual(2 * layerVolumeCubicYards(squareFeet, inches, 0));
        expect(layerVolumeCubicYards(squareFeet, inches, share + 0.1)).toBeGreaterThan(volume);
      }),
    );
  });
});
