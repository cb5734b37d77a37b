import type { ViewProps } from "../view.ts";

/** What each part of the dig day is handed beside the view: the day it is about, and who writes. */
export interface DigDayPart extends ViewProps {
  readonly date: number;
  readonly by: string;
}
