import fc from "fast-check";
import { beforeEach, describe, expect, test } from "vitest";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { readProgram, type DesignCells } from "../../../../addin/actions/program/read-program.ts";
import {
  digDayTotals,
  doubleSignIns,
  hoursBetween,
  quantitiesMoved,
  recordIncident,
  recordQuantity,
  signIn,
  signInsOn,
  signOut,
} from "../../../../addin/actions/build/record-dig-day.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { designSheet } from "../../../../addin/records/design.ts";
import { workbookOfOneYard, yardIn } from "../../one-yard.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";

const DAY = dayNumber(2026, 5, 16);
const NINE = 9 / 24;
const NOON_THIRTY = 12.5 / 24;
let workbook: WorkbookInMemory;

const yardOf = (siteId: string) => yardIn(workbook, siteId);

const person = (who: string, hours: number | null = 3) => ({ who, arrived: null, left: null, hours });
const put = async (siteId: string, ...names: string[]) =>
  signIn(
    workbook,
    await yardOf(siteId),
    DAY,
    names.map((who) => person(who)),
    false,
    "Crew one",
  );

beforeEach(async () => {
  workbook = await workbookOfOneYard();
  await addYard(workbook, { yard: "Millrace Cottage", address: "8 Millrace Way", units: "metric", soilGroup: "C" });
});

describe("signing volunteers in", () => {
  test("three people are three rows, each with their hours", async () => {
    await put("Y-001", "Wren Alder", "Ash Pell", "Tam Roe");
    const { digDays } = await yardOf("Y-001");
    expect(digDays.map(({ record }) => [record.date, record.entry, record.who, record.hours, record.by])).toEqual([
      [DAY, "sign-in", "Wren Alder", 3, "Crew one"],
      [DAY, "sign-in", "Ash Pell", 3, "Crew one"],
      [DAY, "sign-in", "Tam Roe", 3, "Crew one"],
    ]);
  });

  test("a person who signed in that day already is refused, whatever the capitals and spaces, and nobody of the list is signed in", async () => {
    await put("Y-001", "Wren Alder");
    await expect(put("Y-001", "Ash Pell", " wren  ALDER")).rejects.toThrow(
      "wren  ALDER has signed in on 2026-05-16 already, at Y-001: hours of one person count once a day. Nobody was signed in.",
    );
    expect((await yardOf("Y-001")).digDays).toHaveLength(1);
  });

  test("a person who helps at two yards on one day is asked about too", async () => {
    await put("Y-002", "Wren Alder");
    await expect(put("Y-001", "Wren Alder")).rejects.toThrow("already, at Y-002");
  });

  test("a name that stands in the new list twice is found", async () => {
    await expect(put("Y-001", "Wren Alder", "Wren Alder")).rejects.toThrow("Wren Alder stands in the list twice.");
  });

  test("once confirmed, the second sign-in is written: hours add up, and the person counts once", async () => {
    await put("Y-001", "Wren Alder");
    await signIn(workbook, await yardOf("Y-001"), DAY, [person("Wren Alder", 2.5)], true, "");
    // 3 h in the morning and 2.5 h in the afternoon are 5.5 h of one person.
    expect(digDayTotals((await yardOf("Y-001")).digDays)).toEqual([{ date: DAY, people: 1, hours: 5.5, withoutHours: [], incidents: 0 }]);
  });

  test("the same person on the day before or after is no double", async () => {
    await put("Y-001", "Wren Alder");
    const { yards } = await readProgram(workbook);
    expect(doubleSignIns(yards, DAY - 1, ["Wren Alder"])).toEqual([]);
    expect(doubleSignIns(yards, DAY, ["Wren Alder"])).toEqual([{ who: "Wren Alder", siteId: "Y-001" }]);
    expect(doubleSignIns(yards, DAY + 1, ["Wren Alder"])).toEqual([]);
  });

  test("names that are words of the machine are names like any other", async () => {
    await put("Y-001", "__proto__", "constructor", '=HYPERLINK("x")');
    expect((await yardOf("Y-001")).digDays.map(({ record }) => record.who)).toEqual(["__proto__", "constructor", '=HYPERLINK("x")']);
    await expect(put("Y-001", "constructor")).rejects.toThrow("has signed in");
  });
});

