/** In what order a column sorts its rows. */
import { isErrorCode, type CellValue } from "../port.ts";

interface RowValue {
  readonly row: number;
  readonly value: CellValue;
}

const byWords = new Intl.Collator("en", { numeric: true, sensitivity: "base" });

/** Numbers, then texts, then TRUE and FALSE, then errors; blanks last either way. Equal rows keep their order. */
export function inOrder<Row extends RowValue>(rows: readonly Row[], isDescending: boolean): readonly Row[] {
  const direction = isDescending ? -1 : 1;
  return [...rows].sort(({ value: one }, { value: other }) => {
    if (one === null || other === null) return Number(one === null) - Number(other === null);
    const kinds = kindOf(one) - kindOf(other);
    if (kinds !== 0) return direction * kinds;
    return direction * (typeof one === "string" ? byWords.compare(one, String(other)) : Number(one) - Number(other));
  });
}

function kindOf(value: Exclude<CellValue, null>): number {
  if (typeof value === "number") return 0;
  if (typeof value === "boolean") return 2;
  return isErrorCode(value) ? 3 : 1;
}
