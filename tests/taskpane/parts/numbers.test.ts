import { expect, test } from "vitest";
import { shown } from "../../../taskpane/parts/numbers.ts";
import { quantityWords } from "../../../taskpane/parts/quantity-words.ts";

test("a place a hair below the middle is shown as 0, never as minus 0", () => {
  expect(quantityWords("length", -0.04, "us")).toBe("0 ft");
  expect(shown(-0, 1)).toBe("0");
});

test("a place below the middle keeps its sign", () => {
  expect(quantityWords("length", -2.6, "us")).toBe("-2.6 ft");
  expect(quantityWords("length", -0.06, "us")).toBe("-0.1 ft");
});
