import { text } from "../text.ts";

/** Errors of the port carry a sentence a person can act on; anything else is our own fault and says so. */
export function sentenceOfError(error: unknown, written: "nothing" | "part" | "written" = "nothing"): string {
  if (error instanceof Error && SPOKEN.has(error.name))
    return written === "part" ? `${error.message} ${text.errors.partWritten}` : error.message;
  const reason = error instanceof Error ? error.message : String(error);
  const unexpected = text.errors.unexpected(reason.replace(/\.+$/, ""));
  if (written === "written") return unexpected;
  return `${unexpected} ${written === "part" ? text.errors.partWritten : text.errors.nothingWritten}`;
}

export function isSheetMissing(error: unknown): boolean {
  return error instanceof Error && error.name === "SheetMissing";
}

/** By name: the pane takes only types from the port, and classes differ between bundles. */
const SPOKEN: ReadonlySet<string> = new Set(["WorkbookRefused", "SheetMissing", "SheetExists"]);
