import { dayIn, isoDate } from "../records/calendar-day.ts";
import type { Verdict } from "../records/visits.ts";
import { agreement } from "./agreement.ts";
import { answersInForce, saidAt, stepsOf, type AnswersInForce } from "./answers.ts";
import { asBuiltCheck } from "./as-built-check.ts";
import type { ChecklistDays } from "./checklist-version.ts";
import { referRefusal, stopRefusal } from "./decisions.ts";
import { designCheck } from "./design-check.ts";
import { digDay } from "./dig-day.ts";
import { digLock } from "./dig-lock.ts";
import { enquiry } from "./enquiry.ts";
import { overrideOf, type Override } from "./overrides.ts";
import { plantingDay } from "./planting-day.ts";
import { preDig } from "./pre-dig.ts";
import { refusal, type Refusal } from "./refusal.ts";
import { screeningVisit } from "./screening-visit.ts";
import { STAGE_IDS, type Stage, type StageId, type StepPlace } from "./stage.ts";
import { stageNamed } from "./stages.ts";
import { judged, type JudgedBy } from "./verdicts.ts";

/** What the gates ask of a yard, beside its answers. */
export interface YardFacts extends JudgedBy {
  readonly today: number;
  readonly checklist: ChecklistDays;
  /** How many minutes of today have passed; left out, today is looked at as a whole. */
  readonly minutes?: number;
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
  const refusals = [...heldBefore(into, facts), ...OWN_RULES[into](facts)].map((one) => ({
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
  "test-visit": (facts) => [...leaveToEnter(facts), ...digLock(facts.visits, facts.today, facts.minutes)],
  "design-check": (facts) => [...unscreened(facts), ...untestedSoil(facts)],
  agreement: (facts) => [...untestedSoil(facts), ...uncheckedDesign(facts)],
  "pre-dig": (facts) => [...uncheckedDesign(facts), ...agreementMissing(facts, facts.today)],
  "dig-day": digDayRules,
  planting: (facts) =>
    withoutAnswer(facts, digDay.id, "levels", "The levels were not checked. Check floor and berm all around before anything is planted."),
  "as-built": (facts) =>
    withoutAnswer(facts, plantingDay.id, "plants-planted", "The plants put in are not counted. Count them before the garden is measured."),
  week: unfinishedGarden,
  month: unfinishedGarden,
  year: unfinishedGarden,
};

/** Steps whose stop the dig lock says: nobody may answer for it by name. */
const LOCKS_THE_DIG: ReadonlySet<string> = new Set(["marks-visible", "digger"]);

/** Findings of earlier stages that stop, or that nobody has decided. The ticket's are the dig lock's, which guards what is dug and nothing else. */
function heldBefore(into: StageId, facts: YardFacts): readonly Refusal[] {
  const earlier = STAGE_IDS.slice(0, STAGE_IDS.indexOf(into)).filter((id) => id !== "ticket");
  return earlier.flatMap((id) => heldAt(id, facts));
}

/** What each stage holds back, by the facts it was asked with: every gate after it asks again. */
const held = new WeakMap<YardFacts, Map<StageId, readonly Refusal[]>>();

function heldAt(id: StageId, facts: YardFacts): readonly Refusal[] {
  const known = held.get(facts) ?? new Map<StageId, readonly Refusal[]>();
  held.set(facts, known);
  const refusals = known.get(id) ?? findHeldAt(id, facts);
  known.set(id, refusals);
  return refusals;
}

function findHeldAt(id: StageId, facts: YardFacts): readonly Refusal[] {
  const stage = stageNamed(id);
  const answers = answersInForce(stage, facts.visits);
  return stepsOf(stage, answers, facts.checklist).flatMap((step) => {
    const answer = answers.get(step.id) ?? null;
    if (answer === null || LOCKS_THE_DIG.has(step.id)) return [];
    const at = { stage: id, step: step.id };
    const finding = `${step.title}, ${quoted(answers, step.id)}`;
    const { found, decision } = judged(step, answer, facts);
    if (found === "refer")
      return [referRefusal(at, `${stage.name} says refer: ${finding}. Ask whoever may decide, and write down what they decide.`)];
    if (found !== "stop") return [];
    const said =
      decision === null ? `${stage.name} says stop: ${finding}.` : `${stage.name}: ${finding}. ${decision.by} decided: ${decision.words}.`;
    return [stopRefusal(at, `${said} Settle it and answer the step again, or find another place.`)];
  });
}

function leaveToEnter({ visits }: YardFacts): Refusal[] {
  if (saidAt(answersInForce(enquiry, visits), "permission") !== null) return [];
  return [
    refusal("leave-to-enter", "It is not on record that the owner lets us in. Ask, and answer Leave to enter under Enquiry.", undefined, {
      stage: enquiry.id,
      step: "permission",
    }),
  ];
}

/** What was never measured may be what forbids the place, and so may what was left to a later visit. */
function unscreened(facts: YardFacts): Refusal[] {
  const open = unanswered(screeningVisit, facts, ["not measured", "watch"]);
  return open.length === 0
    ? []
    : [
        refusal(
          "screening-unmeasured",
          `Not measured at the screening visit, and never a pass: ${open.map(({ title }) => title).join(", ")}.`,
          undefined,
          open[0]?.at,
        ),
      ];
}

/** The steps of a stage that stand at one of the verdicts. */
function unanswered(stage: Stage, facts: YardFacts, verdicts: readonly Verdict[] = ["not measured"]) {
  const answers = answersInForce(stage, facts.visits);
  return stepsOf(stage, answers, facts.checklist)
    .filter((step) => verdicts.includes(judged(step, answers.get(step.id) ?? null, facts).verdict))
    .map(({ id, title }): { readonly title: string; readonly at: StepPlace } => ({ title, at: { stage: stage.id, step: id } }));
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
            undefined,
            { stage: designCheck.id, step: by === null ? "designed-by" : checkedBy === null ? "design-checked-by" : "design-verdict" },
          ),
        ]
      : []),
    ...(!missing && sameName(by, checkedBy)
      ? [
          refusal("design-self-checked", `${by} made the design and checked it too. Let another person check it.`, "design-checked-by", {
            stage: designCheck.id,
            step: "design-checked-by",
          }),
        ]
      : []),
  ];
}

