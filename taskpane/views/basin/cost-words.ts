import type { Answer, BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import { estimateOfDraft } from "../../../addin/actions/estimate/estimate.ts";
import type { Program, Yard } from "../../../addin/actions/program/read-program.ts";
import { valueOf } from "./basin-checks.ts";
import { basinText } from "./text.ts";

export interface DraftCost {
  /** Contingency included; a sentence where nothing has a price. */
  readonly cost: Answer;
  readonly contingencyPercent: number;
  /** Lines that are not in it. */
  readonly unpriced: number;
}

/** What a garden of this size would cost, or null while it has no size. */
export function costOfDraft(program: Program, yard: Yard, draft: BasinDraft, today: number): DraftCost | null {
  if (valueOf(draft.floorArea) === null) return null;
  const { cost, contingencyPercent, unpriced, lines } = estimateOfDraft(program, yard, draft, today);
  const cash = lines.filter(({ kind }) => kind === "cash");
  const anyPriced = cash.some(({ amount }) => "value" in amount);
  return { cost: anyPriced ? { value: cost } : { sentence: basinText.cost.none }, contingencyPercent, unpriced };
}

/** An amount as the workbook counts money, which names no currency. */
export function costWords(cost: Answer | null): string | null {
  return cost === null || !("value" in cost) ? null : cost.value.toLocaleString("en-US", { maximumFractionDigits: 0 });
}
