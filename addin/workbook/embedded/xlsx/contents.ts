import { holdsSomething } from "../cells.ts";
import type { EmbeddedGrid } from "../embedded-grid.ts";
import { formulasIn, valuesIn } from "../read-cells.ts";
import type { SheetContents } from "./xlsx-file.ts";

/** All that the sheets of the open workbook hold, answers and spills included, for a file that others read. */
export function contentsOf(grid: EmbeddedGrid): readonly SheetContents[] {
  return grid
    .workbook()
    .getSheets()
    .map((sheet) => {
      const id = sheet.getSheetId();
      // A formula whose answer is blank shows nothing, and belongs to the file all the same.
      const extent = grid.extentOf(id, (cell) => cell?.f != null || cell?.si != null || holdsSomething(cell));
      const block = { row: 0, column: 0, ...extent };
      return {
        name: sheet.getSheetName(),
        values: valuesIn(grid, id, block),
        formulas: formulasIn(grid, id, block),
        spills: grid.spillsOf(id),
      };
    });
}
