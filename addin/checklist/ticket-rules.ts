/** What a one-call center's page or a statute said when it was read. A hint to check against, never the law. */
export interface TicketRule {
  readonly state: string;
  /** How long before the dig the ticket is asked for. */
  readonly notice: string;
  /** The shortest notice as SOAK.DIGDATE counts it, one more where the days must have passed in full; null where it is not in such days. */
  readonly businessDays: number | null;
  /** How long the ticket is good for, and from when; null where it was not read. */
  readonly life: string | null;
  /** Where only hand tools may come, each side of a marked line; null where it was not read. */
  readonly handDigging: string | null;
  readonly read: string;
}

/**
 * Source  Each state's one-call center or statute as named in the row, read between 2014 and 2024; some by way of
 *         another page that quotes it. Rules change and small digs may be exempt: the program's rule stays "always call".
 */
export const TICKET_RULES: readonly TicketRule[] = [
  rule(
    "Alabama",
    "2 to 10 working days, the call day not counted",
    2,
    "20 working days from the proposed start",
    null,
    "one-call center, life of a ticket",
  ),
  rule("Alaska", "2 working days, 10 in remote places", 2, "14 working days", null, "one-call review, 2014"),
  rule("Arizona", "2 working days", 2, "15 working days", null, "one-call review, 2014, and a copy of 2019"),
  rule("Arkansas", "2 working days", 2, "20 working days; begin within 10", null, "one-call review, 2014, and a copy of 2019"),
  rule("California", "2 working days, at most 14 calendar days", 2, "28 days", null, "one-call review, 2014"),
  rule("Delaware", "2 to 10 working days", 2, null, "24 in", "one-call center"),
  rule("District of Columbia", "96 hours to 10 days", null, null, "18 in", "one-call center"),
  rule(
    "Illinois",
    "2 business days, the day of notice not counted",
    2,
    "28 days with the call day; begin within 14",
    null,
    "one-call center; commerce commission, about 2021",
  ),
  rule("Indiana", "2 full working days", 3, null, "2 ft", "a utility's page"),
  rule("Maryland", "3 business days, at most 12", 3, "12 business days after the ticket is sent", "18 in", "one-call center"),
  rule(
    "Michigan",
    "3 full business days, at most 14 days",
    4,
    "21 calendar days after the answers are due; begin within 14",
    "4 ft",
    "one-call center, questions",
  ),
  rule(
    "Minnesota",
    "48 hours without weekends and holidays, from 12:01 a.m. of the next day; white marks asked for",
    2,
    null,
    null,
    "one-call center; department of public safety, 2024",
  ),
  rule("Nebraska", "not read", null, "17 calendar days after the start; refresh by day 14", null, "one-call center, life of a ticket"),
  rule("North Carolina", "3 full working days", 4, "15 full working days; update by day 12", null, "one-call center, kinds of ticket"),
  rule(
    "Ohio",
    "48 hours without weekends and holidays",
    2,
    null,
    "18 in and the width of the line",
    "Revised Code 3781.25; notice by another page",
  ),
  rule("Oklahoma", "48 hours to 10 days without weekends and holidays", 2, null, null, "by another page"),
  rule("Oregon", "2 to 10 business days", 2, null, null, "utility coordinating association"),
  rule("Pennsylvania", "3 to 10 business days for powered equipment", 3, null, null, "one-call center, questions"),
  rule(
    "Texas",
    "marks due within 48 hours without weekends and holidays; at most 14 days before",
    2,
    "14 days near pipelines unless agreed in writing",
    null,
    "Utilities Code 251.157; 16 TAC 18.3",
  ),
  rule(
    "Virginia",
    "2 to 12 full working days, from 7 a.m. of the next working day",
    3,
    "15 full working days from the locate-by date; update by day 13",
    null,
    "one-call center, scheduling of tickets",
  ),
  rule("Washington", "2 to 10 business days, white paint first", 2, "45 days", null, "RCW 19.122.030; rain garden handbook"),
  rule("Wisconsin", "3 business days", 3, "begin within 10 calendar days of the start date", null, "Statutes 182.0175; one-call center"),
];

export function ticketRuleOf(state: string | null): TicketRule | null {
  return TICKET_RULES.find((rule) => rule.state === state) ?? null;
}

function rule(
  state: string,
  notice: string,
  businessDays: number | null,
  life: string | null,
  handDigging: string | null,
  read: string,
): TicketRule {
  return { state, notice, businessDays, life, handDigging, read };
}
