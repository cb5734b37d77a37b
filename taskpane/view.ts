import type { Program, Yard } from "../addin/actions/program/read-program.ts";
import type { Progress } from "../addin/actions/program/progress.ts";
import type { Conflict } from "../addin/actions/program/write-records.ts";
import type { Workbook } from "../addin/workbook/port.ts";

/**
 * What every view of one yard is handed. A view is a named export of its own folder:
 * yard/yard-view.tsx YardView, visits/visits-view.tsx VisitsView,
 * hole-test/hole-test-view.tsx HoleTestView, basin/basin-view.tsx BasinView.
 */
export interface ViewProps {
  readonly program: Program;
  readonly yard: Yard;
  readonly workbook: Workbook;
  /**
   * Runs a write and says `done` in the status line. A conflict is shown in words and the person chooses: their
   * entry is written over it, or the sheet stays as it is. A refusal is shown in its own words.
   * An action that takes long says how far it is.
   * Resolves once the pane has read the workbook again: true when written, so clear the draft then and only then.
   */
  readonly write: (action: (progress: Progress) => Promise<readonly Conflict[]> | Promise<void>, done: string) => Promise<boolean>;
}

/** What the form of a stage is handed besides: who enters it, and the day of the visit. */
export interface VisitProps extends ViewProps {
  readonly by: string;
  /** Null while what is typed for the day is none: it is said beside the field, and nothing may be written. */
  readonly day: number | null;
}

/** What is done on a day that is known. */
export interface DayProps extends VisitProps {
  readonly day: number;
}
