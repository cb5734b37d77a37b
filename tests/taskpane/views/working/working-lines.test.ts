import { describe, expect, it } from "vitest";
import type { WorkedCall, WorkedInput, Working } from "../../../../addin/actions/working/show-working.ts";
import { inputLine, resultLines, shownResults, workingAsText } from "../../../../taskpane/views/working/working-lines.ts";

const input = (over: Partial<WorkedInput>): WorkedInput => ({
  label: "Rain",
  unit: "in",
  written: "A1",
  cells: [1],
  leftOut: null,
  ...over,
});

const call: WorkedCall = {
  name: "RUNOFFDEPTH",
  written: "SOAK.RUNOFFDEPTH(A1,80)",
  summary: "Runoff depth of one storm.",
  equation: ["Q = (P - Ia)^2 / (P - Ia + S)   (in)"],
  inputs: [input({ cells: [4] }), input({ label: "Curve number", unit: "", written: "80", cells: [80] })],
  steps: [{ label: "Storage S", value: 2.5, unit: "in" }],
  results: [[{ label: "Runoff depth", unit: "in", value: 2.0416666666666665 }]],
  cautions: ["Rain not snow."],
  sources: [{ document: "A Handbook of Examples", edition: "3rd ed., 1999", place: "table 2-1", evidence: "from memory" }],
};

const working: Working = {
  where: { sheet: "Yard", row: 0, column: 1, rows: 1, columns: 1 },
  address: "Yard!B1",
  formula: "=SOAK.RUNOFFDEPTH(A1,80)",
  spilledFrom: null,
  shown: 2.0416666666666665,
  agrees: true,
  calls: [call],
};

describe("An argument in the working", () => {
  it.each([
    [input({ cells: [1.25] }), "1.25 in"],
    [input({ cells: [12345.678] }), "12,345.7 in"],
    [input({ cells: [0.00001234] }), "0.0000123400 in"],
    [input({ cells: [true], unit: "" }), "TRUE"],
    [input({ cells: [null] }), "blank"],
    [input({ cells: [{ code: "#DIV/0!", sentence: "" }] }), "#DIV/0!"],
    [input({ cells: null }), "worked out inside the formula"],
    [input({ cells: [null], leftOut: { value: 48 }, unit: "h" }), "left out: 48 h"],
    [input({ cells: [null], leftOut: { meaning: "the deepest that drains" } }), "left out: the deepest that drains"],
    [input({ cells: [1, 2, 0.5] }), "1, 2, 0.5 (in)"],
    [input({ cells: [null, "", 3, null, 4, "", "", ""] }), "2 blank, 3, blank, 4, 3 blank (in)"],
  ])("is read as people write it", (argument, words) => {
    expect(inputLine(argument).words).toBe(words);
  });

  it("of a long series lists the first 60 and counts the rest", () => {
    const { words } = inputLine(input({ cells: Array.from({ length: 1000 }, (_, day) => day) }));
    expect(words).toMatch(/^0, 1, 2, .*, 59, and 940 more \(in\)$/);
  });
});

describe("The result in the working", () => {
  it("is said once when every cell of the row says the same", () => {
    const missing = { code: "#N/A", sentence: "Tested rate is missing." };
    const row = ["Design rate", "Floor area"].map((label) => ({ label, unit: "in", value: missing }));
    expect(resultLines(row)).toEqual([{ label: "No result", words: "Tested rate is missing.", written: "" }]);
  });

  it("says of an error without words that it comes from a cell the formula reads", () => {
    expect(resultLines([{ label: "Runoff depth", unit: "in", value: { code: "#DIV/0!", sentence: "" } }])[0]?.words).toBe(
      "#DIV/0!. The error comes from a cell that this formula reads.",
    );
  });

  it("of many rows is shown as far as a sheet of paper goes, and the rest is counted", () => {
    const { rows, left } = shownResults({ ...call, results: Array.from({ length: 30 }, () => call.results[0] ?? []) });
    expect([rows.length, left]).toEqual([24, 6]);
  });
});

describe("The working as text", () => {
  it("has all that a reviewer needs, and defers to local codes", () => {
    expect(workingAsText(working, "2026-05-04")).toBe(
      [
        "Working of Yard!B1",
        "Date: 2026-05-04",
        "Shows: 2.04167",
        "Formula: =SOAK.RUNOFFDEPTH(A1,80)",
        "",
        "SOAK.RUNOFFDEPTH(A1,80)",
        "Runoff depth of one storm.",
        "Equation, in US units",
        "  Q = (P - Ia)^2 / (P - Ia + S)   (in)",
        "Arguments",
        "  Rain: 4 in   [A1]",
        "  Curve number: 80",
        "On the way",
        "  Storage S: 2.5 in",
        "Result",
        "  Runoff depth: 2.04167 in",
        "Cautions",
        "  Rain not snow.",
        "Sources",
        "  A Handbook of Examples, 3rd ed., 1999, table 2-1 (from memory, check before use).",
        "",
        "For planning. Local codes and licensed practice decide.",
        "",
      ].join("\n"),
    );
  });

  it("says where a spilled formula stands, and that the cell shows something else", () => {
    const text = workingAsText(
      { ...working, spilledFrom: "Yard!B1", agrees: false, shown: null, calls: [{ ...call, results: [] }] },
      "2026-05-04",
    );
    expect(text).toContain("The formula stands in Yard!B1 and spills into this cell.");
    expect(text).toContain("Shows: blank");
    expect(text).toContain("no numbers are given");
    expect(text).not.toContain("\nResult\n");
  });
});
