import { largestOf, smallestOf } from "../../../functions/extremes.ts";
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
import { blocksOf, fitsInBlocks, isLarge, packed, unpacked } from "./change-blocks.ts";
import { now } from "../dates.ts";
import { nobodyWaits } from "./progress.ts";
import { standsBefore } from "./unlogged.ts";
import { sameCell } from "./write-records.ts";

/** What one cell held, a value or a formula as typed; or the values of a block of cells. */
interface Held {
  readonly holds: "value" | "formula" | "values";
  readonly content: CellValue;
}

interface CellHistory {
  readonly where: CellRange;
  readonly before: Held;
  readonly after: Held;
}

/** A workbook whose writes are remembered until they are put on the log. */
export interface LoggedWorkbook {
  readonly workbook: Workbook;
  /** Forgets what was written so far. */
  readonly forget: () => void;
  readonly anyWritten: () => boolean;
  /** Puts what was written since on the Change log under one number, which is the answer; null when no cell changed. */
  readonly putOnLog: (change: { readonly by: string; readonly what: string }) => Promise<number | null>;
}

/** Every write through the workbook returned is kept with what the cells held before. */
export function logWrites(inner: Workbook): LoggedWorkbook {
  let histories: CellHistory[] = [];
  let written = false;
  /** Sheets that did not exist before: what is first written on them changes nothing anybody had. */
  const added = new Set<string>();
  const keep = async (
    ranges: readonly CellRange[],
    after: (range: number, row: number, column: number) => Held,
    write: () => Promise<void>,
  ) => {
    const before = await contentsOf(inner, ranges);
    await write();
    written = true;
    ranges.forEach((range, index) => {
      if (added.has(range.sheet)) return;
      if (before.isBlock(index) && after(index, 0, 0).holds === "value")
        return historiesOfBlock(range, before.values(index), (row, column) => after(index, row, column).content).forEach((history) => {
          histories.push(history);
        });
      eachCell(range, (where, row, column) => {
        const held = before.held(index, row, column);
        const now = after(index, row, column);
        if (!sameHeld(held, now)) histories.push({ where, before: held, after: now });
      });
    });
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
  standsBefore(workbook, inner);
  return {
    workbook,
    forget: () => {
      histories = [];
      written = false;
      added.clear();
    },
    anyWritten: () => written,
    putOnLog: async (change) => {
      const cells = histories;
      histories = [];
      return cells.length === 0 ? null : appendToLog(inner, cells, change);
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

/** What ranges held before they are written. */
interface Contents {
  held(range: number, row: number, column: number): Held;
  values(range: number): readonly (readonly CellValue[])[];
  /** Whether the range is kept as blocks: large, and without a formula that would have to come back. */
  isBlock(range: number): boolean;
}

async function contentsOf(workbook: Workbook, ranges: readonly CellRange[]): Promise<Contents> {
  const around = [...new Set(ranges.map(({ sheet }) => sheet))].map((sheet) => rangeAround(sheet, ranges));
  const [values, ...formulas] = await Promise.all([workbook.read(ranges), ...around.map((range) => workbook.readFormulas(range))]);
  const formulaAt = (range: CellRange, row: number, column: number) => {
    const of = around.findIndex(({ sheet }) => sheet === range.sheet);
    const { row: top = 0, column: left = 0 } = around[of] ?? {};
    return formulas[of]?.[range.row - top + row]?.[range.column - left + column] ?? "";
  };
  return {
    held: (index, row, column) => {
      const range = ranges[index];
      const formula = range === undefined ? "" : formulaAt(range, row, column);
      return formula === "" ? { holds: "value", content: values[index]?.[row]?.[column] ?? null } : { holds: "formula", content: formula };
    },
    values: (index) => values[index] ?? [],
    isBlock: (index) => {
      const range = ranges[index];
      if (range === undefined || !isLarge(range) || !fitsInBlocks(values[index] ?? [])) return false;
      return !(values[index] ?? []).some((cells, row) => cells.some((_, column) => formulaAt(range, row, column) !== ""));
    },
  };
}

function historiesOfBlock(
  range: CellRange,
  before: readonly (readonly CellValue[])[],
  after: (row: number, column: number) => CellValue,
): readonly CellHistory[] {
  const now = before.map((cells, row) => cells.map((_, column) => after(row, column)));
  return blocksOf(range, before, now).map((block) => ({
    where: block.where,
    before: { holds: "values", content: block.before },
    after: { holds: "values", content: block.after },
  }));
}

/** The smallest range that covers all of those on one sheet: one question to the spreadsheet, however many cells are written. */
function rangeAround(sheet: string, ranges: readonly CellRange[]): CellRange {
  const own = ranges.filter((range) => range.sheet === sheet);
  const row = smallestOf(own.map((range) => range.row));
  const column = smallestOf(own.map((range) => range.column));
  return {
    sheet,
    row,
    column,
    rows: largestOf(own.map((range) => range.row + range.rows)) - row,
    columns: largestOf(own.map((range) => range.column + range.columns)) - column,
  };
}

function sameHeld(one: Held, other: Held): boolean {
  return one.holds === other.holds && sameCell(one.content, other.content);
}

function eachCell(range: CellRange, visit: (where: CellRange, row: number, column: number) => void): void {
  for (let row = 0; row < range.rows; row++) {
    for (let column = 0; column < range.columns; column++) {
      visit({ sheet: range.sheet, row: range.row + row, column: range.column + column, rows: 1, columns: 1 }, row, column);
    }
  }
}

/** Below the last row of the log, however long it has grown. */
async function appendToLog(
  workbook: Workbook,
  cells: readonly CellHistory[],
  { by, what }: { readonly by: string; readonly what: string },
): Promise<number> {
  const touched = [...new Set(cells.map(({ where }) => where.sheet))];
  const [log = [], ...sheets] = await workbook.readSheets([changeLogSheet.name, ...touched]);
  const { place, rows, slips } = readRecords(changeLogSheet, log);
  if (place === null) throw new WorkbookRefused(slips[0]?.sentence ?? "The Change log has lost a heading.");
  const change = Math.max(0, ...rows.map(({ record }) => record.change ?? 0)) + 1;
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
  await workbook.writeValues(
    keys.map((key) => ({ range: { ...place.cell(row, key), rows: entries.length }, values: entries.map((entry) => [entry[key]]) })),
  );
  return change;
}

interface CellContext {
  readonly siteId: string | null;
  readonly heading: string | null;
}

/** The Site ID of a cell's row and the heading of its column, where its sheet is one of ours; each sheet is looked through once. */
function contextsIn(names: readonly string[], sheets: readonly (readonly (readonly CellValue[])[])[]): (where: CellRange) => CellContext {
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

async function readLog(workbook: Workbook): Promise<readonly ChangeRow[]> {
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

/**
 * Puts back what the cells of a change held before it. Rejects with WorkbookRefused, and writes nothing, when any of
 * them no longer holds what the change left there, or when its row belongs to another yard by now.
 */
export async function undoChange(workbook: Workbook, change: number, progress = nobodyWaits): Promise<void> {
  const cells = (await readLog(workbook)).filter(({ record }) => record.change === change);
  if (cells.length === 0) throw new WorkbookRefused(`The Change log has no change ${change}.`);
  const places = cells.map((row) => ({ row, where: rangeOf(row) }));
  const held = await contentsOf(
    workbook,
    places.map(({ where }) => where),
  );
  const touched = [...new Set(places.map(({ where }) => where.sheet))];
  const contextAt = contextsIn(touched, await workbook.readSheets(touched));
  const changedSince = places.flatMap(({ row: { record }, where }, index): string[] => {
    const now =
      record.afterHolds === "values" && !hasFormula(held, index, where)
        ? { holds: "values" as const, content: packed(held.values(index)) }
        : held.held(index, 0, 0);
    const around = contextAt(where);
    // A row that the change itself filled or emptied says whose it is by its Site ID cell, which is among the cells compared.
    const moved =
      around.heading !== record.heading || (around.siteId !== null && record.siteId !== null && around.siteId !== record.siteId);
    const isSame = sameHeld(now, { holds: record.afterHolds ?? "value", content: record.after });
    if (isSame && !moved) return [];
    return [
      `${addressOf(where)} was left with ${spoken(record.after)} and holds ${spoken(now.content)} now; before the change it held ${spoken(record.before)}.`,
    ];
  });
  if (changedSince.length > 0) throw new WorkbookRefused(`Nothing was undone, because cells have changed since. ${inShort(changedSince)}`);
  const values = places.filter(({ row }) => row.record.beforeHolds !== "formula");
  const formulas = places.filter(({ row }) => row.record.beforeHolds === "formula");
  const pieces = inPieces(values);
  for (const [done, piece] of pieces.entries()) {
    await progress(done / pieces.length);
    await workbook.writeValues(
      piece.map(({ row, where }) => ({
        range: where,
        values: row.record.beforeHolds === "values" ? unpacked(row.record.before, where) : [[row.record.before]],
      })),
    );
  }
  if (formulas.length > 0)
    await workbook.writeFormulas(formulas.map(({ row, where }) => ({ range: where, formulas: [[String(row.record.before)]] })));
}

/** About as many as the spreadsheet takes within seconds. */
const CELLS_AT_A_TIME = 50_000;

/** Places one after the other, so many cells at a time. */
function inPieces<Placed extends { readonly where: CellRange }>(places: readonly Placed[]): readonly (readonly Placed[])[] {
  const pieces: Placed[][] = [];
  let room = 0;
  for (const place of places) {
    if (room <= 0) {
      pieces.push([]);
      room = CELLS_AT_A_TIME;
    }
    pieces.at(-1)?.push(place);
    room -= areaOf(place.where);
  }
  return pieces;
}

const SENTENCES_SHOWN = 3;

function inShort(sentences: readonly string[]): string {
  const more = sentences.length - SENTENCES_SHOWN;
  return [...sentences.slice(0, SENTENCES_SHOWN), ...(more > 0 ? [`And ${more} more cells.`] : [])].join(" ");
}

function spoken(value: CellValue): string {
  return value === null || value === "" ? "nothing" : `"${String(value).slice(0, 60)}"`;
}

function hasFormula(held: Contents, index: number, { rows, columns }: CellRange): boolean {
  return Array.from({ length: rows }).some((_, row) =>
    Array.from({ length: columns }).some((__, column) => held.held(index, row, column).holds === "formula"),
  );
}

function areaOf({ rows, columns }: CellRange): number {
  return rows * columns;
}

/** Of "B4", or of a block such as "B4:C903". */
function rangeOf({ record }: ChangeRow): CellRange {
  const [first, last = first] = (record.cell ?? "").split(":").map(cellAt);
  const { row = 0, column = 0 } = first ?? {};
  return { sheet: record.sheet ?? "", row, column, rows: (last?.row ?? row) - row + 1, columns: (last?.column ?? column) - column + 1 };
}

function cellAt(address: string): { readonly row: number; readonly column: number } {
  const [, letters = "A", row = "1"] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
  return { row: Number(row) - 1, column: [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1 };
}
