import { addressOf, WorkbookRefused, type CellValue, type Workbook } from "../../workbook/port.ts";
import { contentsOf, hasFormula, rangeOf, sameHeld } from "./cell-history.ts";
import { packed } from "./change-blocks.ts";
import { contextsIn, readLog } from "./change-log.ts";
import { nobodyWaits } from "./progress.ts";
import { putBack, takeBack } from "./take-back.ts";
import { marked } from "./unfinished.ts";

/**
 * Puts back what the cells of a change held before it. Rejects with WorkbookRefused, and writes nothing, when any of
 * them no longer holds what the change left there, or when its row belongs to another yard by now.
 */
export async function undoChange(workbook: Workbook, change: number, progress = nobodyWaits): Promise<void> {
  const cells = (await readLog(workbook)).filter(({ record }) => record.change === change);
  if (cells.length === 0) throw new WorkbookRefused(`The Change log has no change ${change}.`);
  const places = cells.map((row) => ({ row, where: rangeOf(row) }));
  const held = await contentsOf(
    workbook,
    places.map(({ where }) => where),
  );
  const touched = [...new Set(places.map(({ where }) => where.sheet))];
  const contextAt = contextsIn(touched, await workbook.readSheets(touched));
  const changedSince = places.flatMap(({ row: { record }, where }, index): string[] => {
    const now =
      record.afterHolds === "values" && !hasFormula(held, index, where)
        ? { holds: "values" as const, content: packed(held.values(index)) }
        : held.held(index, 0, 0);
    const around = contextAt(where);
    // A row that the change itself filled or emptied says whose it is by its Site ID cell, which is among the cells compared.
    const moved =
      around.heading !== record.heading || (around.siteId !== null && record.siteId !== null && around.siteId !== record.siteId);
    const isSame = sameHeld(now, { holds: record.afterHolds ?? "value", content: record.after });
    if (isSame && !moved) return [];
    return [
      `${addressOf(where)} was left with ${spoken(record.after)} and holds ${spoken(now.content)} now; before the change it held ${spoken(record.before)}.`,
    ];
  });
  if (changedSince.length > 0) throw new WorkbookRefused(`Nothing was undone, because cells have changed since. ${inShort(changedSince)}`);
  // A long one is put on the log before its mark goes: left in the midst, it is finished at the next start and stands there whole.
  if (cells.some(({ record }) => record.afterHolds === "values"))
    await marked(workbook, { change, doing: "undo" }, () => takeBack(workbook, cells, progress));
  else await putBack(workbook, cells, progress);
}

const SENTENCES_SHOWN = 3;

function inShort(sentences: readonly string[]): string {
  const more = sentences.length - SENTENCES_SHOWN;
  return [...sentences.slice(0, SENTENCES_SHOWN), ...(more > 0 ? [`And ${more} more cells.`] : [])].join(" ");
}

function spoken(value: CellValue): string {
  return value === null || value === "" ? "nothing" : `"${String(value).slice(0, 60)}"`;
}
