/** When a yard's tested rate should not be relied on, and why, in words. */

export interface TestedHole {
  readonly name: string;
  /** Null: not recorded. */
  readonly soaked: boolean | null;
  /** SOAK.HOLETEST's answer for the last interval that had water; null where it gives none. */
  readonly steady: boolean | null;
}

export interface RetestFacts {
  readonly holes: readonly TestedHole[];
  /** Highest tested rate over the lowest; null while fewer than two holes have a rate. */
  readonly spread: number | null;
  /** A spread over this is wide. */
  readonly widestSpread: number;
  /** Follow-ups that found water standing longer than LONGEST_PONDING_HOURS after a storm. */
  readonly longPondings: number;
  /** The dig met another soil than the test hole had. */
  readonly soilDiffers: boolean;
  /** The yard was graded, built on or driven over since. */
  readonly regraded: boolean;
}

/** Common practice, read in an inspection sheet of Edina, Minnesota: water that stands longer than this has not soaked in. */
export const LONGEST_PONDING_HOURS = 48;

/** Common practice, no source: once may be a great storm, twice is the soil. */
export const LONG_PONDINGS_TO_RETEST = 2;

/**
 * The reasons to test again; none where there is no test yet, because that is a first test and no second.
 *
 * Source  Common practice, no source: no pre-soak, a single hole, readings that had not settled, holes that differ
 *         widely, ponding over 48 h twice, another soil at the dig, and ground that was moved or packed.
 */
export function retestReasons(facts: RetestFacts): readonly string[] {
  const { holes, spread, widestSpread, longPondings, soilDiffers, regraded } = facts;
  if (holes.length === 0) return [];
  const reasons: (string | false)[] = [
    ...faultsOfHoles(holes),
    holes.length === 1 && "Only one hole was tested: test at least two.",
    spread !== null &&
      spread > widestSpread &&
      `The highest rate is more than ${widestSpread} times the lowest: the yard may hold two soils.`,
    longPondings >= LONG_PONDINGS_TO_RETEST && `Water stood more than ${LONGEST_PONDING_HOURS} hours after a storm, ${longPondings} times.`,
    soilDiffers && "The dig met another soil than the test hole.",
    regraded && "The ground was graded, built on or driven over since the test.",
  ];
  return reasons.filter((reason) => reason !== false);
}

/** What is wrong with which hole; none where each was soaked, steady and gives a rate. */
export function faultsOfHoles(holes: readonly TestedHole[]): readonly string[] {
  const named = (some: readonly TestedHole[]) => `${some.length === 1 ? "Hole" : "Holes"} ${some.map(({ name }) => name).join(", ")}`;
  const dry = holes.filter(({ soaked }) => soaked === false);
  const unrecorded = holes.filter(({ soaked }) => soaked === null);
  const unsteady = holes.filter(({ steady }) => steady === false);
  const without = holes.filter(({ steady }) => steady === null);
  const faults: (string | false)[] = [
    dry.length > 0 && `${named(dry)}: not soaked first, so the rate may be too high.`,
    unrecorded.length > 0 && `${named(unrecorded)}: not recorded whether the soil was soaked first.`,
    unsteady.length > 0 && `${named(unsteady)}: the rate had not settled at the last reading.`,
    without.length > 0 && `${named(without)}: the readings give no rate.`,
  ];
  return faults.filter((fault) => fault !== false);
}
