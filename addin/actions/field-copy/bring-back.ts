/** Writes what a person has chosen of a copy into the workbook, as one change. */
import { placeAsSetUp, type Place } from "../../records/place.ts";
import { readRecords } from "../../records/read-records.ts";
import { rulesSheet } from "../../records/rules.ts";
import type { Sheet } from "../../records/sheet.ts";
import { visitsSheet } from "../../records/visits.ts";
import { WorkbookRefused, type CellValue, type FormulaWrite, type ValueWrite, type Workbook } from "../../workbook/port.ts";
import { ownColumnsFor } from "../program/own-columns-for.ts";
import { appendRows, writeUnlessChanged, type CellChange, type Conflict } from "../program/write-records.ts";
import { keepLastSiteId } from "../yard/site-ids.ts";
import { homeRows, type RowsOfSheets } from "./home-rows.ts";
import type { Choice, Difference, Edits } from "./merge-rows.ts";
import {
  headingOf,
  inputKeys,
  isOwnField,
  ownFields,
  valuesOf,
  withFields,
  type Fields,
  type TakenRow,
  type TakenRows,
} from "./taken-rows.ts";
import { sheetsBroughtBack, sitesTaken, type TakenSheet } from "./taken-sheets.ts";
import { verdictWrites } from "./verdicts.ts";

export type Chosen = (difference: Difference) => Choice | null;

/** Nothing is written while a question is open, or where a row has changed since it was compared. */
export async function bringBack(workbook: Workbook, differences: readonly Difference[], chosen: Chosen): Promise<readonly Conflict[]> {
  const here = await homeRows(workbook);
  const work = sheetsBroughtBack.flatMap((taken): readonly SheetWork[] => {
    const edits = differences.filter((difference) => difference.taken === taken).map((difference) => editsOf(difference, chosen));
    const rows = here.get(taken);
    return rows === undefined || edits.length === 0 ? [] : [new SheetWork(taken, rows, edits)];
  });
  const conflicts = await writeUnlessChanged(
    workbook,
    work.flatMap((each) => each.changes()),
  );
  if (conflicts.length > 0) return conflicts;
  const sites = sitesOf(here, work);
  const rules = await rulesPlace(workbook);
  for (const each of work) await each.write(workbook, sites, rules);
  const siteIds = work.find(({ taken }) => taken === sitesTaken)?.added.map((fields) => String(fields.get("siteId") ?? "")) ?? [];
  if (siteIds.length > 0) await keepLastSiteId(workbook, siteIds);
  return [];
}

function editsOf(difference: Difference, chosen: Chosen): Edits {
  const choice = chosen(difference) ?? difference.unlessChosen;
  const edits = choice === null ? undefined : difference.edits.get(choice);
  if (edits === undefined) throw new WorkbookRefused("A question about this copy is still open. Nothing was written.");
  return edits;
}

async function rulesPlace(workbook: Workbook): Promise<Place<typeof rulesSheet>> {
  const [cells = []] = await workbook.readSheets([rulesSheet.name]);
  return readRecords(rulesSheet, cells).place ?? placeAsSetUp(rulesSheet);
}

/** What is done on one sheet. */
class SheetWork {
  readonly added: readonly Fields[];
  readonly #changed: ReadonlyMap<TakenRow, ReadonlyMap<string, CellValue>>;
  readonly #emptied: ReadonlySet<TakenRow>;
  readonly #columnOf: (field: string) => number;
  readonly #headings: readonly ValueWrite[];

  constructor(
    readonly taken: TakenSheet,
    private readonly here: TakenRows,
    edits: readonly Edits[],
  ) {
    this.added = edits.flatMap(({ added }) => added);
    this.#emptied = new Set(edits.flatMap(({ emptied }) => emptied));
    const changed = new Map<TakenRow, Map<string, CellValue>>();
    for (const { row, fields } of edits.flatMap((each) => each.changed))
      changed.set(row, new Map([...(changed.get(row) ?? []), ...fields]));
    this.#changed = changed;
    const named = [...this.added, ...changed.values()].flatMap((fields) => [...fields.keys()].filter(isOwnField));
    const present = ownFields(taken.sheet, here.cells[here.place.headingRow] ?? []);
    const missing = [...new Set(named)].filter((field) => !present.has(field)).map((field) => headingOf(taken.sheet, field));
    const { columnOf, headings } = ownColumnsFor(here.place, here.cells, missing);
    this.#headings = headings;
    this.#columnOf = (field) => present.get(field) ?? columnOf(headingOf(taken.sheet, field));
  }

