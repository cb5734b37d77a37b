/** Every word of the program's Workbook view. */
export const workbookText = {
  check: {
    title: "Check the workbook",
    explain: "Looks for sheets, headings, settings and formulas that are gone or changed, and for Site IDs that do not fit.",
    button: "Check now",
    checking: "Checking the workbook",
    nothing: "Nothing to put right: every sheet, heading, setting and formula is as it should be.",
    found: (count: number) => (count === 1 ? "1 thing to put right" : `${count} things to put right`),
    repair: (count: number) => (count === 1 ? "Do this repair" : `Do these ${count} repairs`),
    willDo: "The repair will do this:",
    byHand: "Only you can decide this one.",
    done: (count: number) => (count === 1 ? "1 repair was made." : `${count} repairs were made.`),
    next: "One repair can uncover the next: the list above shows what is left.",
  },
  changes: {
    title: "Latest changes",
    explain:
      "What the pane wrote, the newest first. Undo puts the cells back, unless they have changed since. What you type into cells yourself is undone in the spreadsheet.",
    none: "The pane has not written anything yet.",
    undo: "Undo",
    undone: (what: string) => `Undone: ${what}`,
    cells: (count: number) => (count === 1 ? "1 cell" : `${count} cells`),
    nobody: "no name given",
  },
  support: "Support, terms and licences",
} as const;
