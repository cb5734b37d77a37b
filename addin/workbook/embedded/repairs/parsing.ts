import { FORMULA_REF_TO_ARRAY_CACHE, LexerNode } from "@univerjs/preset-sheets-core";
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
  const kept = store();
  kept._hash = (text) => text;
  kept.set = function (this: KeptByText, text, value) {
    if (this._cache.limit === LIMIT_OF_PARSED_FORMULAS) this._cache.limit = ENOUGH_FORMULAS;
    this._cache.set(text, value);
  };
}

const NAMES_SOMETHING = /\b(LET|LAMBDA)\(/i;

/**
 * The grid keeps the words of a formula by its text alone, and what parses them writes into them for what LET and LAMBDA
 * name. Parsed a second time, as in the next workbook that is opened, such a formula finds the names of the first time, and
 * shows #N/A: its words are not kept.
 */
export function readNamesAnew(): void {
  const kept = store();
  const keep = kept.set;
  kept.set = function (this: KeptByText, text, value) {
    if (!(value instanceof LexerNode && NAMES_SOMETHING.test(text))) keep.call(this, text, value);
  };
}

function store(): KeptByText {
  return reach<KeptByText>(Object.getPrototypeOf(FORMULA_REF_TO_ARRAY_CACHE) as object, "store of parsed formulas", ["set", "_hash"]);
}