function agreementMissing({ visits }: YardFacts, day: number): Refusal[] {
  const answers = answersInForce(agreement, visits);
  const signed = dayOf(answers, "agreement-signed");
  const until = dayOf(answers, "agreement-until");
  const at = (step: string): StepPlace => ({ stage: agreement.id, step });
  if (signed === null || saidAt(answers, "agreement-signed-by") === null) {
    return [
      refusal(
        "agreement-unsigned",
        "The owner has not signed, or it is not on record who signed and when. Nobody digs on another's land without it.",
        undefined,
        at(signed === null ? "agreement-signed" : "agreement-signed-by"),
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
            at("agreement-signed"),
          ),
        ]
      : []),
    ...(saidAt(answers, "agreement-copy") === null
      ? [
          refusal(
            "agreement-copy",
            "It is not on record where the signed copy is kept. Find it, and write it down.",
            undefined,
            at("agreement-copy"),
          ),
        ]
      : []),
    ...(until === null
      ? [
          refusal(
            "agreement-until",
            "It is not on record until when the agreement is in force. Read it, and write the day down.",
            undefined,
            at("agreement-until"),
          ),
        ]
      : []),
    ...(until !== null && until < day
      ? [
          refusal(
            "agreement-lapsed",
            `The agreement was in force until ${isoDate(until)}, not on ${isoDate(day)}. Have it renewed.`,
            "agreement-until",
            at("agreement-until"),
          ),
        ]
      : []),
    ...withoutAnswer(
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
  const on = (day: number, minutes?: number) => [...digLock(facts.visits, day, minutes), ...agreementMissing(facts, day)];
  const unfinished = unanswered(preDig, facts);
  const rules = [
    ...on(facts.today, facts.minutes),
    ...unscreened(facts),
    ...untestedSoil(facts),
    ...uncheckedDesign(facts),
    ...(unfinished.length === 0
      ? []
      : [
          refusal(
            "pre-dig-unfinished",
            `Before the dig, not answered yet: ${unfinished.map(({ title }) => title).join(", ")}.`,
            undefined,
            unfinished[0]?.at,
          ),
        ]),
    ...(planned !== null && planned > facts.today ? on(planned) : []),
  ];
  return rules.filter(({ id }, place) => rules.findIndex((earlier) => earlier.id === id) === place);
}

function unfinishedGarden(facts: YardFacts): Refusal[] {
  return [
    ...(facts.asBuiltMeasured
      ? []
      : [refusal("as-built-missing", "The finished garden is not measured. Measure it and write it to As-built.")]),
    ...withoutAnswer(facts, asBuiltCheck.id, "flow-test", "No water was run in yet. Do the flow test of the as-built stage."),
  ];
}

function withoutAnswer({ visits }: Pick<YardFacts, "visits">, stage: StageId, step: string, sentence: string): Refusal[] {
  return saidAt(answersInForce(stageNamed(stage), visits), step) === null
    ? [refusal(`unanswered: ${step}`, sentence, undefined, { stage, step })]
    : [];
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
