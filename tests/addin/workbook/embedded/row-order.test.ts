import { expect, test } from "vitest";
import { inOrder } from "../../../../addin/workbook/embedded/row-order.ts";
import type { CellValue } from "../../../../addin/workbook/port.ts";

const sorted = (values: readonly CellValue[], isDescending: boolean) =>
  inOrder(
    values.map((value, row) => ({ row, value })),
    isDescending,
  );

const MIXED = ["Y-10", null, 3, "#N/A", "y-2", true, -1, "__proto__", false, null] as const;

test("numbers come first, then texts with their numbers counted, then FALSE and TRUE, then errors, and blanks last", () => {
  expect(sorted(MIXED, false).map(({ value }) => value)).toEqual([-1, 3, "__proto__", "y-2", "Y-10", false, true, "#N/A", null, null]);
});

test("blanks are last when it goes down, too", () => {
  expect(sorted(MIXED, true).map(({ value }) => value)).toEqual(["#N/A", true, false, "Y-10", "y-2", "__proto__", 3, -1, null, null]);
});

test("rows that hold the same keep their order either way, capitals aside", () => {
  const SAME = ["b", "A", "a", "B", "A"];
  expect(sorted(SAME, false).map(({ row }) => row)).toEqual([1, 2, 4, 0, 3]);
  expect(sorted(SAME, true).map(({ row }) => row)).toEqual([0, 3, 1, 2, 4]);
});
