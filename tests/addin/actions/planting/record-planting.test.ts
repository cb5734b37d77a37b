import { beforeEach, describe, expect, test } from "vitest";
import { changeClump, clumpOf, putBack } from "../../../../addin/actions/planting/plan.ts";
import { removedMeanwhile, seenClumps, stillOnSheet, writePlan } from "../../../../addin/actions/planting/record-planting.ts";
import { clearRow, sentenceOf } from "../../../../addin/actions/program/write-records.ts";
import { workbookOfOneYard, yardIn } from "../../one-yard.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { plannedClump as clump } from "./plants-of-tests.ts";

let workbook: WorkbookInMemory;

const yardNow = () => yardIn(workbook);

const onSheet = async () => (await yardNow()).clumps.map(({ record: { plant, planned } }) => [plant, planned]);
const planNow = async () => (await yardNow()).clumps.map(clumpOf);

beforeEach(async () => {
  workbook = await workbookOfOneYard();
  await writePlan(workbook, await yardNow(), [], [clump("new-1", "Iris versicolor", 5), clump("new-2", "Carex stricta", 7)]);
});

describe("writing a plan", () => {
  test("gives each clump a row with its place, and a plan drawn from the sheet is the same", async () => {
    expect((await yardNow()).clumps.map(({ record }) => record)).toMatchObject([
      { siteId: "Y-001", plant: "Iris versicolor", zone: "A", planned: 5, spacing: 1.25, alongLength: 1.5, acrossWidth: -2 },
      { siteId: "Y-001", plant: "Carex stricta", planned: 7 },
    ]);
    expect(await planNow()).toMatchObject([{ plant: "Iris versicolor", along: 1.5, across: -2 }, { plant: "Carex stricta" }]);
  });

  test("writes only the cell that changed", async () => {
    const yard = await yardNow();
    const plan = await planNow();
    await workbook.writeValues([{ range: yard.clumps[0]!.at("note"), values: [["Lot 12"]] }]);
    expect(await writePlan(workbook, yard, seenClumps(yard), changeClump(plan, plan[0]!.id, { planned: 3 }))).toEqual([]);
    expect((await yardNow()).clumps[0]?.record).toMatchObject({ planned: 3, note: "Lot 12" });
  });

  test("asks before it overwrites a count that somebody changed meanwhile, and writes nothing", async () => {
    const yard = await yardNow();
    const plan = await planNow();
    await workbook.writeValues([{ range: yard.clumps[0]!.at("planned"), values: [[9]] }]);
    const conflicts = await writePlan(workbook, yard, seenClumps(yard), [
      ...changeClump(plan, plan[0]!.id, { planned: 3 }),
      clump("new-1", "Juncus effusus", 3),
    ]);
    expect(conflicts.map(sentenceOf)).toEqual([expect.stringContaining("held 5 when you opened it and holds 9 now")]);
    expect(await onSheet()).toEqual([
      ["Iris versicolor", 9],
      ["Carex stricta", 7],
    ]);
  });

  test("follows a clump that somebody sorts to another row, and touches no other", async () => {
    const yard = await yardNow();
    const plan = await planNow();
    const [first, second] = yard.clumps;
    await workbook.writeValues([
      {
        range: { ...first!.at("siteId"), rows: 2, columns: 7 },
        values: [second!, first!].map(({ cells: c }) => [c.siteId, c.plant, c.zone, c.planned, c.spacing, c.alongLength, c.acrossWidth]),
      },
    ]);
    expect(await writePlan(workbook, await yardNow(), seenClumps(yard), changeClump(plan, plan[0]!.id, { along: 4 }))).toEqual([]);
    expect((await yardNow()).clumps.map(({ record: { plant, alongLength } }) => [plant, alongLength])).toEqual([
      ["Carex stricta", 1.5],
      ["Iris versicolor", 4],
    ]);
  });

  test("lets a clump taken out lend its row to a new one, and blanks the row of one that nothing follows", async () => {
    const yard = await yardNow();
    const [first, second] = await planNow();
    await writePlan(workbook, yard, seenClumps(yard), [second!, clump("new-1", "Juncus effusus", 3)]);
    expect(await onSheet()).toEqual([
      ["Juncus effusus", 3],
      ["Carex stricta", 7],
    ]);
    const then = await yardNow();
    await writePlan(workbook, then, seenClumps(then), [second!]);
    expect(await onSheet()).toEqual([["Carex stricta", 7]]);
    expect(first?.row).toBe(then.clumps[0]?.row);
  });

  test("does not lend the row of a clump on which somebody noted something", async () => {
    await workbook.writeValues([{ range: (await yardNow()).clumps[0]!.at("note"), values: [["Gift of the school"]] }]);
    const yard = await yardNow();
    const [, second] = await planNow();
    await writePlan(workbook, yard, seenClumps(yard), [second!, clump("new-1", "Juncus effusus", 3)]);
    const after = (await yardNow()).clumps;
    expect(after.map(({ record: { plant, note } }) => [plant, note])).toEqual([
      ["Carex stricta", null],
      ["Juncus effusus", null],
    ]);
  });

  test("keeps a cell that holds a slip as it was typed until its clump is changed", async () => {
    await workbook.writeValues([{ range: (await yardNow()).clumps[0]!.at("planned"), values: [["about five"]] }]);
    const yard = await yardNow();
    const plan = await planNow();
    expect(plan[0]?.planned).toBeNull();
    await writePlan(workbook, yard, seenClumps(yard), changeClump(plan, plan[1]!.id, { planned: 5 }));
    expect((await yardNow()).clumps.map(({ cells }) => cells.planned)).toEqual(["about five", 5]);
  });

  test("keeps a hostile plant name as text", async () => {
    const yard = await yardNow();
    await writePlan(workbook, yard, seenClumps(yard), [clump("new-1", '=HYPERLINK("x","y")', 3), clump("new-2", "__proto__", 5)]);
    expect(await onSheet()).toEqual([
      ['=HYPERLINK("x","y")', 3],
      ["__proto__", 5],
    ]);
    expect(await workbook.readFormulas((await yardNow()).clumps[0]!.at("plant"))).toEqual([[""]]);
  });

  test("whose clump somebody has removed from the sheet brings it back only when asked to, with what was noted on it", async () => {
    const {
      clumps: [row],
    } = await yardNow();
    await workbook.writeValues([
      { range: row!.at("planted"), values: [[4]] },
      { range: row!.at("note"), values: [["Gift of the school"]] },
    ]);
    const yard = await yardNow();
    const plan = await planNow();
    const seen = seenClumps(yard);
    const [iris] = plan;
    await clearRow(workbook, yard.clumps[0]!);
    const changed = changeClump(plan, iris!.id, { planned: 9 });
    await expect(writePlan(workbook, await yardNow(), seen, changed)).rejects.toThrow(
      /^Nothing was written: clumps of this plan were removed/,
    );
    expect(await onSheet()).toEqual([["Carex stricta", 7]]);

    const gone = removedMeanwhile(await yardNow(), seen, changed);
    expect(gone.map(({ plant, planned }) => [plant, planned])).toEqual([["Iris versicolor", 9]]);
    expect(stillOnSheet(await yardNow(), seen).map(({ record: { plant } }) => plant)).toEqual(["Carex stricta"]);
    await writePlan(workbook, await yardNow(), seen, putBack(changed, gone));
    const back = (await yardNow()).clumps.map(({ record: { plant, planned, planted, note } }) => [plant, planned, planted, note]);
    expect(back).toEqual([
      ["Carex stricta", 7, null, null],
      ["Iris versicolor", 9, 4, "Gift of the school"],
    ]);
  });

  test("is not held up by a removed clump that it takes out as well", async () => {
    const yard = await yardNow();
    const [, sedge] = await planNow();
    await clearRow(workbook, yard.clumps[0]!);
    expect(await writePlan(workbook, await yardNow(), seenClumps(yard), [sedge!])).toEqual([]);
    expect(await onSheet()).toEqual([["Carex stricta", 7]]);
  });
});
