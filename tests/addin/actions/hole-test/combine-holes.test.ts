import { beforeEach, describe, expect, test } from "vitest";
import { combineHoles, entryOf, type CombinedHoles } from "../../../../addin/actions/hole-test/combine-holes.ts";
import { readProgram, type Program, type Yard } from "../../../../addin/actions/program/read-program.ts";
import { addHoleTest, addYard, type HoleTestEntry } from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { appendRow, clearRow } from "../../../../addin/actions/program/write-records.ts";
import { cellOf } from "../../../../addin/records/place.ts";
import { visitsSheet } from "../../../../addin/records/visits.ts";
import { holeTestText } from "../../../../taskpane/views/hole-test/text.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

let workbook: WorkbookInMemory;
let units: "us" | "metric" = "us";

async function read(): Promise<{ program: Program; yard: Yard }> {
  const program = await readProgram(workbook);
  const yard = program.yards[0];
  if (yard === undefined) throw new Error("no yard");
  return { program, yard };
}

const combined = async (): Promise<CombinedHoles> => {
  const { program, yard } = await read();
  return combineHoles(program, yard);
};

async function start(system: "us" | "metric"): Promise<void> {
  units = system;
  workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await addYard(workbook, { yard: "Lantern House", address: "3 Cooper's Rise", units, soilGroup: null });
}

beforeEach(() => start("us"));

/**
 * A hole of one rate, by Porchet in an 8 in hole (r = 4 in): H + r / 2 shrinks by a tenth each interval, so
 * f = r / (2 dt) x ln(1 / 0.9) = 2 / dt x 0.105361 in/h.
 */
async function dig(hole: string, intervalMinutes: number, changed: Partial<HoleTestEntry> = {}): Promise<void> {
  const inch = units === "metric" ? 25.4 : 1;
  const readings = [0, 1, 2, 3].map((count) => ({ minutes: count * intervalMinutes, waterDepth: (11 * 0.9 ** count - 2) * inch }));
  const entry: HoleTestEntry = {
    hole,
    date: 46_000,
    tester: "Crew two",
    soaked: "yes",
    holeDepth: 18 * inch,
    holeDiameter: 8 * inch,
    readings,
    ...changed,
  };
  await addHoleTest(workbook, (await read()).yard, entry);
}

function valueOf(answer: CombinedHoles["testedRate"]): number {
  if ("sentence" in answer) throw new Error(answer.sentence);
  return answer.value;
}

describe("the holes of one yard", () => {
  // 10 min: 2 x 6 x 0.105361 = 1.2643; 20 min: 0.6322. Geometric mean: sqrt(1.2643 x 0.6322) = 0.8940, and halved 0.4470 in/h.
  test("of 1.26 and 0.63 in/h are designed with at their geometric mean of 0.894, halved to 0.447 in/h", async () => {
    await dig("A", 10);
    await dig("B", 20);
    const { holes, rates, testedRate, designRate, spread, standing, reductionFactor, retest, cautions } = await combined();
    expect(rates[0]).toBeCloseTo(1.2643, 4);
    expect(rates[1]).toBeCloseTo(0.6322, 4);
    expect(valueOf(testedRate)).toBeCloseTo(0.894, 4);
    expect(valueOf(designRate)).toBeCloseTo(0.447, 4);
    expect(reductionFactor).toBe(2);
    expect(standing).toBe("tested");
    expect(spread?.ratio).toBeCloseTo(2, 9);
    expect(holes.map(({ name, soaked, steady }) => [name, soaked, steady])).toEqual([
      ["A", true, true],
      ["B", true, true],
    ]);
    expect(retest).toEqual([]);
    expect(cautions).toEqual([]);
  });

  // The same in metric: 25.4 mm to the inch.
  test("say the same in millimetres", async () => {
    await start("metric");
    await dig("A", 10);
    await dig("B", 20);
    const { testedRate, designRate } = await combined();
    expect(valueOf(testedRate)).toBeCloseTo(0.894 * 25.4, 2);
    expect(valueOf(designRate)).toBeCloseTo(0.447 * 25.4, 2);
  });

  // 10, 20 and 60 min: 1.2643, 0.6322 and 0.2107. (12 x 6 x 2)^(1/3) x 0.105361 = 5.2415 x 0.105361 = 0.5522.
  test("of which the fastest is six times the slowest are asked to be tested again, and design goes on with their mean", async () => {
    await dig("A", 10);
    await dig("B", 20);
    await dig("C", 60);
    const { testedRate, spread, retest, cautions } = await combined();
    expect(valueOf(testedRate)).toBeCloseTo(0.5522, 4);
    expect(spread?.ratio).toBeCloseTo(6, 9);
    expect(retest).toEqual(["The highest rate is more than 3 times the lowest: the yard may hold two soils."]);
    expect(cautions.join(" ")).toContain("more than 3 times the lowest");
  });

  test("one alone, dug dry and read twice, is tested but not to be relied on", async () => {
    await dig("A", 10, {
      soaked: "no",
      readings: [
        { minutes: 0, waterDepth: 9 },
        { minutes: 10, waterDepth: 8 },
      ],
    });
    const { standing, spread, retest, faults: wrong } = await combined();
    expect(standing).toBe("tested");
    expect(spread).toBeNull();
    const faults = ["Hole A: not soaked first, so the rate may be too high.", "Hole A: the rate had not settled at the last reading."];
    expect(retest).toEqual([...faults, "Only one hole was tested: test at least two."]);
    expect(wrong).toEqual(faults);
    expect(holeTestText.holes.hint(1, wrong)).toBe(faults.join(" "));
  });

  test("nobody who tested two holes is told to test two: first what is wrong with which, else that the yard designs with both", () => {
    const unsteady = "Hole 1: the rate had not settled at the last reading.";
    expect(holeTestText.holes.hint(2, [unsteady])).toBe(unsteady);
    expect(holeTestText.holes.hint(2, [])).toBe("2 holes are tested: the yard designs with their mean.");
    expect(holeTestText.holes.hint(1, [])).toContain("at least one more");
    expect(holeTestText.holes.hint(0, [])).toContain("Test at least two");
  });
});

