import { beforeEach, describe, expect, test } from "vitest";
import { dayNumber, dayNumberOf, isoDate } from "../../../../addin/actions/dates.ts";
import { dueFollowUps } from "../../../../addin/actions/care/due-follow-ups.ts";
import { followUpsCountFrom, proposedFollowUps, WATERING_WEEKS, writeFollowUps } from "../../../../addin/actions/care/plan-follow-ups.ts";
import { readProgram, type Program, type Yard } from "../../../../addin/actions/program/read-program.ts";
import { recordAsBuilt } from "../../../../addin/actions/build/record-as-built.ts";
import { longPondingDays, planLook, recordLook, type LookEntry } from "../../../../addin/actions/care/record-look.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { appendRow } from "../../../../addin/actions/program/write-records.ts";
import { lookOf } from "../../../../addin/checklist/looks.ts";
import { followUpsSheet, type FollowUpKind, type FollowUpRow } from "../../../../addin/records/follow-ups.ts";
import { plantingSheet } from "../../../../addin/records/planting.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

const day = (iso: string): number => dayNumberOf(iso) ?? Number.NaN;
const PLANTED = day("2026-05-16");
let workbook: WorkbookInMemory;

const program = (): Promise<Program> => readProgram(workbook);
async function yard(): Promise<Yard> {
  const found = (await program()).yards[0];
  if (found === undefined) throw new Error("no yard");
  return found;
}

async function open(kind: FollowUpKind): Promise<FollowUpRow> {
  const found = (await yard()).followUps.find(({ record }) => record.kind === kind && record.done === null);
  if (found === undefined) throw new Error(`no open ${kind}`);
  return found;
}

const rows = async () =>
  (await yard()).followUps.map(({ record }) => [
    record.kind,
    record.due === null ? null : isoDate(record.due),
    record.done === null ? null : isoDate(record.done),
    record.finding,
  ]);

/** A look at which everything passes but what is named, by the ending of its step. */
function seen(kind: FollowUpKind, done: number, other: Readonly<Record<string, string>> = {}): LookEntry {
  const look = lookOf(kind);
  const steps = "stage" in look ? look.stage.steps : [look.step];
  const answers = steps.flatMap((step) => {
    if (step.answer.kind !== "chosen") return [];
    const verdict = Object.entries(other).find(([ending]) => step.id.endsWith(ending))?.[1] ?? "pass";
    const option = step.answer.options.find((one) => one.verdict === verdict);
    if (option === undefined) throw new Error(`${step.id} has no ${verdict}`);
    return [{ step, answer: option.says, unit: null, verdict: option.verdict, note: "" }];
  });
  return { done, by: "Wren Alder", note: "", answers, repairDays: new Map() };
}

const look = async (kind: FollowUpKind, done: string, other: Readonly<Record<string, string>> = {}) =>
  recordLook(workbook, await yard(), await open(kind), seen(kind, day(done), other));

beforeEach(async () => {
  workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await addYard(workbook, { yard: "Lantern House", address: "3 Cooper's Rise", units: "us", soilGroup: "B" });
});

