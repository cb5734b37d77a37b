import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mixRecipes, recipeSources } from "../../../functions/amendment/mix-recipes.ts";
import { mixVolumes, USUAL_SETTLING_SHARE } from "../../../functions/amendment/soil-mix.ts";
import { measured } from "../measured.ts";

const recipe = fc.constantFrom(...mixRecipes);
const volume = measured(0, 500);
const settling = measured(0, 0.5);

describe("recipes", () => {
  test.each(mixRecipes)("$name has every share inside its published range", ({ parts, published }) => {
    const ranges: Readonly<Record<string, { least: number; most: number }>> = published.values;
    expect(parts.map(({ material }) => material)).toEqual(Object.keys(ranges));
    for (const { material, share } of parts) {
      expect(share * 100).toBeGreaterThanOrEqual(ranges[material]!.least - 1e-9);
      expect(share * 100).toBeLessThanOrEqual(ranges[material]!.most + 1e-9);
    }
  });

  test.each(mixRecipes)(
    "$name has shares that add up to 1 and lie at the middle of the range, scaled to add up",
    ({ parts, published }) => {
      expect(parts.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
      const middles = Object.values(published.values).map(({ least, most }) => (least + most) / 2);
      const total = middles.reduce((sum, middle) => sum + middle, 0);
      // To a whole percent, and one more where the whole percents had to give way.
      parts.forEach(({ share }, place) => expect(Math.abs(share * 100 - (100 * middles[place]!) / total)).toBeLessThanOrEqual(1));
    },
  );

  // Minnesota Stormwater Manual, "Comparison of pros and cons of bioretention soil mixes" (read); the updated mixes.
  test("the Minnesota mixes are the published ones", () => {
    const rangesOf = (name: string) =>
      Object.values(mixRecipes.find((one) => one.name === name)!.published.values).map(({ least, most }) => [least, most]);
    expect(rangesOf("sand with topsoil and compost")).toEqual([
      [60, 70],
      [15, 25],
      [15, 25],
    ]);
    expect(rangesOf("sand and compost")).toEqual([
      [70, 85],
      [15, 30],
    ]);
    expect(rangesOf("sand low in phosphorus")).toEqual([
      [85, 88],
      [8, 12],
      [3, 5],
    ]);
  });

  test("each recipe names a document, and no name holds a comma that a drop-down would split at", () => {
    expect(recipeSources.every(({ document }) => document !== "")).toBe(true);
    expect(mixRecipes.filter(({ name }) => name.includes(","))).toEqual([]);
  });
});

describe("computed by hand", () => {
  // Common practice, no source: order 15 to 20 percent more than the finished volume.
  test("a mix that loses 15 percent of its loose volume takes 17.6 percent more than it fills, within the usual 15 to 20", () => {
    const [whole] = mixVolumes(1, [{ material: "mix", share: 1 }], USUAL_SETTLING_SHARE);
    expect(whole!.volume).toBeCloseTo(1.176, 3);
    expect(whole!.volume).toBeGreaterThan(1.15);
    expect(whole!.volume).toBeLessThan(1.2);
  });

  test("2 cu yd of fast soil's mix take 1.529 cu yd of native soil and 0.824 of compost", () => {
    const fast = mixRecipes.find(({ name }) => name === "fast soil")!;
    const [native, compost] = mixVolumes(2, fast.parts, 0.15);
    expect(native).toMatchObject({ material: "native soil" });
    expect(native!.volume).toBeCloseTo(1.529, 3);
    expect(compost!.volume).toBeCloseTo(0.824, 3);
  });
});

describe("any mix", () => {
  test("fills its volume once it has settled: nothing is lost and nothing left over", () => {
    fc.assert(
      fc.property(volume, recipe, settling, (amount, { parts }, loss) => {
        const loose = mixVolumes(amount, parts, loss).reduce((sum, part) => sum + part.volume, 0);
        expect(loose * (1 - loss)).toBeCloseTo(amount, 8);
      }),
      { examples: [[0, mixRecipes[0]!, 0]] },
    );
  });

  test("takes more of every material the more it settles", () => {
    fc.assert(
      fc.property(measured(0.1, 500), recipe, settling, (amount, { parts }, loss) => {
        const more = mixVolumes(amount, parts, loss + 0.1);
        mixVolumes(amount, parts, loss).forEach((part, place) => expect(more[place]!.volume).toBeGreaterThan(part.volume));
      }),
    );
  });

  test("takes its materials in the order and the proportion of its shares", () => {
    fc.assert(
      fc.property(measured(0.1, 500), recipe, settling, (amount, { parts }, loss) => {
        const volumes = mixVolumes(amount, parts, loss);
        expect(volumes.map(({ material }) => material)).toEqual(parts.map(({ material }) => material));
        volumes.forEach((part, place) => expect(part.volume / volumes[0]!.volume).toBeCloseTo(parts[place]!.share / parts[0]!.share, 8));
      }),
    );
  });
});
