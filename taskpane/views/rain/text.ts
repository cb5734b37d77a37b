const rows = (count: number) => (count === 1 ? "1 row" : `${count.toLocaleString("en-US")} rows`);
const lines = (count: number) => (count === 1 ? "1 line" : `${count.toLocaleString("en-US")} lines`);
const steps = (count: number, step: string) => (count === 1 ? `1 ${step}` : `${count.toLocaleString("en-US")} ${step}s`);

const has = (count: number) => (count === 1 ? "has" : "have");
const isOrAre = (count: number) => (count === 1 ? "is" : "are");

/** Every word of the Rain view. */
export const rainText = {
  sheet: {
    title: "The Rain record",
    explain: "Years of rain, one row a reading, for SOAK.LONGTERM, SOAK.AREAFORCAPTURE and the capture curve on the Basin tab.",
    reading: "Reading the Rain record",
    none: "There is no rain on the sheet Rain record yet. Import a gauge's file below.",
    facts: { rows: "Readings", span: "From and to", step: "Step", total: "Rain in all", yearly: "In a year", notMeasured: "Not measured" },
    span: (first: string, last: string) => `${first} to ${last}`,
    unknown: "not known",
    formula: "For formulas",
    formulaWords: (reference: string, hours: string, unit: string) => `Depths ${reference}, ${hours} in a step, in ${unit}`,
    goTo: "Go to the cell",
    faults: {
      "bad moment": (count: number) => `${rows(count)} ${has(count)} no date in Began.`,
      "uneven steps": (count: number) =>
        `${rows(count)} ${count === 1 ? "does" : "do"} not follow the row above by the same step. LONGTERM takes every step alike.`,
      "bad depth": (count: number) => `${rows(count)} ${has(count)} no depth of 0 or more in Rain depth.`,
      "blank depth": (count: number) =>
        `${rows(count)} ${has(count)} a blank depth: not measured. Write 0 where it stayed dry; LONGTERM does not guess.`,
      "no unit": (count: number) => `${rows(count)} ${count === 1 ? "does" : "do"} not say in or mm in Unit.`,
      "two units": (count: number) => `${rows(count)} ${has(count)} another unit than the first row. LONGTERM needs one unit.`,
    },
  },

  source: {
    title: "Import a gauge's file",
    explain:
      "A CSV with a date column and a depth column, daily or hourly, in inches or millimeters. Nothing is written before you have seen what was found.",
    file: "Open a CSV file",
    paste: "Or paste its lines",
    clear: "Clear",
    name: "Gauge",
    nameHint: "Written beside every reading, such as Mill roof. May stay blank.",
    opening: (name: string) => `Reading ${name}`,
    tooLarge: (megabytes: number) =>
      `The file is larger than ${megabytes} MB, which is more than a sheet can take. Cut it into years first.`,
    unreadable: "The file could not be opened. Save it as CSV, in UTF-8, and open it again.",
  },

  ask: {
    title: "To decide",
    columns: {
      date: "Column of the date",
      time: "Column of the time",
      depth: "Column of the rain depth",
      noTime: "None: the date column holds the time",
      choose: "Choose a column",
    },
    unit: { label: "Unit of the depths", hint: "The heading does not say it. Look at the source: an inch is 25.4 mm.", in: "in", mm: "mm" },
    dateOrder: {
      label: "Which comes first in the dates?",
      hint: (example: string) => `${example} can be read both ways.`,
      "day first": "Day",
      "month first": "Month",
    },
    timesSay: {
      label: "A time says when its step",
      began: "Began",
      ended: "Ended",
      hint: "A gauge read in the morning for the day before: Ended.",
    },
    clock: {
      label: "The gauge's clock",
      summer: "Follows summer time",
      standard: "Standard time all year",
      hint: "An hour is missing in spring and one is there twice in autumn.",
    },
    repeated: {
      label: "Where a time stands twice with different depths",
      first: "Keep the first",
      last: "Keep the last",
      sum: "Add them up",
    },
    notMeasured: {
      label: "Readings without a depth",
      blank: "Leave blank",
      dry: "Write 0",
      blankMeaning: "LONGTERM then asks for them",
      dryMeaning: "Taken as dry, with a note",
    },
    noReading: {
      label: "Steps without a line",
      blank: "Leave blank",
      dry: "Write 0",
      blankMeaning: "Nobody measured",
      dryMeaning: "It stayed dry, with a note",
    },
    kept: {
      label: "Rows to write",
      "every step": "Every step",
      "daily totals": "Daily totals",
      hint: (all: string, days: string) => `${all}, or ${days}. Long steps spread a burst evenly and hide some of its overflow.`,
    },
    open: "Answer what is above, and the readings can be written.",
  },

  found: {
    title: "What was found",
    lines: (count: number) => `${lines(count)} under the headings.`,
    noHeadings: "There are no headings: the first line is taken for a reading.",
    series: (count: number, step: string, first: string, last: string) =>
      `${steps(count, step)} without a break, from ${first} to ${last}.`,
    total: (total: string, largest: string) => `${total} of rain in all; the most in one step is ${largest}.`,
    yearly: (yearly: string) => `That is ${yearly}.`,
    unitRead: (unit: string, heading: string) => `Unit: ${unit}, as the heading "${heading}" says.`,
    dateOrder: (first: "day" | "month") => `Dates are written with the ${first} first: some have a number over 12 there.`,
    sorted: "The lines were not in the order of their times, and were sorted.",
    comma: "Depths are written with a decimal comma.",
    offsets: (offset: string) => `Times carry their distance from Greenwich and are kept in standard time, ${offset}.`,
    traces: (count: number) =>
      `${count === 1 ? "1 trace" : `${count.toLocaleString("en-US")} traces`} ${isOrAre(count)} written as 0 with the note "trace".`,
    codes: (count: number, code: string) =>
      `${lines(count)} ${code === "" ? "with a blank depth" : `with "${code}" for a depth`}: not measured.`,
    badDepths: (count: number, some: string) => `${lines(count)} with a depth that cannot be read, taken as not measured: ${some}.`,
    tooWide: (count: number, some: string) =>
      `${lines(count)} with more cells than headings, taken as not measured: ${some}. A decimal comma needs semicolons between the columns.`,
    badDates: (count: number, some: string) => `${lines(count)} without a date that can be read, left out: ${some}.`,
    line: (line: number, words: string) => `line ${line} "${words}"`,
    again: (count: number) =>
      `${lines(count)} ${count === 1 ? "says again what another says, and counts" : "say again what others say, and count"} once.`,
    clashes: (count: number, some: string) =>
      `${count === 1 ? "1 time stands" : `${count} times stand`} twice with different depths: ${some}.`,
    clash: (moment: string, depths: string) => `${moment} (${depths})`,
    noReading: (count: number, step: string) => `${steps(count, step)} ${has(count)} no line in the file.`,
    clockSummer: (skipped: number, doubled: number) =>
      `The clock follows summer time (${steps(skipped, "hour")} skipped, ${doubled} told twice); readings are kept in standard time, and none is lost.`,
    clockStandard: "The clock is taken as standard time all year.",
  },

  unlikely: {
    "looks like mm": (yearly: string) => `${yearly} inches of rain a year is more than almost any town gets. Are these millimeters?`,
    "looks like inches": (yearly: string) => `${yearly} mm of rain a year is a desert. Are these inches?`,
    "more than ever measured": (largest: string, within: string, most: string) =>
      `One reading is ${largest}: more than was ever measured in ${within === "hour" ? "an hour" : "a day"} anywhere, ${most}.`,
  },

  refusal: {
    "no dates":
      "Most lines have no date that can be read. Write dates as 2026-05-04, with four digits for the year, and choose the column that holds them.",
    "one reading": "One reading alone has no step. A record needs two or more.",
    "both orders": "Some dates can only be read with the day first and some only with the month first. Write them all as 2026-05-04.",
    "off the step": (count: number, step: string, some: string) =>
      `${lines(count)} ${count === 1 ? "does" : "do"} not fall on the record's step of ${step}: line ${some}. Put their times right, or leave them out.`,
    "too long": (readings: number, most: number) => `That would be ${rows(readings)}, and the sheet takes ${most.toLocaleString("en-US")}.`,
    days: "Daily totals would fit.",
    useDays: "Keep daily totals",
  },

  write: {
    title: "Write to the Rain record",
    present: (count: number, span: string) => `The sheet holds ${rows(count)}, ${span}.`,
    way: "What becomes of them?",
    replace: "Replace",
    replaceMeaning: "The new readings take their place. Undo brings the old ones back.",
    add: "Add below",
    addMeaning: (newer: number) => `${rows(newer)} that begin later`,
    cannotAdd: {
      step: "They cannot be added below: the record on the sheet has another step.",
      unit: "They cannot be added below: the record on the sheet is in another unit.",
      "nothing newer": "They cannot be added below: none of them begins after the record's last reading.",
      "not in step": "They cannot be added below: their times of day do not fall on the record's steps.",
      "too long": "They cannot be added below: the sheet could not take them all.",
    },
    slow: "So many rows take a minute or more to write, in which the page answers only now and then. The workbook is slower to open afterwards.",
    button: (count: number) => `Write ${rows(count)}`,
    choose: "Nothing was written: say first what becomes of the readings on the sheet.",
    done: (count: number) => `${rows(count)} ${count === 1 ? "was" : "were"} written to Rain record.`,
  },

  stepNames: { day: "day", hour: "hour", minutes: (minutes: string) => `step of ${minutes} min`, other: "step" },
} as const;
