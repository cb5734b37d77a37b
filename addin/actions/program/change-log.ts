import {
  addressOf,
  WorkbookRefused,
  type CellRange,
  type CellValue,
  type FormulaWrite,
  type ValueWrite,
  type Workbook,
} from "../../workbook/port.ts";
import { changeLogSheet, type ChangeRow } from "../../records/change-log.ts";
import { findPlace, headingText } from "../../records/place.ts";
import { readRecords } from "../../records/read-records.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import { areaOf, historiesOf, rangeOf } from "./cell-history.ts";
import type { CellHistory, Held } from "./held.ts";
import { now } from "../dates.ts";
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
    addSheets: async (layouts) => {
      await inner.addSheets(layouts);
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
    addSheets: (layouts) => inner.addSheets(layouts),
    read: (ranges) => inner.read(ranges),
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
  const touched = [...new Set(cells.map(({ where }) => where.sheet))];
  const [log = [], ...sheets] = await workbook.readSheets([changeLogSheet.name, ...touched]);
  const { place, rows, slips } = readRecords(changeLogSheet, log);
  if (place === null) throw new WorkbookRefused(slips[0]?.sentence ?? "The Change log has lost a heading.");
  const change = afterLast(rows);
  const when = now();
  const row = (rows.at(-1)?.row ?? place.headingRow) + 1;
  const keys = Object.keys(changeLogSheet.columns) as (keyof typeof changeLogSheet.columns)[];
  const contextAt = contextsIn(touched, sheets);
  const entries = cells.map(({ where, before, after }) => {
    const around = contextAt(where);
    return {
      change,
      when,
      by: by === "" ? null : by,
      what,
      siteId: around.siteId,
      sheet: where.sheet,
      cell: addressOf(where).replace(/^.*!/, ""),
      heading: around.heading,
      beforeHolds: before.holds,
      before: before.content,
      afterHolds: after.holds,
      after: after.content,
    };
  });
  // The number comes last: rows that the page went in the midst of have none, and belong to no change.
  await workbook.writeValues(
    [...keys.filter((key) => key !== "change"), "change" as const].map((key) => ({
      range: { ...place.cell(row, key), rows: entries.length },
      values: entries.map((entry) => [entry[key]]),
    })),
  );
  return change;
}

interface CellContext {
  readonly siteId: string | null;
  readonly heading: string | null;
}

/** The Site ID of a cell's row and the heading of its column, where its sheet is one of ours; each sheet is looked through once. */
export function contextsIn(
  names: readonly string[],
  sheets: readonly (readonly (readonly CellValue[])[])[],
): (where: CellRange) => CellContext {
  const places = names.map((name, index) => {
    const sheet = recordSheets.find((one) => one.name === name);
    const found = sheet === undefined ? null : findPlace(sheet, sheets[index] ?? []);
    return found !== null && "place" in found ? found.place : null;
  });
  return ({ sheet, row, column }) => {
    const index = names.indexOf(sheet);
    const [place, cells] = [places[index] ?? null, sheets[index] ?? []];
    if (place === null) return { siteId: null, heading: null };
    const siteId = "siteId" in place.sheet.columns ? cells[row]?.[place.columnIndex("siteId")] : null;
    return { siteId: typeof siteId === "string" ? siteId : null, heading: headingText(cells[place.headingRow]?.[column] ?? null) };
  };
}

function afterLast(rows: readonly ChangeRow[]): number {
  return rows.reduce((last, { record }) => Math.max(last, record.change ?? 0), 0) + 1;
}

/** The number that the next change on the log will bear. */
export async function nextChange(workbook: Workbook): Promise<number> {
  return afterLast(await readLog(workbook));
}

export async function readLog(workbook: Workbook): Promise<readonly ChangeRow[]> {
  const [log = []] = await workbook.readSheets([changeLogSheet.name]);
  return readRecords(changeLogSheet, log).rows;
}

/** One change as it stands on the log. */
export interface LoggedChange {
  readonly change: number;
  readonly when: number | null;
  readonly by: string | null;
  readonly what: string;
  readonly siteIds: readonly string[];
  readonly cells: number;
}

/** The latest changes, the newest first. */
export async function latestChanges(workbook: Workbook, count: number): Promise<readonly LoggedChange[]> {
  const rows = await readLog(workbook);
  const numbers = [...new Set(rows.flatMap(({ record }) => (record.change === null ? [] : [record.change])))].sort(
    (one, other) => other - one,
  );
  return numbers.slice(0, count).map((change) => {
    const cells = rows.filter(({ record }) => record.change === change);
    const { when = null, by = null, what = null } = cells[0]?.record ?? {};
    return {
      change,
      when,
      by,
      what: what ?? "",
      siteIds: [...new Set(cells.flatMap(({ record }) => (record.siteId === null ? [] : [record.siteId])))],
      cells: cells.reduce((sum, row) => sum + areaOf(rangeOf(row)), 0),
    };
  });
}
