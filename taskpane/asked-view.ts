import type { StopListening } from "../addin/workbook/port.ts";

/** What a button outside the pane can ask the pane to show. */
export type AskedView = "visits" | "workbook" | "working";

let waiting: AskedView | null = null;
let listener: ((view: AskedView) => void) | null = null;

/** Asked before the pane is there, the view waits for it. */
export function askForView(view: AskedView): void {
  waiting = view;
  deliver();
}

export function onViewAsked(next: (view: AskedView) => void): StopListening {
  listener = next;
  deliver();
  return () => {
    if (listener === next) listener = null;
  };
}

function deliver(): void {
  if (listener === null || waiting === null) return;
  const view = waiting;
  waiting = null;
  listener(view);
}
