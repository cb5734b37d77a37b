/**
 * A saved workbook: an envelope with a format number around the grid's own snapshot.
 *
 * It is checked whole before anything is opened, because a person may have edited the file, a disk may have cut it
 * off, or a later version may have written it.
 */
import * as z from "zod";
import { columnLetters } from "../port.ts";

// The page's content security policy forbids functions built from text; this comes before the first schema.
z.config({ jitless: true });

export const WORKBOOK_FILE_KIND = "Soakbook workbook";
export const WORKBOOK_FILE_FORMAT = 1;
export const WORKBOOK_FILE_EXTENSION = ".soakbook";

const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 16_384;

/** A key that could be mistaken for a part of every object is no name for a sheet or a style. */
const name = z.string().regex(/^(?!__proto__$)[^\s].{0,199}$/s);
const placeBelow = (count: number) =>
  z
    .string()
    .regex(/^\d{1,7}$/)
    .refine((index) => Number(index) < count);
const rowPlace = placeBelow(MOST_ROWS);
const columnPlace = placeBelow(MOST_COLUMNS);
const rowIndex = z.int().min(0).lt(MOST_ROWS);
const columnIndex = z.int().min(0).lt(MOST_COLUMNS);
const pixels = z.number().min(0).max(10_000).nullish();

const cell = z.looseObject({
  v: z.union([z.string(), z.number(), z.boolean()]).nullish(),
  f: z.string().startsWith("=").nullish(),
  t: z.int().min(1).max(4).nullish(),
  /** The name of a style, or the style itself. */
  s: z.union([z.string(), z.looseObject({})]).nullish(),
  p: z.looseObject({ body: z.looseObject({ dataStream: z.string() }).nullish() }).nullish(),
  custom: z.looseObject({}).nullish(),
});

const mergedCells = z
  .looseObject({ startRow: rowIndex, endRow: rowIndex, startColumn: columnIndex, endColumn: columnIndex })
  .refine(({ startRow, endRow, startColumn, endColumn }) => startRow <= endRow && startColumn <= endColumn);

const sheet = z.looseObject({
  id: name,
  name,
  cellData: z.record(rowPlace, z.record(columnPlace, cell)).optional(),
  rowCount: z.int().min(1).max(MOST_ROWS).optional(),
  columnCount: z.int().min(1).max(MOST_COLUMNS).optional(),
  mergeData: z.array(mergedCells).nullish(),
  rowData: z.record(rowPlace, z.looseObject({ h: pixels, ah: pixels }).nullish()).optional(),
  columnData: z.record(columnPlace, z.looseObject({ w: pixels }).nullish()).optional(),
  freeze: z
    .looseObject({
      xSplit: columnIndex,
      ySplit: rowIndex,
      startRow: z.int().min(-1).lt(MOST_ROWS),
      startColumn: z.int().min(-1).lt(MOST_COLUMNS),
    })
    .optional(),
  defaultRowHeight: pixels,
  defaultColumnWidth: pixels,
});

/** Drop-downs, pictures and the like: the grid keeps each as a text of its own. */
const resource = z.looseObject({ name: z.string(), data: z.string().refine((data) => data === "" || isJson(data)) });

const snapshot = z
  .looseObject({
    id: name,
    name: z.string().optional(),
    sheetOrder: z.array(name).min(1),
    sheets: z.record(name, sheet),
    styles: z.record(name, z.looseObject({}).nullish()).optional(),
    resources: z.array(resource).optional(),
  })
  .refine((workbook) => workbook.sheetOrder.every((id) => workbook.sheets[id]?.id === id), { path: ["sheetOrder"] });

const file = z.strictObject({
  kind: z.literal(WORKBOOK_FILE_KIND),
  format: z.literal(WORKBOOK_FILE_FORMAT),
  savedAt: z.iso.datetime(),
  workbook: snapshot,
});

/** The grid's snapshot, as far as this file looks into it. */
export type WorkbookSnapshot = z.infer<typeof snapshot>;

/** The file cannot be opened, and the message says what is wrong with it and where. */
export class WorkbookFileRefused extends Error {
  constructor(message: string) {
    super(message);
    this.name = "WorkbookFileRefused";
  }
}

export function writeWorkbookFile(workbook: object, savedAt: Date): string {
  return JSON.stringify({ kind: WORKBOOK_FILE_KIND, format: WORKBOOK_FILE_FORMAT, savedAt: savedAt.toISOString(), workbook });
}

