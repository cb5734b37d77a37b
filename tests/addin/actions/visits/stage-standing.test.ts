import { beforeEach, describe, expect, it } from "vitest";
import { readProgram } from "../../../../addin/actions/program/read-program.ts";
import { screeningOf, type StepStanding } from "../../../../addin/actions/visits/stage-standing.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { rulesSheet } from "../../../../addin/records/rules.ts";
import { cellOf, firstRow } from "../../../../addin/records/place.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { visitsSheet } from "../../../../addin/records/visits.ts";
import type { CellValue } from "../../../../addin/workbook/port.ts";
import { HostInMemory } from "../../../taskpane/host-in-memory.ts";

describe("The screening visit of a yard", () => {
  let workbook: HostInMemory;

  beforeEach(async () => {
    workbook = new HostInMemory();
    await setUpWorkbook(workbook);
    site({ siteId: "Y-001", yard: "Corner house" });
  });

  function site(cells: { readonly [Key in keyof typeof sitesSheet.columns]?: CellValue }): void {
    for (const [key, value] of Object.entries(cells)) {
      const { sheet, row, column } = cellOf(sitesSheet, firstRow(sitesSheet), key as keyof typeof sitesSheet.columns);
      workbook.put(sheet, row, column, value);
    }
  }

  function answer(place: number, cells: { readonly [Key in keyof typeof visitsSheet.columns]?: CellValue }): void {
    for (const [key, value] of Object.entries({ siteId: "Y-001", stage: "screening", ...cells })) {
      const { sheet, row, column } = cellOf(visitsSheet, firstRow(visitsSheet) + place, key as keyof typeof visitsSheet.columns);
      workbook.put(sheet, row, column, value);
    }
  }

  async function screening() {
    const program = await readProgram(workbook);
    const yard = program.yards[0];
    if (yard === undefined) throw new Error("The yard is not there.");
    const standing = screeningOf(program, yard);
    const step = (id: string): StepStanding => {
      const found = standing.steps.find((candidate) => candidate.step.id === id);
      if (found === undefined) throw new Error(`There is no step ${id}.`);
      return found;
    };
    return { standing, step };
  }

  it("a step without an answer is not measured, and keeps the visit from passing", async () => {
    const { standing, step } = await screening();
    expect(standing.steps.map(({ verdict }) => verdict)).toEqual(standing.steps.map(() => "not measured"));
    expect(standing.verdict).toBe("not measured");
    expect(step("foundation").answer).toBeNull();
  });

  it("the visit passes only when every step does", async () => {
    const { standing } = await screening();
    standing.steps.forEach(({ step }, place) => answer(place, { step: step.id, answer: "seen", verdict: "pass" }));
    expect((await screening()).standing.verdict).toBe("pass");
    answer(3, { step: standing.steps[3]!.step.id, answer: "seen", verdict: "refer" });
    expect((await screening()).standing.verdict).toBe("refer");
    answer(4, { step: standing.steps[4]!.step.id, answer: "seen", verdict: "stop" });
    expect((await screening()).standing.verdict).toBe("stop");
  });

  it("the newest answer to a step counts", async () => {
    answer(0, { step: "foundation", answer: 4, unit: "ft", rule: "Distance to foundation", verdict: "stop" });
    answer(1, { step: "foundation", answer: 14, unit: "ft", rule: "Distance to foundation", verdict: "pass" });
    const { step } = await screening();
    expect(step("foundation")).toMatchObject({ verdict: "pass", fault: null });
    expect(step("foundation").answer?.record.answer).toBe(14);
  });

  it("the limits in force come from the Rules sheet, in its order", async () => {
    const { step } = await screening();
    expect(step("foundation").rules).toEqual([{ comparison: "at least", limit: "10 ft", ifNotMet: "stop" }]);
    expect(step("slope").rules).toEqual([
      { comparison: "at most", limit: "10 %", ifNotMet: "refer" },
      { comparison: "at most", limit: "12 %", ifNotMet: "stop" },
    ]);
    expect(step("wet-spot").rules).toEqual([]);
  });

  it("a metric yard reads the limits in meters, rounded so that what is printed still holds", async () => {
    site({ units: "metric" });
    const { step } = await screening();
    // 10 ft is 3.048 m exactly (1 ft = 0.3048 m): 3.05 m is enough, 3.04 m would not be.
    expect(step("foundation").rules).toEqual([{ comparison: "at least", limit: "3.05 m", ifNotMet: "stop" }]);
    expect(step("slope").rules[0]?.limit).toBe("10 %");
  });

  it("a changed limit is the limit in force", async () => {
    const { sheet, row, column } = cellOf(rulesSheet, firstRow(rulesSheet), "limit");
    workbook.put(sheet, row, column, 15);
    expect((await screening()).step("foundation").rules[0]?.limit).toBe("15 ft");
  });

  it("a rule that is not on the Rules sheet is said before anybody measures for it", async () => {
    const { sheet, row, column } = cellOf(rulesSheet, firstRow(rulesSheet), "rule");
    workbook.put(sheet, row, column, "Distance to basement");
    const { step } = await screening();
    expect(step("foundation").fault).toMatch(/^Rule name "Distance to foundation" is not in the Rules table\. The nearest are /);
  });

  it("an answer whose verdict cell shows an error is not measured, and the error's sentence is said", async () => {
    answer(0, { step: "foundation", answer: "about 12", unit: "ft", rule: "Distance to foundation", verdict: "#VALUE!" });
    const { step } = await screening();
    expect(step("foundation").verdict).toBe("not measured");
    expect(step("foundation").fault).toBe('Measured value must be a number; it is the text "about 12".');
  });
});
