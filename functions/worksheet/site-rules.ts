import { toUs, type NumberKind, type UnitSystem } from "../quantities.ts";
import type { Comparison, Consequence, SiteRule } from "../siting/site-check.ts";
import { choice } from "./arguments.ts";
import { invalid, isCellError, missing, type Cell, type CellError } from "./cell.ts";
import { nearestKeys, plainKey } from "./nearest-keys.ts";
import { isBlank } from "./reading.ts";
import { orList, quoted, whyRefused } from "./sentences.ts";

/** The rules of one name, with what kind of value they judge. Limits are in the kind's US unit. */
export interface NamedRules {
  readonly kind: NumberKind;
  readonly rules: readonly SiteRule[];
}

/** The columns of the Rules table, in order; the source and the date it was checked follow and are for people. */
const NAME = 0;
const COMPARISON = 1;
const LIMIT = 2;
const UNIT = 3;
const IF_NOT_MET = 4;

const COMPARISONS: readonly Comparison[] = ["at least", "at most"];
const CONSEQUENCES: readonly Consequence[] = ["refer", "stop"];

const UNITS = new Map<string, { readonly kind: NumberKind; readonly system: UnitSystem }>([
  ["ft", { kind: "length", system: "us" }],
  ["m", { kind: "length", system: "metric" }],
  ["in", { kind: "depth", system: "us" }],
  ["mm", { kind: "depth", system: "metric" }],
  ["in/h", { kind: "rate", system: "us" }],
  ["mm/h", { kind: "rate", system: "metric" }],
  ["%", { kind: "percent", system: "us" }],
  ["h", { kind: "hours", system: "us" }],
]);

const comparisonRule = choice("comparison", "Comparison", COMPARISONS).rule;
const consequenceRule = choice("ifNotMet", "If not met", CONSEQUENCES).rule;

/** The rows of the Rules table that bear a name. Other rows, a header among them, are not looked at. */
export function rulesNamed(name: string, table: readonly (readonly Cell[])[]): NamedRules | CellError {
  const found = table.filter((row) => nameOf(row) === plainKey(name));
  if (found.length === 0) return unknownRule(name, table);
  let kind: NumberKind | undefined;
  const rules: SiteRule[] = [];
  for (const row of found) {
    const rule = ruleFrom(row);
    if (isCellError(rule)) return rule;
    if (kind !== undefined && kind !== rule.kind) return invalid(`Rule ${quoted(name)} has limits of two kinds; keep one kind of unit to a rule.`);
    kind = rule.kind;
    rules.push(rule);
  }
  return { kind: kind!, rules };
}

function ruleFrom(row: readonly Cell[]): (SiteRule & { readonly kind: NumberKind }) | CellError {
  const error = row.slice(NAME, IF_NOT_MET + 1).find(isCellError);
  if (error !== undefined) return error;
  const about = `Rule ${quoted(row[NAME]!)}`;
  for (const [column, label] of [[COMPARISON, "comparison"], [LIMIT, "limit"], [UNIT, "unit"], [IF_NOT_MET, "entry under If not met"]] as const) {
    if (isBlank(row[column])) return missing(`${about} has no ${label}.`);
  }
  const comparison = chosen(COMPARISONS, row[COMPARISON]!);
  if (comparison === undefined) return whyRefused(comparisonRule, row[COMPARISON]!, "us", `${about}: comparison`);
  const ifNotMet = chosen(CONSEQUENCES, row[IF_NOT_MET]!);
  if (ifNotMet === undefined) return whyRefused(consequenceRule, row[IF_NOT_MET]!, "us", `${about}: If not met`);
  const unit = UNITS.get(plainKey(String(row[UNIT])));
  if (unit === undefined) return invalid(`${about}: unit must be ${orList([...UNITS.keys()])}; it is ${quoted(row[UNIT]!)}.`);
  const limit = row[LIMIT];
  if (typeof limit !== "number" || !(limit >= 0 && limit < Infinity)) {
    return invalid(`${about}: limit must be a number, 0 or more; it is ${quoted(limit!)}.`);
  }
  return { kind: unit.kind, comparison, limit: toUs(unit.kind, limit, unit.system), ifNotMet };
}

function chosen<Choice extends string>(choices: readonly Choice[], cell: Cell | undefined): Choice | undefined {
  return typeof cell === "string" ? choices.find((each) => each === plainKey(cell)) : undefined;
}

function nameOf(row: readonly Cell[]): string {
  const cell = row[NAME];
  return isBlank(cell) || isCellError(cell) ? "" : plainKey(String(cell));
}

function unknownRule(name: string, table: readonly (readonly Cell[])[]): CellError {
  const isRule = (row: readonly Cell[]) => nameOf(row) !== "" && chosen(COMPARISONS, row[COMPARISON]) !== undefined;
  const names = [...new Set(table.filter(isRule).map((row) => String(row[NAME])))];
  if (names.length === 0) return invalid(`Rule name ${quoted(name)} is not in the Rules table, which holds no rules.`);
  return invalid(`Rule name ${quoted(name)} is not in the Rules table. The nearest are ${orList(nearestKeys(name, names), "and")}.`);
}
