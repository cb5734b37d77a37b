import type { CellRange } from "../../addin/workbook/port.ts";
import { Button } from "./form.tsx";
import { text } from "../text.ts";

export type GoTo = (where: CellRange) => Promise<void>;

export interface ShownSlip {
  readonly what?: string;
  readonly where: CellRange;
  readonly sentence: string;
}

/** Cells that need a person's eye, each with the way to it. */
export function SlipList({ title, slips, goTo }: { readonly title: string; readonly slips: readonly ShownSlip[]; readonly goTo: GoTo }) {
  if (slips.length === 0) return null;
  return (
    <section class="slips" aria-label={title}>
      <h2>{title}</h2>
      <ul>
        {slips.map(({ what, where, sentence }) => (
          <li key={`${where.sheet} ${where.row} ${where.column} ${sentence}`}>
            <p>
              <strong>{placeOf(where, what)}</strong> {sentence}
            </p>
            <Button aria-label={`${text.goToCell}: ${placeOf(where, what)}`} onClick={() => goTo(where)}>
              {text.goToCell}
            </Button>
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
