import type { Workbook } from "../../workbook/port.ts";

const inners = new WeakMap<Workbook, Workbook>();

/** Remembers which workbook stands behind one whose writes are logged. */
export function standsBefore(logged: Workbook, inner: Workbook): void {
  inners.set(logged, inner);
}

/** The workbook itself, for upkeep that is nobody's change and that an undo must leave alone. */
export function unlogged(workbook: Workbook): Workbook {
  return inners.get(workbook) ?? workbook;
}
