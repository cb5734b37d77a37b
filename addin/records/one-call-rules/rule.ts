/** A state's one-call rule as it was read, beside which a typed date is held. Never the law, and never a date of its own. */
export interface OneCallRule {
  /**
   * The business day after the issue that is lawful as a whole, as SOAK.DIGDATE counts it: two full days are 3, 72 hours are 4.
   * In doubt the larger.
   */
  readonly businessDays: number;
  readonly notice: Reading;
  /** When the count starts; null where it was not read. */
  readonly countedFrom: Reading | null;
  /** How long the ticket is good for; null where it was not read. */
  readonly life: Reading | null;
  /** Where only hand tools may come, each side of a marked line; null where it was not read. */
  readonly toleranceZone: Reading | null;
  readonly sources: readonly [Source, ...Source[]];
  /** The day on which the sources were looked up. Most copies bear no day of their own. */
  readonly readOn: IsoDay;
}

export interface Reading {
  readonly says: string;
  readonly evidence: Evidence;
}

/** Read: the one-call center's own page or the law. Secondary: a utility, town, association, newspaper or summary of the law. */
export type Evidence = "read" | "secondary";

export interface Source {
  /** Page or law, with its edition where one was printed. */
  readonly named: string;
  readonly evidence: Evidence;
}

export type IsoDay = `${number}-${number}-${number}`;

export function read(says: string): Reading {
  return { says, evidence: "read" };
}

export function secondary(says: string): Reading {
  return { says, evidence: "secondary" };
}

export function from(named: string): Source {
  return { named, evidence: "read" };
}

export function by(named: string): Source {
  return { named, evidence: "secondary" };
}

/** All rows were looked up on this day, in stored public copies. */
export const READ_ON = "2026-11-29" satisfies IsoDay;