describe("planning the looks", () => {
  test("they count from the last planting day, else from the day measured as built, else from nothing", async () => {
    expect(followUpsCountFrom(await yard())).toBeNull();
    await recordAsBuilt(workbook, await yard(), {
      date: day("2026-05-20"),
      by: "",
      note: "",
      shape: null,
      floorLength: 17,
      floorWidth: 7,
      pondingDepth: 6,
      sideSlope: 3,
      mediaDepth: null,
      sillWidth: null,
      lowestBerm: null,
      drainHours: null,
    });
    expect(followUpsCountFrom(await yard())).toBe(day("2026-05-20"));
    for (const date of ["2026-05-16", "2026-05-09"])
      await appendRow(workbook, plantingSheet, { siteId: "Y-001", plant: "Juncus effusus", planted: 9, plantedOn: day(date) });
    expect(followUpsCountFrom(await yard())).toBe(PLANTED);
  });

  test("planted on 16 May 2026: watering and a look in a week, then a month, a year and two years", () => {
    expect(proposedFollowUps([], PLANTED).map(({ kind, due }) => [kind, isoDate(due)])).toEqual([
      ["watering", "2026-05-23"],
      ["1 week", "2026-05-23"],
      ["1 month", "2026-06-16"],
      ["1 year", "2027-05-16"],
      ["yearly", "2028-05-16"],
    ]);
  });

  test("planted on 29 February: the looks a year and two years on are on the 28th", () => {
    // From the planting itself: 2028-02-29 + 12 months is the last of February 2029, and + 24 months the last of February 2030.
    expect(
      proposedFollowUps([], day("2028-02-29"))
        .map(({ due }) => isoDate(due))
        .slice(2),
    ).toEqual(["2028-03-29", "2029-02-28", "2030-02-28"]);
    expect(
      proposedFollowUps([], day("2027-02-28"))
        .map(({ due }) => isoDate(due))
        .slice(3),
    ).toEqual(["2028-02-28", "2029-02-28"]);
  });

  test("planted on 31 January: a month on is the last of February", () => {
    expect(isoDate(proposedFollowUps([], day("2027-01-31"))[2]?.due ?? 0)).toBe("2027-02-28");
    expect(isoDate(proposedFollowUps([], day("2028-01-31"))[2]?.due ?? 0)).toBe("2028-02-29");
  });

  test("what stands on Follow-ups already is not proposed again", async () => {
    await writeFollowUps(workbook, await yard(), proposedFollowUps([], PLANTED));
    expect(proposedFollowUps((await yard()).followUps, PLANTED)).toEqual([]);
    expect((await yard()).followUps.map(({ record }) => record.note)).toEqual([
      null,
      null,
      "Within two days of 0.5 in (13 mm) of rain or more.",
      null,
      null,
    ]);
  });
});

describe("what is due across the program", () => {
  test("the longest overdue comes first, each with its days; done ones are not there, and one without a day comes last", async () => {
    await addYard(workbook, { yard: "Millrace Cottage", address: "8 Millrace Way", units: "metric", soilGroup: "C" });
    const today = dayNumber(2026, 6, 15);
    const add = (siteId: string, kind: FollowUpKind, due: number | null, done: number | null = null) =>
      appendRow(workbook, followUpsSheet, { siteId, kind, due, done });
    await add("Y-001", "1 month", today + 1);
    await add("Y-002", "1 week", today - 1);
    await add("Y-001", "watering", today);
    await add("Y-002", "repair", null);
    await add("Y-002", "watering", today - 30);
    await add("Y-001", "1 year", today + 14);
    await add("Y-001", "yearly", today + 15);
    await add("Y-001", "1 week", today - 60, today - 58);
    expect(dueFollowUps(await program(), today).map(({ siteId, row, state, inDays }) => [siteId, row.record.kind, state, inDays])).toEqual([
      ["Y-002", "watering", "overdue", -30],
      ["Y-002", "1 week", "overdue", -1],
      ["Y-001", "watering", "today", 0],
      ["Y-001", "1 month", "soon", 1],
      ["Y-001", "1 year", "soon", 14],
      ["Y-001", "yearly", "later", 15],
      ["Y-002", "repair", "no day", null],
    ]);
  });

  test("a done cell that holds words is no open look: somebody wrote something there", async () => {
    await appendRow(workbook, followUpsSheet, { siteId: "Y-001", kind: "1 week", due: 46000, done: "last Tuesday" });
    expect(dueFollowUps(await program(), 46100)).toEqual([]);
  });
});

