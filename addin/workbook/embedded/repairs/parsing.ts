import { FORMULA_REF_TO_ARRAY_CACHE } from "@univerjs/preset-sheets-core";
import { reach } from "./reach.ts";

/** What the grid keeps by a formula's text; it has one of these for parsed formulas too. */
interface KeptByText {
  readonly _cache: { limit: number; set(text: string, kept: unknown): void };
  set(text: string, kept: unknown): void;
  _hash(text: string): string;
}

const LIMIT_OF_PARSED_FORMULAS = 5000;
/** A program of two thousand yards has this many formulas. */
const ENOUGH_FORMULAS = 50_000;

/**
 * The grid keeps five thousand parsed formulas, and with more than that it parses every formula anew for each look at
 * them. It also keeps a long formula under a number of 32 bits made from it, so that of many thousand formulas two may
 * be taken for one: here each is kept under its own text.
 */
export function keepParsedFormulas(): void {
  const kept = reach<KeptByText>(Object.getPrototypeOf(FORMULA_REF_TO_ARRAY_CACHE) as object, "store of parsed formulas", ["set", "_hash"]);
  kept._hash = (text) => text;
  kept.set = function (this: KeptByText, text, value) {
    if (this._cache.limit === LIMIT_OF_PARSED_FORMULAS) this._cache.limit = ENOUGH_FORMULAS;
    this._cache.set(text, value);
  };
}
