import type { Yard } from "../../../addin/actions/program/read-program.ts";
import type { Notice, NoticeKind, Urgency } from "../../../addin/actions/program/what-is-next.ts";
import { TAB_OF_PLACE } from "../yard/next-steps.ts";
import type { TabId } from "../../tab-ids.ts";
import { matches } from "../../parts/yards-matching.ts";

/** The yards whose most urgent line is of this urgency, in the order of the board. */
export interface BoardGroup {
  readonly urgency: Urgency;
  readonly yards: readonly BoardYard[];
}

/** Every line of one yard together, the most urgent first; without a yard, those of the whole program. */
export interface BoardYard {
  readonly yard: Yard | null;
  readonly notices: readonly [Notice, ...Notice[]];
}

/** What the board shows of one kind, or of all, for the yards that match every word typed. The notices come the most urgent first. */
export function boardOf(notices: readonly Notice[], kind: NoticeKind | null, search: string): readonly BoardGroup[] {
  const yards = new Map<Yard | null, [Notice, ...Notice[]]>();
  for (const notice of notices) {
    const { yard } = notice;
    if ((kind !== null && notice.kind !== kind) || !(yard === null ? search.trim() === "" : matches(yard, search))) continue;
    const lines = yards.get(yard);
    if (lines === undefined) yards.set(yard, [notice]);
    else lines.push(notice);
  }
  const groups = new Map<Urgency, BoardYard[]>();
  for (const [yard, lines] of yards) {
    const { urgency } = lines[0];
    groups.set(urgency, [...(groups.get(urgency) ?? []), { yard, notices: lines }]);
  }
  return [...groups].map(([urgency, group]) => ({ urgency, yards: group }));
}

/** Where a line is put right. A line of the whole program has no such place in a yard. */
export function tabOf({ place }: Notice): TabId {
  return place === null ? "yard" : TAB_OF_PLACE[place];
}
