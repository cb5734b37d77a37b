import { CELL_INVERTED_INDEX_CACHE } from "@univerjs/preset-sheets-core";
import { reach } from "./reach.ts";

type IndexOfCells = Pick<typeof CELL_INVERTED_INDEX_CACHE, "canUseCache" | "set" | "setContinueBuildingCache">;

/**
 * The grid's index of what stands in a column holds 0 and blank as one value, so =A2="" would be TRUE for a measured 0.
 * Without the index every cell is compared by itself, and 0 is not blank. What nobody looks into is not filled either.
 */
export function compareBlanksApartFromZero(): void {
  const index = reach<IndexOfCells>(CELL_INVERTED_INDEX_CACHE, "index of cells", ["canUseCache", "set", "setContinueBuildingCache"]);
  index.canUseCache = () => ({ rowsInCache: [], rowsNotInCache: [] });
  index.set = () => undefined;
  index.setContinueBuildingCache = () => undefined;
}
