/**
 * Every place where we reach into the grid, in one list. Each entry says in its file what it mends and names the members of
 * the grid that it needs; one that is missing throws by name at the start. Each has a test that fails with it off: those of
 * the engine on Node (`on-node/repairs.test.ts`), what is typed and drawn in a page (`tests/browser/repairs.test.ts`).
 *
 * When the grid's version moves, leave out one after the other and run its test: what passes without is no longer needed.
 */
import type { Injector } from "@univerjs/core";
import { explainErrors, type ErrorWords } from "./alerts.ts";
import { compareBlanksApartFromZero } from "./blanks.ts";
import { calculateInTurn, type EngineIsIdle } from "./calculations.ts";
import { checkOnlyWhatIsOpen } from "./checks.ts";
import { enterDependenciesOnce } from "./dependencies.ts";
import { findTextsByIndex } from "./lookups.ts";
import { keepParsedFormulas, readNamesAnew } from "./parsing.ts";
import { keepSelectedCellInView } from "./scrolling.ts";
import { computeChainsOfSpills } from "./spills.ts";
import { confirmWhatWasTyped } from "./suggestions.ts";
import { keepWhatIsBeingTyped } from "./typing.ts";
import { placeEditorByItsCell } from "./viewport.ts";

/** Made before the grid has a workbook. */
const EARLY = {
  "blanks apart from zero": compareBlanksApartFromZero,
  "texts found by index": findTextsByIndex,
  "parsed formulas kept": keepParsedFormulas,
  "names in a formula read anew": readNamesAnew,
} as const satisfies Record<string, () => void>;

/** Made when the grid's own parts have come to life with its first workbook. */
const WITH_FIRST_WORKBOOK = {
  "dependencies entered once": enterDependenciesOnce,
  "chains of spills": computeChainsOfSpills,
  "selected cell in view": keepSelectedCellInView,
  "editor placed by its cell": placeEditorByItsCell,
  "typing kept": keepWhatIsBeingTyped,
  "Enter takes what was typed": confirmWhatWasTyped,
  "checks of what is open": checkOnlyWhatIsOpen,
} as const satisfies Record<string, (injector: Injector) => void>;

/** These answer something, or ask it. */
type Answering = "calculations in turn" | "errors explained";

export type Repair = keyof typeof EARLY | keyof typeof WITH_FIRST_WORKBOOK | Answering;

export interface RepairsMade {
  /** Resolves when the engine has carried out every calculation that it was asked for. */
  readonly engineIsIdle: EngineIsIdle;
}

export function makeEarlyRepairs(without: ReadonlySet<Repair>): void {
  for (const [name, make] of Object.entries(EARLY)) if (!without.has(name as Repair)) make();
}

export function makeRepairs(
  injector: Injector,
  wordsAt: (sheetId: string, row: number, column: number) => ErrorWords | null,
  without: ReadonlySet<Repair>,
): RepairsMade {
  const engineIsIdle = without.has("calculations in turn") ? () => Promise.resolve() : calculateInTurn(injector);
  for (const [name, make] of Object.entries(WITH_FIRST_WORKBOOK)) if (!without.has(name as Repair)) make(injector);
  if (!without.has("errors explained")) explainErrors(injector, wordsAt);
  return { engineIsIdle };
}
