import { beforeEach, describe, expect, it } from "vitest";
import { dayNumberOf } from "../../../../addin/actions/dates.ts";
import { readProgram } from "../../../../addin/actions/program/read-program.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { PROGRAM_PLACES } from "../../../../addin/records/one-call-rules/rules.ts";
import { firstRow, cellOf } from "../../../../addin/records/place.ts";
import { placeSettingCell, programLayout, programSheet } from "../../../../addin/records/program.ts";
import { HostInMemory } from "../../../taskpane/host-in-memory.ts";

let workbook: HostInMemory;

beforeEach(async () => {
  workbook = new HostInMemory();
  await setUpWorkbook(workbook);
});

async function typed(value: string | number | null) {
  await workbook.writeValues([{ range: placeSettingCell(), values: [[value]] }]);
  const { oneCall, slips } = await readProgram(workbook);
  return { place: oneCall.place, slips: slips.map(({ sentence }) => sentence) };
}

describe("Whose one-call rule applies, on Program", () => {
  it("is offered as a list of every state, the District of Columbia and outside the US", () => {
    expect(programLayout().choicesIn).toEqual([{ heading: "Country or state", choices: PROGRAM_PLACES, cells: placeSettingCell() }]);
    expect(PROGRAM_PLACES).toHaveLength(52);
  });

  it("is nobody's in a new workbook, and no slip", async () => {
    expect(await typed(null)).toEqual({ place: null, slips: [] });
  });

  it("is read whatever its case and the spaces around it", async () => {
    expect(await typed(" north dakota ")).toEqual({ place: "North Dakota", slips: [] });
    expect(await typed("Outside the US")).toEqual({ place: "outside the US", slips: [] });
  });

  it("that is in no list is a slip in words, and counts nothing", async () => {
    for (const value of ["Oregn", 3, "__proto__"]) {
      const { place, slips } = await typed(value);
      expect(place).toBeNull();
      expect(slips).toEqual([expect.stringContaining(`Country or state "${value}" is in no list`)]);
    }
  });
});

describe("Holidays of the one-call center, on Program", () => {
  it("are read as days, beside settings and below them", async () => {
    const at = (row: number) => cellOf(programSheet, firstRow(programSheet) + row, "holiday");
    const days = ["2026-11-26", "2026-12-25"].map((iso) => dayNumberOf(iso) ?? 0);
    await workbook.writeValues([
      { range: at(0), values: [[days[0] ?? null]] },
      { range: at(30), values: [[days[1] ?? null]] },
    ]);
    const { oneCall, slips } = await readProgram(workbook);
    expect([oneCall.holidays, slips]).toEqual([days, []]);
  });

  it("that are no days are slips and left out", async () => {
    await workbook.writeValues([{ range: cellOf(programSheet, firstRow(programSheet), "holiday"), values: [["Labor Day"]] }]);
    const { oneCall, slips } = await readProgram(workbook);
    expect(oneCall.holidays).toEqual([]);
    expect(slips.map(({ sentence }) => sentence)).toEqual([expect.stringContaining('Holiday must be a date; it is the text "Labor Day".')]);
  });
});
