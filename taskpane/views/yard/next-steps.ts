import { NO_OVERRIDE, type StepPlace, type YardStanding } from "../../../addin/actions/visits/stage-standing.ts";
import { text } from "../../text.ts";
import type { TabId } from "../../tab-ids.ts";
import { yardText } from "./text.ts";

export interface NextStep {
  readonly sentence: string;
  /** The tab where it is done. */
  readonly tab: TabId;
  /** "stop" where going on could do harm. */
  readonly kind: "stop" | "todo";
  /** The very step where it is put right, when that is one. */
  readonly at?: StepPlace;
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
  const standingAt = (verdict: string) => screening.filter((standing) => standing.verdict === verdict).map(({ step }) => step);
  const at = ([first]: readonly { readonly id: string }[]): Pick<NextStep, "at"> =>
    first === undefined ? {} : { at: { stage: "screening", step: first.id } };
  const titles = (steps: readonly { readonly title: string }[]) => steps.map(({ title }) => title).join(", ");
  const stops = standingAt("stop");
  const refers = standingAt("refer");
  const unmeasured = standingAt("not measured");
  const testVisit = stage("test-visit");
  const lock =
    testVisit?.state === "done" ? [] : (testVisit?.gate.refusals ?? []).filter(({ neverOverridden }) => neverOverridden === NO_OVERRIDE);
  const tested = typeof yard.design.testedRate === "number";
  const fits = yard.design.status === "fits" || yard.uncounted.length > 0;
  const steps: (NextStep | false)[] = [
    stops.length > 0 && { kind: "stop", tab: "visits", sentence: next.stopped(titles(stops)), ...at(stops) },
    yard.surfaces.length === 0 && { kind: "todo", tab: "yard", sentence: next.surfaces },
    unmeasured.length > 0 && { kind: "todo", tab: "visits", sentence: next.screening(unmeasured.length), ...at(unmeasured) },
    refers.length > 0 && { kind: "todo", tab: "visits", sentence: next.refer(titles(refers)), ...at(refers) },
    lock.length > 0 && { kind: "stop", tab: "visits", sentence: next.locked(lock[0]?.sentence ?? ""), ...atOf(lock[0]) },
    !tested && yard.holeTests.length === 0 && { kind: "todo", tab: "hole-test", sentence: next.holeTest },
    yard.uncounted.length > 0 && { kind: "stop", tab: "yard", sentence: next.uncounted(yard.uncounted[0]?.sentence ?? "") },
    hasFaults && { kind: "todo", tab: "yard", sentence: next.faults },
    tested && !fits && typeof yard.design.floorArea === "number" && { kind: "todo", tab: "basin", sentence: next.basin(statusWords(yard)) },
    stageNext !== null &&
      !SAID_ABOVE.includes(stageNext.stage) && {
        kind: stageNext.kind === "stop" ? "stop" : "todo",
        tab: TAB_OF_PLACE[stageNext.place],
        sentence: stageNext.sentence,
        ...atOf(stageNext),
      },
  ];
  return steps.filter((step) => step !== false);
}

function atOf(one: Pick<NextStep, "at"> | undefined): Pick<NextStep, "at"> {
  return one?.at === undefined ? {} : { at: one.at };
}

/** Stages whose next thing the lines before say in their own words. */
const SAID_ABOVE: readonly string[] = ["screening", "ticket", "test-visit"];

export function tabName(tab: TabId): string {
  return text.tabs[tab];
}

function statusWords(yard: YardStanding["yard"]): string {
  return typeof yard.design.status === "string" ? yard.design.status : "";
}
