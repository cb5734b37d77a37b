import { groundSlopePercent } from "../../../functions/siting/ground-slope.ts";
import { DECISIONS, decisionStep } from "../../checklist/decisions.ts";
import { OVERRIDDEN, overrideStep, WITHDRAWN } from "../../checklist/overrides.ts";
import type { Refusal } from "../../checklist/refusal.ts";
import type { Stage, Step, StepPlace } from "../../checklist/stage.ts";
import { verdictFormula } from "../../records/formulas.ts";
import { rulesSheet } from "../../records/rules.ts";
import { visitsSheet, type Verdict } from "../../records/visits.ts";
import { addressOf, WorkbookRefused, type CellValue, type Workbook } from "../../workbook/port.ts";
import { isoDate, momentText, today } from "../dates.ts";
import { meetChecklist } from "../program/checklist-days.ts";
import type { Yard } from "../program/read-program.ts";
import { appendRow, changesOfRow, writeUnlessChanged, type Conflict } from "../program/write-records.ts";

export type StepAnswer = SaidAnswer & {
  readonly note: string;
  readonly by: string;
  /** A link, or the name of a picture. */
  readonly link?: string;
  /** Day of the visit, where a field sheet is entered later; today otherwise. */
  readonly day?: number;
};

type SaidAnswer =
  | { readonly kind: "measured"; readonly value: number }
  | { readonly kind: "none" }
  | { readonly kind: "later" }
  | { readonly kind: "slope"; readonly drop: number; readonly run: number }
  | { readonly kind: "chosen"; readonly says: string }
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "date"; readonly date: number; readonly minutes?: number | null }
  | { readonly kind: "number"; readonly value: number };

/** Adds the answer as a row of Visits. A measured one gets a verdict formula, so a changed rule changes the verdict. */
export async function recordAnswer(
  workbook: Workbook,
  yard: Yard,
  stage: Stage,
  step: Step,
  answer: StepAnswer,
): Promise<readonly Conflict[]> {
  if (answer.kind === "slope") {
    const slope = changesOfRow(yard.site, { slopeDrop: answer.drop, slopeRun: answer.run });
    const conflicts = await writeUnlessChanged(workbook, slope);
    if (conflicts.length > 0) return conflicts;
  }
  await meetChecklist(workbook);
  const rule = "rule" in step.answer && answer.kind !== "none" && answer.kind !== "later" ? step.answer.rule : null;
  const common = {
    siteId: yard.siteId,
    date: answer.day ?? today(),
    stage: stage.id,
    step: step.id,
    note: answer.note,
    by: answer.by,
    link: answer.link ?? null,
  };
  await appendRow(
    workbook,
    visitsSheet,
    { ...common, rule, answer: answerCell(step, answer), unit: answerUnit(yard, step, answer), verdict: fixedVerdict(step, answer) },
    (row, visits, placeOf) =>
      rule === null
        ? []
        : [
            {
              range: visits.cell(row, "verdict"),
              formulas: [
                [verdictFormula(rule, addressOf(visits.cell(row, "answer")).replace(/^.*!/, ""), yard.units, placeOf(rulesSheet))],
              ],
            },
          ],
    rule === null ? [] : [rulesSheet],
  );
  return [];
}

export interface OverrideEntry {
  readonly by: string;
  readonly reason: string;
}

/** Puts a person's name and reason against a refusal on record, as a row of Visits. Refuses where nobody may, and without both. */
export async function recordOverride(
  workbook: Workbook,
  yard: Yard,
  stage: Stage,
  refusal: Refusal,
  { by, reason }: OverrideEntry,
): Promise<void> {
  if (refusal.neverOverridden !== null) throw new WorkbookRefused(refusal.neverOverridden);
  if (by.trim() === "" || reason.trim() === "") throw new WorkbookRefused("An override needs a name and a reason. Nothing was written.");
  await appendOverride(workbook, yard, stage, refusal, OVERRIDDEN, { by, reason });
}

/** Takes an override back; both rows stay on record. */
export function withdrawOverride(workbook: Workbook, yard: Yard, stage: Stage, refusal: Refusal, entry: OverrideEntry): Promise<void> {
  return appendOverride(workbook, yard, stage, refusal, WITHDRAWN, entry);
}

async function appendOverride(
  workbook: Workbook,
  yard: Yard,
  stage: Stage,
  refusal: Refusal,
  answer: string,
  { by, reason }: OverrideEntry,
): Promise<void> {
  await appendRow(workbook, visitsSheet, {
    siteId: yard.siteId,
    date: today(),
    stage: stage.id,
    step: overrideStep(refusal.id),
    answer,
    note: reason.trim(),
    by: by.trim(),
  });
}

/** How a decision may come out, in words. */
export const DECISION_WORDS = DECISIONS.map(({ says }) => says);

export interface DecisionEntry {
  readonly says: string;
  /** Who decided. */
  readonly by: string;
  readonly what: string;
  readonly date: number;
  readonly paper: string;
}

/** Puts on record what somebody decided on a finding that refers, as a row of Visits beside the answer. Refuses what would be no decision. */
export async function recordDecision(workbook: Workbook, yard: Yard, at: StepPlace, entry: DecisionEntry): Promise<void> {
  const option = DECISIONS.find(({ says }) => says === entry.says);
  const [by, what, paper] = [entry.by, entry.what, entry.paper].map((words) => words.trim());
  if (option === undefined || !by || !what || !paper)
    throw new WorkbookRefused("A decision needs what came out, who decided, what, when, and on what paper. Nothing was written.");
  const found = yard.visits.findLast(({ record }) => record.step === at.step && record.answer !== null)?.record.date ?? null;
  if (found !== null && entry.date < found)
    throw new WorkbookRefused(
      `The decision is dated ${isoDate(entry.date)}, before the finding of ${isoDate(found)}. What was decided earlier was decided on something else. Nothing was written.`,
    );
  await appendRow(workbook, visitsSheet, {
    siteId: yard.siteId,
    date: entry.date,
    stage: at.stage,
    step: decisionStep(at.step),
    answer: option.says,
    note: what,
    by,
    verdict: option.verdict,
    link: paper,
  });
}

function answerCell(step: Step, answer: StepAnswer): CellValue {
  switch (answer.kind) {
    case "measured":
    case "number":
      return answer.value;
    case "slope":
      return groundSlopePercent(answer.drop, answer.run);
    case "chosen":
      return answer.says;
    case "text":
      return answer.text;
    case "date":
      return momentText({ day: answer.date, minutes: answer.minutes ?? null });
    case "none":
      return step.answer.kind === "measured" ? (step.answer.orNone ?? null) : null;
    case "later":
      return step.answer.kind === "measured" ? (step.answer.orLater ?? null) : null;
  }
}

function answerUnit(yard: Yard, step: Step, answer: StepAnswer): string | null {
  if (answer.kind === "slope") return "%";
  if (answer.kind === "number" && step.answer.kind === "number") return step.answer.unit[yard.units];
  if (answer.kind !== "measured" || step.answer.kind !== "measured") return null;
  if (step.answer.quantity === "length") return yard.units === "metric" ? "m" : "ft";
  return yard.units === "metric" ? "mm" : "in";
}

function fixedVerdict(step: Step, answer: StepAnswer): Verdict | null {
  if (answer.kind === "none") return "pass";
  if (answer.kind === "later") return "watch";
  if (answer.kind !== "chosen" || step.answer.kind !== "chosen") return null;
  return step.answer.options.find(({ says }) => says === answer.says)?.verdict ?? "not measured";
}