/** The workbook in a file's text. Throws WorkbookFileRefused in words. */
export function readWorkbookFile(fileName: string, text: string): WorkbookSnapshot {
  const content = parse(fileName, text);
  if (!isObject(content) || content["kind"] !== WORKBOOK_FILE_KIND) {
    throw new WorkbookFileRefused(`"${fileName}" is not a Soakbook workbook file.`);
  }
  const format = content["format"];
  if (typeof format === "number" && format > WORKBOOK_FILE_FORMAT) {
    throw new WorkbookFileRefused(
      `"${fileName}" was saved by a later version of Soakbook (file format ${format}; this version reads format ${WORKBOOK_FILE_FORMAT}). Open it with that version.`,
    );
  }
  const checked = file.safeParse(content);
  if (checked.success) return checked.data.workbook;
  const path = checked.error.issues[0]?.path ?? [];
  throw new WorkbookFileRefused(`"${fileName}" is damaged: ${whatIsWrong(path, content)}.`);
}

/** As much of a workbook as its contents need, from a file or from the grid. */
interface WithContents {
  readonly sheetOrder: readonly string[];
  readonly sheets: Readonly<Record<string, { readonly name?: string; readonly cellData?: object } | undefined>>;
  readonly custom?: unknown;
}

/**
 * What people put into the workbook, as one text: equal texts mean nothing was typed in between.
 * Widths, selections and computed answers are left out.
 */
export function contentsOf(workbook: WithContents): string {
  return JSON.stringify([
    workbook.sheetOrder.map((id) => {
      const sheetData = workbook.sheets[id];
      return [sheetData?.name, cellContents(sheetData?.cellData ?? {})];
    }),
    workbook.custom ?? null,
  ]);
}

function cellContents(cellData: object): unknown[] {
  // Sorting leaves places behind in which there is no cell.
  return Object.entries(cellData as Record<string, Record<string, Record<string, unknown> | null | undefined>>).flatMap(([row, cells]) =>
    Object.entries(cells).flatMap(([column, held]) => {
      if (!held) return [];
      const content = held["f"] ?? held["si"] ?? held["p"] ?? held["v"];
      return content === undefined || content === null || content === "" ? [] : [[row, column, content]];
    }),
  );
}

function parse(fileName: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new WorkbookFileRefused(`"${fileName}" is damaged: it cannot be read ${whereReadingStopped(error, text)}.`);
  }
}

function whereReadingStopped(error: unknown, text: string): string {
  if (text.trim() === "") return "because it is empty";
  if (/end of JSON|unterminated/i.test(String(error))) return "to its end; it may have been cut off";
  const position = /position (\d+)/.exec(String(error))?.[1];
  if (position === undefined) return "because it is no text that Soakbook writes";
  const before = text.slice(0, Number(position)).split("\n");
  return `from line ${before.length}, character ${(before.at(-1)?.length ?? 0) + 1} on`;
}

function whatIsWrong(path: readonly PropertyKey[], content: Record<string, unknown>): string {
  const [top, part, sheetId, matrix, row, column, field] = path.map(String);
  if (top !== "workbook") return `its "${top ?? "kind"}" is missing or not what it should be`;
  if (part === undefined) return "it holds no workbook";
  if (part !== "sheets") return `the workbook's "${part}" is missing or not what it should be`;
  if (sheetId === undefined) return "the workbook's sheets are missing";
  const sheetName = sheetNameIn(content, sheetId);
  if (matrix === "cellData" && row !== undefined && Number(row) >= MOST_ROWS)
    return `sheet "${sheetName}" has a cell in row ${Number(row) + 1}, below the last row there is`;
  if (matrix !== "cellData" || row === undefined) return `sheet "${sheetName}" has no proper "${matrix ?? "content"}"`;
  if (column === undefined) return `sheet "${sheetName}", row ${Number(row) + 1} is not a row of cells`;
  const address = `${columnLetters(Number(column))}${Number(row) + 1}`;
  const what = field === "f" ? "a formula that does not start with =" : "neither a text, a number nor a formula";
  return `sheet "${sheetName}", cell ${address} holds ${what}`;
}

function sheetNameIn(content: Record<string, unknown>, sheetId: string): string {
  const workbook = content["workbook"];
  const sheets = isObject(workbook) ? workbook["sheets"] : undefined;
  const found = isObject(sheets) ? sheets[sheetId] : undefined;
  const sheetName = isObject(found) ? found["name"] : undefined;
  return typeof sheetName === "string" ? sheetName : sheetId;
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
