import type { Choice, DifferenceKind } from "../../../addin/actions/field-copy/merge-rows.ts";

const rows = (count: number) => (count === 1 ? "1 row" : `${count} rows`);

/** Every word of taking yards along and bringing them back. */
export const fieldCopyText = {
  title: "A copy for the field",
  explain:
    "Takes chosen yards along in one small file, for a device without this workbook, and puts what was entered there back into this one.",
  take: "Take yards along",
  bring: "Bring back",
  close: "Close",
  taking: {
    which: "Yards to take along",
    all: "All yards",
    button: (count: number) => (count === 1 ? "Take 1 yard along" : `Take ${count} yards along`),
    chooseFirst: "Choose a yard first.",
    personal:
      "The file holds what stands on your sheets about these yards, their owners' telephones and notes too: give it to nobody else.",
    working: "Making the file",
    failed: (reason: string) => `The file was not made: ${reason}`,
    saved: (fileName: string) =>
      `${fileName} was offered to this window to save. On the other device open it in Excel with the add-in, or in the page without Excel by Open. Save it there, and bring it back here. Rain records and pictures stay here.`,
    fallback: "Nothing saved? Some windows of Excel, on the web and on Mac above all, save no files and say nothing about it.",
  },
  bringing: {
    file: "The copy that comes back (.xlsx)",
    reading: (name: string) => `Reading ${name}`,
    tooLarge: "The file is larger than 50 MB.",
    takenOn: (day: string) =>
      `Taken along on ${day}. Nothing is written until you choose Bring back below. Before you go on with these yards elsewhere, take them along anew.`,
    same: "The copy holds nothing that is not here already.",
    left: "What stays in the copy",
    sharedId: (siteId: string) => `${siteId} is a new yard on both sides`,
    sharedHint: (home: string, copy: string) => `Here: ${home}. In the copy: ${copy}.`,
    sharedAnswers: { same: "The same yard", another: "Another yard: give it a new ID" },
    include: "Bring this back",
    ofProgram: "Of no yard: rules, prices, plants",
    here: "Here",
    inCopy: "In the copy",
    nothing: "nothing",
    kinds: {
      new: "New",
      changed: "Changed in the copy",
      deleted: "Deleted in the copy",
      "cell differs": "Changed on both sides",
      "rows differ": "Entered on both sides",
      "deleted here": "Deleted here, changed in the copy",
      "deleted in the copy": "Deleted in the copy, changed here",
    } satisfies Record<DifferenceKind, string>,
    was: (value: string) => `was ${value}`,
    choices: {
      deleted: { home: "Keep it", copy: "Delete it" },
      "cell differs": { home: "As it is here", copy: "As in the copy" },
      "rows differ": { home: "As it is here", copy: "As in the copy", both: "Keep both" },
      "deleted here": { home: "Leave it deleted", copy: "Take the copy's" },
      "deleted in the copy": { home: "Keep it", copy: "Delete it" },
    } satisfies Partial<Record<DifferenceKind, Partial<Record<Choice, string>>>>,
    allHome: "All as here",
    allCopy: "All as in the copy",
    counts: (changes: number, questions: number) =>
      [
        ...(changes === 0 ? [] : [changes === 1 ? "1 change" : `${changes} changes`]),
        ...(questions === 0 ? [] : [questions === 1 ? "1 to decide" : `${questions} to decide`]),
      ].join(", "),
    newRows: (sheet: string, count: number) => `${sheet}: ${rows(count)} new`,
    changedRows: (sheet: string, count: number) => `${sheet}: ${rows(count)} changed`,
    more: (count: number) => `and ${count} more`,
    open: (count: number) => (count === 1 ? "1 question is open: decide it above." : `${count} questions are open: decide them above.`),
    button: (yards: number) => (yards === 1 ? "Bring 1 yard back" : `Bring ${yards} yards back`),
    buttonProgram: "Bring it back",
    done: (yards: number) => (yards === 1 ? "1 yard was brought back." : `${yards} yards were brought back.`),
    doneProgram: "The program's lists were brought back.",
  },
} as const;
