/** A long write that the page was closed in is taken back whole at the next start, and an undo is finished. */
import { beforeEach, describe, expect, test } from "vitest";
import { logWrites, type LoggedWorkbook } from "../../../../addin/actions/program/change-log.ts";
import { undoChange } from "../../../../addin/actions/program/undo-change.ts";
import { settleUnfinished, writeWhole } from "../../../../addin/actions/program/long-write.ts";
import { nobodyWaits } from "../../../../addin/actions/program/progress.ts";
import { unfinishedIn } from "../../../../addin/actions/program/unfinished.ts";
import { changeLogSheet } from "../../../../addin/records/change-log.ts";
import { rainRecordSheet } from "../../../../addin/records/rain-record.ts";
import { firstRow } from "../../../../addin/records/place.ts";
import type { CellRange, CellValue, ValueWrite } from "../../../../addin/workbook/port.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { changeLogIn, loggedInMemory } from "./logged-workbook.ts";

const ROWS_A_PIECE = 600;
const PIECES = 20;
const COLUMNS = 2;
const top = firstRow(rainRecordSheet);

const rangeOf = (piece: number): CellRange => ({
  sheet: rainRecordSheet.name,
  row: top + piece * ROWS_A_PIECE,
  column: 0,
  rows: ROWS_A_PIECE,
  columns: COLUMNS,
});
const whole = (): CellRange => ({ ...rangeOf(0), rows: PIECES * ROWS_A_PIECE });

const valuesOf = (piece: number): CellValue[][] =>
  Array.from({ length: ROWS_A_PIECE }, (_, row) => [piece * ROWS_A_PIECE + row, `w${piece}`]);
const pieces = { count: PIECES, piece: (index: number): ValueWrite[] => [{ range: rangeOf(index), values: valuesOf(index) }] };

/** What the spreadsheet is asked to write, range by range, in a long write and in its undo: the mark, the pieces, the log, the mark. */
const PLACES = 1 + PIECES + Object.keys(changeLogSheet.columns).length + 1;

/**
 * The page is gone before the write of this number, counted range by range: nothing is ever answered again. The answer
 * says whether it went at all, once the work has come to an end or can no longer.
 */
async function goneBefore(place: number, work: () => Promise<unknown>): Promise<boolean> {
  const [writeValues, writeSetting] = [host.writeValues.bind(host), host.writeSetting.bind(host)];
  let asked = 0;
  const gone = new Promise<boolean>((leave) => {
    const onlyWhileThere = (write: () => Promise<void>): Promise<void> => {
      if (asked++ < place) return write();
      leave(true);
      return new Promise(() => undefined);
    };
    host.writeValues = async (writes) => {
      for (const one of writes) await onlyWhileThere(() => writeValues([one]));
    };
    host.writeSetting = (key, words) => onlyWhileThere(() => writeSetting(key, words));
  });
  const wentAway = await Promise.race([gone, work().then(() => false)]);
  Object.assign(host, { writeValues, writeSetting });
  return wentAway;
}

let host: WorkbookInMemory;
let logged: LoggedWorkbook;
let before: readonly (readonly CellValue[])[];
const cells = async () => (await host.read([whole()]))[0];
/** As one text: cell by cell, thousands of them take longer to compare than to write. */
const asText = async () => JSON.stringify(await cells());

