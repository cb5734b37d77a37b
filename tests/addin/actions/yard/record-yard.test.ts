import { beforeEach, describe, expect, test } from "vitest";
import { recordAnswer } from "../../../../addin/actions/visits/record-answer.ts";
import {
  addHoleTest,
  addSurface,
  addYard,
  changeHoleTest,
  changeSurface,
  readingsOf,
  writeBasin,
} from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { clearRow, sentenceOf } from "../../../../addin/actions/program/write-records.ts";
import { oneCallTicket } from "../../../../addin/checklist/one-call-ticket.ts";
import { screeningVisit } from "../../../../addin/checklist/screening-visit.ts";
import { cellOf } from "../../../../addin/records/place.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../../addin/records/surfaces.ts";
import { visitsSheet } from "../../../../addin/records/visits.ts";
import { WorkbookRefused } from "../../../../addin/workbook/port.ts";
import { ONE_YARD, yardIn } from "../../one-yard.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

let workbook: WorkbookInMemory;
const yardOf = (siteId: string) => yardIn(workbook, siteId);

const step = (id: string) => {
  const found = [...screeningVisit.steps, ...oneCallTicket.steps].find((one) => one.id === id);
  if (found === undefined) throw new Error(`no step ${id}`);
  return found;
};

beforeEach(async () => {
  workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
});

describe("adding a yard", () => {
  test("Site IDs count up from the highest in use", async () => {
    expect(await addYard(workbook, ONE_YARD)).toBe("Y-001");
    expect(await addYard(workbook, ONE_YARD)).toBe("Y-002");
    expect((await yardOf("Y-002")).site.record).toMatchObject({ yard: "Lantern House", units: "us", soilGroup: "B" });
  });

  test("the ID of a deleted yard is never given out again", async () => {
    await addYard(workbook, ONE_YARD);
    await addYard(workbook, ONE_YARD);
    await clearRow(workbook, (await yardOf("Y-002")).site);
    expect(await addYard(workbook, ONE_YARD)).toBe("Y-003");
  });

  test("a yard goes below the last row in use, and a gap a person left stays theirs", async () => {
    await workbook.writeValues([{ range: cellOf(sitesSheet, 20, "siteId"), values: [["Y-040"]] }]);
    expect(await addYard(workbook, ONE_YARD)).toBe("Y-041");
    expect((await yardOf("Y-041")).site.row).toBe(21);
  });

  test("a sheet of more rows than any program needs is refused in words, and nothing is written", async () => {
    await workbook.writeValues([{ range: cellOf(sitesSheet, 2 + 20_000, "siteId"), values: [["Y-900"]] }]);
    await expect(addYard(workbook, ONE_YARD)).rejects.toThrow(WorkbookRefused);
    await expect(addYard(workbook, ONE_YARD)).rejects.toThrow("Sheet Sites would have 20001 rows, and 20000 are the most.");
  });
});

describe("two people on one row", () => {
  test("a surface that changed since it was shown is not overwritten; both values are said", async () => {
    await addYard(workbook, ONE_YARD);
    await addSurface(workbook, await yardOf("Y-001"), { surface: "Roof", cover: "roof", area: 600, share: 1 });
    const shown = (await yardOf("Y-001")).surfaces[0];
    if (shown === undefined) throw new Error("no surface");
    await workbook.writeValues([{ range: cellOf(surfacesSheet, shown.row, "area"), values: [[640]] }]);
    const conflicts = await changeSurface(workbook, shown, { surface: "Roof", cover: "roof", area: 700, share: 1 });
    expect(conflicts.map(sentenceOf)).toEqual([
      "Surfaces!D4 held 600 when you opened it and holds 640 now. Nothing was written; you wanted 700.",
    ]);
    expect((await yardOf("Y-001")).surfaces[0]?.record.area).toBe(640);
  });

  test("a surface that somebody sorts to another row is changed where it stands now, and no other with it", async () => {
    await addYard(workbook, ONE_YARD);
    await addSurface(workbook, await yardOf("Y-001"), { surface: "Roof", cover: "roof", area: 600, share: 1 });
    await addSurface(workbook, await yardOf("Y-001"), { surface: "Drive", cover: "driveway", area: 600, share: 1 });
    const [roof, drive] = (await yardOf("Y-001")).surfaces;
    if (roof === undefined || drive === undefined) throw new Error("no surface");
    const cellsOf = ({ cells: { siteId, surface, cover, area, share } }: typeof roof) => [siteId, surface, cover, area, share];
    await workbook.writeValues([{ range: { ...roof.at("siteId"), rows: 2, columns: 5 }, values: [cellsOf(drive), cellsOf(roof)] }]);
    expect(await changeSurface(workbook, roof, { surface: "Roof", cover: "roof", area: 600, share: 0.5 })).toEqual([]);
    expect((await yardOf("Y-001")).surfaces.map(({ record: { surface, share } }) => [surface, share])).toEqual([
      ["Drive", 1],
      ["Roof", 0.5],
    ]);
  });

  test("a change that the sheet already shows is no conflict", async () => {
    await addYard(workbook, ONE_YARD);
    const yard = await yardOf("Y-001");
    await workbook.writeValues([{ range: cellOf(sitesSheet, yard.site.row, "pondingDepth"), values: [[6]] }]);
    const entry = {
      stormDepth: null,
      pondingDepth: 6,
      mediaDepth: 12,
      sideSlope: null,
      mixRecipe: null,
      shape: "rectangle",
      lengthToWidth: 1.5,
      roomLength: null,
      roomWidth: 12,
    };
    expect(await writeBasin(workbook, yard, entry)).toEqual([]);
    expect((await yardOf("Y-001")).site.record).toMatchObject({ pondingDepth: 6, mediaDepth: 12 });
  });
});

