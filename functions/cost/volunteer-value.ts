/**
 * In-kind value of volunteers' hours.
 *
 *   value = hours x rate an hour
 *
 * Source  Definition. The rate is the user's own, of the year the hours were worked; national values to 2022 are printed
 *         yearly (volunteer-hour).
 * Domain  hours, ratePerHour >= 0.
 * Limits  Funders differ in what rate they take, and some cap it.
 */
export function inKindValue(hours: number, ratePerHour: number): number {
  return hours * ratePerHour;
}
