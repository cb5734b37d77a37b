import { beforeEach, describe, expect, test } from "vitest";
import { draftBasin, basinInputsOf } from "../../../../addin/actions/basin/draft-basin.ts";
import { draftLines } from "../../../../addin/actions/estimate/draft-estimate.ts";
import {
  estimateOf,
  estimateOfDraft,
  stalePriceSentence,
  volunteerHoursValue,
  type Estimate,
} from "../../../../addin/actions/estimate/estimate.ts";
import { addEstimateLines, proposeEstimate, takeDraftedQuantity } from "../../../../addin/actions/estimate/propose-estimate.ts";
import { addSurface } from "../../../../addin/actions/yard/record-yard.ts";
import { appendRows } from "../../../../addin/actions/program/write-records.ts";
import { plantingSheet } from "../../../../addin/records/planting.ts";
import { EstimateWorkbook, TODAY } from "../../estimate-workbook.ts";

let book: EstimateWorkbook;
let siteId: string;

const estimate = async (): Promise<Estimate> => estimateOf(await book.program(), await book.read(siteId), TODAY);
const draft = async (id = siteId) => {
  const program = await book.program();
  const yard = await book.read(id);
  return draftLines(program, yard, draftBasin(basinInputsOf(yard), program.settings));
};
const drafted = async (item: string, id = siteId) => (await draft(id)).lines.find((line) => line.item === item);

beforeEach(async () => {
  book = await EstimateWorkbook.start();
  siteId = await book.yard();
});

describe("An estimate adds up", () => {
  beforeEach(async () => {
    await book.price({ item: "compost", unitPrice: 32, packageSize: 0.5, minimumOrder: 2, delivery: 60, priceDate: TODAY - 30 });
    await book.price({ item: "plant plug", unitPrice: 4.5, priceDate: TODAY - 30 });
    await book.price({ item: "volunteer hour", unitPrice: 31.8, priceDate: TODAY - 30 });
    await book.lines(siteId, [
      { item: "compost", quantity: 2.6, unit: "cu yd" },
      { item: "plant plug", quantity: 40, unit: "plant" },
      { item: "volunteer hour", quantity: 16, unit: "h", kind: "in-kind" },
    ]);
  });

  // By hand: 2.6 cu yd in half yards is 3; 3 x 32 + 60 = 156. 40 x 4.50 = 180. Cash 336, 15 % of it 50.40, cost 386.40.
  test("cash lines, whole packages and delivery, a contingency of 15 percent, and in-kind hours kept apart", async () => {
    const { cash, contingency, cost, inKind, costShare, ownPart, unpriced } = await estimate();
    expect({ cash, contingency, costShare, unpriced }).toEqual({ cash: 336, contingency: 50.4, costShare: null, unpriced: 0 });
    expect(cost).toBeCloseTo(386.4, 9);
    expect(ownPart).toBeCloseTo(386.4, 9);
    // 16 h x 31.80 = 508.80.
    expect(inKind).toBeCloseTo(508.8, 9);
  });

  // By hand: 386.40 / 1,000 sq ft = 0.3864.
  test("the cost of a square foot treated counts the roof and paving that drain here, and no lawn", async () => {
    await addSurface(book.workbook, await book.read(siteId), { surface: "Uphill lawn", cover: "good lawn", area: 500, share: 1 });
    const { treated } = await estimate();
    expect(treated.area).toBe(1000);
    expect("value" in treated.cost ? treated.cost.value : null).toBeCloseTo(0.3864, 9);
  });

  // By hand: a gallon is 231 cu in, 1 cu ft is 1,728 cu in.
  test("the cost of a gallon held is the cost over what the basin holds", async () => {
    const { held } = await estimate();
    const yard = await book.read(siteId);
    const { waterHeld } = draftBasin(basinInputsOf(yard), (await book.program()).settings);
    if (!("value" in waterHeld) || !("value" in held.cost)) throw new Error("no size");
    expect(held.volume).toBeCloseTo((waterHeld.value * 1728) / 231, 9);
    expect(held.cost.value).toBeCloseTo(386.4 / ((waterHeld.value * 1728) / 231), 9);
  });

  // By hand: half of 386.40 is 193.20; with 50 flat 243.20; a cap of 200 leaves 186.40 to pay.
  test("forms of cost share add up, and the cap holds for their sum", async () => {
    await book.setting("costSharePercent", 50);
    expect((await estimate()).costShare).toBeCloseTo(193.2, 9);
    await book.setting("costShareFlat", 50);
    expect((await estimate()).costShare).toBeCloseTo(243.2, 9);
    await book.setting("costShareCap", 200);
    const capped = await estimate();
    expect(capped.costShare).toBe(200);
    expect(capped.ownPart).toBeCloseTo(186.4, 9);
    expect(capped.flags).toContain("The cap holds: the program pays no more, however large the garden.");
  });

  test("a cost share above the cost pays the cost alone, and says so", async () => {
    await book.setting("costShareFlat", 5000);
    const { costShare, cost, ownPart, flags } = await estimate();
    expect(costShare).toBe(cost);
    expect(ownPart).toBe(0);
    expect(flags).toContain("The cost share would be more than the garden costs: the cost alone is counted.");
  });

  test("a garden under the smallest that counts is paid nothing, and says so", async () => {
    await book.setting("costSharePercent", 50);
    await book.setting("costShareSmallestSquareFeet", 5000);
    const { costShare, flags } = await estimate();
    expect(costShare).toBe(0);
    expect(flags).toEqual(["The garden is under the smallest that the cost share counts, 5000 sq ft at the rim: it pays nothing."]);
  });

  // District of Columbia rebate page: $41 a sq ft of garden.
  test("a rebate by the square foot counts the garden at its rim", async () => {
    await book.setting("costSharePerSquareFoot", 0.41);
    const { rimArea } = draftBasin(basinInputsOf(await book.read(siteId)), (await book.program()).settings);
    expect("value" in rimArea && rimArea.value).toBeGreaterThan(0);
    expect((await estimate()).costShare).toBeCloseTo("value" in rimArea ? 0.41 * rimArea.value : Number.NaN, 9);
  });
});

