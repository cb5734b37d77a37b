import { plainKey } from "../../functions/worksheet/nearest-keys.ts";
import type { Workbook } from "../workbook/workbook.ts";
import { estimateLinesSheet } from "../records/estimate-lines.ts";
import type { EstimateLineRow } from "../records/estimate-lines.ts";
import { basinInputsOf, draftBasin } from "./draft-basin.ts";
import { draftLines } from "./draft-estimate.ts";
import type { DraftedLine } from "./draft-estimate.ts";
import type { Program, Yard } from "./read-program.ts";
import { appendRows, changeRow } from "./write-records.ts";
import type { Conflict } from "./write-records.ts";

/** What a draft would change on Estimate lines, to be shown before anything is written. */
export interface EstimateProposal {
  /** Items that the yard has no line for. */
  readonly missing: readonly DraftedLine[];
  /** Lines that stand with another quantity than the design asks for now. They stay as they are unless a person changes them. */
  readonly differing: readonly { readonly row: EstimateLineRow; readonly drafted: DraftedLine }[];
  readonly sentences: readonly string[];
}

export function proposeEstimate(program: Program, yard: Yard): EstimateProposal {
  const { lines, sentences } = draftLines(program, yard, draftBasin(basinInputsOf(yard), program.settings));
  const standing = (line: DraftedLine) => yard.estimateLines.filter(({ record }) => record.item !== null && plainKey(record.item) === plainKey(line.item));
  return {
    missing: lines.filter((line) => standing(line).length === 0),
    // An item split over several lines is the person's own arrangement: its sum is not for the draft to judge.
    differing: lines.flatMap((drafted) => {
      const [row, ...others] = standing(drafted);
      return row === undefined || others.length > 0 || row.record.quantity === drafted.quantity ? [] : [{ row, drafted }];
    }),
    sentences,
  };
}

/** Adds the lines below those that stand; nothing that stands is touched. */
export async function addEstimateLines(workbook: Workbook, yard: Yard, lines: readonly DraftedLine[]): Promise<void> {
  await appendRows(workbook, estimateLinesSheet, lines.map((line) => ({ siteId: yard.siteId, ...line })));
}

/** Puts the drafted quantity, and its unit, into a line that stands. */
export function takeDraftedQuantity(workbook: Workbook, row: EstimateLineRow, { quantity, unit }: DraftedLine): Promise<readonly Conflict[]> {
  return changeRow(workbook, row, { quantity, unit });
}