test("text that starts with = is kept as text, never as a formula", async () => {
  await addYard(workbook, { ...ONE_YARD, yard: '=HYPERLINK("x")' });
  const yard = await yardOf("Y-001");
  expect(yard.site.record.yard).toBe('=HYPERLINK("x")');
  expect(await workbook.readFormulas(cellOf(sitesSheet, yard.site.row, "yard"))).toEqual([[""]]);
});

test("a hole test keeps its readings as typed, and a changed reading is written alone", async () => {
  await addYard(workbook, ONE_YARD);
  const entry = { hole: "A", date: 46000, tester: "Crew one", soaked: "yes", holeDepth: 18, holeDiameter: 8 } as const;
  const readings = [
    { minutes: 0, waterDepth: 8 },
    { minutes: 15, waterDepth: 7 },
    { minutes: 30, waterDepth: 6.25 },
  ];
  await addHoleTest(workbook, await yardOf("Y-001"), { ...entry, readings });
  const test = (await yardOf("Y-001")).holeTests[0];
  if (test === undefined) throw new Error("no hole test");
  expect(readingsOf(test)).toEqual(readings);
  const changed = readings.with(2, { minutes: 30, waterDepth: 6.5 });
  expect(await changeHoleTest(workbook, test, { ...entry, readings: changed })).toEqual([]);
  const again = (await yardOf("Y-001")).holeTests[0];
  expect(again === undefined ? [] : readingsOf(again)).toEqual(changed);
});

test("a date and an answer that the form cannot show stay in their cells when a reading beside them is changed", async () => {
  await addYard(workbook, ONE_YARD);
  const entry = {
    hole: "A",
    date: 46000,
    tester: "Crew one",
    soaked: "yes",
    holeDepth: 18,
    holeDiameter: 8,
    readings: [{ minutes: 0, waterDepth: 8 }],
  } as const;
  await addHoleTest(workbook, await yardOf("Y-001"), entry);
  const hole = (await yardOf("Y-001")).holeTests[0];
  if (hole === undefined) throw new Error("no hole test");
  await workbook.writeValues([
    { range: hole.at("date"), values: [["last week"]] },
    { range: hole.at("soaked"), values: [["a little"]] },
  ]);
  const shown = (await yardOf("Y-001")).holeTests[0];
  if (shown === undefined) throw new Error("no hole test");
  expect(await changeHoleTest(workbook, shown, { ...entry, date: null, soaked: null, holeDepth: 20 })).toEqual([]);
  expect((await yardOf("Y-001")).holeTests[0]?.cells).toMatchObject({ date: "last week", soaked: "a little", holeDepth: 20 });
});

