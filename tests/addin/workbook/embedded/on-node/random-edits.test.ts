/** The same as in Excel: whatever people do to rows of typed sheets, Design shows for every yard what its typed cells come to. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { edit, expectDesignRight, fewRows, firstRowOf, sheets, typeRow, type Edit } from "../../../../contract/yard-edits.ts";
import { setUpWithRows } from "../../../../many-yards.ts";
import type { GridOnNode } from "./entry.ts";
import { freshModule } from "./grid-on-node.ts";

let on: GridOnNode;

/** As a person does it, who is on the sheet; sorting is by some column, up or down. */
async function carryOut(one: Edit): Promise<void> {
  const { name } = sheets[one.sheet]!;
  const first = firstRowOf(sheets[one.sheet]!);
  const [column = 0, direction = 0] = one.kind === "sort" ? one.order : [];
  await on.workbook.select({ sheet: name, row: first, column, rows: 1, columns: 1 });
  const sheet = on.grid.workbook().getActiveSheet();
  if (one.kind === "sort") await on.menu(direction % 2 === 0 ? "soakbook.sort-rows-up" : "soakbook.sort-rows-down");
  else if (one.kind === "type") await typeRow(on.workbook, sheets[one.sheet]!, one.row, one.pick);
  else if (one.kind === "insert") sheet.insertRows(first + one.row, 1);
  else sheet.deleteRows(first + one.row, 1);
  await on.workbook.calculated();
}

test("after any edits, insertions, deletions and sorts of every typed sheet Design is right for every yard", async () => {
  const cases = { edits: 0, basins: 0 };
  await fc.assert(
    fc.asyncProperty(fc.array(edit, { minLength: 4, maxLength: 10 }), async (edits) => {
      on = freshModule("grid").startGrid();
      await on.open(async (draft) => {
        await setUpWithRows(draft, fewRows);
        for (const sheet of sheets) for (let row = 0; row < 6; row += 1) await typeRow(draft, sheet, row, row * 17 + 3);
      });
      for (const one of edits) {
        await carryOut(one);
        cases.basins += await expectDesignRight(on.workbook);
        cases.edits += 1;
      }
    }),
    { numRuns: 4 },
  );
  expect(cases.edits).toBeGreaterThan(15);
  expect(cases.basins).toBeGreaterThan(15);
});