  /** Of rows that are there already, each cell with what it held when it was compared. */
  changes(): readonly CellChange[] {
    const { sheet } = this.taken;
    const { place } = this.here;
    const at = (row: TakenRow, column: number, write: CellValue): CellChange => ({
      where: { sheet: sheet.name, row: row.row, column, rows: 1, columns: 1 },
      shown: row.cells[column] ?? null,
      write,
    });
    const emptied = [...this.#emptied].flatMap((row) => [
      ...inputKeys(sheet).map((key) => at(row, place.columnIndex(key), null)),
      ...[...row.fields.keys()].filter(isOwnField).map((field) => at(row, this.#columnOf(field), null)),
    ]);
    const changed = [...this.#changed].flatMap(([row, fields]) => {
      const values = valuesOf(sheet, withFields(row.fields, fields));
      if (values === null) throw new WorkbookRefused(TOO_MANY_READINGS);
      return [
        ...[...new Set([...fields.keys()].flatMap((field) => keysOf(sheet, field)))].map((key) =>
          at(row, place.columnIndex(key), values[key] ?? null),
        ),
        ...[...fields].flatMap(([field, value]) => (isOwnField(field) ? [at(row, this.#columnOf(field), value)] : [])),
      ];
    });
    return [...emptied, ...changed];
  }

  async write(workbook: Workbook, sites: readonly Fields[], rules: Place<typeof rulesSheet>): Promise<void> {
    if (this.#headings.length > 0) await workbook.writeValues(this.#headings);
    const { sheet } = this.taken;
    const rows = await appendRows(
      workbook,
      sheet,
      this.added.map((fields) => valuesOf(sheet, fields) ?? {}),
    );
    const own = [...new Set(this.added.flatMap((fields) => [...fields.keys()].filter(isOwnField)))];
    const [first = 0] = rows;
    if (own.length > 0)
      await workbook.writeValues(
        own.map((field) => ({
          range: { sheet: sheet.name, row: first, column: this.#columnOf(field), rows: rows.length, columns: 1 },
          values: this.added.map((fields) => [fields.get(field) ?? null]),
        })),
      );
    if (sheet.name !== visitsSheet.name) return;
    const verdicts = this.#verdicts(rows, sites, rules);
    if (verdicts.length > 0) await workbook.writeFormulas(verdicts);
  }

  /** Of rows whose rule is new, and of those that were added. */
  #verdicts(rows: readonly number[], sites: readonly Fields[], rules: Place<typeof rulesSheet>): readonly FormulaWrite[] {
    const changed = [...this.#changed].flatMap(([row, fields]) =>
      fields.has("rule") ? [{ row: row.row, fields: withFields(row.fields, fields) }] : [],
    );
    const added = this.added.map((fields, index) => ({ row: rows[index] ?? 0, fields }));
    return verdictWrites(this.here.place as Place<typeof visitsSheet>, rules, sites, [...changed, ...added]);
  }
}

const TOO_MANY_READINGS = "The readings of both sides are more than one row of Hole tests holds. Choose one side's. Nothing was written.";

/** The columns that a field of ours fills. A reading more or less moves those after it. */
function keysOf(sheet: Sheet, field: string): readonly string[] {
  if (sheet.columns[field] !== undefined) return [field];
  return isOwnField(field) ? [] : inputKeys(sheet).filter((key) => /^(?:minutes|water)\d+$/.test(key));
}

/** Of yards that come with the copy too. */
function sitesOf(here: RowsOfSheets, work: readonly SheetWork[]): readonly Fields[] {
  return [
    ...(here.get(sitesTaken)?.rows.map(({ fields }) => fields) ?? []),
    ...work.flatMap(({ taken, added }) => (taken === sitesTaken ? added : [])),
  ];
}
