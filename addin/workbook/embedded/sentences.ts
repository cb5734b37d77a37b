import { isCellError, type Cell, type CellError } from "../../../functions/worksheet/calling/cell.ts";

export interface CellPlace {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

/** What there is to say about an error that a formula took from another cell. */
export const PASSED_ON = "The error comes from a cell that this formula reads.";

interface Explanation {
  readonly place: CellPlace;
  recalculation: number;
  readonly errors: Map<string, CellError>;
}

/**
 * Why a cell shows an error, in words.
 *
 * The grid can only show a code such as #VALUE!, so what a function says about its error is kept here, under the
 * cell that holds the formula and the offset of the cell it spilled to.
 */
export class CellSentences {
  readonly #explanations = new Map<string, Explanation>();
  #recalculation = 0;

  /** A recalculation starts: what a formula says from now on replaces what it said before. */
  recalculationStarts(): void {
    this.#recalculation += 1;
  }

  forgetAll(): void {
    this.#explanations.clear();
  }

  /** One function of the formula at `place` answered `rows`. */
  remember(place: CellPlace, rows: readonly (readonly Cell[])[]): void {
    const explanation = this.#currentExplanation(place);
    rows.forEach((row, down) => {
      row.forEach((cell, across) => {
        const offset = `${down},${across}`;
        if (!isCellError(cell)) explanation.errors.delete(offset);
        else if (cell.sentence !== "") explanation.errors.set(offset, cell);
        // An error that only passes through may have been explained by the function inside that made it.
        else if (explanation.errors.get(offset)?.code !== cell.code) explanation.errors.set(offset, { ...cell, sentence: PASSED_ON });
      });
    });
  }

  /** The sentence behind the error code that the cell shows, or null. */
  at(place: CellPlace, shownCode: string): string | null {
    return this.#ownSentence(place, shownCode) ?? this.#spilledSentence(place, shownCode);
  }

  #ownSentence(place: CellPlace, shownCode: string): string | null {
    const errors = this.#explanations.get(keyOf(place))?.errors;
    if (!errors) return null;
    const first = errors.get("0,0");
    if (first?.code === shownCode) return first.sentence;
    // A formula may pick one cell out of a function's answer, with INDEX for example.
    return [...errors.values()].find((error) => error.code === shownCode)?.sentence ?? null;
  }

  #spilledSentence(place: CellPlace, shownCode: string): string | null {
    for (const explanation of this.#explanations.values()) {
      if (explanation.place.sheetId !== place.sheetId) continue;
      const offset = `${place.row - explanation.place.row},${place.column - explanation.place.column}`;
      const error = explanation.errors.get(offset);
      if (error?.code === shownCode) return error.sentence;
    }
    return null;
  }

  #currentExplanation(place: CellPlace): Explanation {
    const key = keyOf(place);
    const known = this.#explanations.get(key);
    if (known && known.recalculation === this.#recalculation) return known;
    const fresh = { place, recalculation: this.#recalculation, errors: new Map<string, CellError>() };
    this.#explanations.set(key, fresh);
    return fresh;
  }
}

function keyOf(place: CellPlace): string {
  return `${place.sheetId}!${place.row},${place.column}`;
}
