/**
 * The smallest and the largest number of a series of any length: a column of a worksheet is longer than the list of
 * arguments that Math.min takes.
 *
 * Source  Definition.
 * Domain  At least one number; of none, smallestOf is Infinity and largestOf -Infinity.
 */
export function smallestOf(numbers: Iterable<number>): number {
  let smallest = Infinity;
  for (const number of numbers) if (number < smallest) smallest = number;
  return smallest;
}

export function largestOf(numbers: Iterable<number>): number {
  let largest = -Infinity;
  for (const number of numbers) if (number > largest) largest = number;
  return largest;
}