describe("screening answers", () => {
  test("a measured distance is written with its unit and a verdict that follows the Rules sheet", async () => {
    await addYard(workbook, ONE_YARD);
    await recordAnswer(workbook, await yardOf("Y-001"), screeningVisit, step("foundation"), {
      kind: "measured",
      value: 7.5,
      note: "",
      by: "Crew one",
    });
    const answer = (await yardOf("Y-001")).answers.get("foundation");
    expect(answer?.record).toMatchObject({ answer: 7.5, unit: "ft", rule: "Distance to foundation" });
    expect(await workbook.readFormulas(cellOf(visitsSheet, answer?.row ?? -1, "verdict"))).toEqual([
      ['=SOAK.SITECHECK("Distance to foundation",E4,Rules!$A$4:$G$63,"us")'],
    ]);
  });

  test("a newer answer to the same step counts and the older stays on record", async () => {
    await addYard(workbook, ONE_YARD);
    const ticket = step("ticket");
    await recordAnswer(workbook, await yardOf("Y-001"), oneCallTicket, ticket, {
      kind: "chosen",
      says: "Asked for, still waiting",
      note: "",
      by: "",
    });
    await recordAnswer(workbook, await yardOf("Y-001"), oneCallTicket, ticket, {
      kind: "chosen",
      says: "All answered, ticket in force",
      note: "",
      by: "",
    });
    expect((await yardOf("Y-001")).answers.get("ticket")?.record).toMatchObject({
      answer: "All answered, ticket in force",
      verdict: "pass",
    });
    expect(workbook.sheets.get("Visits")?.values[3]?.[9]).toBe("stop");
  });

  test("the newest day counts wherever its row stands, so that sorting the sheet changes no answer in force", async () => {
    await addYard(workbook, ONE_YARD);
    const ticket = step("ticket");
    const answers = [
      { says: "Asked for, still waiting", day: 46_100 },
      { says: "All answered, ticket in force", day: 46_110 },
    ];
    for (const { says, day } of answers)
      await recordAnswer(workbook, await yardOf("Y-001"), oneCallTicket, ticket, { kind: "chosen", says, note: "", by: "", day });
    const before = await yardOf("Y-001");
    const block = { ...before.visits[0]!.at("siteId"), rows: 2, columns: Object.keys(visitsSheet.columns).length };
    const [rows = []] = await workbook.read([block]);
    await workbook.writeValues([{ range: block, values: [...rows].reverse() }]);
    const sorted = await yardOf("Y-001");
    expect(sorted.visits.map(({ row, record }) => [row - block.row, record.answer])).toEqual([
      [1, "Asked for, still waiting"],
      [0, "All answered, ticket in force"],
    ]);
    expect(sorted.answers.get("ticket")?.record.answer).toBe("All answered, ticket in force");
  });

  test("an answer without a day never stands over one that has a day, and is pointed out", async () => {
    await addYard(workbook, ONE_YARD);
    const ticket = step("ticket");
    for (const says of ["All answered, ticket in force", "Asked for, still waiting"])
      await recordAnswer(workbook, await yardOf("Y-001"), oneCallTicket, ticket, { kind: "chosen", says, note: "", by: "" });
    expect((await yardOf("Y-001")).slips).toEqual([]);
    const { visits } = await yardOf("Y-001");
    await workbook.writeValues([{ range: visits[1]!.at("date"), values: [[null]] }]);
    const yard = await yardOf("Y-001");
    expect(yard.answers.get("ticket")?.record.answer).toBe("All answered, ticket in force");
    expect(yard.slips).toEqual([
      {
        where: visits[1]!.at("date"),
        sentence: "Date is blank: the answer counts as older than any to the same step that has a day. Write the day of the visit.",
      },
    ]);
  });

  test("drop and run are kept on Sites and the percent on Visits", async () => {
    await addYard(workbook, ONE_YARD);
    // Handbook test S1, computed by hand: 11 in over 15 ft is 11/180 = 6.11 %.
    await recordAnswer(workbook, await yardOf("Y-001"), screeningVisit, step("slope"), {
      kind: "slope",
      drop: 11,
      run: 180,
      note: "",
      by: "",
    });
    const yard = await yardOf("Y-001");
    expect(yard.site.record).toMatchObject({ slopeDrop: 11, slopeRun: 180 });
    expect(yard.answers.get("slope")?.record.answer).toBeCloseTo(6.11, 2);
    expect(yard.answers.get("slope")?.record.unit).toBe("%");
  });

  test("nothing to measure to is a pass in its own words", async () => {
    await addYard(workbook, ONE_YARD);
    await recordAnswer(workbook, await yardOf("Y-001"), screeningVisit, step("well"), { kind: "none", note: "", by: "" });
    expect((await yardOf("Y-001")).answers.get("well")?.record).toMatchObject({ answer: "No well nearby", verdict: "pass", rule: null });
  });
});