describe("a soil that is not tested", () => {
  test("has no rate, no spread and no reason to test again: it is not a soil of 0 in/h", async () => {
    const soil = await combined();
    expect(soil).toMatchObject({ standing: "not tested", rates: [], spread: null, retest: [], ponding: null, cautions: [] });
    expect(soil.testedRate).toEqual({ sentence: "No hole gives a rate yet." });
    expect(soil.designRate).toEqual({ sentence: "No hole gives a rate yet." });
  });

  test("is not told from a soil that takes no water, which has a rate of 0", async () => {
    await dig("A", 10, { readings: [0, 1, 2].map((count) => ({ minutes: 60 * count, waterDepth: 9 })) });
    const { standing, testedRate, cautions } = await combined();
    expect(standing).toBe("tested");
    expect(valueOf(testedRate)).toBe(0);
    expect(cautions.join(" ")).toContain("took no water");
  });

  test("has no rate while one hole's diameter is missing, as on Design, and the hole is named", async () => {
    await dig("A", 10);
    await dig("B", 20, { holeDiameter: null });
    const { standing, holes, testedRate, retest, rates } = await combined();
    expect(standing).toBe("no rate");
    expect(rates).toHaveLength(1);
    expect(holes[1]?.rate).toEqual({ sentence: "Hole diameter is missing." });
    expect("sentence" in testedRate).toBe(true);
    expect(retest).toEqual(["Hole B: the readings give no rate."]);
  });

  test("stays untested when its only hole is cleared", async () => {
    await dig("A", 10);
    const { yard } = await read();
    const hole = yard.holeTests[0];
    if (hole === undefined) throw new Error("no hole");
    expect(await clearRow(workbook, hole)).toEqual([]);
    expect((await combined()).standing).toBe("not tested");
  });
});

describe("follow-ups after the test", () => {
  const look = (date: number, verdict: string) =>
    appendRow(workbook, visitsSheet, { siteId: "Y-001", date, stage: "year", step: "year-ponding", answer: "seen", verdict });

  beforeEach(async () => {
    await dig("A", 10);
    await dig("B", 20);
  });

  test("that find water after 48 h once are no reason to test again, and twice are", async () => {
    await look(46_100, "fail");
    expect((await combined()).retest).toEqual([]);
    await look(46_400, "fail");
    expect((await combined()).retest).toEqual(["Water stood more than 48 hours after a storm, 2 times."]);
  });

  test("count once a day, with the newest answer", async () => {
    await look(46_100, "fail");
    await look(46_400, "fail");
    await look(46_400, "pass");
    expect((await combined()).retest).toEqual([]);
  });

  test("before the newest test are settled by it", async () => {
    await look(45_000, "fail");
    await look(45_900, "fail");
    expect((await combined()).retest).toEqual([]);
  });

  test("another soil at the dig and ground that was moved ask for a test", async () => {
    await appendRow(workbook, visitsSheet, {
      siteId: "Y-001",
      date: 46_050,
      stage: "dig-day",
      step: "soil-as-tested",
      answer: "Different: test again",
      verdict: "refer",
    });
    await appendRow(workbook, visitsSheet, {
      siteId: "Y-001",
      date: 46_400,
      stage: "year",
      step: "year-regraded",
      answer: "Yes: test again",
      verdict: "refer",
    });
    expect((await combined()).retest).toEqual([
      "The dig met another soil than the test hole.",
      "The ground was graded, built on or driven over since the test.",
    ]);
  });
});

test("a full basin of 6 in stands 13.4 h at 0.447 in/h once it fits, and nothing is said before", async () => {
  await dig("A", 10);
  await dig("B", 20);
  const { program, yard } = await read();
  expect(combineHoles(program, yard).ponding).toBeNull();
  const fitting: Yard = { ...yard, design: { ...yard.design, pondingDepth: 6, status: "fits" } };
  // 6 / 0.4470 = 13.42 h.
  expect(combineHoles(program, fitting).ponding?.hours).toBeCloseTo(13.42, 2);
  expect(combineHoles(program, { ...fitting, design: { ...fitting.design, status: "Drains too slowly." } }).ponding).toBeNull();
});

test("a hole read back from the sheet is the entry that was written", async () => {
  await dig("A", 10, { soaked: null });
  const { yard } = await read();
  const hole = yard.holeTests[0];
  if (hole === undefined) throw new Error("no hole");
  expect(entryOf(hole)).toMatchObject({ hole: "A", date: 46_000, soaked: null, holeDiameter: 8, holeDepth: 18 });
  expect(await workbook.read([cellOf(hole.sheet, hole.row, "hole")])).toEqual([[["A"]]]);
});
