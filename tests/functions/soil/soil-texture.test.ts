import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { TEXTURE_CLASSES } from "../../../functions/published/soil-survey-manual.ts";
import { textureClass, textureClasses } from "../../../functions/soil/soil-texture.ts";

/** A point of the triangle: sand and clay that leave room for silt. */
const point = fc
  .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([one, other]): readonly [sand: number, clay: number] => [100 * Math.min(one, other), 100 * (1 - Math.max(one, other))]);

describe("USDA texture triangle", () => {
  // Idaho OnePlan (read).
  test("30 percent sand and 30 percent clay are clay loam", () => {
    expect(textureClass(30, 30)).toBe("clay loam");
  });

  // Soil Survey Manual, chapter 3 (partly read); points on lines go to the class above or to the right (Benham and others 2009, read).
  test.each([
    [90, 5, "sand"],
    [80, 5, "loamy sand"],
    [60, 10, "sandy loam"],
    [52, 20, "loam"],
    [45, 27, "clay loam"],
    [20, 27, "silty clay loam"],
    [50, 40, "sandy clay"],
    [0, 0, "silt"],
    [0, 12, "silt loam"],
    [20, 60, "clay"],
    [60, 25, "sandy clay loam"],
    [10, 45, "silty clay"],
  ] as const)("%f percent sand and %f percent clay are %s", (sand, clay, name) => {
    expect(textureClass(sand, clay)).toBe(name);
  });

  // The classes that Saxton and Rawls 2006, table 3, give to their points (read in transcription).
  test.each([
    [88, 5, "sand"],
    [80, 5, "loamy sand"],
    [40, 20, "loam"],
    [20, 15, "silt loam"],
    [10, 5, "silt"],
    [60, 25, "sandy clay loam"],
    [10, 45, "silty clay"],
    [50, 40, "sandy clay"],
  ] as const)("%f percent sand and %f percent clay are %s in the tables too", (sand, clay, name) => {
    expect(textureClass(sand, clay)).toBe(name);
  });

  test.each([
    { line: "silt + 1.5 clay = 15", sand: 90, clay: 10, name: "loamy sand" },
    { line: "silt + 1.5 clay = 15, no clay", sand: 85, clay: 0, name: "loamy sand" },
    { line: "silt + 2 clay = 30", sand: 70, clay: 0, name: "sandy loam" },
    { line: "silt 50 at low clay", sand: 45, clay: 5, name: "silt loam" },
    { line: "silt 80 at low clay", sand: 10, clay: 10, name: "silt" },
    { line: "silt 50 in the middle", sand: 35, clay: 15, name: "silt loam" },
    { line: "clay 7 at sand 52", sand: 52, clay: 7, name: "loam" },
    { line: "clay 20 past sand 52", sand: 60, clay: 20, name: "sandy clay loam" },
    { line: "clay 35 past sand 45", sand: 50, clay: 35, name: "sandy clay" },
    { line: "clay 40 between sand 20 and 45", sand: 30, clay: 40, name: "clay" },
    { line: "silt 40 at high clay", sand: 10, clay: 50, name: "silty clay" },
    { line: "sand 45 at high clay", sand: 45, clay: 45, name: "clay" },
  ])("a point on the line $line is $name", ({ sand, clay, name }) => {
    expect(textureClass(sand, clay)).toBe(name);
  });

  test("each of the 20,301 points half a percent apart has exactly one class, and every class has points", () => {
    let points = 0;
    const met = new Set<string>();
    for (let sand = 0; sand <= 200; sand += 1) {
      for (let clay = 0; clay <= 200 - sand; clay += 1) {
        const classes = textureClasses(sand / 2, clay / 2);
        if (classes.length !== 1) throw new Error(`${sand / 2} sand, ${clay / 2} clay: ${classes.join(", ")}`);
        met.add(classes[0]!);
        points += 1;
      }
    }
    expect(points).toBe(20_301);
    expect([...met].sort()).toEqual([...TEXTURE_CLASSES].sort());
  });
});

describe("any soil", () => {
  test("has exactly one class", () => {
    fc.assert(
      fc.property(point, ([sand, clay]) => {
        expect(textureClasses(sand, clay)).toHaveLength(1);
      }),
      { numRuns: 2000, examples: [[[100, 0]], [[0, 100]], [[0, 0]], [[52, 20]], [[45, 27]], [[52, 7]], [[20, 40]], [[60.1, 39.9]]] },
    );
  });

  test("has no class when its sand and clay are over 100 percent", () => {
    fc.assert(
      fc.property(point, fc.double({ min: 0.001, max: 100, noNaN: true }), ([sand, clay], over) => {
        expect(textureClass(sand, 100 - sand + over)).toBeUndefined();
        expect(textureClass(100 - clay + over, clay)).toBeUndefined();
      }),
    );
  });

  test("is no clay, sandy clay or silty clay with less than 35 percent clay, and no sand with less than 85", () => {
    fc.assert(
      fc.property(point, ([sand, clay]) => {
        const name = textureClass(sand, clay)!;
        if (clay < 35) expect(["clay", "sandy clay", "silty clay"]).not.toContain(name);
        if (sand < 85) expect(name).not.toBe("sand");
        if (clay >= 40) expect(["clay", "sandy clay", "silty clay"]).toContain(name);
      }),
    );
  });
});
