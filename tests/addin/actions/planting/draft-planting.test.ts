import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { draftPlanting, type ChosenPlants } from "../../../../addin/actions/planting/draft-planting.ts";
import { plantsFor, suggestedFrom } from "../../../../addin/actions/planting/palette.ts";
import { placePlants, SPACING_TOLERANCE } from "../../../../addin/actions/planting/place-plants.ts";
import { drawPlan } from "../../../../addin/actions/planting/plan.ts";
import {
  distanceBetween,
  isInZone,
  ringOf,
  type PlantedBasin,
  type PlantingZones,
} from "../../../../addin/actions/planting/planting-zones.ts";
import { fromUs } from "../../../../functions/quantities.ts";
import { zoneAreas } from "../../../../functions/worksheet/plants.ts";
import { CHART_BASIN, plantAt, settings, startingPalette, zonesOf } from "./plants-of-tests.ts";
import "../../../property-seed.ts";

const NONE: ChosenPlants = { A: [], B: [], C: [] };

function suggested(units: "us" | "metric" = "us"): ChosenPlants {
  const wish = { sun: "sun", region: null, atLeastAsWetAs: null, widestSpacing: null, bloomMonth: null } as const;
  const of = (zone: "A" | "B" | "C") => suggestedFrom(plantsFor(startingPalette(units), { ...wish, zone }), 4);
  return { A: of("A"), B: of("B"), C: of("C") };
}

const drawn = (zones: PlantingZones, chosen: ChosenPlants, siteId = "Y-001") =>
  drawPlan(draftPlanting(siteId, zones, chosen).clumps, zones, startingPalette(zones.units), settings);
const count = (plan: ReturnType<typeof drawn>) => plan.standing.reduce((sum, { plants }) => sum + plants.length, 0);

/** Every plant in its zone, and no two nearer than they may stand. */
function expectSound(zones: PlantingZones, plan: ReturnType<typeof drawn>): void {
  const all = plan.standing.flatMap(({ clump, plants }) => plants.map((place) => ({ clump, place })));
  for (const { clump, place } of all) expect(isInZone(ringOf(zones, clump.zone), place), `${clump.plant} in zone ${clump.zone}`).toBe(true);
  all.forEach((one, index) => {
    for (const other of all.slice(index + 1)) {
      const apart =
        one.clump === other.clump ? one.clump.spacing : ((one.clump.spacing + other.clump.spacing) / 2) * (1 - SPACING_TOLERANCE);
      const distance = distanceBetween(one.place, other.place);
      if (distance < apart * (1 - 1e-6))
        expect.fail(`${one.clump.plant} and ${other.clump.plant} stand ${distance} apart and need ${apart}`);
    }
  });
}

describe("the zones of a plan", () => {
  test.each([CHART_BASIN, { ...CHART_BASIN, outline: { shape: "rectangle", lengthToWidth: 3 } } satisfies PlantedBasin])(
    "are the areas of SOAK.ZONEAREAS, $outline.shape",
    (basin) => {
      const zones = zonesOf(basin);
      // Axes of an ellipse or a rectangle give its area: pi / 4 L W, or L W.
      const fill = basin.outline.shape === "ellipse" ? Math.PI / 4 : 1;
      const enclosed = zones.rings.map(({ outer }) => fill * 4 * outer.halfLength * outer.halfWidth);
      const [a, b, c] = zoneAreas.evaluate([100, 6, 3, null, basin.outline.shape, basin.outline.lengthToWidth, "us"])[0] as number[];
      expect(enclosed[0]).toBeCloseTo(a!, 9);
      expect(enclosed[1]! - enclosed[0]!).toBeCloseTo(b!, 9);
      expect(enclosed[2]! - enclosed[1]!).toBeCloseTo(c!, 9);
    },
  );

  test("a metric yard has the same zones as the same basin in feet", () => {
    const metric = zonesOf({ ...CHART_BASIN, units: "metric", floorArea: fromUs("area", 100, "metric"), pondingDepth: 152.4 });
    expect(metric.rings.map(({ outer }) => outer.halfLength)).toEqual(
      zonesOf().rings.map(({ outer }) => expect.closeTo(outer.halfLength * 0.3048, 9)),
    );
  });

  test("an impossible floor area is said in words", () => {
    expect(() => zonesOf({ ...CHART_BASIN, floorArea: -1 })).toThrow("Floor area");
  });
});

// Nursery chart of plants for 100 sq ft by spacing, as printed online: 100 at 12 in, 44 at 18 in and 25 at 24 in on
// squares. Triangles hold 15.5 percent more. The edge of an oval floor cuts the grid: 12 percent is allowed for it.
test.each([
  [1, 100],
  [1.5, 44],
  [2, 25],
])("a floor of 100 sq ft at %d ft takes the chart's %d plants on triangles, within 12 percent", (spacing, chart) => {
  const planned = count(drawn(zonesOf(), { ...NONE, A: [plantAt(spacing)] }));
  expect(planned / (chart * 1.155)).toBeGreaterThan(0.88);
  expect(planned / (chart * 1.155)).toBeLessThan(1.05);
});

