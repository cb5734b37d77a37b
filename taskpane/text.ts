/**
 * Every word of the pane, ready for translation. Each view keeps its own in a file like this beside it:
 * yard/text.ts, visits/text.ts, hole-test/text.ts, basin/text.ts. A view writes no words anywhere else.
 */
export const text = {
  verdicts: { pass: "Pass", refer: "Refer", stop: "Stop", watch: "Watch", fail: "Fail", "not measured": "Not measured" },
  tabs: {
    label: "Views of this yard",
    yard: "Yard",
    visits: "Visits",
    "hole-test": "Hole test",
    basin: "Basin",
    planting: "Planting",
    estimate: "Estimate",
  },
  programTabs: {
    title: "Rain garden program",
    label: "Views of the program",
    yards: "Yards",
    next: "Next",
    "what-if": "What if",
    report: "Report",
    rain: "Rain",
    workbook: "Workbook",
  },
  form: { unsaved: "Typed, not written yet", discard: "Discard" },
  units: { us: "US units: ft, in", metric: "Metric units: m, mm" },

  reading: "Reading the workbook",
  readAgain: "Read the workbook again",

  setUp: {
    title: "Set up this workbook",
    explain: "This workbook has no rain garden sheets yet. These sheets will be added at the end; nothing you have is changed:",
    button: "Set up this workbook",
    done: "The sheets were added. Start by adding a yard.",
  },
  incomplete: {
    title: "Sheets are missing",
    explain: "Some of the program's sheets are here and some are not. Nothing is changed while these are missing:",
    bring: (count: number) => (count === 1 ? "Bring the sheet back" : `Bring these ${count} sheets back`),
    brought: "The sheets are back.",
    what: "Or see what else there is to put right:",
  },
  taken: {
    title: "These names are in use",
    explain:
      "This workbook was not set up by Soakbook, and has sheets of its own with names that Soakbook needs. They are not touched. Rename them, or open another workbook:",
  },
  newer: {
    title: "Set up by a newer Soakbook",
    explain:
      "A newer version of Soakbook set up this workbook. Update Soakbook before you change anything here; the sheets can still be read and typed into.",
  },

  chooseYards: {
    none: "No yard",
    chosen: (count: number) => (count === 1 ? "1 yard chosen" : `${count} yards chosen`),
  },

  picker: {
    title: "Yards",
    search: "Find a yard",
    searchHint: "By Site ID, yard or address",
    none: "No yard matches.",
    empty: "No yards yet. Add the first one.",
    count: (shown: number, all: number) => (shown === all ? (all === 1 ? "1 yard" : `${all} yards`) : `${shown} of ${all} yards`),
    change: "All yards",
    unnamed: "Yard without a name",
    follows: "Select a row of Sites in the workbook, or pick a yard here.",
  },

  addYard: {
    open: "Add a yard",
    title: "Add a yard",
    yard: "Yard",
    yardHint: "What you call it, such as Corner house",
    address: "Address",
    units: "Units of this yard",
    us: "US: ft, in",
    metric: "Metric: m, mm",
    soilGroup: "Soil group, if known",
    soilGroupHint: "A soaks fast, D slowly. From a soil survey.",
    notKnown: "Not known",
    save: "Add the yard",
    missing: "Yard is missing.",
    done: (yard: string) => `${yard} was added to Sites.`,
  },

  conflict: {
    title: "The sheet has changed",
    asked: "Nothing is written yet: the sheet changed while the form was open.",
    mine: "Write mine over it",
    sheet: "Leave the sheet as it is",
    sheetStays: "The sheet stays as it is. What you typed is still in the form.",
  },

  /** The unit is written out: "39.07 in a year" has none. */
  rainAYear: { in: (depth: string) => `${depth} inches of rain a year`, mm: (depth: string) => `${depth} mm of rain a year` },

  status: {
    writing: "Writing to the workbook",
    writingShare: (percent: number) => `Writing to the workbook: ${percent} % done`,
    close: "Close this message",
    undo: "Undo",
    undone: (what: string) => `Undone: ${what}`,
    notOnLog: (done: string, why: string) => `${done} It is not on the Change log: ${why}`,
    unfinished: (what: string) => `Not finished: ${what}`,
    /** At the next start, after a long write that the page was closed in. */
    settled: {
      write: "The page was closed while much was being written. It was taken back: nothing of it is left.",
      undo: "The page was closed while a large change was being undone. The undo was finished.",
    },
  },

  errors: {
    unexpected: (reason: string) => `Something went wrong in Soakbook: ${reason}.`,
    nothingWritten: "Nothing was written.",
    partWritten: "Part of it was written: look at the sheet before you try again.",
    showAgain: "Show the pane again",
  },

  laidOut: (sheet: string) =>
    `This window does not print, so the same stands on a sheet named ${sheet}, one page wide: print that in Excel, then delete it.`,

  sheetSlips: "Cells to put right first",
  goToCell: "Go to the cell",
  seeRepair: "See the repair",
  place: (sheet: string, row: number) => `${sheet}, row ${row}`,
} as const;
