import { describe, expect, test } from "vitest";
import {
  addClump,
  changeClump,
  drawPlan,
  moveClump,
  NEW_CLUMP,
  removeClump,
  swapPlant,
  type PlannedClump,
} from "../../../../addin/actions/planting/plan.ts";
import { plantAt, settings, startingPalette, zonesOf } from "./plants-of-tests.ts";

const zones = zonesOf();
const palette = startingPalette();
const clump = (id: string, changed: Partial<PlannedClump> = {}): PlannedClump => ({
  ...NEW_CLUMP,
  id,
  plant: "Iris versicolor",
  zone: "A",
  planned: 3,
  spacing: 1,
  along: 0,
  across: 0,
  ...changed,
});
const drawn = (clumps: readonly PlannedClump[]) => drawPlan(clumps, zones, palette, settings);

describe("what people type on Planting is drawn", () => {
  test("a blank spacing and zone are taken from Plants", () => {
    // Plants: Iris versicolor, zone A, 1.25 ft.
    const [standing] = drawn([clump("one", { zone: null, spacing: null })]).standing;
    expect(standing?.clump).toMatchObject({ zone: "A", spacing: 1.25 });
    expect(standing?.plants).toHaveLength(3);
  });

  test("a plant that Plants does not have is drawn at the spacing of Program, 1.5 ft", () => {
    const [standing] = drawn([clump("one", { plant: '=HYPERLINK("x")', spacing: null })]).standing;
    expect(standing?.clump).toMatchObject({ plant: '=HYPERLINK("x")', spacing: 1.5 });
  });

  test("a clump without a place stands on free ground, and those with a place do not give way to it", () => {
    const { standing } = drawn([clump("anywhere", { along: null, across: null }), clump("placed")]);
    expect(standing.map(({ plants }) => plants.length)).toEqual([3, 3]);
    expect(standing[1]?.plants[0]).toEqual({ along: 0, across: 0 });
  });

  test.each([
    ["no plant", { plant: null }],
    ["no zone", { plant: "My own plant", zone: null }],
    ["no count", { planned: null }],
    ["not whole", { planned: 2.5 }],
    ["too many", { planned: 1e9 }],
    ["too close", { spacing: 0.0001 }],
  ] as const)("a row with %s is not drawn and says so", (reason, changed) => {
    expect(drawn([clump("one", changed)])).toEqual({ standing: [], undrawn: [expect.objectContaining({ id: "one", reason })] });
  });

  test("a row that only says what was planted is drawn as that", () => {
    expect(drawn([clump("one", { planned: null, planted: 4 })]).standing[0]?.plants).toHaveLength(4);
  });

  test("a place far from the basin has room for none", () => {
    expect(drawn([clump("one", { along: 1e9 })]).standing[0]?.plants).toEqual([]);
  });
});

describe("changing a plan", () => {
  const plan = [clump("one", { along: -3 }), clump("other", { along: 3 })];

  test("a clump moves to free ground", () => {
    const { clumps, exchangedWith } = moveClump(plan, drawn(plan), "one", { along: -3, across: 1.001 });
    expect(clumps[0]).toMatchObject({ along: -3, across: 1 });
    expect(exchangedWith).toBeNull();
    expect(clumps[1]).toBe(plan[1]);
  });

  test("a clump moved onto another of its zone changes places with it", () => {
    const { clumps, exchangedWith } = moveClump(plan, drawn(plan), "one", { along: 3.2, across: 0 });
    expect(clumps).toMatchObject([
      { along: 3, across: 0 },
      { along: -3, across: 0 },
    ]);
    expect(exchangedWith?.id).toBe("other");
  });

  test("another plant brings its own spacing; count and place stay", () => {
    expect(swapPlant(plan, "one", plantAt(2, "Asclepias incarnata"))[0]).toMatchObject({
      plant: "Asclepias incarnata",
      spacing: 2,
      planned: 3,
      along: -3,
    });
  });

  test("clumps are added, counted anew and taken out, the others as they were", () => {
    const added = addClump(plan, plantAt(1.25, "Iris virginica"), "A", 5);
    expect(added).toHaveLength(3);
    expect(added[2]).toMatchObject({ row: null, plant: "Iris virginica", planned: 5, spacing: 1.25, along: null });
    expect(changeClump(added, added[2]!.id, { planned: 7 })[2]?.planned).toBe(7);
    expect(removeClump(added, "one").map(({ id }) => id)).toEqual(["other", added[2]!.id]);
    expect(new Set(addClump(added, plantAt(1), "A", 3).map(({ id }) => id)).size).toBe(4);
  });
});
