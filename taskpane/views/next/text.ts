import type { NoticeKind, Urgency } from "../../../addin/actions/program/what-is-next.ts";

/** The words of what is next across the program. */
export const nextText = {
  title: "What is next",
  search: "Find a yard",
  show: "Show",
  everything: "Everything",
  kinds: {
    step: "Next steps",
    "not counted": "Not counted",
    ticket: "Tickets",
    "re-test": "Tests to repeat",
    "follow-up": "Follow-ups",
    price: "Prices",
    override: "Overrides in force",
    room: "Sheets nearly full",
  } satisfies Record<NoticeKind, string>,
  urgencies: {
    stop: "Stop",
    overdue: "Overdue",
    soon: "Soon",
    next: "Next",
    waiting: "Waiting",
    "on record": "On record",
  } satisfies Record<Urgency, string>,
  count: (shown: number, all: number) => (shown === all ? `${all} ${all === 1 ? "line" : "lines"}` : `${shown} of ${all} lines`),
  yards: (count: number) => (count === 1 ? "1 yard" : `${count} yards`),
  none: "Nothing is left to do here.",
  noMatch: "No line matches.",
  open: (siteId: string) => `Open ${siteId}: `,
  program: "Program",
  standing: {
    title: "Where yards stand, on a sheet",
    explain: "Stage, next step and days waiting of every yard on a sheet of their own, to filter, sort and pivot on.",
    upToDate: 'Sheet "Where yards stand" says the same.',
    old: (yards: number) => `Sheet "Where yards stand" is older than the records of ${yards === 1 ? "1 yard" : `${yards} yards`}.`,
    lay: "Put this on a sheet",
    anew: "Write the sheet anew",
    done: 'Sheet "Where yards stand" was written.',
  },
} as const;
