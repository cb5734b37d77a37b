import { missing, type CellError } from "./cell.ts";

/**
 * Rain in steps, as typed. Blanks below the last rain end the series; one inside it might be a dry step or a reading
 * that was lost, so it is asked about and never taken for 0.
 */
export function rainSeries(typed: readonly (number | null)[]): readonly number[] | CellError {
  const rains: number[] = [];
  for (const rain of withoutTrailingBlanks(typed)) {
    if (rain === null) return missing(`Rain ${rains.length + 1} is blank: write 0 where it stayed dry.`);
    rains.push(rain);
  }
  return rains;
}

function withoutTrailingBlanks(typed: readonly (number | null)[]): readonly (number | null)[] {
  let length = typed.length;
  while (typed[length - 1] === null) length -= 1;
  return typed.slice(0, length);
}
