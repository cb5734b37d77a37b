/** A part of the window that the keyboard can be put into. */
export interface Region {
  readonly element: HTMLElement;
  /** Where its own way of taking the keyboard is not the first control in it. */
  focus?(): void;
}

const CONTROLS = "button, input, select, textarea, a[href], [tabindex='0'], fluent-button, fluent-tab";

/**
 * F6 goes on to the next part of the window and Shift+F6 back, as in Excel: inside the grid the Tab key belongs to
 * the cells, so without this the keyboard could not leave it.
 */
export function moveBetweenRegions(regions: readonly Region[]): void {
  window.addEventListener(
    "keydown",
    (event) => {
      if (event.key !== "F6") return;
      event.preventDefault();
      event.stopPropagation();
      const shown = regions.filter(({ element }) => !element.hidden);
      const present = shown.findIndex(({ element }) => element.contains(document.activeElement));
      const step = event.shiftKey ? -1 : 1;
      const next = shown.at((present + step + shown.length) % shown.length);
      if (next) enter(next);
    },
    { capture: true },
  );
}

function enter({ element, focus }: Region): void {
  if (focus) focus();
  else element.querySelector<HTMLElement>(CONTROLS)?.focus();
}
