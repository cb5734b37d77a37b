/** What stands in a depth cell: a depth, a trace, or no measurement. */
export type WrittenDepth =
  | { readonly kind: "depth"; readonly depth: number }
  | { readonly kind: "trace" }
  /** Nothing, or a code that gauges write where they measured nothing. */
  | { readonly kind: "not measured"; readonly code: string }
  | { readonly kind: "unreadable" };

export type DecimalMark = "." | ",";

const TRACE = /^(?:t|tr|trace)$|^0*(?:[.,]0+)?\s*t$/i;
const NO_MEASUREMENT = new Set(["", "-", "--", "---", "m", "na", "n/a", "#n/a", "nan", "null", "none", "missing", "msg"]);
/** Nines and -9999 in its many forms: common practice, no source. No gauge has seen 999 of any unit in a day. */
const CODE = /^(?:-9{2,5}|9{3,5})(?:[.,][90]*)?$/;
const PLAIN = { ".": /^\+?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i, ",": /^\+?(?:\d+,?\d*|,\d+)(?:e[+-]?\d+)?$/i } as const;

export function readDepth(words: string, mark: DecimalMark): WrittenDepth {
  if (NO_MEASUREMENT.has(words.toLowerCase()) || CODE.test(words)) return { kind: "not measured", code: words };
  if (TRACE.test(words)) return { kind: "trace" };
  return PLAIN[mark].test(words) ? { kind: "depth", depth: Number(words.replace(",", ".")) } : { kind: "unreadable" };
}

/** A comma is the decimal mark where some depth has one and none has a point. */
export function decimalMarkOf(depths: readonly string[]): DecimalMark {
  const has = (mark: DecimalMark) => depths.some((words) => words.includes(mark) && PLAIN[mark].test(words));
  return has(",") && !has(".") ? "," : ".";
}
