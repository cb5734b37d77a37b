import { beforeEach, describe, expect, test } from "vitest";
import { HOLE_READINGS } from "../../../../addin/actions/hole-test/draft-hole-test.ts";
import { readProgram, type Yard } from "../../../../addin/actions/program/read-program.ts";
import { addHoleTest, addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import {
  fromMark,
  hasRoom,
  holeAsTyped,
  lastReadingMinutes,
  newHole,
  nextHoleName,
  readHole,
  remeasured,
  type HoleDraft,
} from "../../../../taskpane/views/hole-test/hole-draft.ts";
import { WorkbookInMemory } from "../../../addin/workbook-in-memory.ts";

let workbook: WorkbookInMemory;

async function onlyYard(): Promise<Yard> {
  const yard = (await readProgram(workbook)).yards[0];
  if (yard === undefined) throw new Error("no yard");
  return yard;
}

beforeEach(async () => {
  workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await addYard(workbook, { yard: "Lantern House", address: "3 Cooper's Rise", units: "us", soilGroup: null });
});

const typed: HoleDraft = {
  hole: "A",
  date: "2026-05-04",
  tester: "Crew two",
  soaked: "yes",
  holeDepth: "18",
  holeDiameter: "8",
  measured: "up",
  mark: "",
  readings: [
    { minutes: "0", water: "9" },
    { minutes: "10", water: "8.0625" },
  ],
  waterNow: "",
};

const down: HoleDraft = {
  ...typed,
  measured: "down",
  readings: [
    { minutes: "0", water: "9" },
    { minutes: "10", water: "9.9375" },
  ],
};

describe("reading down from a mark", () => {
  test("what is read down is taken from the hole's depth", () => {
    expect(readHole(down).entry.readings).toEqual([
      { minutes: 0, waterDepth: 9 },
      { minutes: 10, waterDepth: 8.0625 },
    ]);
  });

  // Riverside County, LID BMP Design Handbook, appendix A example (from memory): a 60 in hole, water at 12.25 then 13.75 in below the top.
  test("a field sheet of 12.25 and 13.75 in below the top of a 60 in hole is water 47.75 and 46.25 in deep", () => {
    const sheet = {
      ...down,
      holeDepth: "60",
      readings: [
        { minutes: "0", water: "12.25" },
        { minutes: "10", water: "13.75" },
      ],
    };
    expect(readHole(sheet).entry.readings.map(({ waterDepth }) => waterDepth)).toEqual([47.75, 46.25]);
  });

  test("a mark above the hole's edge counts instead of the hole's depth", () => {
    expect(readHole({ ...down, mark: "20" }).entry.readings[0]?.waterDepth).toBe(11);
  });

  test("18 in less 12.1 in is 5.9 in, with no stray digits", () => {
    expect(fromMark(18, 12.1)).toBe(5.9);
  });

  test("a reading below the floor says which one and why", () => {
    const { entry, faults } = readHole({ ...down, readings: [{ minutes: "0", water: "19" }] });
    expect(faults).toEqual([
      { field: "water", reading: 1, sentence: "Reading 1 lies below the hole's floor: the mark is not as high as what you read down." },
    ]);
    expect(entry.readings[0]?.waterDepth).toBeNull();
  });

  test("without a mark or a hole depth no reading is guessed", () => {
    const { entry, faults } = readHole({ ...down, holeDepth: "" });
    expect(faults.map(({ sentence }) => sentence)).toEqual(["Mark above the hole's floor is missing: type it, or the hole's depth."]);
    expect(entry.readings.map(({ waterDepth }) => waterDepth)).toEqual([null, null]);
  });
});

describe("changing the way of measuring", () => {
  test("turns the readings over and back without loss", () => {
    const turned = remeasured(typed, "down");
    expect(turned?.readings.map(({ water }) => water)).toEqual(["9", "9.9375"]);
    expect(remeasured(turned ?? typed, "up")).toEqual(typed);
  });

  test("changes nothing that the sheet gets", () => {
    expect(readHole(remeasured(typed, "down") ?? typed).entry).toEqual(readHole(typed).entry);
  });

  test("is refused while readings are there and the mark's height is not", () => {
    expect(remeasured({ ...typed, holeDepth: "" }, "down")).toBeNull();
    expect(remeasured({ ...typed, holeDepth: "", readings: [] }, "down")?.measured).toBe("down");
  });

  test("leaves what is no number as typed", () => {
    expect(remeasured({ ...typed, readings: [{ minutes: "0", water: "nine" }] }, "down")?.readings[0]?.water).toBe("nine");
  });
});

describe("what is typed wrong", () => {
  test("is said at its own field", () => {
    const { faults } = readHole({ ...typed, holeDepth: "-2", holeDiameter: "8 in", readings: [{ minutes: "ten", water: "1/2" }] });
    expect(faults.map(({ sentence }) => sentence)).toEqual([
      "Hole depth must be more than 0.",
      'Hole diameter must be a number alone, in the unit shown; it is "8 in".',
      'Minutes of reading 1 must be a number; it is the text "ten".',
      'Water depth of reading 1 must be a number, not a fraction: write 0.5 for 1/2; it is "1/2".',
    ]);
  });

  test("blank rows at the end are not readings", () => {
    expect(readHole({ ...typed, readings: [...typed.readings, { minutes: "", water: "" }] }).entry.readings).toHaveLength(2);
  });
});

describe("a hole from the sheet", () => {
  test("shows every cell as it was typed", async () => {
    await addHoleTest(workbook, await onlyYard(), readHole(typed).entry);
    const row = (await onlyYard()).holeTests[0];
    if (row === undefined) throw new Error("no hole");
    expect(row.cells.date).toBe(dayNumber(2026, 5, 4));
    expect(holeAsTyped(row, "up")).toEqual(typed);
    expect(holeAsTyped(row, "down")).toEqual({
      ...typed,
      measured: "down",
      readings: [
        { minutes: "0", water: "9" },
        { minutes: "10", water: "9.9375" },
      ],
    });
  });

  test("without a depth is shown measured up, whatever the person's way", async () => {
    await addHoleTest(workbook, await onlyYard(), { ...readHole(typed).entry, holeDepth: null });
    const row = (await onlyYard()).holeTests[0];
    if (row === undefined) throw new Error("no hole");
    expect(holeAsTyped(row, "down").measured).toBe("up");
  });
});

describe("a new hole", () => {
  test("takes the next free name and the last tester", async () => {
    await addHoleTest(workbook, await onlyYard(), { ...readHole(typed).entry, hole: "1" });
    expect(newHole(await onlyYard(), "up", dayNumber(2026, 5, 5))).toMatchObject({
      hole: "2",
      tester: "Crew two",
      date: "2026-05-05",
      readings: [],
    });
    expect(nextHoleName(["2", "A"])).toBe("3");
    expect(nextHoleName(["1", "3"])).toBe("4");
  });

  test("has room for ten readings", () => {
    const readings = Array.from({ length: HOLE_READINGS }, (_, index) => ({ minutes: String(index), water: "5" }));
    expect(HOLE_READINGS).toBe(10);
    expect(hasRoom({ ...typed, readings })).toBe(false);
    expect(hasRoom({ ...typed, readings: readings.slice(1) })).toBe(true);
  });

  test("counts its next reading from the latest time typed", () => {
    expect(lastReadingMinutes(typed)).toBe(10);
    expect(lastReadingMinutes({ ...typed, readings: [{ minutes: "soon", water: "" }] })).toBeNull();
  });
});