describe("a look at the garden", () => {
  beforeEach(async () => {
    await appendRow(workbook, plantingSheet, { siteId: "Y-001", plant: "Juncus effusus", planted: 9, plantedOn: PLANTED });
    await writeFollowUps(workbook, await yard(), proposedFollowUps([], PLANTED));
  });

  test("on a row that was sorted away is written where the row stands now, and never into another look", async () => {
    const week = await open("1 week");
    const month = await open("1 month");
    const cellsOf = ({ cells: { siteId, kind, due, done, by, finding, action, note } }: FollowUpRow) => [
      siteId,
      kind,
      due,
      done,
      by,
      finding,
      action,
      note,
    ];
    const write = (row: FollowUpRow, cells: FollowUpRow) =>
      workbook.writeValues([{ range: { ...row.at("siteId"), columns: 8 }, values: [cellsOf(cells)] }]);
    await write(week, month);
    await write(month, week);
    expect(await recordLook(workbook, await yard(), week, seen("1 week", day("2026-05-24")))).toEqual([]);
    expect((await rows()).filter(([kind]) => kind === "1 week" || kind === "1 month")).toEqual([
      ["1 month", "2026-06-16", null, null],
      ["1 week", "2026-05-23", "2026-05-24", "pass"],
    ]);
    await workbook.writeValues([{ range: week.at("note"), values: [["Rain gauge lent"]] }]);
    await expect(
      recordLook(workbook, await yard(), { ...week, cells: { ...week.cells, note: "gone" } }, seen("1 week", day("2026-05-25"))),
    ).rejects.toThrow("is another look than the one you opened. Nothing was written");
  });

  test("where everything passes it is done, each item is on Visits, and the planned looks stay as they are", async () => {
    expect(await look("1 week", "2026-05-24")).toEqual([]);
    expect(await rows()).toEqual([
      ["watering", "2026-05-23", null, null],
      ["1 week", "2026-05-23", "2026-05-24", "pass"],
      ["1 month", "2026-06-16", null, null],
      ["1 year", "2027-05-16", null, null],
      ["yearly", "2028-05-16", null, null],
    ]);
    const { visits, followUps } = await yard();
    expect(visits.map(({ record }) => [record.stage, record.step, record.verdict, record.by, isoDate(record.date ?? 0)])).toContainEqual([
      "week",
      "week-erosion",
      "pass",
      "Wren Alder",
      "2026-05-24",
    ]);
    expect(followUps[1]?.record).toMatchObject({ by: "Wren Alder", action: null });
  });

  test("what fails names the repair and its day, and puts it on Follow-ups; what is watched is named", async () => {
    await look("1 month", "2026-06-20", { "-erosion": "fail", "-mulch": "watch" });
    const done = (await yard()).followUps.find(({ record }) => record.kind === "1 month" && record.done !== null);
    expect(done?.record).toMatchObject({
      finding: "fail",
      action: "Erosion: Repair it and lay stone where the water runs. By 2026-07-04. Watch: Mulch.",
    });
    expect((await open("repair")).record).toMatchObject({
      due: day("2026-07-04"),
      action: "Erosion: Repair it and lay stone where the water runs.",
      note: "Found on 2026-06-20.",
    });
  });

  test("the repair's day is the person's to set", async () => {
    const entry = {
      ...seen("1 month", day("2026-06-20"), { "-erosion": "fail" }),
      repairDays: new Map([["month-erosion", day("2026-06-22")]]),
    };
    await recordLook(workbook, await yard(), await open("1 month"), entry);
    expect((await open("repair")).record.due).toBe(day("2026-06-22"));
  });

  test("what is only watched keeps the look from passing", async () => {
    await look("1 month", "2026-06-20", { "-weeds": "watch" });
    expect((await rows())[2]).toEqual(["1 month", "2026-06-16", "2026-06-20", "watch"]);
  });

  test("watering is looked at a week later, eight times in all", async () => {
    let done = day("2026-05-23");
    for (let time = 1; time <= WATERING_WEEKS; time++) {
      expect((await open("watering")).record.due).toBe(done);
      await look("watering", isoDate(done));
      done += 7;
    }
    const watering = (await yard()).followUps.filter(({ record }) => record.kind === "watering");
    expect(watering).toHaveLength(8);
    expect(watering.every(({ record }) => record.done !== null)).toBe(true);
    // Seven weeks after 23 May 2026 is 11 July 2026.
    expect(isoDate(watering.at(-1)?.record.done ?? 0)).toBe("2026-07-11");
  });

  test("dry soil fails the watering look and says to water; no repair is planned for it", async () => {
    await look("watering", "2026-05-23", { watering: "fail" });
    expect((await yard()).followUps[0]?.record).toMatchObject({
      finding: "fail",
      action: "Water it today, and ask who waters from now on.",
    });
    expect((await yard()).followUps.some(({ record }) => record.kind === "repair")).toBe(false);
  });

  test("a second look after a storm comes within six months of the planting, and no third", async () => {
    await look("1 month", "2026-06-20");
    expect((await open("1 month")).record.due).toBe(day("2026-11-16"));
    await look("1 month", "2026-11-10");
    expect((await yard()).followUps.filter(({ record }) => record.kind === "1 month")).toHaveLength(2);
  });

  test("yearly looks are a year apart, leap years too", async () => {
    await look("1 year", "2027-06-01");
    expect((await yard()).followUps.filter(({ record }) => record.kind === "yearly")).toHaveLength(1);
    await look("yearly", "2028-02-29");
    expect((await open("yearly")).record.due).toBe(day("2029-02-28"));
  });

  test("a repair that does not hold is due again; one that holds closes", async () => {
    await look("1 month", "2026-06-20", { "-sill": "fail", "-erosion": "fail" });
    await look("repair", "2026-07-04", { repair: "fail" });
    expect((await open("repair")).record).toMatchObject({
      due: day("2026-07-18"),
      action: "Erosion: Repair it and lay stone where the water runs.",
    });
    await look("repair", "2026-07-18");
    expect((await yard()).followUps.filter(({ record }) => record.kind === "repair").map(({ record }) => record.finding)).toEqual([
      "fail",
      "pass",
    ]);
  });

  test("water that stood over 48 hours once is a repair; twice, the hole is tested again, and asked for once", async () => {
    await look("1 month", "2026-06-20", { "-ponding": "fail" });
    expect((await yard()).followUps.some(({ record }) => record.kind === "re-test")).toBe(false);
    expect([...longPondingDays(await yard())]).toEqual([day("2026-06-20")]);
    await look("1 month", "2026-11-10", { "-ponding": "fail" });
    expect((await open("re-test")).record).toMatchObject({
      due: day("2026-11-24"),
      action: "Have the lines marked, then test the hole again.",
      note: "Water stood over 48 hours, 2 times.",
    });
    await look("1 year", "2027-05-16", { "-ponding": "fail" });
    expect((await yard()).followUps.filter(({ record }) => record.kind === "re-test")).toHaveLength(1);
    await look("re-test", "2027-06-01");
    expect(longPondingDays(await yard()).size).toBe(0);
  });

  test("ground that was changed calls for a new test at once", async () => {
    await look("1 year", "2027-05-16", { "-regraded": "watch" });
    expect((await open("re-test")).record.note).toBe("The ground was changed.");
    expect((await rows())[3]?.[3]).toBe("watch");
  });

  test("what is shown before writing is what is written", async () => {
    const plan = planLook(await yard(), await open("1 month"), seen("1 month", day("2026-06-20"), { "-inlet": "fail" }));
    const before = (await yard()).followUps.length;
    await look("1 month", "2026-06-20", { "-inlet": "fail" });
    expect(
      (await yard()).followUps
        .slice(before)
        .map(({ record }) => ({ kind: record.kind, due: record.due, action: record.action, note: record.note })),
    ).toEqual(plan.next);
  });

  test("a look that somebody else recorded meanwhile is not written over, and nothing else is written", async () => {
    const shown = await open("1 week");
    const before = await yard();
    await look("1 week", "2026-05-23");
    const visits = (await yard()).visits.length;
    const conflicts = await recordLook(workbook, before, shown, {
      ...seen("1 week", day("2026-05-25"), { "-erosion": "fail" }),
      by: "Ash Pell",
    });
    expect(conflicts.map(({ now, write }) => [now, write])).toContainEqual(["pass", "fail"]);
    expect((await yard()).visits).toHaveLength(visits);
    expect((await yard()).followUps.some(({ record }) => record.kind === "repair")).toBe(false);
  });
});
