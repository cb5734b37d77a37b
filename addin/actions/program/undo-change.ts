import type { ChangeRow } from "../../records/change-log.ts";
import { addressOf, WorkbookRefused, type CellValue, type Workbook } from "../../workbook/port.ts";
import { contentsOf, hasFormula, sameHeld } from "./cell-history.ts";
import { packed } from "./change-blocks.ts";
import { historiesIn } from "./change-rows.ts";
import { headingsOf, readContexts, type ContextAt } from "./cell-context.ts";
import { rowsOfChange } from "./read-log.ts";
import { nobodyWaits } from "./progress.ts";
import { putBack, takeBack } from "./take-back.ts";
import { marked } from "./unfinished.ts";

/**
 * Puts back what the cells of a change held before it. Rejects with WorkbookRefused, and writes nothing, when any of
 * them no longer holds what the change left there, or when its row belongs to another yard by now.
 */
export async function undoChange(workbook: Workbook, change: number, progress = nobodyWaits): Promise<void> {
  const rows = await rowsOfChange(workbook, change);
  if (rows.length === 0) throw new WorkbookRefused(`The Change log has no change ${change}.`);
  const places = rows.flatMap((row) => historiesIn(row).map((history) => ({ ...history, logged: row.record })));
  const held = await contentsOf(
    workbook,
    places.map(({ where }) => where),
  );
  const { contextAt } = await readContexts(
    workbook,
    places.map(({ where }) => where),
  );
  const movedRows = new Set(rows.filter(hasOtherHeadings(contextAt)).map(({ record }) => record));
  const changedSince = places.flatMap(({ logged, where, before, after }, index): string[] => {
    const now =
      after.holds === "values" && !hasFormula(held, index, where)
        ? { holds: "values" as const, content: packed(held.values(index)) }
        : held.held(index, 0, 0);
    const { siteId } = contextAt(where);
    // A row that the change itself filled or emptied says whose it is by its Site ID cell, which is among the cells compared.
    const moved = movedRows.has(logged) || (siteId !== null && logged.siteId !== null && siteId !== logged.siteId);
    if (sameHeld(now, after) && !moved) return [];
    return [
      `${addressOf(where)} was left with ${spoken(after.content)} and holds ${spoken(now.content)} now; before the change it held ${spoken(before.content)}.`,
    ];
  });
  if (changedSince.length > 0) throw new WorkbookRefused(`Nothing was undone, because cells have changed since. ${inShort(changedSince)}`);
  // A long one is put on the log before its mark goes: left in the midst, it is finished at the next start and stands there whole.
  if (rows.some(({ record }) => record.afterHolds === "values"))
    await marked(workbook, { change, doing: "undo" }, () => takeBack(workbook, rows, progress));
  else await putBack(workbook, rows, progress);
}

/** Whether the cells stand under other headings than they did when they were written. */
function hasOtherHeadings(contextAt: ContextAt): (row: ChangeRow) => boolean {
  return (row) =>
    headingsOf(
      historiesIn(row).map(({ where }) => where),
      contextAt,
    ) !== row.record.heading;
}

const SENTENCES_SHOWN = 3;

function inShort(sentences: readonly string[]): string {
  const more = sentences.length - SENTENCES_SHOWN;
  return [...sentences.slice(0, SENTENCES_SHOWN), ...(more > 0 ? [`And ${more} more cells.`] : [])].join(" ");
}

function spoken(value: CellValue): string {
  return value === null || value === "" ? "nothing" : `"${String(value).slice(0, 60)}"`;
}
