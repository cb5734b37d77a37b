import { dayIn, isoDate } from "../records/calendar-day.ts";
import type { Verdict, VisitAnswerRow } from "../records/visits.ts";
import { agreement } from "./agreement.ts";
import { answersInForce, saidAt, stepsOf, verdictOfStep, type AnswersInForce } from "./answers.ts";
import { asBuiltCheck } from "./as-built-check.ts";
import { designCheck } from "./design-check.ts";
import { digDay } from "./dig-day.ts";
import { digLock } from "./dig-lock.ts";
import { enquiry } from "./enquiry.ts";
import { overrideOf, type Override } from "./overrides.ts";
import { plantingDay } from "./planting-day.ts";
import { preDig } from "./pre-dig.ts";
import { refusal, type Refusal } from "./refusal.ts";
import { screeningVisit } from "./screening-visit.ts";
import { STAGE_IDS, type StageId } from "./stage.ts";
import { stageNamed } from "./stages.ts";

/** What the gates ask of a yard, beside its answers. */
export interface YardFacts {
  /** Every answer on record, the oldest first. */
  readonly visits: readonly VisitAnswerRow[];
  readonly today: number;
  /** Whether the holes give an infiltration rate. */
  readonly tested: boolean;
  /** The tested rate held against the Rules sheet. */
  readonly rateVerdict: Verdict;
  /** What the Design sheet says of the basin: "fits", a sentence, or null while there is none. */
  readonly basinStatus: string | null;
  readonly asBuiltMeasured: boolean;
}

/** What stands between a yard and one of its stages. */
export interface Gate {
  readonly into: StageId;
  readonly refusals: readonly GateRefusal[];
  /** Every refusal is answered for, or there is none. */
  readonly open: boolean;
}

export interface GateRefusal extends Refusal {
  readonly override: Override | null;
}

/** The gate into a stage on the day of the facts. What an earlier stage found stops every later one. */
export function gateInto(into: StageId, facts: YardFacts): Gate {
  const refusals = [...stopsBefore(into, facts), ...OWN_RULES[into](facts)].map((one) => ({
    ...one,
    override: overrideOf(one, facts.visits),
  }));
  return { into, refusals, open: refusals.every(({ override }) => override !== null) };
}

const none = (): readonly Refusal[] => [];

const OWN_RULES: Readonly<Record<StageId, (facts: YardFacts) => readonly Refusal[]>> = {
  enquiry: none,
  screening: leaveToEnter,
  ticket: none,
  "test-visit": (facts) => [...leaveToEnter(facts), ...digLock(facts.visits, facts.today)],
  "design-check": (facts) => [...unscreened(facts), ...untestedSoil(facts)],
  agreement: (facts) => [...untestedSoil(facts), ...uncheckedDesign(facts)],
  "pre-dig": (facts) => [...uncheckedDesign(facts), ...agreementMissing(facts, facts.today)],
  "dig-day": digDayRules,
  planting: (facts) =>
    unanswered(facts, digDay.id, "levels", "The levels were not checked. Check floor and berm all around before anything is planted."),
  "as-built": (facts) =>
    unanswered(facts, plantingDay.id, "plants-planted", "The plants put in are not counted. Count them before the garden is measured."),
  week: unfinishedGarden,
  month: unfinishedGarden,
  year: unfinishedGarden,
};

/** Stop findings of earlier stages. The ticket's are the dig lock's, which guards what is dug and nothing else. */
function stopsBefore(into: StageId, { visits }: YardFacts): Refusal[] {
  const earlier = STAGE_IDS.slice(0, STAGE_IDS.indexOf(into)).filter((id) => id !== "ticket");
  return earlier.flatMap((id) => {
    const stage = stageNamed(id);
    const answers = answersInForce(stage, visits);
    return stepsOf(stage, answers).flatMap((step) => {
      if (step.id === "marks-visible" || verdictOfStep(step, answers.get(step.id) ?? null) !== "stop") return [];
      return [
        stopRefusal(
          step.id,
          `${stage.name} says stop: ${step.title}, ${quoted(answers, step.id)}. Settle it and answer the step again, or find another place.`,
        ),
      ];
    });
  });
}

export function stopRefusal(stepId: string, sentence: string): Refusal {
  return refusal(`stop: ${stepId}`, sentence, stepId);
}

function leaveToEnter({ visits }: YardFacts): Refusal[] {
  if (saidAt(answersInForce(enquiry, visits), "permission") !== null) return [];
  return [refusal("leave-to-enter", "It is not on record that the owner lets us in. Ask, and answer Leave to enter under Enquiry.")];
}

/** What was never measured may be what forbids the place. */
function unscreened({ visits }: YardFacts): Refusal[] {
  const answers = answersInForce(screeningVisit, visits);
  const open = screeningVisit.steps
    .filter((step) => verdictOfStep(step, answers.get(step.id) ?? null) === "not measured")
    .map(({ title }) => title);
  return open.length === 0
    ? []
    : [refusal("screening-unmeasured", `Not measured at the screening visit, and never a pass: ${open.join(", ")}.`)];
}

