import { beforeEach, describe, expect, it, vi } from "vitest";
import { RECORDS_VERSION_SETTING, setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { WorkbookRefused } from "../../addin/workbook/port.ts";
import { CHANGES_SETTLE_MILLISECONDS, ProgramWatch, type Reading } from "../../taskpane/program-watch.ts";
import { HostInMemory } from "./host-in-memory.ts";

describe("The pane's reading of the workbook", () => {
  let workbook: HostInMemory;
  let shown: Reading[];
  let watch: ProgramWatch;

  beforeEach(async () => {
    vi.useFakeTimers();
    workbook = new HostInMemory();
    shown = [];
    watch = new ProgramWatch(workbook, (reading) => shown.push(reading));
    return () => vi.useRealTimers();
  });

  const reads = () => workbook.asked.filter((verb) => verb === "readSheets").length;

  it("looks once at what the workbook is, and then takes one call each time", async () => {
    await setUpWorkbook(workbook);
    await watch.readAgain();
    await watch.readAgain();
    expect(shown.map(({ state }) => state)).toEqual(["ready", "ready"]);
    expect(workbook.asked).toEqual(["sheetNames", "readSheets", "readSheets"]);
  });

  it("leaves a workbook of a newer version alone", async () => {
    await setUpWorkbook(workbook);
    await workbook.writeSetting(RECORDS_VERSION_SETTING, "99");
    await watch.readAgain();
    expect(shown).toEqual([{ state: "newer" }]);
  });

  it("takes sheets of the person's own that bear our names for theirs", async () => {
    await workbook.addSheets([{ name: "Sites", headingRow: 0, columns: [], rows: 0, frozenColumns: 0, preface: ["My own sites"] }]);
    await watch.readAgain();
    expect(shown).toEqual([{ state: "taken", names: ["Sites"] }]);
  });

  it("says that a workbook without the program's sheets has none of them", async () => {
    await watch.readAgain();
    expect(shown).toEqual([{ state: "absent" }]);
  });

  it("names the sheets that are missing from an incomplete program", async () => {
    await setUpWorkbook(workbook);
    workbook.sheets.delete("Rules");
    await watch.readAgain();
    expect(shown).toEqual([{ state: "incomplete", missing: ["Rules"] }]);
  });

  it("reads again, once, after a burst of changes", async () => {
    await setUpWorkbook(workbook);
    const stop = watch.start();
    await vi.advanceTimersByTimeAsync(0);
    const first = reads();
    for (let edit = 0; edit < 5; edit++) await workbook.type("Sites", 3, 1, `Yard ${edit}`);
    await vi.advanceTimersByTimeAsync(CHANGES_SETTLE_MILLISECONDS);
    expect(reads()).toBe(first + 1);
    const last = shown.at(-1);
    expect(last?.state === "ready" && last.program.yards).toEqual([]);
    stop();
  });

  it("shows what a change in the sheet made of the program", async () => {
    await setUpWorkbook(workbook);
    const stop = watch.start();
    await vi.advanceTimersByTimeAsync(0);
    workbook.put("Sites", 3, 0, "Y-001");
    await workbook.type("Sites", 3, 1, "Corner house");
    await vi.advanceTimersByTimeAsync(CHANGES_SETTLE_MILLISECONDS);
    const last = shown.at(-1);
    expect(last?.state === "ready" && last.program.yards.map(({ site }) => site.record.yard)).toEqual(["Corner house"]);
    stop();
  });

  it("keeps reading while somebody types without a pause", async () => {
    await setUpWorkbook(workbook);
    const stop = watch.start();
    await vi.advanceTimersByTimeAsync(0);
    const first = reads();
    for (let edit = 0; edit < 20; edit++) {
      await workbook.type("Sites", 3, 1, `Yard ${edit}`);
      await vi.advanceTimersByTimeAsync(CHANGES_SETTLE_MILLISECONDS / 4);
    }
    expect(reads()).toBeGreaterThan(first + 2);
    stop();
  });

  it("never reads twice at once: requests during a read lead to one more", async () => {
    await setUpWorkbook(workbook);
    let running = 0;
    let most = 0;
    workbook.before = async (verb) => {
      if (verb !== "readSheets") return;
      most = Math.max(most, ++running);
      await new Promise((resolve) => setTimeout(resolve, 50));
      running--;
    };
    const first = reads();
    const asked = Promise.all([watch.readAgain(), watch.readAgain(), watch.readAgain(), watch.readAgain()]);
    await vi.advanceTimersByTimeAsync(200);
    await asked;
    expect(most).toBe(1);
    expect(reads()).toBe(first + 2);
  });

  it("does not read for changes on a sheet that is not the program's", async () => {
    await setUpWorkbook(workbook);
    await workbook.addSheets([{ name: "Budget", headingRow: 0, columns: [], rows: 5, frozenColumns: 0, preface: [] }]);
    const stop = watch.start();
    await vi.advanceTimersByTimeAsync(0);
    const first = reads();
    await workbook.type("Budget", 0, 0, "42");
    await vi.advanceTimersByTimeAsync(1000);
    expect(reads()).toBe(first);
    stop();
  });

  it("finds the program when its sheets appear", async () => {
    const stop = watch.start();
    await vi.advanceTimersByTimeAsync(0);
    expect(shown.at(-1)).toEqual({ state: "absent" });
    await setUpWorkbook(workbook);
    await vi.advanceTimersByTimeAsync(CHANGES_SETTLE_MILLISECONDS);
    expect(shown.at(-1)?.state).toBe("ready");
    stop();
  });

  it("repeats the host's own sentence when it refuses, and reads on afterwards", async () => {
    await setUpWorkbook(workbook);
    workbook.before = () => {
      throw new WorkbookRefused("A cell is being edited.");
    };
    await watch.readAgain();
    expect(shown.at(-1)).toEqual({ state: "failed", sentence: "A cell is being edited." });
    workbook.before = () => undefined;
    await watch.readAgain();
    expect(shown.at(-1)?.state).toBe("ready");
  });
});
