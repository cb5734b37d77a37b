import { unitOf, type UnitSystem } from "../../quantities.ts";
import type { ArgumentRule } from "./arguments.ts";
import { invalid, missing, type Cell, type CellError } from "./cell.ts";
import { nearestKeys } from "./nearest-keys.ts";
import { isNumberRule, limitsOf, type NumberRule } from "./reading.ts";
import { limitInWords } from "./speaker.ts";

/** The vocabulary of refusals: each names the argument as the user sees it and the rule, and ends in a full stop. */

export function isMissing(label: string): CellError {
  return missing(`${label} is missing.`);
}

export function cannotBroadcast(first: string, firstSize: string, second: string, secondSize: string): CellError {
  return invalid(`${first} (${firstSize}) and ${second} (${secondSize}) do not line up: give them the same size, or a single cell.`);
}

export function mustBeCellOrColumn(label: string, size: string): CellError {
  return invalid(`${label} must be a single cell or a column; it is ${size}.`);
}

export function mustBeSingleCell(label: string, size: string): CellError {
  return invalid(`${label} must be a single cell; it is ${size}.`);
}

export function isTooLarge(label: string): CellError {
  return invalid(`${label} is too large to compute.`);
}

/** For an answer that got lost between numbers no arithmetic can hold together. */
export function areTooExtreme(): CellError {
  return invalid("These numbers are too large or too small to compute with.");
}

/** Our own bug: never put as the user's mistake. */
export function couldNotCompute(name: string): CellError {
  return invalid(`SOAK.${name} could not be computed. This is a fault in Soakbook, not in your sheet: please report it.`);
}

/** Why a reader of this rule refuses a cell that is neither blank nor an error. */
export function whyRefused(rule: ArgumentRule, cell: Cell, system: UnitSystem, label: string): CellError {
  if (isNumberRule(rule)) return invalid(whyNotNumber(rule, cell, system, label));
  if (rule.choices !== undefined) return invalid(whyNotChoice(rule.choices, cell, label));
  if (rule.kind === "flag") return invalid(`${label} must be TRUE or FALSE; it is ${quoted(cell)}.`);
  return invalid(`${label} must be text; it is ${quoted(cell)}.`);
}

function whyNotNumber(rule: NumberRule, cell: Cell, system: UnitSystem, label: string): string {
  if (rule.isDate === true)
    return `${label} must be a date${typeof cell === "string" ? `; it is the text ${quoted(cell)}. Type the date again` : " from March 1, 1900 on"}.`;
  if (typeof cell !== "number") return `${label} must be a number; it is ${typeof cell === "string" ? "the text " : ""}${quoted(cell)}.`;
  if (Number.isNaN(cell)) return `${label} must be a number.`;
  const { least, most } = limitsOf(rule, system);
  const unit = unitOf(rule.kind, system);
  if (rule.least !== undefined && (rule.leastExcluded === true ? cell <= least : cell < least)) {
    const limit = limitInWords(least, unit);
    return `${label} must be ${rule.leastExcluded === true ? `more than ${limit}` : `${limit} or more`}.`;
  }
  if (rule.most !== undefined && (rule.mostExcluded === true ? cell >= most : cell > most)) {
    const limit = limitInWords(most, unit);
    return `${label} must be ${rule.mostExcluded === true ? `less than ${limit}` : `${limit} or less`}.`;
  }
  return rule.whole === true && Number.isFinite(cell) ? `${label} must be a whole number.` : isTooLarge(label).sentence;
}

function whyNotChoice(choices: readonly string[], cell: Cell, label: string): string {
  if (choices.length <= 4) return `${label} must be ${orList(choices)}; it is ${quoted(cell)}.`;
  return `${label} ${quoted(cell)} is not in its list. The nearest are ${orList(nearestKeys(String(cell), choices), "and")}.`;
}

/** `"a", "b" or "c"`. */
export function orList(keys: readonly string[], conjunction: "or" | "and" = "or"): string {
  const inQuotes = keys.map((key) => `"${key}"`);
  const allButLast = inQuotes.slice(0, -1).join(", ");
  return allButLast === "" ? inQuotes.join("") : `${allButLast} ${conjunction} ${inQuotes.slice(-1).join("")}`;
}

/** A cell's content in a sentence: text in quotes and cut short, TRUE and FALSE as a cell shows them. */
export function quoted(cell: Cell): string {
  if (typeof cell === "string") return `"${cell.length > LONGEST_QUOTE ? `${cell.slice(0, LONGEST_QUOTE - 1)}…` : cell}"`;
  return String(cell).toUpperCase();
}

const LONGEST_QUOTE = 40;
