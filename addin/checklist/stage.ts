import type { Verdict } from "../records/visits.ts";

/** A visit stage as data: the pane walks it, the workbook keeps its answers. */
export interface Stage {
  readonly id: string;
  readonly name: string;
  readonly purpose: string;
  readonly reminders: readonly Reminder[];
  readonly steps: readonly Step[];
}

/** A usual caution, in our own words. Local codes and licensed practice stand above it. */
export interface Reminder {
  readonly id: string;
  readonly title: string;
  readonly text: string;
}

export interface Step {
  /** Kept in the workbook: never renamed once released. */
  readonly id: string;
  readonly title: string;
  readonly ask: string;
  readonly why: string;
  readonly answer: MeasuredAnswer | SlopeAnswer | ChosenAnswer;
}

/** A tape or rule reading, held against a row of the Rules sheet. */
export interface MeasuredAnswer {
  readonly kind: "measured";
  readonly quantity: "length" | "depth";
  readonly rule: string;
  /** What to say when there is nothing to measure to; a pass. */
  readonly orNone?: string;
}

/** Drop and run of a level string, kept on Sites; the percent is held against a row of the Rules sheet. */
export interface SlopeAnswer {
  readonly kind: "slope";
  readonly rule: string;
}

export interface ChosenAnswer {
  readonly kind: "chosen";
  readonly options: readonly { readonly says: string; readonly verdict: Verdict }[];
}

/** The worst answer decides; one unmeasured step keeps the whole from passing. */
export function stageVerdict(verdicts: readonly Verdict[]): Verdict {
  for (const worst of ["stop", "refer", "not measured"] as const) {
    if (verdicts.includes(worst)) return worst;
  }
  return verdicts.length === 0 ? "not measured" : "pass";
}
