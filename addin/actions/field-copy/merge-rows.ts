/**
 * What a copy brings back, row by row: the rows at home and in the copy, each held against what they were when they were
 * taken along. What one side alone changed is that side's. What both changed is asked.
 */
import type { CellValue } from "../../workbook/port.ts";
import { grouped } from "../program/grouped.ts";
import { sameFields, sameValue, valuesOf, withFields, type Fields, type TakenRow } from "./taken-rows.ts";
import type { TakenSheet } from "./taken-sheets.ts";

export type Choice = "home" | "copy" | "both";

/** What a choice does to the rows at home. */
export interface Edits {
  readonly added: readonly Fields[];
  readonly emptied: readonly TakenRow[];
  readonly changed: readonly { readonly row: TakenRow; readonly fields: ReadonlyMap<string, CellValue> }[];
}

export type DifferenceKind =
  /** Of the copy alone. */
  | "new"
  | "changed"
  | "deleted"
  /** Of both sides: one cell, rows about the same thing, or a row that only one side deleted. */
  | "cell differs"
  | "rows differ"
  | "deleted here"
  | "deleted in the copy";

export interface Difference {
  readonly kind: DifferenceKind;
  readonly taken: TakenSheet;
  /** At home, or in the copy where home has none. */
  readonly row: TakenRow;
  /** The field, where it is about one cell. */
  readonly field: string | null;
  readonly home: readonly Fields[];
  readonly copy: readonly Fields[];
  /** What each choice does; to leave everything as it is at home does nothing. */
  readonly edits: ReadonlyMap<Choice, Edits>;
  /** What is done unless a person chooses otherwise; null where only a person can say. */
  readonly unlessChosen: Choice | null;
}

const NOTHING: Edits = { added: [], emptied: [], changed: [] };

interface Sides {
  readonly base: readonly TakenRow[];
  readonly home: readonly TakenRow[];
  readonly copy: readonly TakenRow[];
}

export function differencesOf(taken: TakenSheet, { base, home, copy }: Sides): readonly Difference[] {
  const byKey = [base, home, copy].map((rows) => grouped(rows, ({ key }) => [key]));
  const keys = new Set(byKey.flatMap((rows) => [...rows.keys()]));
  return [...keys].flatMap((key) => {
    const [was = [], here = [], there = []] = byKey.map((rows) => rows.get(key) ?? []);
    const sides = { base: was, home: here, copy: there };
    return taken.rowsAre === "whole" ? ofWholeRows(taken, sides) : ofCells(taken, sides);
  });
}

function ofWholeRows(taken: TakenSheet, { base, home, copy }: Sides): readonly Difference[] {
  const [goneHere, goneThere] = [without(base, home), without(base, copy)];
  const [newHere, newThere] = [without(home, base), without(copy, base)];
  const [mine, theirs] = [without(newHere, newThere), without(newThere, newHere)];
  const still = without(goneThere, goneHere);
  const deletedThere = without(home, without(home, still));
  const [was, is] = [deletedThere[0], theirs[0]];
  if (
    mine.length === 0 &&
    goneHere.length === 0 &&
    deletedThere.length === 1 &&
    theirs.length === 1 &&
    was !== undefined &&
    is !== undefined
  )
    return [changed(taken, was, is, differingFields(was, is))];
  // Of a row that both sides have no longer, one side's may be what became of it.
  const wasOnBoth = goneHere.length > without(goneHere, goneThere).length;
  const deletions = deletedThere.map((row) => deleted(taken, row));
  if (theirs.length > 0 && (mine.length > 0 || wasOnBoth)) return [...deletions, rowsDiffer(taken, mine, theirs)];
  if (mine.length > 0 && wasOnBoth) return [...deletions, rowsDiffer(taken, mine, [])];
  return [...deletions, ...theirs.map((row) => added(taken, row))];
}

function ofCells(taken: TakenSheet, { base, home, copy }: Sides): readonly Difference[] {
  const [here, there] = [paired(base, home), paired(base, copy)];
  const known = base.flatMap((was): readonly Difference[] => {
    const [mine, theirs] = [here.by.get(was), there.by.get(was)];
    if (mine === undefined && theirs === undefined) return [];
    if (mine === undefined) return theirs === undefined || sameFields(theirs.fields, was.fields) ? [] : [rowsDiffer(taken, [], [theirs])];
    if (theirs === undefined) return sameFields(mine.fields, was.fields) ? [deleted(taken, mine)] : [rowsDiffer(taken, [mine], [])];
    return cellByCell(taken, was.fields, mine, theirs);
  });
  return [...known, ...ofNewRows(taken, without(here.others, there.others), without(there.others, here.others))];
}

/** Rows that were not there when the copy was taken. */
function ofNewRows(taken: TakenSheet, home: readonly TakenRow[], copy: readonly TakenRow[]): readonly Difference[] {
  if (taken.rowsAre === "one" || copy.length === 0 || home.length === 0)
    return copy.flatMap((row, index) => {
      const mine = home[index];
      return mine === undefined ? [added(taken, row)] : cellByCell(taken, new Map(), mine, row);
    });
  return [rowsDiffer(taken, home, copy)];
}

