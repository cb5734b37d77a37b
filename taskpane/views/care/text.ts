/** The words of the care of a finished garden. What is asked at a look comes with the checklist. */
export const careText = {
  title: "Care",
  kinds: {
    watering: "Watering",
    "1 week": "Look after a week",
    "1 month": "Look after a storm, first months",
    "1 year": "Look after a year",
    yearly: "Yearly look",
    "re-test": "Test the hole again",
    repair: "Repair",
  },

  due: {
    title: "Due",
    none: "Nothing is due: no look is planned.",
    allDone: "Every look that was planned is done.",
    overdue: (days: number) => (days === 1 ? "overdue by a day" : `overdue by ${days} days`),
    today: "due today",
    soon: (days: number) => (days === 1 ? "due tomorrow" : `due in ${days} days`),
    noDay: "no day set",
    record: "Record",
    recordLabel: (kind: string, due: string) => `Record: ${kind}, ${due}`,
    close: "Close",
  },

  plan: {
    title: "Plan the looks",
    from: "Planted or finished on",
    fromMissing: "Planted or finished on is missing.",
    explain: "Counted from that day. These rows will be written to Follow-ups; each look then adds the one after it.",
    save: (rows: number) => (rows === 1 ? "Write 1 row to Follow-ups" : `Write ${rows} rows to Follow-ups`),
    done: "The looks were written to Follow-ups.",
  },

  look: {
    done: "Day of the look",
    doneMissing: "Day of the look is missing.",
    by: "Your name",
    byHint: "Kept on this device and written beside each answer.",
    keys: "On a choice or a reading, P, W and F choose pass, watch and fail, N not seen, and the next item has the focus. Enter after a reading goes on too.",
    chooseFirst: "Choose one. What was not looked at is not seen, never a pass.",
    notSeen: "Not seen",
    note: "Note, if any",
    noteOfLook: "Note on the whole look, if any",
    missing: (label: string) => `${label} is missing.`,
    repair: "To do",
    repairBy: "Put right by",
    repairByMissing: "Put right by must be a day.",
    willWrite: "This will be written",
    willFind: "Finding",
    willDo: (due: string, kind: string, action: string | null) => `${due}: ${kind}${action === null ? "" : `. ${action}`}`,
    answerRest: "Answer every item to see what will be written.",
    save: "Write the look",
    saved: (kind: string) => `${kind}: written to Follow-ups and Visits.`,
  },

  water: {
    title: "Watering",
    sentence: (amount: string, depth: string, area: string, from: string) =>
      `Water the garden with about ${amount} a week (${depth} over ${area}, ${from}), less that week's rain, until the plants are established: through the first season (common practice).`,
    from: { "as-built": "the garden as built", design: "the garden as designed" },
    gallons: "gallons",
    liters: "liters",
    unknown: "How much water it takes is worked out once the garden is measured or designed.",
  },

  mulch: {
    title: "Mulch check",
    depth: "Mulch depth",
    hint: "Push a finger or a stick through to the soil, in several places.",
    enough: (wanted: string) => `Deep enough: the program wants ${wanted}.`,
    tooDeep: (most: string) => `Over ${most} keeps rain and air from the soil (common practice): spread it thinner.`,
    topUp: (volume: string, wanted: string, area: string) => `Bring ${volume} to make it ${wanted} over ${area}, clear of the stems.`,
    noArea: "The garden has no area yet, so the mulch to bring is not known.",
  },

  history: {
    title: "What was found",
    none: "No look is on record yet.",
    by: (name: string) => `by ${name}`,
  },
} as const;