function untestedSoil({ tested, rateVerdict }: YardFacts): Refusal[] {
  if (!tested)
    return [refusal("untested-soil", "The soil is not tested: no hole gives a rate. Dig and time a test hole before anything is sized.")];
  return rateVerdict === "stop"
    ? [refusal("rate-stop", "The tested rate is outside what the Rules sheet allows. Find another place, or ask whoever set the limit.")]
    : [];
}

function uncheckedDesign({ visits, basinStatus }: YardFacts): Refusal[] {
  const answers = answersInForce(designCheck, visits);
  const by = saidAt(answers, "designed-by");
  const checkedBy = saidAt(answers, "design-checked-by");
  const missing = saidAt(answers, "design-verdict") === null || by === null || checkedBy === null;
  return [
    ...(basinStatus === "fits"
      ? []
      : [
          refusal(
            "basin-does-not-fit",
            basinStatus === null ? "There is no basin on Design yet. Size one that fits." : `The basin does not fit: ${basinStatus}`,
          ),
        ]),
    ...(missing
      ? [
          refusal(
            "design-unchecked",
            "No second person has checked the design. Say under Design who made it, who checked it and what came out.",
          ),
        ]
      : []),
    ...(!missing && sameName(by, checkedBy)
      ? [refusal("design-self-checked", `${by} made the design and checked it too. Let another person check it.`, "design-checked-by")]
      : []),
  ];
}

function agreementMissing({ visits }: YardFacts, day: number): Refusal[] {
  const answers = answersInForce(agreement, visits);
  const signed = dayOf(answers, "agreement-signed");
  const until = dayOf(answers, "agreement-until");
  if (signed === null || saidAt(answers, "agreement-signed-by") === null) {
    return [
      refusal(
        "agreement-unsigned",
        "The owner has not signed, or it is not on record who signed and when. Nobody digs on another's land without it.",
      ),
    ];
  }
  return [
    ...(signed > day
      ? [
          refusal(
            "agreement-unsigned",
            `The owner signs on ${isoDate(signed)}, after ${isoDate(day)}. Wait for the signature.`,
            "agreement-signed",
          ),
        ]
      : []),
    ...(saidAt(answers, "agreement-copy") === null
      ? [refusal("agreement-copy", "It is not on record where the signed copy is kept. Find it, and write it down.")]
      : []),
    ...(until === null
      ? [refusal("agreement-until", "It is not on record until when the agreement is in force. Read it, and write the day down.")]
      : []),
    ...(until !== null && until < day
      ? [
          refusal(
            "agreement-lapsed",
            `The agreement was in force until ${isoDate(until)}, not on ${isoDate(day)}. Have it renewed.`,
            "agreement-until",
          ),
        ]
      : []),
    ...unanswered(
      { visits },
      agreement.id,
      "permit",
      "It is not on record whether a permit is needed. Ask building, health and stormwater staff.",
    ),
  ];
}

/** Today decides whether anybody may dig; the planned day is looked at too, so that what runs out before it is found in time. */
function digDayRules(facts: YardFacts): readonly Refusal[] {
  const answers = answersInForce(preDig, facts.visits);
  const planned = dayOf(answers, "dig-date");
  const on = (day: number) => [...digLock(facts.visits, day), ...agreementMissing(facts, day)];
  const unfinished = preDig.steps
    .filter((step) => verdictOfStep(step, answers.get(step.id) ?? null) === "not measured")
    .map(({ title }) => title);
  const rules = [
    ...on(facts.today),
    ...unscreened(facts),
    ...untestedSoil(facts),
    ...uncheckedDesign(facts),
    ...(unfinished.length === 0 ? [] : [refusal("pre-dig-unfinished", `Before the dig, not answered yet: ${unfinished.join(", ")}.`)]),
    ...(planned !== null && planned > facts.today ? on(planned) : []),
  ];
  return rules.filter(({ id }, place) => rules.findIndex((earlier) => earlier.id === id) === place);
}

function unfinishedGarden(facts: YardFacts): Refusal[] {
  return [
    ...(facts.asBuiltMeasured
      ? []
      : [refusal("as-built-missing", "The finished garden is not measured. Measure it and write it to As-built.")]),
    ...unanswered(facts, asBuiltCheck.id, "flow-test", "No water was run in yet. Do the flow test of the as-built stage."),
  ];
}

function unanswered({ visits }: Pick<YardFacts, "visits">, stage: StageId, step: string, sentence: string): Refusal[] {
  return saidAt(answersInForce(stageNamed(stage), visits), step) === null ? [refusal(`unanswered: ${step}`, sentence)] : [];
}

function dayOf(answers: AnswersInForce, step: string): number | null {
  return dayIn(answers.get(step)?.record.answer ?? null);
}

function quoted(answers: AnswersInForce, step: string): string {
  const record = answers.get(step)?.record;
  const value = typeof record?.answer === "number" ? Number(record.answer.toPrecision(3)) : (record?.answer ?? "");
  return `"${[value, record?.unit].filter((part) => part !== null && part !== undefined).join(" ")}"`;
}

function sameName(one: string, other: string): boolean {
  const plain = (name: string) =>
    name
      .toLowerCase()
      .replaceAll(/[\s.]+/g, " ")
      .trim();
  return plain(one) === plain(other);
}
