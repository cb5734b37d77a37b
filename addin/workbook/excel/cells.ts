import type { CellValue } from "../port.ts";

/**
 * A value as Excel's `values` takes it, so that it reads back as it was given.
 *
 * Excel reads a text as if somebody typed it: "=1+1" becomes a formula, "1/2" a date, "TRUE" a boolean. A
 * leading apostrophe makes it text and is no part of it. The text format "@" would do so too, but it stays:
 * a formula written into that cell later would be shown and not computed.
 * Words without a digit are left alone, because the apostrophe shows in the formula bar.
 */
export function asTyped(value: CellValue): string | number | boolean {
  if (value === null) return "";
  if (typeof value !== "string" || value === "") return value;
  return PLAIN_WORDS.test(value) && !BOOLEANS.has(value.trim().toUpperCase()) ? value : `'${value}`;
}

const PLAIN_WORDS = /^\p{L}\P{N}*$/u;
const BOOLEANS: ReadonlySet<string> = new Set(["TRUE", "FALSE"]);

/** What Excel's `values` holds, as the port says it. An error is its code in both. */
export function asRead(value: unknown): CellValue {
  if (typeof value === "number" || typeof value === "boolean") return value;
  return typeof value === "string" && value !== "" ? value : null;
}

/**
 * The formula of a cell as somebody would type it, or "".
 *
 * Excel gives a text that starts with "=" back without its apostrophe, so only the value tells it from a formula.
 * Where the add-in was not there when the file was opened, Excel spells our names _xldudf_SOAK_NAME.
 */
export function asFormula(formula: unknown, value: unknown): string {
  if (typeof formula !== "string" || !formula.startsWith("=") || formula === value) return "";
  return formula.replace(/_xldudf_SOAK_([A-Z0-9]+)(?=\()/gi, "SOAK.$1");
}