describe("a draft of suggested plants", () => {
  test.each([
    [60, 4, 3],
    [100, 6, 3],
    [180, 8, 4],
    [400, 6, 3],
  ])(
    "on %d sq ft, %d in deep with sides %d to 1, stands each plant in its zone and at its spacing",
    (floorArea, pondingDepth, sideSlope) => {
      const zones = zonesOf({ ...CHART_BASIN, floorArea, pondingDepth, sideSlope });
      expectSound(zones, drawn(zones, suggested()));
    },
  );

  // Kinds of several spacings side by side, and rings a foot or two wide, leave gaps at every border.
  test.each([60, 100, 180, 400])(
    "on %d sq ft holds three quarters or more of what SOAK.PLANTMIX counts, and no more than it counts",
    (floorArea) => {
      const zones = zonesOf({ ...CHART_BASIN, floorArea });
      const chosen = suggested();
      const wanted = zones.rings.reduce(
        (sum, { zone, area }) =>
          sum +
          chosen[zone].reduce((of, { spacing }) => of + Math.ceil(area / chosen[zone].length / (spacing! ** 2 * Math.sin(Math.PI / 3))), 0),
        0,
      );
      const planned = count(drawn(zones, chosen));
      expect(planned / wanted).toBeGreaterThan(0.75);
      expect(planned / wanted).toBeLessThanOrEqual(1);
    },
  );

  test("plants in odd clumps of three to seven, each of its full count", () => {
    const zones = zonesOf();
    const plan = drawn(zones, suggested());
    for (const { clump, plants } of plan.standing) {
      expect([1, 3, 5, 7]).toContain(clump.count);
      expect(plants).toHaveLength(clump.count);
    }
    expect(plan.standing.filter(({ clump }) => clump.count === 1).length).toBeLessThan(plan.standing.length / 10);
  });

  test("is the same for the same yard, and another for another yard", () => {
    const zones = zonesOf();
    expect(draftPlanting("Y-001", zones, suggested())).toEqual(draftPlanting("Y-001", zones, suggested()));
    expect(draftPlanting("Y-001", zones, suggested())).not.toEqual(draftPlanting("Y-002", zones, suggested()));
  });

  test("is the same garden in meters as in feet, to within a twentieth of the plants", () => {
    const metric = zonesOf({ ...CHART_BASIN, units: "metric", floorArea: fromUs("area", 100, "metric"), pondingDepth: 152.4 });
    const inMeters = drawn(metric, suggested("metric"));
    expectSound(metric, inMeters);
    expect(count(inMeters) / count(drawn(zonesOf(), suggested()))).toBeCloseTo(1, 1);
  });
});

test("shrubs stand alone and apart, and what finds no room is named", () => {
  const zones = zonesOf();
  const shrub = { ...plantAt(5.5, "Buttonbush"), form: "shrub" };
  const tree = { ...plantAt(25, "River birch"), form: "tree" };
  const draft = draftPlanting("Y-001", zones, { ...NONE, A: [shrub, plantAt(1.5)], B: [tree] });
  const plan = drawPlan(draft.clumps, zones, [], settings);
  expectSound(zones, plan);
  expect(plan.standing.filter(({ clump }) => clump.plant === "Buttonbush").map(({ clump }) => clump.count)).toEqual(
    expect.arrayContaining([1]),
  );
  expect(draft.leftOut).toEqual([{ plant: "River birch", zone: "B", reason: "no room" }]);
});

test("a plant without a spacing is named, not guessed at", () => {
  expect(draftPlanting("Y-001", zonesOf(), { ...NONE, A: [{ ...plantAt(1, "Sword fern"), spacing: null }] })).toEqual({
    clumps: [],
    leftOut: [{ plant: "Sword fern", zone: "A", reason: "no spacing" }],
    tooLarge: [],
  });
});

test("a zone of thousands of plants is said to be too large, at once", () => {
  const draft = draftPlanting("Y-001", zonesOf({ ...CHART_BASIN, floorArea: 40_000 }), { ...NONE, A: [plantAt(1)] });
  expect(draft).toEqual({ clumps: [], leftOut: [], tooLarge: ["A"] });
});

test("clumps already planted keep their ground", () => {
  const zones = zonesOf();
  const kept = { zone: "A" as const, count: 7, spacing: 2, place: { along: 0, across: 0 } };
  const { clumps } = draftPlanting("Y-001", zones, { ...NONE, A: [plantAt(1)] }, [kept]);
  const standing = placePlants(zones, [
    kept,
    ...clumps.map((clump) => ({
      zone: "A" as const,
      count: clump.planned!,
      spacing: clump.spacing!,
      place: { along: clump.along!, across: clump.across! },
    })),
  ]);
  expect(standing[0]?.plants).toHaveLength(7);
  expect(standing.every(({ clump, plants }) => plants.length === clump.count)).toBe(true);
});

test("whatever clumps people type, each plant stands in its zone, at its spacing, and no clump holds more than its count", () => {
  const typed = fc.record({
    zone: fc.constantFrom("A" as const, "B" as const, "C" as const),
    count: fc.integer({ min: 0, max: 40 }),
    spacing: fc.double({ min: 0.5, max: 6, noNaN: true }),
    place: fc.option(
      fc.record({ along: fc.double({ min: -12, max: 12, noNaN: true }), across: fc.double({ min: -8, max: 8, noNaN: true }) }),
      { nil: null },
    ),
  });
  fc.assert(
    fc.property(fc.array(typed, { maxLength: 12 }), (clumps) => {
      const zones = zonesOf();
      const standing = placePlants(zones, clumps).map((clump, index) => ({
        ...clump,
        clump: { ...clump.clump, id: `${index}`, plant: `${index}` },
      }));
      expectSound(zones, { standing, undrawn: [] });
      for (const { clump, plants } of standing) expect(plants.length).toBeLessThanOrEqual(clump.count);
    }),
    { numRuns: 60 },
  );
});
