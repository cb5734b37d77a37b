import type { CellRange, StopListening } from "../workbook/port.ts";

/** What a cell has to say beyond its value. */
export interface CellWords {
  sentenceAt(range: CellRange): string | null;
  noteAt(range: CellRange): string | null;
}

export interface WordsPlaces {
  /** A line under the grid, for the selected cell. */
  readonly line: HTMLElement;
  /** Where the pointer moves over cells. */
  readonly grid: HTMLElement;
}

export interface CellEvents {
  onSelectionChanged(listener: (selection: CellRange) => void): StopListening;
  onCellsChanged(listener: () => void): StopListening;
  /** Somebody tried to type where nothing is typed. */
  onRefused(listener: (sentence: string) => void): StopListening;
  onCellHovered(listener: (cell: CellRange) => void): StopListening;
}

/** Long enough to be read: the Enter that ends a word typed in vain moves on to another cell. */
const REFUSAL_STAYS_MILLISECONDS = 8000;

/** Shows why the selected cell is in error, or its note, under the grid; and a note beside the pointer when it is pointed at. */
export function showCellWords(words: CellWords, events: CellEvents, places: WordsPlaces): void {
  let selected: CellRange | null = null;
  let refusal: ReturnType<typeof setTimeout> | null = null;
  const showLine = (): void => {
    if (refusal !== null) return;
    const sentence = selected && words.sentenceAt(selected);
    const note = selected && words.noteAt(selected);
    places.line.classList.toggle("error", sentence !== null);
    const text = sentence ?? note ?? "";
    if (places.line.textContent !== text) places.line.textContent = text;
  };
  events.onSelectionChanged((selection) => {
    selected = selection;
    showLine();
  });
  events.onCellsChanged(showLine);
  events.onRefused((sentence) => {
    if (refusal !== null) clearTimeout(refusal);
    refusal = setTimeout(() => {
      refusal = null;
      showLine();
    }, REFUSAL_STAYS_MILLISECONDS);
    places.line.classList.add("error");
    places.line.textContent = sentence;
  });

  const callout = document.createElement("div");
  callout.className = "cell-callout";
  callout.setAttribute("aria-hidden", "true");
  callout.hidden = true;
  document.body.append(callout);
  let pointer = { x: 0, y: 0 };
  places.grid.addEventListener("pointermove", (event) => {
    pointer = { x: event.clientX, y: event.clientY };
  });
  for (const type of ["pointerleave", "pointerdown", "wheel"] as const) {
    places.grid.addEventListener(type, () => {
      callout.hidden = true;
    });
  }
  events.onCellHovered((cell) => {
    // The grid itself shows the sentence of an error that is pointed at.
    const note = words.noteAt(cell);
    callout.hidden = note === null;
    if (note === null) return;
    callout.textContent = note;
    callout.style.left = `${Math.min(pointer.x + 14, window.innerWidth - 340)}px`;
    callout.style.top = `${pointer.y + 18}px`;
  });
}