beforeEach(async () => {
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

const writing = () => writeWhole(logged.workbook, pieces, nobodyWaits);
const undoing = () => {
  logged.forget({ by: "R. Field", what: "Undone." });
  return undoChange(logged.workbook, 1);
};
const places = Array.from({ length: PLACES }, (_, place) => place);
const FIRST_PIECE = 1 + Object.keys(changeLogSheet.columns).length;

describe("A write of thousands of rows", () => {
  test("stands on the log, by whom and what, before its first cell", async () => {
    expect(await goneBefore(FIRST_PIECE, writing)).toBe(true);
    expect(await asText()).toBe(JSON.stringify(before));
    expect(new Set((await changeLogIn(host)).map(({ change, by, what }) => `${change} ${by} ${what}`))).toEqual(
      new Set(["1 R. Field Rain of thirty years written."]),
    );
    expect(await unfinishedIn(host)).toEqual({ change: 1, doing: "write" });
  });

  test.each(places)("is taken back whole when the page goes before its write %i", async (place) => {
    expect(await goneBefore(place, writing)).toBe(true);
    expect(await nextStart()).toBe(place === 0 ? "nothing to settle" : "write");
    expect(await asText()).toBe(JSON.stringify(before));
    expect(await nextStart()).toBe("nothing to settle");
  });

  test("has no other place where the page could go", async () => {
    expect(await goneBefore(PLACES, writing)).toBe(false);
    expect((await cells())?.at(-1)).toEqual([PIECES * ROWS_A_PIECE - 1, `w${PIECES - 1}`]);
  });

  test.each([FIRST_PIECE - 1, FIRST_PIECE, FIRST_PIECE + 7, PLACES - 1])(
    "that the page left before its write %i is taken back whole although the page goes again while it is",
    async (place) => {
      expect(await goneBefore(place, writing)).toBe(true);
      for (const again of [1, 5]) {
        if (place === FIRST_PIECE - 1) continue;
        expect(await goneBefore(again, nextStart)).toBe(true);
      }
      expect(await nextStart()).toBe("write");
      expect(await asText()).toBe(JSON.stringify(before));
    },
  );

  test("leaves what somebody wrote since, a formula too, when the rest is taken back", async () => {
    expect(await goneBefore(FIRST_PIECE + 3, writing)).toBe(true);
    const theirs = { ...whole(), row: top + 10, rows: 1, columns: 1 };
    await host.writeValues([{ range: theirs, values: [["mine"]] }]);
    await host.writeFormulas([{ range: { ...theirs, row: top + 11 }, formulas: [["=1+1"]] }]);
    await nextStart();
    expect(await host.readFormulas({ ...theirs, row: top + 11 })).toEqual([["=1+1"]]);
    expect((await cells())?.toSpliced(11, 1)).toEqual(before.map((row, index) => (index === 10 ? ["mine", row[1]] : row)).toSpliced(11, 1));
  });

  test("taken back at the next start is done again whole by undoing that, never in part", async () => {
    expect(await goneBefore(FIRST_PIECE + 7, writing)).toBe(true);
    await nextStart();
    await undoChange(logged.workbook, 2);
    expect((await cells())?.map(([row]) => row)).toEqual(Array.from({ length: PIECES * ROWS_A_PIECE }, (_, row) => row));
  });

  test("is taken back at once when a piece is refused", async () => {
    const write = host.writeValues.bind(host);
    let writes = 0;
    host.writeValues = (given) =>
      given[0]?.range.row === rangeOf(4).row && writes++ === 0 ? Promise.reject(new Error("protected")) : write(given);
    await expect(writeWhole(logged.workbook, pieces, nobodyWaits)).rejects.toThrow("protected");
    expect(await asText()).toBe(JSON.stringify(before));
    expect(logged.anyWritten()).toBe(false);
    expect(await nextStart()).toBe("nothing to settle");
  });

  test("done whole, bears one number on the log and is undone by it", async () => {
    await writeWhole(logged.workbook, pieces, nobodyWaits);
    expect(await logged.putOnLog({ by: "R. Field", what: "Rain of thirty years written." })).toBe(1);
    expect((await cells())?.at(-1)).toEqual([PIECES * ROWS_A_PIECE - 1, `w${PIECES - 1}`]);
    expect(await nextStart()).toBe("nothing to settle");
    await undoChange(logged.workbook, 1);
    expect(await asText()).toBe(JSON.stringify(before));
  });

  test.each(places)("is undone to the end at the next start when the page goes before write %i of its undo", async (place) => {
    await writing();
    expect(await goneBefore(place, undoing)).toBe(true);
    expect(await nextStart()).toBe(place === 0 ? "nothing to settle" : "undo");
    if (place === 0) await undoing();
    expect(await asText()).toBe(JSON.stringify(before));
    expect(await nextStart()).toBe("nothing to settle");
  });

  test("has no other place in its undo where the page could go", async () => {
    await writing();
    expect(await goneBefore(PLACES, undoing)).toBe(false);
    expect(await asText()).toBe(JSON.stringify(before));
  });
});
