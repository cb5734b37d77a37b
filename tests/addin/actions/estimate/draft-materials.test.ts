import { describe, expect, test } from "vitest";
import { draftBasin } from "../../../../addin/actions/basin/draft-basin.ts";
import { draftMaterials, MULCH, OVERFLOW_STONE, type OrderInputs } from "../../../../addin/actions/estimate/draft-materials.ts";
import { CUBIC_FEET_PER_CUBIC_YARD } from "../../../../functions/quantities.ts";
import { roofInMetric, roofInUs, settings } from "../../../taskpane/views/basin/basin-examples.ts";

const NOTHING: OrderInputs = { soil: "loam", loadVolume: null, loadWeight: null, bagSize: null };
const mixed = { ...roofInUs, mixRecipe: "tight soil" };
const basin = draftBasin(mixed, settings);
const draft = draftMaterials(basin, settings, NOTHING);
const of = (answer: unknown) => (answer as { readonly value: number }).value;
const line = (material: string, materials = draft) => materials.lines.find((each) => each.material === material)!;

describe("materials of a basin", () => {
  test("loam swells by 1.25 when it is dug (FM 5-434, table 1-1) and clay by 1.43", () => {
    expect(of(draft.loose) / of(draft.inPlace)).toBeCloseTo(1.25, 2);
    expect(of(draftMaterials(basin, settings, { ...NOTHING, soil: "clay" }).loose) / of(draft.inPlace)).toBeCloseTo(1.43, 2);
  });

  test("the heap is a cone that holds the loose volume: pi r^2 h / 3", () => {
    expect((Math.PI * of(draft.pileRadius) ** 2 * of(draft.pileHeight)) / 3).toBeCloseTo(CUBIC_FEET_PER_CUBIC_YARD * of(draft.loose), 6);
    expect(of(draft.pileGround)).toBeCloseTo(Math.PI * of(draft.pileRadius) ** 2, 6);
  });

  // TM 9-2320-366-10-1, table 2-15: moist earth 95 lb per cu ft, so 95 x 27 / 2000 = 1.2825 tons a cu yd.
  test("loose earth weighs 1.2825 tons a cubic yard", () => {
    expect(of(draft.earthWeight)).toBeCloseTo(1.2825 * of(draft.loose), 9);
  });

  test("the mix is bought part by part with its settling, and every part that has a weight is weighed", () => {
    // Recipe "tight soil": 52 % sand, 24 % topsoil, 24 % compost; 15 % settling.
    const loose = of(basin.mixVolume) / 0.85;
    expect(of(line("sand").volume)).toBeCloseTo(0.52 * loose, 9);
    expect(of(line("compost").volume)).toBeCloseTo(0.24 * loose, 9);
    // Common practice, no source: compost 1,000 lb a cu yd.
    expect(of(line("compost").weight)).toBeCloseTo(0.5 * of(line("compost").volume), 9);
    expect(draft.lines.map(({ material }) => material)).toEqual(["sand", "topsoil", "compost", MULCH, OVERFLOW_STONE]);
  });

  test("the overflow's stone is that of Program: 12 sq ft, 6 in deep, is 12 x 6 / 324 cu yd", () => {
    expect(of(line(OVERFLOW_STONE).volume)).toBeCloseTo(72 / 324, 9);
  });

  test("bags appear when a bag size is typed: 27 cu ft a cu yd over the bag, rounded up", () => {
    expect(line(MULCH).bags).toBeNull();
    const bagged = draftMaterials(basin, settings, { ...NOTHING, bagSize: 2 });
    expect(of(line(MULCH, bagged).bags)).toBe(Math.ceil((CUBIC_FEET_PER_CUBIC_YARD * of(line(MULCH).volume)) / 2));
  });

  test("loads appear when a load is typed, and a weight limit makes more of them", () => {
    expect(draft.loads).toBeNull();
    const byVolume = draftMaterials(basin, settings, { ...NOTHING, loadVolume: 5 });
    expect(of(byVolume.loads)).toBe(Math.ceil(of(draft.loose) / 5));
    expect(byVolume.cautions.join(" ")).toContain("No weight limit is given");
    expect(of(draftMaterials(basin, settings, { ...NOTHING, loadVolume: 5, loadWeight: 1 }).loads)).toBe(
      Math.ceil(of(draft.earthWeight) / 1),
    );
  });

  // Common practice, no source: a half-ton pickup carries 0.75 tons.
  test("what is too heavy for a pickup says how many trips it takes", () => {
    expect(draft.pickupTrips.find(({ material }) => material === "dug earth")?.trips).toBe(Math.ceil(of(draft.earthWeight) / 0.75));
    expect(draft.pickupTrips.every(({ trips }) => trips > 1)).toBe(true);
  });

  test("the same basin in metric units is the same material: 0.76455 cubic meters a cubic yard, 0.90718 tonnes a ton", () => {
    const metric = draftMaterials(draftBasin({ ...roofInMetric, mixRecipe: "tight soil" }, settings), settings, NOTHING);
    expect(of(metric.loose)).toBeCloseTo(of(draft.loose) * 0.764554857984, 6);
    expect(of(metric.earthWeight)).toBeCloseTo(of(draft.earthWeight) * 0.90718474, 6);
    expect(of(line(MULCH, metric).volume)).toBeCloseTo(of(line(MULCH).volume) * 0.764554857984, 6);
    expect(metric.pickupTrips).toEqual(draft.pickupTrips);
  });

  test("a bag on a metric yard is in liters: 50 L hold a twentieth of a cubic meter", () => {
    const metric = draftMaterials(draftBasin(roofInMetric, settings), settings, { ...NOTHING, bagSize: 50 });
    expect(of(line(MULCH, metric).bags)).toBe(Math.ceil(of(line(MULCH, metric).volume) / 0.05));
  });

  test("where the basin has no size every answer is its sentence, never a zero", () => {
    const none = draftMaterials(draftBasin({ ...roofInUs, testedRate: null }, settings), settings, {
      ...NOTHING,
      loadVolume: 5,
      bagSize: 2,
    });
    for (const answer of [none.inPlace, none.loose, none.earthWeight, none.pileRadius, none.loads])
      expect(answer).toEqual({ sentence: expect.any(String) as unknown });
    expect(none.pickupTrips.filter(({ material }) => material !== OVERFLOW_STONE)).toEqual([]);
  });
});
