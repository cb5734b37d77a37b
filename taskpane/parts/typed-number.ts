import type { CellValue } from "../../addin/workbook/port.ts";
import { LARGEST_NUMBER } from "../../functions/quantities.ts";

/** What a typed number must satisfy. The label is the field's own, so that the sentence names what the person sees. */
export interface NumberRule {
  readonly label: string;
  readonly required?: boolean;
  readonly atLeast?: number;
  readonly moreThan?: number;
  readonly atMost?: number;
}

/** A blank is null and never 0; anything that is not plainly one number is refused in words. */
export type TypedNumber = { readonly value: number | null } | { readonly sentence: string };

export function isRefused(typed: TypedNumber): typed is { readonly sentence: string } {
  return "sentence" in typed;
}

/** Reads what was typed, without guessing: units, fractions and decimal commas are said back, not interpreted. */
export function readTypedNumber(text: string, rule: NumberRule): TypedNumber {
  const typed = text.trim();
  if (typed === "") return rule.required === true ? { sentence: `${rule.label} is missing.` } : { value: null };
  if (!PLAIN_NUMBER.test(typed)) return { sentence: whyNotANumber(typed, rule.label) };
  const value = Number(typed);
  if (rule.moreThan !== undefined && value <= rule.moreThan) return { sentence: `${rule.label} must be more than ${rule.moreThan}.` };
  if (rule.atLeast !== undefined && value < rule.atLeast) return { sentence: `${rule.label} must be ${rule.atLeast} or more.` };
  if (rule.atMost !== undefined && value > rule.atMost) return { sentence: `${rule.label} must be ${rule.atMost} or less.` };
  if (Math.abs(value) > LARGEST_NUMBER) return { sentence: `${rule.label} is too large to be true.` };
  return { value };
}

/** A cell as a field shows it for editing: the very text, or the number in full. */
export function asTyped(cell: CellValue): string {
  return cell === null ? "" : String(cell);
}

const PLAIN_NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

function whyNotANumber(typed: string, label: string): string {
  const shown = `"${typed.slice(0, 40)}"`;
  if (/^[+-]?\d+(,\d+)+(\.\d*)?$/.test(typed)) return `${label} must be a number without a comma, such as 1.5 or 1200; it is ${shown}.`;
  if (/\d\s*\/\s*\d/.test(typed)) return `${label} must be a number, not a fraction: write 0.5 for 1/2; it is ${shown}.`;
  if (/^[+-]?[\d.]+\s*[^\d\s.]/.test(typed)) return `${label} must be a number alone, in the unit shown; it is ${shown}.`;
  return `${label} must be a number; it is the text ${shown}.`;
}
