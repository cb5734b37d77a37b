import { missing, type CellError } from "./calling/cell.ts";

/**
 * Rain in steps, as typed. Blanks below the last rain end the series; one inside it might be a dry step or a reading
 * that was lost, so it is asked about and never taken for 0.
 */
export function rainSeries(typed: readonly (number | null)[]): readonly number[] | CellError {
  const rains = withoutTrailingBlanks(typed);
  const blank = rains.indexOf(null);
  return blank < 0 ? (rains as readonly number[]) : missing(`Rain ${blank + 1} is blank: write 0 where it stayed dry.`);
}

function withoutTrailingBlanks(typed: readonly (number | null)[]): readonly (number | null)[] {
  let length = typed.length;
  while (typed[length - 1] === null) length -= 1;
  return length === typed.length ? typed : typed.slice(0, length);
}
