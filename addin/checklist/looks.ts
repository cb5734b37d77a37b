import type { FollowUpKind } from "../records/follow-ups.ts";
import { inspectionItems, type InspectionItem } from "./inspection-items.ts";
import { stageNamed } from "./stages.ts";
import { chosen, type Stage, type StageId, type Step } from "./stage.ts";

/** What is asked at a follow-up: the steps of a visit stage, or one question where there is no more to see. */
export type Look = { readonly stage: Stage } | OneQuestion;

export interface OneQuestion {
  readonly step: Step;
  /** What to do about a fail; null where the same thing is to be done again by another day. */
  readonly onFail: string | null;
}

const looks: Readonly<Record<Exclude<FollowUpKind, "re-test" | "repair" | "watering">, StageId>> = {
  "1 week": "week",
  "1 month": "month",
  "1 year": "year",
  yearly: "year",
};

const questions: Readonly<Record<"re-test" | "repair" | "watering", OneQuestion>> = {
  watering: {
    step: {
      id: "watering",
      title: "Watering",
      ask: "Is the soil moist a finger deep?",
      why: "New roots are as long as the pot was deep.",
      answer: chosen(["Moist", "pass"], ["Dry on top", "watch"], ["Dry a finger deep", "fail"]),
    },
    onFail: "Water it today, and ask who waters from now on.",
  },
  "re-test": {
    step: {
      id: "re-test",
      title: "Tested again",
      ask: "What did the new hole test show? The test itself goes on Hole tests.",
      why: "A basin that no longer drains was built on a rate that no longer holds.",
      answer: chosen(["The design still fits", "pass"], ["The design no longer fits", "fail"]),
    },
    onFail: "Work the design out again from the new rate, or loosen and amend the soil.",
  },
  repair: {
    step: {
      id: "repair",
      title: "Repair",
      ask: "Was it put right?",
      why: "A finding counts as closed when somebody has seen that it holds.",
      answer: chosen(["Put right, and it holds", "pass"], ["Put right: look again", "watch"], ["Not put right", "fail"]),
    },
    onFail: null,
  },
};

export function lookOf(kind: FollowUpKind): Look {
  return kind === "watering" || kind === "re-test" || kind === "repair" ? questions[kind] : { stage: stageNamed(looks[kind]) };
}

/** The inspection item that a step of a look asks about, if it asks about one. */
export function itemOfStep(stage: Stage, step: Step): InspectionItem | null {
  return inspectionItems.find(({ id }) => step.id === `${stage.id}-${id}`) ?? null;
}
