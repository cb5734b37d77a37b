import type { CellRange } from "../../addin/workbook/port.ts";
import { Button } from "./form.tsx";
import { text } from "../text.ts";

export type GoTo = (where: CellRange) => Promise<void>;

export interface ShownSlip {
  readonly what?: string;
  readonly where: CellRange;
  readonly sentence: string;
  readonly isRepaired?: boolean;
}

/** Cells that need a person's eye, each with the way to it, or to what repairs it. */
export function SlipList({
  title,
  slips,
  goTo,
  onCheck,
}: {
  readonly title: string;
  readonly slips: readonly ShownSlip[];
  readonly goTo: GoTo;
  readonly onCheck?: () => void;
}) {
  if (slips.length === 0) return null;
  return (
    <section class="slips" aria-label={title}>
      <h2>{title}</h2>
      <ul>
        {slips.map(({ what, where, sentence, isRepaired }) => (
          <li key={`${where.sheet} ${where.row} ${where.column} ${sentence}`}>
            <p>
              <strong>{placeOf(where, what)}</strong> {sentence}
            </p>
            {isRepaired === true && onCheck !== undefined ? (
              <Button onClick={onCheck}>{text.seeRepair}</Button>
            ) : (
              <Button aria-label={`${text.goToCell}: ${placeOf(where, what)}`} onClick={() => goTo(where)}>
                {text.goToCell}
              </Button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function placeOf({ sheet, row }: CellRange, what: string | undefined): string {
  const place = text.place(sheet, row + 1);
  return what === undefined ? `${place}:` : `${what} (${place}):`;
}
