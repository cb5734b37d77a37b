import { text } from "../text.ts";
import { partMissing, reasonOf } from "../../addin/actions/part-missing.ts";

/** Errors of the port carry a sentence a person can act on; anything else is our own fault and says so. */
export function sentenceOfError(error: unknown, written: "nothing" | "part" | "written" = "nothing"): string {
  if (error instanceof Error && SPOKEN.has(error.name))
    return written === "part" ? `${error.message} ${text.errors.partWritten}` : error.message;
  const unexpected = partMissing(error) ?? text.errors.unexpected(reasonOf(error));
  if (written === "written") return unexpected;
  return `${unexpected} ${written === "part" ? text.errors.partWritten : text.errors.nothingWritten}`;
}

export function isSheetMissing(error: unknown): boolean {
  return error instanceof Error && error.name === "SheetMissing";
}

/** By name: the pane takes only types from the port, and classes differ between bundles. */
const SPOKEN: ReadonlySet<string> = new Set(["WorkbookRefused", "SheetMissing", "SheetExists"]);
