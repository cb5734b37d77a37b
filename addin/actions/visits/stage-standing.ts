import { NOT_ALL_COUNTED } from "../../../functions/worksheet/design-status.ts";
import { isCellError, type CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { rulesNamed } from "../../../functions/worksheet/site-rules.ts";
import { siteCheck } from "../../../functions/worksheet/siting.ts";
import { speakers } from "../../../functions/worksheet/calling/speaker.ts";
import type { NumberKind } from "../../../functions/quantities.ts";
import { answersInForce, says, stepsOf } from "../../checklist/answers.ts";
import { digDay } from "../../checklist/dig-day.ts";
import { gateInto, type Gate, type YardFacts } from "../../checklist/gates.ts";
import type { Override } from "../../checklist/overrides.ts";
import { screeningVisit, WATER_LEFT_TO_THE_HOLE } from "../../checklist/screening-visit.ts";
import { stageVerdict, type Stage, type StageId, type Step, type StepPlace } from "../../checklist/stage.ts";
import { stageNamed, stages } from "../../checklist/stages.ts";
import { judged, type JudgedBy, type StepVerdict } from "../../checklist/verdicts.ts";
import type { FollowUpKind } from "../../records/follow-ups.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { Verdict, VisitAnswerRow } from "../../records/visits.ts";
import { addressOf, isErrorCode } from "../../workbook/port.ts";
import { DECIDED_AT_STEP } from "../../checklist/decisions.ts";
import { contradictionsOf } from "./contradictions.ts";
import { checkRule, TESTED_RATE_RULE } from "./check-rule.ts";
import { asCell, ruleTable, type RuleTable } from "./rule-table.ts";
import { isoDate } from "../dates.ts";
import { openFollowUps } from "../care/due-follow-ups.ts";
import type { Program, Yard } from "../program/read-program.ts";

/** A visit stage as it stands for one yard. */
export interface StageStanding {
  readonly stage: Stage;
  readonly verdict: Verdict;
  readonly steps: readonly StepStanding[];
}

/**
 * "locked": nothing is begun and the gate is shut. "stopped": begun, and something in it says stop. "ask": all is answered,
 * and somebody has to decide on what refers.
 */
export type StageState = "locked" | "ready" | "begun" | "ask" | "stopped" | "done";

export interface StageOfYard extends StageStanding {
  readonly state: StageState;
  readonly gate: Gate;
  /** What the stage needs on other sheets before it is done, as sentences. */
  readonly missing: readonly Missing[];
}

/** Where a missing thing is put right. */
export type Place = "visits" | "hole tests" | "basin" | "care";

export interface Missing {
  readonly sentence: string;
  readonly place: Place;
  /** The very step where it is put right, when that is one. */
  readonly at?: StepPlace;
}

export interface NextThing extends Missing {
  readonly stage: StageId;
  /** "stop" where going on could do harm, "ask" where somebody must decide, "wait" where only time helps. */
  readonly kind: "stop" | "ask" | "wait" | "todo";
}

/** Where a yard stands, stage by stage, and what is next. */
export interface YardStanding {
  readonly yard: Yard;
  readonly stages: readonly StageOfYard[];
  /** The first stage that is not done; the last one when all are. */
  readonly current: StageOfYard;
  /** Null when nothing is left to do until the next look is due. */
  readonly next: NextThing | null;
  readonly overrides: readonly Override[];
}

export interface StepStanding {
  readonly step: Step;
  /** The newest answer, or null when the step was never answered. */
  readonly answer: VisitAnswerRow | null;
  /** What the answer comes to, once decided on or answered for by name. */
  readonly verdict: Verdict;
  readonly decision: StepVerdict["decision"];
  readonly override: StepVerdict["override"];
  /** The limits of the Rules sheet that bear on the answer, in the order of the sheet. */
  readonly rules: readonly RuleInForce[];
  /** Why an answer cannot be judged, when it cannot. */
  readonly fault: string | null;
}

export interface RuleInForce {
  readonly comparison: "at least" | "at most";
  /** In the yard's units, rounded so that what is printed still holds: "10 ft", "3.05 m", "12 %". */
  readonly limit: string;
  readonly ifNotMet: "refer" | "stop";
}

export function stageStanding(
  program: Program,
  yard: Yard,
  stage: Stage,
  by: JudgedBy = { visits: yard.visits, contradictions: contradictionsOf(program, yard) },
): StageStanding {
  const rules = ruleTable(program.rules);
  const answers = answersInForce(stage, yard.visits);
  const steps = stepsOf(stage, answers, program.checklist).map((step) => standingOf(rules, yard, step, answers.get(step.id) ?? null, by));
  return { stage, steps, verdict: stageVerdict(steps.map(({ verdict }) => verdict)) };
}

export function screeningOf(program: Program, yard: Yard): StageStanding {
  return stageStanding(program, yard, screeningVisit);
}

/** `minutes` of today that have passed count on the first lawful day; without them the day is looked at as a whole. */
export function yardStanding(program: Program, yard: Yard, today: number, minutes?: number): YardStanding {
  const facts = factsOf(program, yard, today, minutes);
  const standings = stages.map((stage) => stageOfYard(program, yard, stage, facts));
  const last = standings.findLastIndex(({ state }) => state !== "locked" && state !== "ready");
  // An early stage of which nothing is on record was passed over before this workbook began; its gates still ask for it.
  const current = standings.find(({ state }, place) => state !== "done" && (isUnderWay(state) || place > last)) ?? standings.at(-1);
  if (current === undefined) throw new Error("There are no stages.");
  const overrides = standings.flatMap(({ gate }) => gate.refusals.flatMap(({ override }) => (override === null ? [] : [override])));
  return {
    yard,
    stages: standings,
    current,
    next: nextThing(current, yard, today),
    overrides: overrides.filter(({ row }, place) => overrides.findIndex((one) => one.row === row) === place),
  };
}

/** The planned look that a stage is, by its row of Follow-ups; null for any other stage. */
function lookOfStage(stage: StageId, { followUps }: Yard): { readonly due: number | null; readonly sentence: string } | null {
  const kinds: readonly string[] = LOOKS[stage] ?? [];
  if (kinds.length === 0) return null;
  const planned = openFollowUps(followUps).filter(({ record }) => kinds.includes(record.kind ?? ""));
  const due = planned.map(({ record }) => record.due).find((day) => day !== null) ?? null;
  const { name } = stageNamed(stage);
  if (planned.length === 0) return { due, sentence: `${name}: no look is planned. Plan the follow-ups.` };
  return {
    due,
    sentence: due === null ? `${name}: the look has no day. Give it one on Follow-ups.` : `${name}: the look is due on ${isoDate(due)}.`,
  };
}

const LOOKS: Partial<Record<StageId, readonly FollowUpKind[]>> = { week: ["1 week"], month: ["1 month"], year: ["1 year", "yearly"] };

/** What the gates ask of a yard, from its records and the Design sheet. */
export function factsOf(program: Program, yard: Yard, today: number, minutes?: number): YardFacts {
  const { testedRate } = yard.design;
  const rate = typeof testedRate === "number" ? testedRate : null;
  return {
    visits: yard.visits,
    contradictions: contradictionsOf(program, yard),
    checklist: program.checklist,
    today,
    ...(minutes === undefined ? {} : { minutes }),
    tested: rate !== null,
    rateVerdict: checkRule(TESTED_RATE_RULE, rate, program.rules, yard.units).verdict,
    basinStatus: basinStatusOf(yard),
    asBuiltMeasured: yard.asBuilt.length > 0,
  };
}

/** What Design says of the basin, and not "fits" where something typed is not counted; null while there is none. */
export function basinStatusOf({ design, uncounted }: Pick<Yard, "design" | "uncounted">): string | null {
  const status = design.status === null || isErrorCode(design.status) ? "" : String(design.status);
  if (status === "") return null;
  const [first, ...others] = uncounted;
  const isWithinLimits = status === "fits" || status.startsWith(NOT_ALL_COUNTED);
  if (!isWithinLimits || first === undefined) return status;
  return `${NOT_ALL_COUNTED}. ${addressOf(first.where)}: ${first.sentence}${others.length === 0 ? "" : ` And ${others.length} more.`}`;
}

function stageOfYard(program: Program, yard: Yard, stage: Stage, facts: YardFacts): StageOfYard {
  const standing = stageStanding(program, yard, stage, facts);
  const gate = gateInto(stage.id, facts);
  const missing = MISSING[stage.id]?.(facts) ?? [];
  return { ...standing, gate, missing, state: stateOf(standing, gate, missing, yard) };
}

export { NO_OVERRIDE } from "../../checklist/dig-lock.ts";
export type { StepPlace };

/** What the step is called, for a button that leads to it. An operator on a ticket is called by the list it is on. */
export function stepTitle({ stage, step }: StepPlace): string {
  const { name, steps, eachOf } = stageNamed(stage);
  const titleOf = (id: string | undefined) => steps.find((one) => one.id === id)?.title;
  return titleOf(step) ?? titleOf(eachOf?.list) ?? name;
}

/**
 * What the gate of a stage still has to say. A dig that is found right in depth and levels is over: the lock of today
 * is no word on it, and only what somebody answered for by name stays in sight.
 */
export function refusalsInSight({ stage, state, gate }: StageOfYard): Gate["refusals"] {
  return stage.id === digDay.id && state === "done" ? gate.refusals.filter(({ override }) => override !== null) : gate.refusals;
}

function stateOf({ stage, steps }: StageStanding, gate: Gate, missing: readonly Missing[], yard: Yard): StageState {
  if (steps.some(({ verdict }) => verdict === "stop")) return "stopped";
  const begun = steps.some(({ answer }) => answer !== null) || RECORDS[stage.id]?.(yard) === true;
  if (!begun) return gate.open ? "ready" : "locked";
  if (missing.length > 0 || steps.some(({ verdict }) => verdict === "not measured")) return "begun";
  return steps.some(({ verdict }) => verdict === "refer") ? "ask" : "done";
}

function isUnderWay(state: StageState): boolean {
  return state === "begun" || state === "ask" || state === "stopped";
}

/** Rows of other sheets by which a stage is begun. */
const RECORDS: Partial<Record<StageId, (yard: Yard) => boolean>> = {
  "test-visit": ({ holeTests }) => holeTests.length > 0,
  "dig-day": ({ digDays }) => digDays.length > 0,
  planting: ({ clumps }) => clumps.some(({ record }) => record.planted !== null),
  "as-built": ({ asBuilt }) => asBuilt.length > 0,
};

const MISSING: Partial<Record<StageId, (facts: YardFacts) => readonly Missing[]>> = {
  "test-visit": ({ tested, visits }) => [
    ...(tested ? [] : [{ place: "hole tests", sentence: "No hole gives a rate yet. Write each hole's readings to Hole tests." } as const]),
    ...(says(answersInForce(screeningVisit, visits), "water-table", WATER_LEFT_TO_THE_HOLE)
      ? [
          {
            place: "visits",
            sentence:
              "Water or rock below the dig was left to the test hole. Say what it showed, under Screening visit, Water table or rock.",
            at: { stage: screeningVisit.id, step: "water-table" },
          } as const,
        ]
      : []),
  ],
  "design-check": ({ basinStatus }) => {
    if (basinStatus === "fits") return [];
    return [
      {
        place: "basin",
        sentence: basinStatus === null ? "There is no basin on Design yet. Size one that fits." : `The basin does not fit: ${basinStatus}`,
      },
    ];
  },
  "as-built": ({ asBuiltMeasured }) =>
    asBuiltMeasured ? [] : [{ place: "visits", sentence: "The finished garden is not measured. Write floor, depth and sill to As-built." }],
};

function nextThing({ stage, state, steps, gate, missing }: StageOfYard, yard: Yard, today: number): NextThing | null {
  if (state === "done") return null;
  const at = (standings: readonly StepStanding[]) => {
    const [first] = standings;
    return first === undefined ? {} : { at: { stage: stage.id, step: first.step.id } };
  };
  const stopped = steps.filter(({ verdict }) => verdict === "stop");
  if (state === "stopped") {
    return {
      stage: stage.id,
      kind: "stop",
      place: "visits",
      sentence: `${stage.name} says stop: ${titlesOf(stopped)}. Settle it, or find another place.`,
      ...at(stopped),
    };
  }
  const [shut] = gate.refusals.filter(({ override }) => override === null);
  if (shut !== undefined) {
    return {
      stage: stage.id,
      kind: kindOfRefusal(shut),
      place: shut.id === "untested-soil" ? "hole tests" : "visits",
      sentence: shut.sentence,
      ...(shut.at === undefined ? {} : { at: shut.at }),
    };
  }
  const [first] = missing;
  if (first !== undefined) return { ...first, stage: stage.id, kind: "todo" };
  const look = lookOfStage(stage.id, yard);
  if (look !== null)
    return { stage: stage.id, kind: look.due !== null && look.due > today ? "wait" : "todo", place: "care", sentence: look.sentence };
  const open = steps.filter(({ verdict }) => verdict === "not measured");
  const undecided = steps.filter(({ verdict }) => verdict === "refer");
  if (open.length === 0 && undecided.length > 0) {
    return {
      stage: stage.id,
      kind: "ask",
      place: "visits",
      sentence: `${stage.name}: ${titlesOf(undecided)}. Ask whoever may decide, and write down what they decide.`,
      ...at(undecided),
    };
  }
  const more = open.length > 1 ? `, and ${open.length - 1} more` : "";
  return {
    stage: stage.id,
    kind: "todo",
    place: "visits",
    sentence: `${stage.name}: ${open[0]?.step.title ?? stage.purpose}${more}.`,
    ...at(open),
  };
}

function kindOfRefusal({ id, neverOverridden, step }: Gate["refusals"][number]): NextThing["kind"] {
  if (id === "ticket-not-yet-lawful") return "wait";
  if (neverOverridden === DECIDED_AT_STEP) return "ask";
  return neverOverridden !== null || step !== undefined ? "stop" : "todo";
}

function titlesOf(standings: readonly StepStanding[]): string {
  return standings.map(({ step }) => step.title).join(", ");
}

function standingOf(rules: RuleTable, yard: Yard, step: Step, answer: VisitAnswerRow | null, by: JudgedBy): StepStanding {
  const { verdict, decision, override, contradiction } = judged(step, answer, by);
  const common = { step, answer, verdict, decision, override };
  const named = "rule" in step.answer ? rulesNamed(step.answer.rule, rules) : null;
  if (named === null) return { ...common, rules: [], fault: contradiction };
  if (isCellError(named)) return { ...common, rules: [], fault: named.sentence };
  const inForce = named.rules.map(
    ({ comparison, limit, ifNotMet }): RuleInForce => ({ comparison, limit: limitIn(yard.units, named.kind, limit, comparison), ifNotMet }),
  );
  return { ...common, rules: inForce, fault: answer === null ? null : (contradiction ?? faultOf(rules, yard, answer)) };
}

/** The sentence behind a verdict cell that shows an error. */
function faultOf(rules: RuleTable, yard: Yard, { cells }: VisitAnswerRow): string | null {
  if (!isErrorCode(cells.verdict)) return null;
  const inputs: CellInput[] = [asCell(cells.rule), asCell(cells.answer), rules, yard.units];
  const verdict = siteCheck.evaluate(inputs)[0]?.[0];
  return isCellError(verdict) && verdict.sentence !== "" ? verdict.sentence : null;
}

function limitIn(units: UnitSystem, kind: NumberKind, limit: number, comparison: RuleInForce["comparison"]): string {
  if (kind === "hours") return speakers[units].hours(limit);
  const words = speakers[units].say(kind, limit, comparison === "at least" ? "up" : "down");
  return kind === "percent" ? `${words} %` : words;
}
