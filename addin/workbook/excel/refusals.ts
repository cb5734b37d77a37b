import { WorkbookRefused } from "../port.ts";

/** What Excel refused and what a person can do about it, by the code of Excel's error. */
const SENTENCES: ReadonlyMap<string, string> = new Map([
  ["InvalidOperationInCellEditMode", "Excel is waiting for a cell that is being edited. Press Enter or Esc in the sheet, then try again."],
  ["WriteNotSupportedWhenModalDialogOpen", "Excel is waiting for an answer in a dialog. Close it, then try again."],
  ["ConnectionFailure", "Excel did not answer. Check the connection, then try again."],
  ["Timeout", "Excel did not answer in time. Try again in a moment."],
  ["InvalidOrTimedOutSession", "Excel closed this workbook's session. Reload the workbook, then try again."],
  ["ActivityLimitReached", "Excel is busy with earlier changes. Try again in a moment."],
  ["InsertDeleteConflict", "Rows or columns were moved at the same moment. Try again."],
  ["MergedRangeConflict", "The cells to write to are merged. Unmerge them, then try again."],
  ["RequestPayloadSizeLimitExceeded", "This is more than Excel takes at once. Write fewer rows at a time."],
  ["ResponsePayloadSizeLimitExceeded", "This is more than Excel gives at once. Read fewer rows at a time."],
]);

/** Excel's code for what went wrong, or null for an error that is not Excel's. */
export function codeOf(error: unknown): string | null {
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : null;
}

export function refusal(code: string): WorkbookRefused | null {
  const sentence = SENTENCES.get(code);
  return sentence === undefined ? null : new WorkbookRefused(sentence);
}

export function protectedRefusal(sheets: readonly string[]): WorkbookRefused {
  const [first, ...others] = sheets.map((sheet) => `"${sheet}"`);
  if (first === undefined)
    return new WorkbookRefused("This workbook is protected or read-only. Unprotect it on the Review tab, then try again.");
  const which = others.length === 0 ? `The sheet ${first} is` : `The sheets ${[first, ...others].join(", ")} are`;
  return new WorkbookRefused(`${which} protected. Unprotect on the Review tab, then try again.`);
}
