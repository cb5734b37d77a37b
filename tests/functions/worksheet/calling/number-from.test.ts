import { expect, test } from "vitest";
import { numberFrom } from "../../../../functions/worksheet/calling/reading.ts";

test("what looks blank is no number, and what reads as one is", () => {
  expect(["", " ", "\t", "\n"].map(numberFrom)).toEqual([undefined, undefined, undefined, undefined]);
  expect(["7.5", " 7.5 ", "1e3", "x", "Infinity"].map(numberFrom)).toEqual([7.5, 7.5, 1000, undefined, undefined]);
});
