/**
 * The deepest ponding that drains in time.
 *
 *   d = f T      (in; f in in/h, T in h)
 *
 * Source  Definition: open water falls at the design rate. The usual limit of 48 h: Los Angeles low impact development
 *         sample sheet; other places allow 12 to 72 h, so ask locally. What drains below the surface may take 96 h there.
 * Domain  designInchesPerHour >= 0, drainHours > 0.
 * Limits  Counts from a full basin, ponding alone, through the floor alone.
 */
export function deepestPondingInches(designInchesPerHour: number, drainHours: number): number {
  return designInchesPerHour * drainHours;
}

export function drainsInTime(pondingInches: number, designInchesPerHour: number, drainHours: number): boolean {
  // The hair keeps a ponding that was worked out from the same rate, in either unit, on the passing side.
  return pondingInches <= deepestPondingInches(designInchesPerHour, drainHours) * (1 + 1e-9);
}

export const USUAL_DRAIN_HOURS = 48;

/** Copy of the Wisconsin homeowner text: deeper ponds stand too long and trip people. */
export const DEEPEST_USUAL_PONDING_INCHES = 8;

/** Common practice, no source: near children at play, ponding deeper than this is fenced. */
export const FENCED_PONDING_INCHES = 12;

/** Charleston County's limit for water on the surface, the shortest that was read. */
export const SHORTEST_PUBLISHED_DRAIN_HOURS = 12;

/** The longest limit of the state manuals for water on the surface, 72 h in Washington, Virginia and Pennsylvania (from memory). */
export const LONGEST_PUBLISHED_DRAIN_HOURS = 72;

/** Los Angeles' sample sheet below grade, and the reservoir under a bed in Ontario's guide. */
export const LONGEST_PUBLISHED_EMPTYING_HOURS = 96;
