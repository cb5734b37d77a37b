import { conversionToUs, fromUs, kinds, type NumberKind, type UnitSystem } from "../../quantities.ts";
import type { ArgumentRule, ValueKind } from "./arguments.ts";
import type { Cell } from "./cell.ts";
import { plainKey, plainWords } from "./typed-words.ts";

/** What a reader answers for a cell it cannot use. Words are found later, and only for rows that need them. */
export const refused: unique symbol = Symbol("refused");

/** The value of one cell in US units, or `refused`. One is built per argument and unit system, never per row. */
export type Reader = (cell: Cell | undefined) => unknown;

export type NumberRule = ArgumentRule & { readonly kind: NumberKind };

export function isNumberKind(kind: ValueKind): kind is NumberKind {
  return kind in kinds;
}

export function isNumberRule(rule: ArgumentRule): rule is NumberRule {
  return isNumberKind(rule.kind);
}

/** A cell of nothing but spaces looks blank, and is. */
export function isBlank(cell: unknown): cell is null | undefined | "" {
  return cell === null || cell === undefined || cell === "" || (typeof cell === "string" && plainWords(cell) === "");
}

export function readerOf(rule: ArgumentRule, system: UnitSystem): Reader {
  if (isNumberRule(rule)) return numberReader(rule, system);
  const read = rule.choices !== undefined ? choiceReader(rule.choices) : rule.kind === "flag" ? readFlag : readText;
  const whenBlank = blankValue(rule);
  return (cell) => (isBlank(cell) ? whenBlank : read(cell));
}

/** Limits in the caller's units, to 12 digits so that 6 in is exactly the 152.4 mm a person types. */
export function limitsOf(rule: NumberRule, system: UnitSystem): { readonly least: number; readonly most: number } {
  const inCallersUnits = (limit: number): number => Number(fromUs(rule.kind, limit, system).toPrecision(12));
  return {
    least: rule.least === undefined ? -Number.MAX_VALUE : inCallersUnits(rule.least),
    most: rule.most === undefined ? Number.MAX_VALUE : inCallersUnits(rule.most),
  };
}

function numberReader(rule: NumberRule, system: UnitSystem): Reader {
  const { least, most } = limitsOf(rule, system);
  const leastExcluded = rule.leastExcluded === true;
  const mostExcluded = rule.mostExcluded === true;
  const isWhole = rule.whole === true;
  const toUs = conversionToUs(rule.kind, system);
  const whenBlank = blankValue(rule);
  return (cell) => {
    if (typeof cell !== "number") return isBlank(cell) ? whenBlank : refused;
    const isPossible =
      (leastExcluded ? cell > least : cell >= least) && (mostExcluded ? cell < most : cell <= most) && !(isWhole && cell % 1 !== 0);
    if (!isPossible) return refused;
    // A spreadsheet can hold minus zero; added to zero it is plain zero, and no arithmetic trips over its sign.
    const inUs = toUs(cell) + 0;
    return inUs <= Number.MAX_VALUE && inUs >= -Number.MAX_VALUE ? inUs : refused;
  };
}

/** What a blank cell stands for. */
export function blankValue(rule: ArgumentRule): unknown {
  return rule.optional ? rule.fallback : refused;
}

function readFlag(cell: Cell): unknown {
  if (typeof cell === "boolean") return cell;
  // Some hosts hand TRUE over as 1, or as the word.
  if (cell === 1 || cell === 0) return cell === 1;
  const word = typeof cell === "string" ? plainKey(cell) : "";
  return word === "true" ? true : word === "false" ? false : refused;
}

function readText(cell: Cell): unknown {
  return typeof cell === "string" ? cell : typeof cell === "number" ? String(cell) : refused;
}

function choiceReader(choices: readonly string[]): Reader {
  const byPlainKey = new Map(choices.map((choice) => [plainKey(choice), choice]));
  return (cell) => (typeof cell === "string" ? (byPlainKey.get(cell) ?? byPlainKey.get(plainKey(cell)) ?? refused) : refused);
}

/** A number that stands where a word might as well. */
export function numberFrom(typed: string): number | undefined {
  const value = typed.trim() === "" ? NaN : Number(typed);
  return Number.isFinite(value) ? value : undefined;
}