describe("What to look at again", () => {
  test("a price of 180 days ago is still fresh, and one of 181 days is asked for again", () => {
    expect(stalePriceSentence("sand", TODAY - 180, TODAY)).toBeNull();
    expect(stalePriceSentence("sand", TODAY - 181, TODAY)).toBe("The price of sand is from 2026-05-28, 181 days ago: ask for it again.");
  });

  test("an item that is not on Prices says so and names the nearest; the totals count the line as unpriced, never as 0", async () => {
    await book.price({ item: "compost", unitPrice: 32 });
    await book.lines(siteId, [{ item: "compst", quantity: 2 }]);
    const { lines, unpriced, cash } = await estimate();
    expect(lines[0]?.amount).toEqual({ sentence: 'Item "compst" is not in the Prices table. The nearest are "compost".' });
    expect({ unpriced, cash }).toEqual({ unpriced: 1, cash: 0 });
  });

  test("an item without a price says so", async () => {
    await book.lines(siteId, [{ item: "topsoil", quantity: 2 }]);
    expect((await estimate()).lines[0]?.amount).toEqual({ sentence: 'Item "topsoil" has no unit price.' });
  });

  test("a quantity that is text is said as the sheet says it", async () => {
    await book.price({ item: "compost", unitPrice: 32 });
    await book.lines(siteId, [{ item: "compost", quantity: "three" }]);
    expect((await estimate()).lines[0]?.amount).toEqual({ sentence: 'Quantity must be a number; it is the text "three".' });
  });

  test("a line counted in another unit than its price is pointed out", async () => {
    await book.price({ item: "compost", unitPrice: 32, priceDate: TODAY });
    await book.lines(siteId, [{ item: "compost", quantity: 2, unit: "m³" }]);
    expect((await estimate()).lines[0]?.flags).toEqual([
      "compost is counted in m³ here and priced in cu yd: the amount is wrong until both are one unit.",
    ]);
  });

  test("a volunteer's rate far from the values read is to be cited", async () => {
    await book.price({ item: "volunteer hour", unitPrice: 60, priceDate: TODAY });
    await book.lines(siteId, [{ item: "volunteer hour", quantity: 10, unit: "h", kind: "in-kind" }]);
    expect((await estimate()).lines[0]?.flags.join(" ")).toContain("the newest national one is $31.80 for 2022");
    expect(volunteerHoursValue(await book.program(), 10)).toEqual({ value: 600 });
  });

  test("a blank line is no line, and a yard without lines has no cost for a unit", async () => {
    const { lines, cash, treated } = await estimate();
    expect({ lines, cash }).toEqual({ lines: [], cash: 0 });
    expect(treated.cost).toEqual({ sentence: "There are no lines yet." });
  });
});

