import { findingOf, inspectionMeasures, type InspectionMeasure } from "../../checklist/inspection-measures.ts";
import type { InspectionItem } from "../../checklist/inspection-items.ts";
import { itemOfStep, lookOf } from "../../checklist/looks.ts";
import type { Step } from "../../checklist/stage.ts";
import type { Finding, FollowUpKind } from "../../records/follow-ups.ts";
import type { UnitSystem } from "../../records/site-terms.ts";

/** One thing asked at a look, with the inspection item and the number behind it, where there are such. */
export interface AskedStep {
  readonly step: Step;
  readonly item: InspectionItem | null;
  readonly measure: InspectionMeasure | null;
}

export interface AskedLook {
  /** The stage of Visits that the answers belong to; null where the look only asks one question. */
  readonly stageId: string | null;
  /** The step that keeps the day of the look; it begins the stage anew. */
  readonly begins: Step | null;
  readonly steps: readonly AskedStep[];
  /** Whether a fail is put right by a day of its own. */
  readonly plansRepairs: boolean;
}

export type LookKind = FollowUpKind;

export function askedAt(kind: LookKind): AskedLook {
  const look = lookOf(kind);
  if (!("stage" in look))
    return { stageId: null, begins: null, steps: [{ step: look.step, item: null, measure: null }], plansRepairs: look.onFail === null };
  const { stage } = look;
  const steps = stage.steps
    .filter(({ id }) => id !== stage.beginsWith)
    .map((step): AskedStep => {
      const item = itemOfStep(stage, step);
      return { step, item, measure: inspectionMeasures.find((measure) => measure.item === item?.id) ?? null };
    });
  return { stageId: stage.id, begins: stage.steps.find(({ id }) => id === stage.beginsWith) ?? null, steps, plansRepairs: true };
}

/** What a reading in the yard's units comes to. */
export function findingOfReading(measure: InspectionMeasure, reading: number, units: UnitSystem): Finding | null {
  return findingOf(measure, reading, units);
}
