import type { Workbook } from "../../workbook/port.ts";
import type { CellHistory } from "./held.ts";

/** What stands behind a workbook whose writes are logged. */
export interface BehindLog {
  readonly inner: Workbook;
  /** Puts on the log what is about to be written past it; the answer is its number, null where nothing changes. */
  readonly logAhead: (cells: readonly CellHistory[]) => Promise<number | null>;
  /** What was logged ahead has been taken back. */
  readonly nothingWritten: () => void;
}

const behind = new WeakMap<Workbook, BehindLog>();

export function standsBefore(logged: Workbook, what: BehindLog): void {
  behind.set(logged, what);
}

/** Null for a workbook whose writes are not logged. */
export function behindLog(workbook: Workbook): BehindLog | null {
  return behind.get(workbook) ?? null;
}

/** The workbook itself, for upkeep that is nobody's change and that an undo must leave alone. */
export function unlogged(workbook: Workbook): Workbook {
  return behind.get(workbook)?.inner ?? workbook;
}
