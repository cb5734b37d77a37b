import { beforeEach, describe, expect, test } from "vitest";
import { readProgram, type Program, type Yard } from "../../../../addin/actions/program/read-program.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { compareAlternatives, workOut, type WorkedBasin } from "../../../../taskpane/views/basin/alternatives.ts";
import {
  groundsOf,
  NOTHING_ASSUMED,
  readBasin,
  typedFrom,
  typedWith,
  type TypedBasin,
} from "../../../../taskpane/views/basin/basin-form.ts";
import { costWords } from "../../../../taskpane/views/basin/cost-words.ts";
import { WorkbookInMemory } from "../../../addin/workbook-in-memory.ts";

let program: Program;
let yard: Yard;

/** 1,000 sq ft of roof on soil tested at 0.5 in/h, on ground that falls 6 %. */
beforeEach(async () => {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await addYard(workbook, { yard: "Lantern House", address: "3 Cooper's Rise", units: "us", soilGroup: null });
  program = await readProgram(workbook);
  const [read] = program.yards;
  if (read === undefined) throw new Error("no yard");
  yard = { ...read, design: { ...read.design, contributingArea: 1000, testedRate: 0.5, groundSlopePercent: 6 } };
});

const work = (changed: Partial<TypedBasin>): WorkedBasin =>
  workOut({ ...typedFrom(yard), ...changed }, program, yard, groundsOf(yard, NOTHING_ASSUMED));

describe("alternatives side by side", () => {
  test("show each its own floor, rim, room, ponding, drawdown, water and dig, and a dash where none is kept", () => {
    // Upright sides: 79.17 cu ft over 6 in less 1 in of rain: 190 sq ft; 95 cu ft held; 3.52 cu yd; 6 in at 0.25 in/h: 24 h.
    const upright = work({
      pondingDepth: "6",
      sideSlope: "0",
      shape: "rectangle",
      lengthToWidth: "1.9",
      roomLength: "19",
      roomWidth: "10",
    });
    const narrow = work({ pondingDepth: "6", sideSlope: "0", shape: "rectangle", lengthToWidth: "1.9", roomLength: "18", roomWidth: "10" });
    const rows = compareAlternatives([upright, null, narrow], [null, null, null]);
    expect(Object.fromEntries(rows.map(({ label, cells }) => [label, cells]))).toEqual({
      Shape: ["Rectangle 1.9 to 1", "–", "Rectangle 1.9 to 1"],
      "Floor area": ["190 sq ft", "–", "190 sq ft"],
      Rim: ["19 × 10 ft", "–", "19 × 10 ft"],
      "Fits the room": ["Yes", "–", "No"],
      Checks: ["Pass", "–", "Stop"],
      Ponding: ["6 in", "–", "6 in"],
      "Ponding gone in": ["24 h", "–", "24 h"],
      "Water held": ["95 cu ft", "–", "95 cu ft"],
      // 95 cu ft of water and 3 in of mulch under 190 sq ft: 142.5 / 27.
      // 190 x 0.75 ft, and on 6 percent the ground stands 0.06 x (10 / (1 + sqrt 0.9) - 5) ft over the water in the middle: / 27.
      "Dig, in place": ["5.33 cu yd", "–", "5.33 cu yd"],
    });
  });

  test("show the cost where anything has a price", () => {
    const rows = compareAlternatives([work({}), work({}), null], [{ value: 1234.4 }, { sentence: "No price." }, null]);
    expect(rows.at(-1)).toEqual({ label: "Cost", cells: ["1,234", "–", "–"] });
    expect(costWords({ sentence: "No price." })).toBeNull();
  });

  test("have no number where what is kept has none", () => {
    const none = workOut(
      typedFrom(yard),
      program,
      { ...yard, design: { ...yard.design, testedRate: "" } },
      groundsOf({ ...yard, design: { ...yard.design, testedRate: "" } }, NOTHING_ASSUMED),
    );
    const cells = compareAlternatives([none, null, null], [null, null, null]).map((row) => row.cells[0]);
    expect(cells.join(" ")).not.toMatch(/NaN|Infinity|undefined/);
    expect(none.verdict).not.toBe("pass");
  });
});

describe("the room among the checks", () => {
  test("says rim and room in one sentence, and passes or stops", () => {
    const typed = { pondingDepth: "6", sideSlope: "0", shape: "rectangle", lengthToWidth: "1.9" };
    const roomOf = (room: Partial<TypedBasin>) => work({ ...typed, ...room }).checks.find(({ name }) => name === "Room");
    expect(roomOf({ roomLength: "20", roomWidth: "12" })).toEqual({
      name: "Room",
      verdict: "pass",
      words: "Fits: 19 × 10 ft at the rim, and there is room for 20 ft across the slope and 12 ft down the slope.",
    });
    expect(roomOf({ roomWidth: "9.5" })).toEqual({
      name: "Room",
      verdict: "stop",
      words: "Does not fit: it is 19 × 10 ft at the rim, and there is room for 9.5 ft down the slope.",
    });
  });

  test("keeps no basin from passing while nobody measured it", () => {
    const unmeasured = work({ pondingDepth: "6" });
    expect(unmeasured.checks.some(({ name }) => name === "Room")).toBe(false);
    expect(unmeasured.verdict).toBe("pass");
  });
});

test("a remedy goes into the form as a person would type it, and leaves the rest of the form", () => {
  const typed = { ...typedFrom(yard), mixRecipe: "tight soil", roomLength: "12" };
  const changed = typedWith(typed, {
    kind: "ponding",
    changes: { pondingDepth: 7.5, shape: "rectangle", lengthToWidth: 1.25 },
    rim: { length: 12, width: 9 },
  });
  expect(changed).toEqual({ ...typed, pondingDepth: "7.5", shape: "rectangle", lengthToWidth: "1.25" });
  expect(readBasin(changed).faults).toEqual({});
});
