/** A one-call ticket as a center or a statute prints it: asked for in business hours, and the first lawful day. */
export interface PrintedTicket {
  readonly place: string;
  readonly asked: string;
  readonly holidays?: readonly string[];
  /** The conservative count of the state's row. */
  readonly businessDays: number;
  readonly lawful: string;
  /** Where the whole day is not lawful, or is no business day, the count is later: never earlier. */
  readonly counted?: string;
}

/**
 * Twelve printed examples, read in stored public copies: Nebraska one-call center, information center (since 2019-08-13);
 * Kansas center, call timeline; North Dakota center, for Labor Day of 2018; Idaho center, guide; South Carolina center,
 * notice calendar; an electric cooperative of Indiana; Texas Utilities Code 251.151. Weekdays are as printed; calendar
 * dates are filled in with March 2026, but for North Dakota's.
 */
export const PRINTED_TICKETS: readonly PrintedTicket[] = [
  { place: "Nebraska", asked: "2026-03-02", businessDays: 3, lawful: "2026-03-05" },
  { place: "Kansas", asked: "2026-03-02", businessDays: 3, lawful: "2026-03-05" },
  { place: "Kansas", asked: "2026-03-05", businessDays: 3, lawful: "2026-03-10" },
  { place: "Kansas", asked: "2026-03-07", businessDays: 3, lawful: "2026-03-12" },
  { place: "Kansas", asked: "2026-03-08", businessDays: 3, lawful: "2026-03-12" },
  { place: "North Dakota", asked: "2018-08-31", holidays: ["2018-09-03"], businessDays: 3, lawful: "2018-09-06" },
  { place: "Idaho", asked: "2026-03-02", businessDays: 3, lawful: "2026-03-05" },
  // Lawful from the Saturday on, which is no business day: the Monday is safe.
  { place: "Idaho", asked: "2026-03-04", businessDays: 3, lawful: "2026-03-07", counted: "2026-03-09" },
  { place: "Idaho", asked: "2026-03-06", businessDays: 3, lawful: "2026-03-11" },
  { place: "South Carolina", asked: "2026-03-02", businessDays: 4, lawful: "2026-03-06" },
  { place: "Indiana", asked: "2026-03-03", businessDays: 3, lawful: "2026-03-06" },
  // Lawful from 11:59 a.m. of the Tuesday, or of the Wednesday where the Monday is a holiday: the days after are lawful whole.
  { place: "Texas", asked: "2026-03-07", businessDays: 3, lawful: "2026-03-10", counted: "2026-03-12" },
  { place: "Texas", asked: "2026-03-07", holidays: ["2026-03-09"], businessDays: 3, lawful: "2026-03-11", counted: "2026-03-13" },
];