describe("signing out", () => {
  // 9:00 to 12:30 is three and a half hours.
  test("those who came at 9:00 and leave at 12:30 get 3.5 hours; hours that stand are left alone", async () => {
    const yard = await yardOf("Y-001");
    await signIn(
      workbook,
      yard,
      DAY,
      [
        { who: "Ash", arrived: NINE, left: null, hours: null },
        { who: "Tam", arrived: NINE, left: null, hours: 2 },
      ],
      false,
      "",
    );
    expect(digDayTotals((await yardOf("Y-001")).digDays)[0]).toMatchObject({ people: 2, hours: 2, withoutHours: ["Ash"] });
    expect(await signOut(workbook, signInsOn((await yardOf("Y-001")).digDays, DAY), NOON_THIRTY)).toEqual([]);
    const { digDays } = await yardOf("Y-001");
    expect(digDays.map(({ record }) => [record.who, record.left, record.hours])).toEqual([
      ["Ash", NOON_THIRTY, 3.5],
      ["Tam", null, 2],
    ]);
  });

  test("nobody leaves before they came, or at that minute", async () => {
    await signIn(workbook, await yardOf("Y-001"), DAY, [{ who: "Ash", arrived: NINE, left: null, hours: null }], false, "");
    const there = async () => signInsOn((await yardOf("Y-001")).digDays, DAY);
    await signOut(workbook, await there(), NINE);
    await signOut(workbook, await there(), 8 / 24);
    expect((await there())[0]?.record).toMatchObject({ left: null, hours: null });
    await signOut(workbook, await there(), NINE + 1 / 1440);
    expect((await there())[0]?.record.hours).toBeCloseTo(1 / 60, 10);
  });

  test("hours between two times of a day are whole minutes", () => {
    const minute = fc.integer({ min: 0, max: 1439 });
    fc.assert(
      fc.property(minute, minute, (one, other) => {
        expect(hoursBetween(one / 1440, other / 1440) * 60).toBeCloseTo(other - one, 9);
      }),
      { examples: [[540, 750]] },
    );
    expect(hoursBetween(540 / 1440, 750 / 1440)).toBe(3.5);
  });
});

describe("quantities and incidents", () => {
  const design = {
    ...Object.fromEntries(Object.keys(designSheet.columns).map((key) => [key, null])),
    digVolume: 5.9,
    mulchVolume: "#N/A",
    plants: 112,
  } as unknown as DesignCells;

  test("two loads of one thing add up beside the design, and what is in another unit stands apart", async () => {
    const yard = await yardOf("Y-001");
    for (const [item, quantity, unit] of [
      ["soil dug, in place", 4, "cu yd"],
      ["soil dug, in place", 2.25, "cu yd"],
      ["soil dug, in place", 3, "loads"],
      ["mulch placed", 2, "cu yd"],
      ["edging", 40, "ft"],
      ["plants planted", 110, "plants"],
    ] as const) {
      await recordQuantity(workbook, yard, DAY, { item, quantity, unit, note: "" }, "");
    }
    // 4 + 2.25 = 6.25 cu yd of 5.9 designed.
    expect(quantitiesMoved((await yardOf("Y-001")).digDays, design, "us")).toEqual([
      { item: "soil dug, in place", unit: "cu yd", quantity: 6.25, designed: 5.9 },
      { item: "soil dug, in place", unit: "loads", quantity: 3, designed: null },
      { item: "mulch placed", unit: "cu yd", quantity: 2, designed: null },
      { item: "plants planted", unit: "plants", quantity: 110, designed: 112 },
      { item: "edging", unit: "ft", quantity: 40, designed: null },
    ]);
  });

  test("an incident keeps who, what happened and what was done, and counts on its day", async () => {
    await recordIncident(
      workbook,
      await yardOf("Y-002"),
      DAY,
      { who: "Tam Roe", note: "Cut on a root saw", done: "Washed, bandaged, drove home" },
      "Wren Alder",
    );
    const { digDays } = await yardOf("Y-002");
    expect(digDays[0]?.record).toMatchObject({
      entry: "incident",
      who: "Tam Roe",
      note: "Cut on a root saw",
      done: "Washed, bandaged, drove home",
      by: "Wren Alder",
    });
    expect(digDayTotals(digDays)).toEqual([{ date: DAY, people: 0, hours: 0, withoutHours: [], incidents: 1 }]);
  });
});
