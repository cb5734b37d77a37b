import { version } from "./about.ts";
import type { WorksheetFunction } from "./worksheet-function.ts";

/** Every worksheet function, in the order of the function reference. Names and argument order never change. */
export const catalogue: readonly WorksheetFunction[] = [version];
