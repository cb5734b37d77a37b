import { addressOf, type CellRange, type FormulaWrite, type ValueWrite, type Workbook } from "../../workbook/port.ts";
import { changeLogSheet } from "../../records/change-log.ts";
import { mostRowsOf } from "../../records/prepared-rows.ts";
import { growSheets } from "../workbook/grow-sheet.ts";
import { now } from "../dates.ts";
import { headingsOf, readContexts } from "./cell-context.ts";
import { historiesOf } from "./cell-history.ts";
import { cellsIn, inRows } from "./change-rows.ts";
import type { CellHistory, Held } from "./held.ts";
import { logEnd } from "./read-log.ts";
import { standsBefore } from "./unlogged.ts";

/** A workbook whose writes are remembered until they are put on the log. */
export interface LoggedWorkbook {
  readonly workbook: Workbook;
  /** Forgets what was written so far; what comes next is by whom and what, where it has to be on the log before it is written. */
  readonly forget: (next?: NamedChange) => void;
  readonly anyWritten: () => boolean;
  /** Puts what was written since on the Change log under one number, which is the answer; null when no cell changed. */
  readonly putOnLog: (change: NamedChange) => Promise<number | null>;
}

export interface NamedChange {
  readonly by: string;
  readonly what: string;
}

/** Every write through the workbook returned is kept with what the cells held before. */
export function logWrites(inner: Workbook): LoggedWorkbook {
  let histories: CellHistory[] = [];
  let written = false;
  let next: NamedChange = { by: "", what: "" };
  let loggedAhead: number | null = null;
  /** Sheets that did not exist before: what is first written on them changes nothing anybody had. */
  const added = new Set<string>();
  const keep = async (
    ranges: readonly CellRange[],
    after: (range: number, row: number, column: number) => Held,
    write: () => Promise<void>,
  ) => {
    const found = await historiesOf(inner, ranges, after);
    await write();
    written = true;
    for (const history of found) if (!added.has(history.where.sheet)) histories.push(history);
  };
  const workbook: Workbook = {
    ...boundTo(inner),
    addSheets: async (layouts, progress) => {
      await inner.addSheets(layouts, progress);
      written = true;
      layouts.forEach(({ name }) => added.add(name));
    },
    writeValues: (writes: readonly ValueWrite[]) =>
      keep(
        writes.map(({ range }) => range),
        (range, row, column) => ({ holds: "value", content: writes[range]?.values[row]?.[column] ?? null }),
        () => inner.writeValues(writes),
      ),
    writeFormulas: (writes: readonly FormulaWrite[]) =>
      keep(
        writes.map(({ range }) => range),
        (range, row, column) => ({ holds: "formula", content: writes[range]?.formulas[row]?.[column] ?? "" }),
        () => inner.writeFormulas(writes),
      ),
  };
  standsBefore(workbook, {
    inner,
    logAhead: async (cells) => {
      loggedAhead = cells.length === 0 ? null : await appendToLog(inner, cells, next);
      written = true;
      return loggedAhead;
    },
    nothingWritten: () => {
      loggedAhead = null;
      written = histories.length > 0;
    },
  });
  return {
    workbook,
    forget: (change = { by: "", what: "" }) => {
      next = change;
      histories = [];
      loggedAhead = null;
      written = false;
      added.clear();
    },
    anyWritten: () => written,
    putOnLog: async (change) => {
      const cells = histories;
      const ahead = loggedAhead;
      histories = [];
      loggedAhead = null;
      return cells.length === 0 ? ahead : appendToLog(inner, cells, change);
    },
  };
}

/** The verbs of a workbook as free functions, whatever kind of object it is. */
function boundTo(inner: Workbook): Workbook {
  return {
    sheetNames: () => inner.sheetNames(),
    spills: () => inner.spills(),
    addSheets: (layouts, progress) => inner.addSheets(layouts, progress),
    read: (ranges) => inner.read(ranges),
    extents: (names) => inner.extents(names),
    readSheets: (names) => inner.readSheets(names),
    readFormulas: (range) => inner.readFormulas(range),
    writeValues: (writes) => inner.writeValues(writes),
    writeFormulas: (writes) => inner.writeFormulas(writes),
    continueLayout: (ranges) => inner.continueLayout(ranges),
    placePicture: (picture) => inner.placePicture(picture),
    pictureNames: (sheet) => inner.pictureNames(sheet),
    calculated: () => inner.calculated(),
    selection: () => inner.selection(),
    select: (range) => inner.select(range),
    onSelectionChanged: (listener) => inner.onSelectionChanged(listener),
    onCellsChanged: (listener) => inner.onCellsChanged(listener),
    readSetting: (key) => inner.readSetting(key),
    writeSetting: (key, text) => inner.writeSetting(key, text),
  };
}

/** Below the last row of the log, however long it has grown. */
async function appendToLog(workbook: Workbook, cells: readonly CellHistory[], { by, what }: NamedChange): Promise<number> {
  const touched = cells.map(({ where }) => where);
  const { contextAt, along } = await readContexts(workbook, touched, [changeLogSheet.name]);
  const { place, endRow, lastChange } = await logEnd(workbook, along[0]);
  const change = lastChange + 1;
  const when = now();
  const entries = inRows(cells).map((history) => {
    const { where, before, after } = history;
    return {
      change,
      when,
      by: by === "" ? null : by,
      what,
      siteId: contextAt(where).siteId,
      sheet: where.sheet,
      cell: addressOf(where).replace(/^.*!/, ""),
      heading: headingsOf(
        cellsIn(history).map((cell) => cell.where),
        contextAt,
      ),
      beforeHolds: before.holds,
      before: before.content,
      afterHolds: after.holds,
      after: after.content,
    };
  });
  const rows = endRow - place.firstRow + entries.length;
  if (rows > changeLogSheet.rows) await growSheets(workbook, new Map([[changeLogSheet, Math.min(rows, mostRowsOf(changeLogSheet))]]));
  const keys = Object.keys(changeLogSheet.columns) as (keyof typeof changeLogSheet.columns)[];
  // The number comes last: rows that the page went in the midst of have none, and belong to no change.
  await workbook.writeValues(
    [...keys.filter((key) => key !== "change"), "change" as const].map((key) => ({
      range: { ...place.cell(endRow, key), rows: entries.length },
      values: entries.map((entry) => [entry[key]]),
    })),
  );
  return change;
}
