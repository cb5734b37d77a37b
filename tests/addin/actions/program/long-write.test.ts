/** A long write that the page was closed in is taken back whole at the next start, and an undo is finished. */
import { beforeEach, describe, expect, test } from "vitest";
import { logWrites, undoChange, type LoggedWorkbook } from "../../../../addin/actions/program/change-log.ts";
import { settleUnfinished, writeWhole } from "../../../../addin/actions/program/long-write.ts";
import { nobodyWaits, type Progress } from "../../../../addin/actions/program/progress.ts";
import { unfinishedIn } from "../../../../addin/actions/program/unfinished.ts";
import { rainRecordSheet } from "../../../../addin/records/rain-record.ts";
import { firstRow } from "../../../../addin/records/place.ts";
import type { CellRange, CellValue, ValueWrite } from "../../../../addin/workbook/port.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { changeLogIn, loggedInMemory } from "./logged-workbook.ts";

/** Enough for blocks on the log; an undo goes in pieces only where there are many times as many. */
const FEW_ROWS = 600;
const MANY_ROWS = 6000;
const PIECES = 10;
const COLUMNS = 2;
const top = firstRow(rainRecordSheet);

let rowsAPiece = FEW_ROWS;
const rangeOf = (piece: number): CellRange => ({
  sheet: rainRecordSheet.name,
  row: top + piece * rowsAPiece,
  column: 0,
  rows: rowsAPiece,
  columns: COLUMNS,
});
const whole = (): CellRange => ({ ...rangeOf(0), rows: PIECES * rowsAPiece });

const valuesOf = (piece: number): CellValue[][] => Array.from({ length: rowsAPiece }, (_, row) => [piece * rowsAPiece + row, `w${piece}`]);
const pieces = { count: PIECES, piece: (index: number): ValueWrite[] => [{ range: rangeOf(index), values: valuesOf(index) }] };

/** The page is gone before the piece of this number: nothing ever goes on. */
const goneBefore = (piece: number): { readonly progress: Progress; readonly gone: Promise<void> } => {
  let leave = (): void => undefined;
  const gone = new Promise<void>((resolve) => (leave = resolve));
  let asked = 0;
  const progress = (): Promise<void> => {
    if (asked++ < piece) return Promise.resolve();
    leave();
    return new Promise(() => undefined);
  };
  return { progress, gone };
};

let host: WorkbookInMemory;
let logged: LoggedWorkbook;
let before: readonly (readonly CellValue[])[];
const cells = async () => (await host.read([whole()]))[0];

beforeEach(async () => {
  rowsAPiece = FEW_ROWS;
  ({ host, logged } = await loggedInMemory());
  await host.writeValues([{ range: { ...whole(), rows: 700 }, values: Array.from({ length: 700 }, (_, row) => [row + 0.5, "old"]) }]);
  before = (await cells()) ?? [];
  logged.forget({ by: "R. Field", what: "Rain of thirty years written." });
});

/** As the pane does when it opens the next time. */
async function nextStart(): Promise<string> {
  const next = logWrites(host);
  const unfinished = await unfinishedIn(next.workbook);
  if (unfinished === null) return "nothing to settle";
  next.forget({ by: "", what: "settled" });
  await settleUnfinished(next.workbook, unfinished, nobodyWaits);
  await next.putOnLog({ by: "", what: "settled" });
  return unfinished.doing;
}

describe("A write of thousands of rows", () => {
  test("stands on the log, by whom and what, before its first cell", async () => {
    const { progress, gone } = goneBefore(0);
    void writeWhole(logged.workbook, pieces, progress);
    await gone;
    expect(await cells()).toEqual(before);
    expect(new Set((await changeLogIn(host)).map(({ change, by, what }) => `${change} ${by} ${what}`))).toEqual(
      new Set(["1 R. Field Rain of thirty years written."]),
    );
    expect(await unfinishedIn(host)).toEqual({ change: 1, doing: "write" });
  });

  test.each(Array.from({ length: PIECES }, (_, piece) => piece))(
    "is taken back whole when the page goes before its piece %i",
    async (piece) => {
      const { progress, gone } = goneBefore(piece);
      void writeWhole(logged.workbook, pieces, progress);
      await gone;
      expect(await nextStart()).toBe("write");
      expect(await cells()).toEqual(before);
      expect(await nextStart()).toBe("nothing to settle");
    },
  );

  test("leaves what somebody wrote since, when the rest is taken back", async () => {
    const { progress, gone } = goneBefore(3);
    void writeWhole(logged.workbook, pieces, progress);
    await gone;
    const theirs = { ...whole(), row: top + 10, rows: 1, columns: 1 };
    await host.writeValues([{ range: theirs, values: [["mine"]] }]);
    await nextStart();
    expect(await cells()).toEqual(before.map((row, index) => (index === 10 ? ["mine", row[1]] : row)));
  });

  test("is taken back at once when a piece is refused", async () => {
    const write = host.writeValues.bind(host);
    let writes = 0;
    host.writeValues = (given) =>
      given[0]?.range.row === rangeOf(4).row && writes++ === 0 ? Promise.reject(new Error("protected")) : write(given);
    await expect(writeWhole(logged.workbook, pieces, nobodyWaits)).rejects.toThrow("protected");
    expect(await cells()).toEqual(before);
    expect(logged.anyWritten()).toBe(false);
    expect(await nextStart()).toBe("nothing to settle");
  });

  test("done whole, bears one number on the log and is undone by it", async () => {
    await writeWhole(logged.workbook, pieces, nobodyWaits);
    expect(await logged.putOnLog({ by: "R. Field", what: "Rain of thirty years written." })).toBe(1);
    expect((await cells())?.at(-1)).toEqual([PIECES * rowsAPiece - 1, `w${PIECES - 1}`]);
    expect(await nextStart()).toBe("nothing to settle");
    await undoChange(logged.workbook, 1);
    expect(await cells()).toEqual(before);
  });

  test.each([1, 2])("is undone to the end at the next start when the page went %i pieces into its undo", async (piece) => {
    rowsAPiece = MANY_ROWS;
    before = (await cells()) ?? [];
    await writeWhole(logged.workbook, pieces, nobodyWaits);
    const { progress, gone } = goneBefore(piece);
    void undoChange(logged.workbook, 1, progress);
    await gone;
    expect(await nextStart()).toBe("undo");
    expect(await cells()).toEqual(before);
    expect(await nextStart()).toBe("nothing to settle");
  });
});
