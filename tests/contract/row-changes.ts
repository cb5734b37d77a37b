/** What Excel makes of formulas when rows are inserted, deleted or sorted, and when sheets go, as its documentation describes it. */
import { tokensOf } from "../../addin/actions/working/formula-tokens.ts";

/** Where rows go: both ends of a range, or null where nothing of it is left. */
export type RowShift = (first: number, last: number) => readonly [number, number] | null;

export const insertedAt =
  (row: number): RowShift =>
  (first, last) => [first >= row ? first + 1 : first, last >= row ? last + 1 : last];

export const deletedAt =
  (row: number): RowShift =>
  (first, last) => {
    const [from, to] = [first > row ? first - 1 : first, last >= row ? last - 1 : last];
    return to < from ? null : [from, to];
  };

/** The formula of a cell on `sheet` after rows of `changed` have moved. */
export function afterRowChange(formula: string, sheet: string, changed: string, shift: RowShift): string {
  return withReferences(formula, (prefix, cells) => {
    if (!namesSheet(prefix, changed, sheet)) return prefix + cells;
    const ends = cells.split(":").map((cell) => /^(\$?[A-Z]+)(\$?)(\d+)$/i.exec(cell));
    const [first, last = first] = ends;
    const moved = shift(Number(first?.[3]) - 1, Number(last?.[3]) - 1);
    if (moved === null) return "#REF!";
    const written = ends.map((end, place) => `${end?.[1] ?? ""}${end?.[2] ?? ""}${(moved[place] ?? 0) + 1}`);
    return prefix + written.join(":");
  });
}

/** The formula of a row that sorting took so many rows down: what it reads of its own row goes along. */
export function afterSorting(formula: string, down: number): string {
  return withReferences(formula, (prefix, cells) =>
    prefix === "" ? cells.replace(/([A-Z])(\d+)/gi, (_, letter: string, row: string) => `${letter}${Number(row) + down}`) : prefix + cells,
  );
}

/** The formula after the sheet was deleted. */
export function afterDeletion(formula: string, deleted: string): string {
  return withReferences(formula, (prefix, cells) => (namesSheet(prefix, deleted) ? "#REF!" : prefix + cells));
}

export function afterRenaming(formula: string, before: string, after: string): string {
  return withReferences(formula, (prefix, cells) => (namesSheet(prefix, before) ? `'${after}'!${cells}` : prefix + cells));
}

function namesSheet(prefix: string, sheet: string, own = ""): boolean {
  const named = prefix === "" ? own : prefix.slice(0, -1).replace(/^'|'$/g, "").replaceAll("''", "'");
  return named.toLowerCase() === sheet.toLowerCase();
}

function withReferences(formula: string, change: (prefix: string, cells: string) => string): string {
  const text = formula.slice(1);
  const tokens = tokensOf(text) ?? [];
  let changed = "";
  let end = 0;
  for (const { kind, text: token, start } of tokens) {
    changed += text.slice(end, start);
    end = start + token.length;
    const bang = token.lastIndexOf("!") + 1;
    changed += kind === "reference" ? change(token.slice(0, bang), token.slice(bang)) : token;
  }
  return `=${changed}${text.slice(end)}`;
}
