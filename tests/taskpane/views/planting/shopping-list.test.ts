import { describe, expect, test } from "vitest";
import { NEW_CLUMP, type PlannedClump } from "../../../../addin/actions/planting/plan.ts";
import { planCautions } from "../../../../taskpane/views/planting/plan-cautions.ts";
import { planChanges } from "../../../../taskpane/views/planting/plan-changes.ts";
import { shoppingList } from "../../../../taskpane/views/planting/shopping-list.ts";
import { shoppingText } from "../../../../taskpane/views/planting/shopping-view.tsx";
import { startingPalette } from "../../../addin/actions/planting/plants-of-tests.ts";

const clump = (plant: string | null, planned: number, changed: Partial<PlannedClump> = {}): PlannedClump => ({
  ...NEW_CLUMP,
  id: `${plant} ${planned}`,
  plant,
  zone: "A",
  planned,
  ...changed,
});
const lines = (clumps: readonly PlannedClump[], flat: number | null = null, units: "us" | "metric" = "us") =>
  shoppingList(clumps, startingPalette(units), flat, units);

describe("the shopping list", () => {
  test("adds up the clumps of a kind, whatever the capitals of its name", () => {
    expect(lines([clump("Iris versicolor", 5), clump("iris  versicolor", 3), clump("Juncus effusus", 7)])).toMatchObject([
      { plant: "Iris versicolor", commonName: "northern blue flag", count: 8, spacings: [1.25] },
      { plant: "Juncus effusus", count: 7 },
    ]);
  });

  // Common practice, no source: plugs 9 to 12 in, quarts 12 to 18 in, gallons wider, shrubs in 3 gallons.
  test.each([
    ["Lobelia cardinalis", "plug"],
    ["Iris versicolor", "quart"],
    ["Juncus effusus", "gallon"],
    ["Cephalanthus occidentalis", "3 gallon"],
    ["A plant of my own", null],
  ])("%s comes as a %s", (plant, container) => {
    expect(lines([clump(plant, 3)])[0]?.container).toBe(container);
  });

  test("a metric yard buys the same containers", () => {
    expect(lines([clump("Lobelia cardinalis", 3)], null, "metric")[0]).toMatchObject({
      container: "plug",
      spacings: [expect.closeTo(0.3048, 6)],
    });
  });

  test("buys whole flats of plugs where the nursery sells flats, and nothing else in flats", () => {
    // 40 plugs at 38 to a flat are 2 flats, 76 plants.
    const [plugs, gallons] = lines([clump("Lobelia cardinalis", 40), clump("Juncus effusus", 40)], 38);
    expect(plugs?.flats).toEqual({ flats: 2, plants: 76 });
    expect(gallons?.flats).toBeNull();
  });

  test("is copied as lines apart by tabs, with units, and a hostile name is pasted as words", () => {
    const text = shoppingText(lines([clump('=HYPERLINK("x")\tand\nmore', 3, { spacing: 2 }), clump("Lobelia cardinalis", 5)]), "us");
    expect(text.split("\n")).toEqual([
      "Plant\tPlants\tSpacing (ft)\tContainer",
      `'=HYPERLINK("x") and more\t3\t2\tgallon`.replace("gallon", "1 gallon"),
      "cardinal flower (Lobelia cardinalis)\t5\t1\tplug",
      "8 plants in all.",
      "",
    ]);
  });
});

describe("cautions of a plan", () => {
  test("what Plants says of a plant is repeated, a shrub grows wide, and an unknown plant is said to be unknown", () => {
    const said = planCautions(
      lines([clump("Physostegia virginiana", 3), clump("Cornus sericea", 1), clump("A plant of my own", 3)]),
      startingPalette(),
    ).join(" ");
    expect(said).toContain("obedient plant (Physostegia virginiana): Spreads: aggressive in a small bed.");
    expect(said).toContain("red-osier dogwood grows wide");
    expect(said).toContain("A plant of my own is not on your Plants sheet");
  });

  test("over 30 percent of one kind is pointed out, 30 percent is not", () => {
    const of = (one: number, other: number) =>
      planCautions(
        lines([
          clump("Juncus effusus", one),
          clump("Carex stricta", other),
          clump("Carex vulpinoidea", other),
          clump("Panicum virgatum", 10),
        ]),
        startingPalette(),
      );
    expect(of(21, 15).filter((caution) => caution.includes("%"))).toEqual([expect.stringContaining("soft rush (Juncus effusus) is 34 %")]);
    expect(of(15, 12.5).filter((caution) => caution.includes("%"))).toEqual([]);
  });
});

test("what writing does is counted: added, changed, taken out, and rows that hold more than a plan", () => {
  const record = {
    siteId: "Y-001",
    plant: "Juncus effusus",
    zone: "A",
    planned: 3,
    spacing: 1.75,
    alongLength: 0,
    acrossWidth: 0,
    planted: null,
    plantedOn: null,
    note: null,
  } as const;
  const seen = [1, 2, 3].map((row) => ({ row, record: row === 3 ? { ...record, note: "Gift of the school" } : record, cells: record }));
  const [kept, changed] = seen.map(({ row }) => clump("Juncus effusus", 3, { id: `row-${row}`, row, spacing: 1.75, along: 0, across: 0 }));
  expect(planChanges(seen, [kept!, { ...changed!, planned: 5 }, clump("Carex stricta", 3)])).toEqual({
    added: 1,
    changed: 1,
    removed: 1,
    noted: ["Juncus effusus"],
  });
});
