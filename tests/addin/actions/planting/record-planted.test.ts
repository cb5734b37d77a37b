import { beforeEach, describe, expect, test } from "vitest";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { followUpsCountFrom } from "../../../../addin/actions/care/plan-follow-ups.ts";
import { clumpsToCount, plantedSoFar, recordPlanted } from "../../../../addin/actions/planting/record-planted.ts";
import { writePlan } from "../../../../addin/actions/planting/record-planting.ts";
import { countedClumps, plantedClumps, withCount } from "../../../../taskpane/views/build/planted-draft.ts";
import { workbookOfOneYard, yardIn } from "../../one-yard.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { plannedClump as clump } from "./plants-of-tests.ts";

const DAY = dayNumber(2027, 4, 24);
let workbook: WorkbookInMemory;

const yardNow = () => yardIn(workbook);

const inGround = async () => (await yardNow()).clumps.map(({ record: { plant, planted, plantedOn } }) => [plant, planted, plantedOn]);

beforeEach(async () => {
  workbook = await workbookOfOneYard();
  await writePlan(
    workbook,
    await yardNow(),
    [],
    [clump("new-1", "Iris versicolor", 5), clump("new-2", "Carex stricta", 7), clump("new-3", "Aster novae-angliae", 3)],
  );
});

describe("counting what went into the ground", () => {
  test("clumps went in as planned unless a count says otherwise, and a blank is not in the ground yet", async () => {
    const clumps = clumpsToCount(await yardNow());
    const [, sedge, aster] = clumps;
    if (sedge === undefined || aster === undefined) throw new Error("no clumps");
    const shown = countedClumps(withCount(withCount([], keyOf(clumps, sedge), "6"), keyOf(clumps, aster), ""), clumps);
    expect(shown.map(({ typed }) => typed)).toEqual(["5", "6", ""]);
    expect(await recordPlanted(workbook, DAY, plantedClumps(shown))).toEqual([]);
    expect(await inGround()).toEqual([
      ["Iris versicolor", 5, DAY],
      ["Carex stricta", 6, DAY],
      ["Aster novae-angliae", null, null],
    ]);
    const yard = await yardNow();
    // 5 + 6 of the 5 + 7 planned for the two clumps that were counted.
    expect(plantedSoFar(yard)).toEqual({ planted: 11, planned: 12, clumps: 2 });
    expect(clumpsToCount(yard).map(({ record }) => record.plant)).toEqual(["Aster novae-angliae"]);
    expect(followUpsCountFrom(yard)).toBe(DAY);
  });

  test("nothing is written when a row has changed since it was read, and a count that somebody wrote is left to them", async () => {
    const counted = clumpsToCount(await yardNow()).map((row) => ({ row, planted: row.record.planned ?? 0 }));
    const [first] = counted;
    if (first === undefined) throw new Error("no clumps");
    await workbook.writeValues([{ range: first.row.at("planted"), values: [["about four"]] }]);
    expect(await recordPlanted(workbook, DAY, counted)).toHaveLength(1);
    expect((await inGround()).map(([, , on]) => on)).toEqual([null, null, null]);
    expect(clumpsToCount(await yardNow())).toHaveLength(2);
  });

  test.each([
    ["2.5", "The count must be a whole number."],
    ["-1", "The count must be 0 or more."],
    ["six", 'The count must be a number; it is the text "six".'],
  ])("%s is no count", async (text, sentence) => {
    const clumps = clumpsToCount(await yardNow());
    const [first] = clumps;
    if (first === undefined) throw new Error("no clumps");
    const shown = countedClumps(withCount([], keyOf(clumps, first), text), clumps);
    expect(shown.flatMap(({ fault }) => fault ?? [])).toEqual([sentence]);
    expect(plantedClumps(shown)).toHaveLength(2);
  });

  test("a count that is typed stays with its clump when the sheet is sorted, and of two clumps alike each keeps its own", async () => {
    const clumps = [...clumpsToCount(await yardNow())];
    const [iris, sedge, aster] = clumps;
    if (iris === undefined || sedge === undefined || aster === undefined) throw new Error("no clumps");
    const typed = withCount([], keyOf(clumps, sedge), "6");
    const sorted = [{ ...aster, row: iris.row }, iris, { ...sedge, row: aster.row }];
    expect(countedClumps(typed, sorted).map(({ row, typed: count }) => [row.record.plant, count])).toEqual([
      ["Aster novae-angliae", "3"],
      ["Iris versicolor", "5"],
      ["Carex stricta", "6"],
    ]);
    const alike = [iris, { ...iris, row: sedge.row }];
    expect(countedClumps(withCount([], countedClumps([], alike)[1]?.key ?? "", "2"), alike).map(({ typed: count }) => count)).toEqual([
      "5",
      "2",
    ]);
  });
});

function keyOf(clumps: Parameters<typeof countedClumps>[1], row: (typeof clumps)[number]): string {
  return countedClumps([], clumps).find((each) => each.row === row)?.key ?? "";
}
