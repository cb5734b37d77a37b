import type { Injector } from "@univerjs/core";
import { IDependencyManagerService } from "@univerjs/preset-sheets-core";
import { reach } from "./reach.ts";

interface ReadRange {
  readonly sheetId: string;
  readonly range: { readonly startRow: number; readonly endRow: number; readonly startColumn: number; readonly endColumn: number };
}

/** A formula and the ranges it reads. */
interface ReadingFormula {
  readonly treeId: number;
  readonly rangeList: readonly ReadRange[];
}

/** The parts of the grid's dependency manager that keep which formula reads which range. */
interface Dependencies {
  addDependencyRTreeCache(formula: ReadingFormula): void;
  _removeDependencyRTreeCache(treeId: number | null | undefined): void;
  _removeDependencyRTreeCacheById(unitId: string, sheetId: string): void;
  reset(): void;
}

/**
 * The grid enters every range that any formula reads into its index again with each look at the formulas, and finds each
 * as often as it was entered: the page would grow slower with every edit. Here a formula is entered once.
 */
export function enterDependenciesOnce(injector: Injector): void {
  const dependencies = reach<Dependencies>(injector.get(IDependencyManagerService), "dependencies", [
    "addDependencyRTreeCache",
    "_removeDependencyRTreeCache",
    "_removeDependencyRTreeCacheById",
    "reset",
  ]);
  const enter = dependencies.addDependencyRTreeCache.bind(dependencies);
  const remove = dependencies._removeDependencyRTreeCache.bind(dependencies);
  const removeSheet = dependencies._removeDependencyRTreeCacheById.bind(dependencies);
  const reset = dependencies.reset.bind(dependencies);
  const entered = new Map<number, string>();
  dependencies.addDependencyRTreeCache = (formula) => {
    const ranges = formula.rangeList
      .map(({ sheetId, range }) => `${sheetId} ${range.startRow} ${range.endRow} ${range.startColumn} ${range.endColumn}`)
      .join();
    if (entered.get(formula.treeId) === ranges) return;
    enter(formula);
    entered.set(formula.treeId, ranges);
  };
  dependencies._removeDependencyRTreeCache = (treeId) => {
    remove(treeId);
    if (treeId !== null && treeId !== undefined) entered.delete(treeId);
  };
  // What other sheets' formulas read on the sheet goes with it.
  dependencies._removeDependencyRTreeCacheById = (unitId, sheetId) => {
    removeSheet(unitId, sheetId);
    entered.clear();
  };
  dependencies.reset = () => {
    reset();
    entered.clear();
  };
}
