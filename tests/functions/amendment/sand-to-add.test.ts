import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addedSandShare, sandVolumeToAdd } from "../../../functions/amendment/sand-to-add.ts";
import { measured } from "../measured.ts";

const volume = measured(0, 50);
const nativePercent = measured(0, 60);
const shortPercent = measured(0.1, 20);
const purerPercent = measured(1, 20);

// Computed by hand from the balance of sand.
describe("computed by hand", () => {
  test("1 cu yd of 20 percent sand comes to 60 percent with 1.143 cu yd of a 95 percent sand", () => {
    const sand = { nativePercent: 20, sourcePercent: 95, targetPercent: 60 };
    expect(sandVolumeToAdd(1, sand)).toBeCloseTo(1.143, 3);
    expect(addedSandShare(sand)).toBeCloseTo(1.143 / 2.143, 3);
  });

  test.each([60, 75])("a soil of %d percent sand that is to have 60 needs none", (percent) => {
    expect(sandVolumeToAdd(3, { nativePercent: percent, sourcePercent: 50, targetPercent: 60 })).toBe(0);
    expect(addedSandShare({ nativePercent: percent, sourcePercent: 50, targetPercent: 60 })).toBe(0);
  });
});

describe("any blend", () => {
  test("has the target's sand when both parts are counted", () => {
    fc.assert(
      fc.property(volume, nativePercent, shortPercent, purerPercent, (native, percent, short, purer) => {
        const targetPercent = percent + short;
        const sourcePercent = targetPercent + purer;
        const added = sandVolumeToAdd(native, { nativePercent: percent, sourcePercent, targetPercent });
        expect(native * percent + added * sourcePercent).toBeCloseTo((native + added) * targetPercent, 6);
      }),
    );
  });

  test("takes sand in proportion to the soil", () => {
    fc.assert(
      fc.property(volume, nativePercent, shortPercent, purerPercent, (native, percent, short, purer) => {
        const sand = { nativePercent: percent, sourcePercent: percent + short + purer, targetPercent: percent + short };
        expect(sandVolumeToAdd(2 * native, sand)).toBeCloseTo(2 * sandVolumeToAdd(native, sand), 6);
      }),
      { examples: [[0, 20, 10, 5]] },
    );
  });

  test("is sand by a share between none and all, half exactly where the target is midway", () => {
    fc.assert(
      fc.property(nativePercent, shortPercent, purerPercent, (percent, short, purer) => {
        const share = addedSandShare({ nativePercent: percent, sourcePercent: percent + short + purer, targetPercent: percent + short });
        expect(share).toBeGreaterThan(0);
        expect(share).toBeLessThan(1);
        expect(addedSandShare({ nativePercent: percent, sourcePercent: percent + 2 * short, targetPercent: percent + short })).toBeCloseTo(
          0.5,
          9,
        );
      }),
    );
  });
});
