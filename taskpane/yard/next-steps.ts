import type { StageStanding } from "../../addin/actions/screen-yard.ts";
import type { Yard } from "../../addin/actions/read-program.ts";
import { text } from "../text.ts";
import type { TabId } from "../tab-ids.ts";
import { yardText } from "./text.ts";

export interface NextStep {
  readonly sentence: string;
  /** The tab where it is done. */
  readonly tab: TabId;
  /** "stop" where going on could do harm. */
  readonly kind: "stop" | "todo";
}

/** The step that guards against buried lines: nothing is dug before it passes. */
export const TICKET_STEP = "ticket";

/** What is still missing, the most urgent first; empty when the yard is ready. */
export function nextSteps(yard: Yard, screening: StageStanding, hasFaults: boolean): readonly NextStep[] {
  const { next } = yardText;
  const titles = (verdict: string, without?: string) =>
    screening.steps.filter((standing) => standing.verdict === verdict && standing.step.id !== without).map(({ step }) => step.title);
  const ticket = screening.steps.find(({ step }) => step.id === TICKET_STEP);
  const stops = titles("stop", TICKET_STEP);
  const refers = titles("refer");
  const unmeasured = titles("not measured", TICKET_STEP);
  const tested = typeof yard.design.testedRate === "number";
  const fits = yard.design.status === "fits";
  const steps: (NextStep | false)[] = [
    stops.length > 0 && { kind: "stop", tab: "screening", sentence: next.stopped(stops.join(", ")) },
    yard.surfaces.length === 0 && { kind: "todo", tab: "yard", sentence: next.surfaces },
    unmeasured.length > 0 && { kind: "todo", tab: "screening", sentence: next.screening(unmeasured.length) },
    refers.length > 0 && { kind: "todo", tab: "screening", sentence: next.refer(refers.join(", ")) },
    ticket !== undefined && ticket.verdict !== "pass" && { kind: "stop", tab: "screening", sentence: next.ticket },
    !tested && yard.holeTests.length === 0 && { kind: "todo", tab: "hole-test", sentence: next.holeTest },
    hasFaults && { kind: "todo", tab: "yard", sentence: next.faults },
    tested && !fits && typeof yard.design.floorArea === "number" && { kind: "todo", tab: "basin", sentence: next.basin(statusWords(yard)) },
  ];
  return steps.filter((step) => step !== false);
}

export function tabName(tab: TabId): string {
  return text.tabs[tab];
}

function statusWords(yard: Yard): string {
  return typeof yard.design.status === "string" ? yard.design.status : "";
}
