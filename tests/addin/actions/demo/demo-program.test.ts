import { expect, test } from "vitest";
import { fillDemoProgram } from "../../../../addin/actions/demo/demo-program.ts";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { readRecordedRain } from "../../../../addin/actions/rain-record/recorded-rain.ts";
import { readProgram } from "../../../../addin/actions/program/read-program.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { whatIsNext } from "../../../../addin/actions/program/what-is-next.ts";
import { rainRecordSheet } from "../../../../addin/records/rain-record.ts";
import { readRecords } from "../../../../addin/records/read-records.ts";
import { isBlank } from "../../../../addin/records/sheet.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

const TODAY = dayNumber(2026, 11, 25);

async function demo() {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook, TODAY);
  return readProgram(workbook);
}

test("the demo holds no cell that its column refuses, but the one that is meant", async () => {
  const program = await demo();
  const slips = [...program.slips, ...program.yards.flatMap((yard) => yard.slips)];
  expect(slips.map(({ sentence }) => sentence)).toEqual(['Hole diameter must be a number; it is the text "8 in".']);
});

test("the demo has yards at every stage: built, dug, about to dig, designed, tested and new", async () => {
  const { yards } = await demo();
  const has = (rows: (yard: (typeof yards)[number]) => readonly unknown[]) =>
    yards.filter((yard) => rows(yard).length > 0).map(({ siteId }) => siteId);
  expect(has(({ asBuilt }) => asBuilt)).toEqual(["Y-010", "Y-015"]);
  expect(has(({ digDays }) => digDays)).toEqual(["Y-009", "Y-010", "Y-015"]);
  expect(has(({ clumps }) => clumps)).toEqual(["Y-009", "Y-010", "Y-015"]);
  expect(has(({ estimateLines }) => estimateLines)).toEqual(["Y-002", "Y-010", "Y-011", "Y-015"]);
  expect(yards.every(({ answers }) => answers.get("permission")?.record.answer === "Yes, the owner agreed")).toBe(true);
});

test("every answer of the demo is one that its step offers, and every verdict one that the step gives it", async () => {
  const { yards } = await demo();
  for (const { siteId, visits } of yards) {
    for (const { record } of visits) {
      expect(record.step, siteId).not.toBeNull();
      expect(isBlank(record.answer) && record.step !== "slope", `${siteId} ${record.stage} ${record.step}`).toBe(false);
    }
  }
});

test("the board has a ticket that runs out within days, one gone by, a look that is due and a price older than six months", async () => {
  const program = await demo();
  const said = JSON.stringify(whatIsNext(program, TODAY));
  for (const siteId of ["Y-002", "Y-013"]) expect(said).toContain(siteId);
  expect(said).toMatch(/river stone/);
});

test("the demo's two years of rain are whole, about 38 in a year, and say in every row that they are invented", async () => {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook, TODAY);
  const { readings, stepMinutes, unit, lastBegan, total, faults } = await readRecordedRain(workbook);
  expect({ readings, stepMinutes, unit, lastBegan, faults }).toEqual({
    readings: 730,
    stepMinutes: 1440,
    unit: "in",
    lastBegan: TODAY - 1,
    faults: [],
  });
  expect((total ?? 0) / 2).toBeGreaterThan(34);
  expect((total ?? 0) / 2).toBeLessThan(42);
  const [cells = []] = await workbook.readSheets([rainRecordSheet.name]);
  expect(readRecords(rainRecordSheet, cells).rows.every(({ record }) => record.gauge?.includes("invented"))).toBe(true);
});
