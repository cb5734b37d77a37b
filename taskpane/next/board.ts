import type { Notice, NoticeKind, Urgency } from "../../addin/actions/what-is-next.ts";
import { TAB_OF_PLACE } from "../yard/next-steps.ts";
import type { TabId } from "../tab-ids.ts";
import { matches } from "../yard-picker.tsx";

/** The lines of one urgency, in the order of the board. */
export interface BoardGroup {
  readonly urgency: Urgency;
  readonly notices: readonly Notice[];
}

/** What the board shows of one kind, or of all, for the yards that match every word typed. */
export function boardOf(notices: readonly Notice[], kind: NoticeKind | null, search: string): readonly BoardGroup[] {
  const shown = notices.filter((notice) => (kind === null || notice.kind === kind) && (notice.yard === null ? search.trim() === "" : matches(notice.yard, search)));
  const groups = new Map<Urgency, Notice[]>();
  for (const notice of shown) groups.set(notice.urgency, [...(groups.get(notice.urgency) ?? []), notice]);
  return [...groups].map(([urgency, lines]) => ({ urgency, notices: lines }));
}

/** Where a line is put right. A line of the whole program has no such place in a yard. */
export function tabOf({ place }: Notice): TabId {
  return place === null ? "yard" : TAB_OF_PLACE[place];
}
