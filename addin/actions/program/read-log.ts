/** The Change log, however long: its end, its latest changes, and the rows of one change. */
import { changeLogSheet, type ChangeRow } from "../../records/change-log.ts";
import type { Place } from "../../records/place.ts";
import { readRecords } from "../../records/read-records.ts";
import { WorkbookRefused, type CellRange, type Workbook } from "../../workbook/port.ts";
import { areaOf } from "./cell-history.ts";
import { historiesIn } from "./change-rows.ts";
import { joined, readParts, type SheetPart } from "./sheet-parts.ts";

type LogPlace = Place<typeof changeLogSheet>;

interface Log extends SheetPart {
  readonly place: LogPlace;
  readonly rows: readonly ChangeRow[];
}

/** Where the next change goes, and the number of the last one. */
export interface LogEnd {
  readonly place: LogPlace;
  readonly endRow: number;
  readonly lastChange: number;
}

export async function logEnd(workbook: Workbook, part: SheetPart | undefined): Promise<LogEnd> {
  const log = logIn(part);
  const lastChange = (await numbersOn(workbook, log)).reduce((last, { number }) => Math.max(last, number), 0);
  return { place: log.place, endRow: Math.max(log.cells.length, log.place.firstRow), lastChange };
}

/** The number that the next change on the log will bear. */
export async function nextChange(workbook: Workbook): Promise<number> {
  const [part] = await readParts(workbook, [changeLogSheet.name]);
  return (await logEnd(workbook, part)).lastChange + 1;
}

export function rowsOfChange(workbook: Workbook, change: number): Promise<readonly ChangeRow[]> {
  return rowsOfChanges(workbook, () => [change]);
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
  const newestFirst = (numbers: Iterable<number>) => [...new Set(numbers)].sort((one, other) => other - one).slice(0, count);
  const rows = await rowsOfChanges(workbook, newestFirst);
  const changes = newestFirst(rows.flatMap(({ record }) => record.change ?? []));
  return changes.map((change) => {
    const own = rows.filter(({ record }) => record.change === change);
    const { when = null, by = null, what = null } = own[0]?.record ?? {};
    return {
      change,
      when,
      by,
      what: what ?? "",
      siteIds: [...new Set(own.flatMap(({ record }) => record.siteId ?? []))],
      cells: own.flatMap(historiesIn).reduce((sum, { where }) => sum + areaOf(where), 0),
    };
  });
}

async function rowsOfChanges(workbook: Workbook, choose: (numbers: readonly number[]) => readonly number[]): Promise<readonly ChangeRow[]> {
  const [part] = await readParts(workbook, [changeLogSheet.name]);
  const log = logIn(part);
  const numbers = await numbersOn(workbook, log);
  const chosen = new Set(choose(numbers.map(({ number }) => number)));
  const isChosen = ({ record }: ChangeRow) => record.change !== null && chosen.has(record.change);
  if (log.isWhole) return log.rows.filter(isChosen);
  const runs = joined(numbers.flatMap(({ number, row }) => (chosen.has(number) ? [{ from: row, until: row + 1 }] : [])));
  const columns = log.cells.reduce((most, row) => Math.max(most, row.length), 0);
  const read = await workbook.read(
    runs.map(({ from, until }): CellRange => ({ sheet: changeLogSheet.name, row: from, column: 0, rows: until - from, columns })),
  );
  const cells = log.cells.map((row, index) => (index <= log.place.headingRow ? row : []));
  runs.forEach(({ from }, run) => read[run]?.forEach((row, down) => (cells[from + down] = row)));
  return readRecords(changeLogSheet, cells).rows.filter(isChosen);
}

/** Throws WorkbookRefused where it has lost a heading. */
function logIn(part: SheetPart = { cells: [], isWhole: true }): Log {
  const { place, rows, slips } = readRecords(changeLogSheet, part.cells);
  if (place === null) throw new WorkbookRefused(slips[0]?.sentence ?? "The Change log has lost a heading.");
  return { ...part, place, rows };
}

interface NumberedRow {
  readonly number: number;
  readonly row: number;
}

/** The number of every row, wherever people have sorted it to: the last row need not be the last change. */
async function numbersOn(workbook: Workbook, { place, cells, isWhole, rows }: Log): Promise<readonly NumberedRow[]> {
  if (isWhole) return rows.flatMap(({ record: { change }, row }) => (change === null ? [] : [{ number: change, row }]));
  const column = { ...place.cell(place.firstRow, "change"), rows: cells.length - place.firstRow };
  const [read = []] = await workbook.read([column]);
  return read.flatMap(([number], index) => (typeof number === "number" ? [{ number, row: place.firstRow + index }] : []));
}
