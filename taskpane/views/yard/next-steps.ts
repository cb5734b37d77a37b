import type { YardStanding } from "../../../addin/actions/visits/stage-standing.ts";
import { text } from "../../text.ts";
import type { TabId } from "../../tab-ids.ts";
import { yardText } from "./text.ts";

export interface NextStep {
  readonly sentence: string;
  /** The tab where it is done. */
  readonly tab: TabId;
  /** "stop" where going on could do harm. */
  readonly kind: "stop" | "todo";
}

/** The tab where what a stage lacks is put right. */
export const TAB_OF_PLACE = { visits: "visits", "hole tests": "hole-test", basin: "basin", care: "visits" } as const satisfies Record<
  string,
  TabId
>;

/** What is still missing, the most urgent first; empty when the yard is ready. */
export function nextSteps({ yard, stages, next: stageNext }: YardStanding, hasFaults: boolean): readonly NextStep[] {
  const { next } = yardText;
  const stage = (id: string) => stages.find((one) => one.stage.id === id);
  const screening = stage("screening")?.steps ?? [];
  const titles = (verdict: string) => screening.filter((standing) => standing.verdict === verdict).map(({ step }) => step.title);
  const stops = titles("stop");
  const refers = titles("refer");
  const unmeasured = titles("not measured");
  const testVisit = stage("test-visit");
  const lock =
    testVisit?.state === "done" ? [] : (testVisit?.gate.refusals ?? []).filter(({ neverOverridden }) => neverOverridden !== null);
  const tested = typeof yard.design.testedRate === "number";
  const fits = yard.design.status === "fits";
  const steps: (NextStep | false)[] = [
    stops.length > 0 && { kind: "stop", tab: "visits", sentence: next.stopped(stops.join(", ")) },
    yard.surfaces.length === 0 && { kind: "todo", tab: "yard", sentence: next.surfaces },
    unmeasured.length > 0 && { kind: "todo", tab: "visits", sentence: next.screening(unmeasured.length) },
    refers.length > 0 && { kind: "todo", tab: "visits", sentence: next.refer(refers.join(", ")) },
    lock.length > 0 && { kind: "stop", tab: "visits", sentence: next.locked(lock[0]?.sentence ?? "") },
    !tested && yard.holeTests.length === 0 && { kind: "todo", tab: "hole-test", sentence: next.holeTest },
    hasFaults && { kind: "todo", tab: "yard", sentence: next.faults },
    tested && !fits && typeof yard.design.floorArea === "number" && { kind: "todo", tab: "basin", sentence: next.basin(statusWords(yard)) },
    stageNext !== null &&
      !SAID_ABOVE.includes(stageNext.stage) && {
        kind: stageNext.kind === "stop" ? "stop" : "todo",
        tab: TAB_OF_PLACE[stageNext.place],
        sentence: stageNext.sentence,
      },
  ];
  return steps.filter((step) => step !== false);
}

/** Stages whose next thing the lines before say in their own words. */
const SAID_ABOVE: readonly string[] = ["screening", "ticket", "test-visit"];

export function tabName(tab: TabId): string {
  return text.tabs[tab];
}

function statusWords(yard: YardStanding["yard"]): string {
  return typeof yard.design.status === "string" ? yard.design.status : "";
}
