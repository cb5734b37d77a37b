import type { MarkingService } from "../records/one-call-rules/marking-service.ts";
import type { Verdict } from "../records/visits.ts";

/** A visit stage as data: the pane walks it, the workbook keeps its answers. */
export interface Stage {
  readonly id: StageId;
  readonly name: string;
  readonly purpose: string;
  readonly reminders: readonly Reminder[];
  readonly steps: readonly Step[];
  /** The step whose new answer begins the stage anew: what was answered before it no longer counts. */
  readonly beginsWith?: string;
  /** A step for each name that the answer to a list step holds. */
  readonly eachOf?: { readonly list: string; readonly step: (name: string) => Step };
}

/** In the order of the work. Kept in the workbook: never renamed once released. */
export const STAGE_IDS = [
  "enquiry",
  "screening",
  "ticket",
  "test-visit",
  "design-check",
  "agreement",
  "pre-dig",
  "dig-day",
  "planting",
  "as-built",
  "week",
  "month",
  "year",
] as const;
export type StageId = (typeof STAGE_IDS)[number];

/** A usual caution, in our own words. Local codes and licensed practice stand above it. */
export interface Reminder {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** What is said in its place where the yard is in the US. */
  readonly inUs?: (service: MarkingService) => string;
}

/** What a reminder says in a yard whose lines that service has marked. */
export function reminderWords({ text, inUs }: Reminder, service: MarkingService): string {
  return service.isInUs && inUs !== undefined ? inUs(service) : text;
}

export interface Step {
  /** Kept in the workbook, and used by one stage alone: never renamed once released. */
  readonly id: string;
  readonly title: string;
  readonly ask: string;
  readonly why: string;
  readonly answer: Answer;
  /** Left blank, it keeps no stage from being finished. */
  readonly optional?: boolean;
  /** The version of the checklist that it came with, where that is a later one: see checklist-version.ts. */
  readonly since?: number;
  /** Asked only where another step of the stage was answered so. */
  readonly onlyIf?: { readonly step: string; readonly said: string };
}

/** A step, and the stage whose step it is. */
export interface StepPlace {
  readonly stage: StageId;
  readonly step: string;
}

export type Answer = MeasuredAnswer | SlopeAnswer | ChosenAnswer | TextAnswer | DateAnswer | NumberAnswer;

/** A tape or rule reading, held against a row of the Rules sheet. */
export interface MeasuredAnswer {
  readonly kind: "measured";
  readonly quantity: "length" | "depth";
  readonly rule: string;
  /** What to say when there is nothing to measure to; a pass. */
  readonly orNone?: string;
  /** What to say when a later visit will show it; it holds nothing up until then. */
  readonly orLater?: string;
}

/** Drop and run of a level string, kept on Sites; the percent is held against a row of the Rules sheet. */
export interface SlopeAnswer {
  readonly kind: "slope";
  readonly rule: string;
}

export interface ChosenAnswer {
  readonly kind: "chosen";
  readonly options: readonly ChosenOption[];
}

export interface ChosenOption {
  readonly says: string;
  readonly verdict: Verdict;
}

/** A name, a number on a form, a list with commas. On record, and judged by nobody. */
export interface TextAnswer {
  readonly kind: "text";
}

/** A calendar day, kept as "2026-05-04"; with its hour, where that is asked too, as "2026-05-04 at 07:00". */
export interface DateAnswer {
  readonly kind: "date";
  readonly hour?: "asked" | "if known";
}

/** A reading or a count that no row of the Rules sheet judges; its unit goes with the yard's units. */
export interface NumberAnswer {
  readonly kind: "number";
  readonly unit: { readonly us: string; readonly metric: string };
  readonly atLeast?: number;
  readonly atMost?: number;
}

/** The worst answer decides; one unmeasured step keeps the whole from passing. */
export function stageVerdict(verdicts: readonly Verdict[]): Verdict {
  for (const worst of ["stop", "fail", "refer", "watch", "not measured"] as const) {
    if (verdicts.includes(worst)) return worst;
  }
  return verdicts.length === 0 ? "not measured" : "pass";
}

export function chosen(...options: readonly (readonly [says: string, verdict: Verdict])[]): ChosenAnswer {
  return { kind: "chosen", options: options.map(([says, verdict]) => ({ says, verdict })) };
}

export function counted(
  us: string,
  metric = us,
  limits: { readonly atLeast?: number; readonly atMost?: number } = { atLeast: 0 },
): NumberAnswer {
  return { kind: "number", unit: { us, metric }, ...limits };
}

/** The names in a list as typed: commas, semicolons or line breaks between them, each once. */
export function namesIn(list: string): readonly string[] {
  const names = list
    .split(/[,;\n\r]+/)
    .map((name) => name.trim())
    .filter((name) => name !== "");
  return names.filter((name, place) => names.findIndex((earlier) => earlier.toLowerCase() === name.toLowerCase()) === place);
}
