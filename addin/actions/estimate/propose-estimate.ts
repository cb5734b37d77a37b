import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { WorkbookRefused, type Workbook } from "../../workbook/port.ts";
import { estimateLinesSheet, type EstimateLineRow } from "../../records/estimate-lines.ts";
import { basinInputsOf, draftBasin } from "../basin/draft-basin.ts";
import { PLANT_ITEMS } from "../../records/prices.ts";
import { draftLines, GROUPS, type DraftedLine } from "./draft-estimate.ts";
import { yardNow, type Program, type Yard } from "../program/read-program.ts";
import { appendRows, changeRow, type Conflict } from "../program/write-records.ts";

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
  return {
    missing: lines.filter((line) => standing(yard, line).length === 0),
    // An item split over several lines is the person's own arrangement: its sum is not for the draft to judge.
    differing: [...lines, ...plantsNoLonger(yard, lines)].flatMap((drafted) => {
      const [row, ...others] = standing(yard, drafted);
      return row === undefined || others.length > 0 || row.record.quantity === drafted.quantity ? [] : [{ row, drafted }];
    }),
    sentences,
  };
}

/** Containers that the estimate buys plants in and the plan does not: left as they stand, its plants would be paid for twice. */
function plantsNoLonger(yard: Yard, lines: readonly DraftedLine[]): readonly DraftedLine[] {
  const items: readonly string[] = Object.values(PLANT_ITEMS);
  const plants = lines.find(({ group }) => group === GROUPS.plants);
  if (plants === undefined) return [];
  return items
    .filter((item) => lines.every((line) => line.item !== item))
    .map((item): DraftedLine => ({ ...plants, item, quantity: 0, note: "No plant of the plan comes in it." }))
    .filter((line) => standing(yard, line).length > 0);
}

/** The yard's lines of the same item. */
function standing({ estimateLines }: Yard, { item }: DraftedLine): readonly EstimateLineRow[] {
  return estimateLines.filter(({ record }) => record.item !== null && plainKey(record.item) === plainKey(item));
}

/** Adds what a draft found missing, or nothing of it where somebody has added such a line meanwhile: it would be paid for twice. */
export async function addProposedLines(workbook: Workbook, { siteId }: Yard, lines: readonly DraftedLine[]): Promise<void> {
  const now = await yardNow(workbook, siteId);
  const there = lines.filter((line) => standing(now, line).length > 0);
  if (there.length > 0)
    throw new WorkbookRefused(
      `${there.map(({ item }) => item).join(", ")} was added to ${estimateLinesSheet.name} meanwhile. Nothing was added: look at the draft again.`,
    );
  await addEstimateLines(workbook, now, lines);
}

/** Adds the lines below those that stand; nothing that stands is touched. */
export async function addEstimateLines(workbook: Workbook, yard: Yard, lines: readonly DraftedLine[]): Promise<void> {
  await appendRows(
    workbook,
    estimateLinesSheet,
    lines.map((line) => ({ siteId: yard.siteId, ...line })),
  );
}

/** Puts the drafted quantity, and its unit, into a line that stands. */
export function takeDraftedQuantity(
  workbook: Workbook,
  row: EstimateLineRow,
  { quantity, unit }: DraftedLine,
): Promise<readonly Conflict[]> {
  return changeRow(workbook, row, { quantity, unit });
}
