import fc from "fast-check";

/** Numbers as people measure and type them, to a thousandth, the ends included. */
export function measured(least: number, most: number): fc.Arbitrary<number> {
  return fc.integer({ min: Math.round(least * 1000), max: Math.round(most * 1000) }).map((thousandths) => thousandths / 1000);
}
