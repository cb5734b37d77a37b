import { describe, expect, it } from "vitest";
import { SheetMissing, WorkbookRefused } from "../../../addin/workbook/port.ts";
import { sentenceOfError } from "../../../taskpane/parts/spoken-errors.ts";
import { logWrites } from "../../../addin/actions/program/change-log.ts";
import { HostInMemory } from "../host-in-memory.ts";

describe("What the pane says when something fails", () => {
  it("repeats a refusal of the workbook in the workbook's words", () => {
    expect(sentenceOfError(new WorkbookRefused("Sheet Sites is protected."))).toBe("Sheet Sites is protected.");
    expect(sentenceOfError(new SheetMissing("Rules"))).toBe('This workbook has no sheet named "Rules".');
  });

  it("owns up to anything else, and says that nothing was written", () => {
    expect(sentenceOfError(new TypeError("x is not a function"))).toBe(
      "Something went wrong in Soakbook: x is not a function. Nothing was written.",
    );
    expect(sentenceOfError("Lost.")).toBe("Something went wrong in Soakbook: Lost. Nothing was written.");
  });

  it("does not claim that nothing was written when part of it was", () => {
    expect(sentenceOfError(new Error("lost"), "part")).toBe(
      "Something went wrong in Soakbook: lost. Part of it was written: look at the sheet before you try again.",
    );
    expect(sentenceOfError(new WorkbookRefused("A cell is being edited."), "part")).toBe(
      "A cell is being edited. Part of it was written: look at the sheet before you try again.",
    );
  });

  it("knows whether anything was written: reads and refused writes leave nothing", async () => {
    const host = new HostInMemory();
    const { workbook, forget, anyWritten } = logWrites(host);
    const sheet = { name: "Sites", headingRow: 0, columns: [], rows: 5, frozenColumns: 0, preface: [] };
    await workbook.addSheets([sheet]);
    expect(anyWritten()).toBe(true);
    forget();
    const cell = { sheet: "Sites", row: 0, column: 0, rows: 1, columns: 1 };
    await workbook.read([cell]);
    await expect(workbook.addSheets([sheet])).rejects.toThrow('already has a sheet named "Sites"');
    expect(anyWritten()).toBe(false);
    await workbook.writeValues([{ range: cell, values: [["Y-001"]] }]);
    expect(anyWritten()).toBe(true);
  });
});
