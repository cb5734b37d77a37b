import { toUs, type NumberKind, type UnitSystem } from "../quantities.ts";
import type { Comparison, Consequence, SiteRule } from "../siting/site-check.ts";
import { choice } from "./calling/arguments.ts";
import { invalid, isCellError, missing, type Cell, type CellError } from "./calling/cell.ts";
import { nearestKeys } from "./calling/nearest-keys.ts";
import { keyAmong, plainKey } from "./calling/typed-words.ts";
import { isBlank } from "./calling/reading.ts";
import { orList, quoted, whyRefused } from "./calling/sentences.ts";
import { RowsByName, type Table } from "./rows-by-name.ts";

/** The rules of one name, with what kind of value they judge. Limits are in the kind's US unit. */
export interface NamedRules {
  readonly kind: NumberKind;
  readonly rules: readonly SiteRule[];
}

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
export function rulesNamed(name: string, table: Table): NamedRules | CellError {
  const rows = ruleRows.named(name, table).map(rowFrom);
  let kind: NumberKind | undefined;
  const rules: SiteRule[] = [];
  for (const row of rows) {
    const rule = ruleFrom(row);
    if (isCellError(rule)) return rule;
    if (kind !== undefined && kind !== rule.kind)
      return invalid(`Rule ${quoted(name)} has limits of two kinds; keep one kind of unit to a rule.`);
    kind = rule.kind;
    rules.push(rule);
  }
  return kind === undefined ? unknownRule(name, ruleRows.names(table)) : { kind, rules };
}

/** A row of the Rules table, in the order of its columns. Source and the date it was checked follow, and are for people. */
interface RuleRow {
  readonly name: Cell;
  readonly comparison: Cell;
  readonly limit: Cell;
  readonly unit: Cell;
  readonly ifNotMet: Cell;
}

function rowFrom([name = null, comparison = null, limit = null, unit = null, ifNotMet = null]: readonly Cell[]): RuleRow {
  return { name, comparison, limit, unit, ifNotMet };
}

function ruleFrom(row: RuleRow): (SiteRule & { readonly kind: NumberKind }) | CellError {
  const error = Object.values(row).find(isCellError);
  if (error !== undefined) return error;
  const about = `Rule ${quoted(row.name)}`;
  for (const [column, label] of NEEDED) if (isBlank(row[column])) return missing(`${about} has no ${label}.`);
  const comparison = chosen(COMPARISONS, row.comparison);
  if (comparison === undefined) return whyRefused(comparisonRule, row.comparison, "us", `${about}: comparison`);
  const ifNotMet = chosen(CONSEQUENCES, row.ifNotMet);
  if (ifNotMet === undefined) return whyRefused(consequenceRule, row.ifNotMet, "us", `${about}: If not met`);
  const unit = UNITS.get(plainKey(String(row.unit)));
  if (unit === undefined) return invalid(`${about}: unit must be ${orList([...UNITS.keys()])}; it is ${quoted(row.unit)}.`);
  const { limit } = row;
  if (typeof limit !== "number" || !(limit >= 0 && limit < Infinity)) {
    return invalid(`${about}: limit must be a number, 0 or more; it is ${quoted(limit)}.`);
  }
  return { kind: unit.kind, comparison, limit: toUs(unit.kind, limit, unit.system), ifNotMet };
}

const NEEDED = [
  ["comparison", "comparison"],
  ["limit", "limit"],
  ["unit", "unit"],
  ["ifNotMet", "entry under If not met"],
] as const;

function chosen<Choice extends string>(choices: readonly Choice[], cell: Cell): Choice | undefined {
  return typeof cell === "string" ? keyAmong(choices, cell) : undefined;
}

const ruleRows = new RowsByName((row) => chosen(COMPARISONS, rowFrom(row).comparison) !== undefined);

function unknownRule(name: string, names: readonly string[]): CellError {
  if (names.length === 0) return invalid(`Rule name ${quoted(name)} is not in the Rules table, which holds no rules.`);
  return invalid(`Rule name ${quoted(name)} is not in the Rules table. The nearest are ${orList(nearestKeys(name, names), "and")}.`);
}