function cellByCell(taken: TakenSheet, was: Fields, mine: TakenRow, theirs: TakenRow): readonly Difference[] {
  const fields = [...new Set([...was.keys(), ...mine.fields.keys(), ...theirs.fields.keys()])];
  const fromCopy = fields.filter((field) => {
    const value = theirs.fields.get(field);
    return !sameValue(value, was.get(field)) && !sameValue(value, mine.fields.get(field));
  });
  const isAsked = (field: string) => !sameValue(mine.fields.get(field), was.get(field));
  if (valuesOf(taken.sheet, withFields(mine.fields, cellsOf(theirs, fromCopy))) === null) return [rowsDiffer(taken, [mine], [theirs])];
  const silent = fromCopy.filter((field) => !isAsked(field));
  return [
    ...(silent.length === 0 ? [] : [changed(taken, mine, theirs, silent)]),
    ...fromCopy.filter(isAsked).map((field) => ({
      ...changed(taken, mine, theirs, [field]),
      kind: "cell differs" as const,
      field,
      unlessChosen: null,
    })),
  ];
}

/** What these fields hold in the row, a blank as null. */
function cellsOf(row: TakenRow, fields: readonly string[]): ReadonlyMap<string, CellValue> {
  return new Map(fields.map((field) => [field, row.fields.get(field) ?? null]));
}

function only(row: TakenRow, fields: readonly string[]): Fields {
  return new Map([...row.fields].filter(([field]) => fields.includes(field)));
}

function added(taken: TakenSheet, row: TakenRow): Difference {
  const edits = new Map([["copy", { ...NOTHING, added: [row.fields] }] as const, ["home", NOTHING] as const]);
  return { kind: "new", taken, row, field: null, home: [], copy: [row.fields], edits, unlessChosen: "copy" };
}

/** These fields of one row, as another has them. */
function changed(taken: TakenSheet, was: TakenRow, is: TakenRow, fields: readonly string[]): Difference {
  const edits = { ...NOTHING, changed: [{ row: was, fields: cellsOf(is, fields) }] };
  return {
    kind: "changed",
    taken,
    row: was,
    field: null,
    home: [only(was, fields)],
    copy: [only(is, fields)],
    edits: new Map([["copy", edits] as const, ["home", NOTHING] as const]),
    unlessChosen: "copy",
  };
}

function differingFields(one: TakenRow, other: TakenRow): readonly string[] {
  return [...new Set([...one.fields.keys(), ...other.fields.keys()])].filter(
    (field) => !sameValue(one.fields.get(field), other.fields.get(field)),
  );
}

function deleted(taken: TakenSheet, row: TakenRow): Difference {
  const edits = new Map([["copy", { ...NOTHING, emptied: [row] }] as const, ["home", NOTHING] as const]);
  return {
    kind: "deleted",
    taken,
    row,
    field: null,
    home: [row.fields],
    copy: [],
    edits,
    unlessChosen: "copy",
  };
}

/** Rows about the same thing that differ, or a row that one side changed and the other deleted. */
function rowsDiffer(taken: TakenSheet, home: readonly TakenRow[], copy: readonly TakenRow[]): Difference {
  const added = copy.map(({ fields }) => fields);
  const kind = copy.length === 0 ? "deleted in the copy" : home.length === 0 ? "deleted here" : "rows differ";
  const [row] = [...home, ...copy];
  if (row === undefined) throw new Error("Rows that differ are of one side at least.");
  return {
    kind,
    taken,
    row,
    field: null,
    home: home.map(({ fields }) => fields),
    copy: added,
    edits: new Map([
      ["home", NOTHING] as const,
      ["copy", { ...NOTHING, added, emptied: home }] as const,
      ...(kind === "rows differ" ? [["both", { ...NOTHING, added }] as const] : []),
    ]),
    unlessChosen: null,
  };
}

interface Paired {
  readonly by: ReadonlyMap<TakenRow, TakenRow>;
  readonly others: readonly TakenRow[];
}

/** Rows with one key: those that are as they were belong together, and of the others the first with the first. */
function paired(base: readonly TakenRow[], side: readonly TakenRow[]): Paired {
  const by = new Map<TakenRow, TakenRow>();
  const others = [...side];
  for (const was of base) {
    const at = others.findIndex(({ fields }) => sameFields(fields, was.fields));
    const same = others[at];
    if (same === undefined) continue;
    by.set(was, same);
    others.splice(at, 1);
  }
  for (const was of base) {
    if (by.has(was)) continue;
    const next = others.shift();
    if (next !== undefined) by.set(was, next);
  }
  return { by, others };
}

/** The rows that have no equal among the others, one for one. */
function without(rows: readonly TakenRow[], others: readonly TakenRow[]): readonly TakenRow[] {
  const left = [...others];
  return rows.filter(({ fields }) => {
    const at = left.findIndex((row) => sameFields(row.fields, fields));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}