describe("A drafted estimate", () => {
  // By hand: 12 sq ft x 6 in / 324 = 0.2222 cu yd; crushed stone at 100 lb/cu ft (TM 9-2320-366-10-1, table 2-15) is
  // 2,700 lb or 1.35 tons a cu yd, so 0.3 ton.
  test("counts the overflow's stone by weight where it is priced by the ton", async () => {
    expect(await drafted("river stone")).toMatchObject({ quantity: 0.3, unit: "ton", kind: "cash" });
  });

  // By hand: a cu yd is 27 cu ft and 0.764555 m³.
  test("counts mulch in the unit of its price: yards, feet or meters", async () => {
    const inYards = (await drafted("shredded mulch"))?.quantity ?? Number.NaN;
    expect(inYards).toBeGreaterThan(0.3);
    await book.price({ item: "shredded mulch", unitPrice: 3, unit: "cu ft", packageSize: 2 });
    expect(((await drafted("shredded mulch"))?.quantity ?? 0) / 27).toBeCloseTo(inYards, 1);
    await book.price({ item: "shredded mulch", unitPrice: 3, unit: "m³", packageSize: null });
    expect(((await drafted("shredded mulch"))?.quantity ?? 0) / 0.764555).toBeCloseTo(inYards, 1);
  });

  test("stays in the yard's own unit where the price's unit says no volume, and the estimate points it out", async () => {
    await book.price({ item: "shredded mulch", unitPrice: 3, unit: "bag", priceDate: TODAY });
    const mulch = await drafted("shredded mulch");
    expect(mulch?.unit).toBe("cu yd");
    await addEstimateLines(book.workbook, await book.read(siteId), mulch === undefined ? [] : [mulch]);
    expect((await estimate()).lines[0]?.flags).toEqual([
      "shredded mulch is counted in cu yd here and priced in bag: the amount is wrong until both are one unit.",
    ]);
  });

  test("of a metric yard buys in the unit of the price list, and asks for as many hours", async () => {
    const metric = await book.yard("Kiln House", "metric");
    expect(await drafted("shredded mulch", metric)).toMatchObject({ unit: "cu yd" });
    const [us, inMetric] = [(await drafted("volunteer hour"))?.quantity ?? 0, (await drafted("volunteer hour", metric))?.quantity ?? 0];
    // 100 m² is 1,076 sq ft on nearly the same soil: the digging is within a sixth of the other yard's.
    expect(inMetric / us).toBeGreaterThan(0.95);
    expect(inMetric / us).toBeLessThan(1.17);
  });

  test("takes plants from the planting plan, each by its own price where it has one, the rest by their containers", async () => {
    await appendRows(book.workbook, plantingSheet, [
      { siteId, plant: "Asclepias incarnata", planned: 7 },
      { siteId, plant: "Juncus effusus", planned: 12, spacing: 1.5 },
      { siteId, plant: "Carex vulpinoidea", planned: 20, spacing: 1 },
      { siteId, plant: "Panicum virgatum", planned: 3, spacing: 2 },
      { siteId, plant: "Cornus sericea", planned: 1 },
      { siteId, plant: "Nobody's sedge", planned: 2 },
      { siteId, plant: "Asclepias incarnata", planned: 5 },
    ]);
    await book.price({ item: "Asclepias incarnata", unitPrice: 6, unit: "quart" });
    expect(await drafted("Asclepias incarnata")).toMatchObject({ quantity: 12, unit: "quart", group: "Plants" });
    expect(await drafted("plant plug")).toMatchObject({
      quantity: 20,
      unit: "plant",
      note: "From the planting plan: 20 Carex vulpinoidea.",
    });
    // A plant of no known spacing stands at that of Program, 1.5 ft.
    expect(await drafted("plant quart")).toMatchObject({
      quantity: 14,
      note: "From the planting plan: 12 Juncus effusus, 2 Nobody's sedge.",
    });
    expect(await drafted("plant gallon")).toMatchObject({ quantity: 3 });
    expect(await drafted("plant 3 gallon")).toMatchObject({ quantity: 1 });
  });

  test("has one count of plants: the plan's on the basin and in the lines", async () => {
    await appendRows(book.workbook, plantingSheet, [
      { siteId, plant: "Juncus effusus", planned: 12 },
      { siteId, plant: "Carex vulpinoidea", planned: 7, planted: 6 },
    ]);
    const yard = await book.read(siteId);
    const program = await book.program();
    const basin = draftBasin(basinInputsOf(yard), program.settings);
    expect(basin.plants).toEqual({ value: 19 });
    expect(basin.plantsFrom).toBe("plan");
    const lines = draftLines(program, yard, basin).lines.filter(({ group }) => group === "Plants");
    expect(lines.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(19);
  });

  test("sets a container to nothing that the plan no longer buys in", async () => {
    await book.lines(siteId, [{ item: "plant quart", quantity: 60, unit: "plant" }]);
    await appendRows(book.workbook, plantingSheet, [{ siteId, plant: "Carex vulpinoidea", planned: 20, spacing: 1 }]);
    const { missing, differing } = proposeEstimate(await book.program(), await book.read(siteId));
    expect(missing.map(({ item }) => item)).toContain("plant plug");
    expect(differing.map(({ drafted }) => [drafted.item, drafted.quantity])).toEqual([["plant quart", 0]]);
  });

  test("without a soil mix buys no soil, and hauls off what was dug", async () => {
    const { lines } = await draft();
    expect(lines.map(({ item }) => item)).toEqual([
      "shredded mulch",
      "river stone",
      "soil disposal",
      "plant quart",
      "tool hire",
      "volunteer hour",
    ]);
  });

  test("of a yard that was not tested says why there is none", async () => {
    const program = await book.program();
    const yard = await book.read(siteId);
    const untested = { ...yard, design: { ...yard.design, testedRate: null } };
    const { lines, sentences } = draftLines(program, untested, draftBasin(basinInputsOf(untested), program.settings));
    expect(lines).toEqual([]);
    expect(sentences).toHaveLength(1);
  });

  test("priced as a draft costs what its lines cost once they are written", async () => {
    for (const item of ["shredded mulch", "river stone", "plant quart", "tool hire", "soil disposal", "volunteer hour"]) {
      await book.price({ item, unitPrice: 10, priceDate: TODAY });
    }
    const yard = await book.read(siteId);
    const program = await book.program();
    const ahead = estimateOfDraft(program, yard, draftBasin(basinInputsOf(yard), program.settings), TODAY);
    await addEstimateLines(book.workbook, yard, proposeEstimate(program, yard).missing);
    const written = await estimate();
    expect(written.cost).toBe(ahead.cost);
    expect(written.inKind).toBe(ahead.inKind);
    expect(written.unpriced).toBe(0);
  });
});

describe("A proposal never overwrites", () => {
  test("what a person typed stays: an item with a line is not added again, and another quantity is only shown", async () => {
    await book.lines(siteId, [{ item: "River stone", quantity: 2, unit: "ton", note: "For the path too" }]);
    const yard = await book.read(siteId);
    const { missing, differing } = proposeEstimate(await book.program(), yard);
    expect(missing.map(({ item }) => item)).not.toContain("river stone");
    expect(differing.map(({ row, drafted: { quantity } }) => [row.record.quantity, quantity])).toEqual([[2, 0.3]]);
    await addEstimateLines(book.workbook, yard, missing);
    expect((await book.read(siteId)).estimateLines[0]?.record).toMatchObject({
      item: "River stone",
      quantity: 2,
      note: "For the path too",
    });
  });

  test("a quantity that changed since it was shown is asked about, not overwritten", async () => {
    await book.lines(siteId, [{ item: "river stone", quantity: 2, unit: "ton" }]);
    const { differing } = proposeEstimate(await book.program(), await book.read(siteId));
    const [line] = differing;
    if (line === undefined) throw new Error("no differing line");
    await book.workbook.writeValues([{ range: line.row.at("quantity"), values: [[5]] }]);
    expect(await takeDraftedQuantity(book.workbook, line.row, line.drafted)).toHaveLength(1);
    expect((await book.read(siteId)).estimateLines[0]?.record.quantity).toBe(5);
  });

  test("once it is written there is nothing more to propose", async () => {
    const yard = await book.read(siteId);
    await addEstimateLines(book.workbook, yard, proposeEstimate(await book.program(), yard).missing);
    expect(proposeEstimate(await book.program(), await book.read(siteId))).toEqual({ missing: [], differing: [], sentences: [] });
  });

  test("an item split over several lines is left to the person", async () => {
    await book.lines(siteId, [
      { item: "river stone", quantity: 1 },
      { item: "river stone", quantity: 2 },
    ]);
    const { missing, differing } = proposeEstimate(await book.program(), await book.read(siteId));
    expect([...missing.map(({ item }) => item), ...differing.map(({ drafted: { item } }) => item)]).not.toContain("river stone");
  });
});
