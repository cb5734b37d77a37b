/** What one input of a what-if table takes, one after the other; or why it cannot. */
export type Spread = { readonly values: readonly number[] } | { readonly sentence: string };

/** More would no longer be read by anybody, and the sheet below has to be found again. */
export const MOST_DOWN = 100;
export const MOST_ACROSS = 20;

/** The numbers from one to another by even steps; the last is left out where the steps do not meet it. */
export function spread(label: string, from: number, to: number, step: number, most: number): Spread {
  if (step <= 0) return { sentence: `${label}: Step must be more than 0.` };
  if (from > to) return { sentence: `${label}: From (${from}) must not be above To (${to}). Write the smaller number first.` };
  // A step such as 0.1 is not exact in binary: what misses To by less than a billionth of a step has met it.
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  if (count > most) return { sentence: tooMany(label, count, most) };
  return { values: Array.from({ length: count }, (_, place) => Number((from + place * step).toPrecision(12))) };
}

export function tooMany(label: string, count: number, most: number): string {
  return `${label}: these are ${count.toLocaleString("en-US")} values, and a table takes ${most} there. Take a larger step or a narrower range.`;
}
