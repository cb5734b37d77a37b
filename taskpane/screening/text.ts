/** The words of the screening view. What is asked and why comes with the checklist. */
export const screeningText = {
  overall: "This visit so far",
  progress: (answered: number, all: number) => `${answered} of ${all} steps answered`,
  localCodes: "Local codes and licensed practice decide. The limits here are your program's Rules sheet, not law.",
  verdicts: {
    pass: "Every step passes. The place can be tested.",
    refer: "Refer: ask the licensed or official person named in your program before going on.",
    stop: "Stop: do not go on at this place until this is settled.",
    "not measured": "Not finished. A step without an answer is never a pass.",
  },

  reminders: (count: number) => `Safety reminders (${count})`,
  ticketState: "One-call ticket:",

  name: "Your name",
  nameHint: "Kept on this device and written beside each answer.",

  why: "Why:",
  rule: {
    title: "Limit on the Rules sheet",
    line: (comparison: string, limit: string, ifNotMet: string) => `${comparison} ${limit}, otherwise ${ifNotMet}`,
  },
  distance: { length: "Distance", depth: "Depth" },
  drop: "Fall",
  run: "Length of the level string",
  sameUnit: "Both in the same unit, such as inches",
  slopeIs: (percent: string) => `Slope: ${percent} %`,
  note: "Note, if any",
  save: "Write the answer",
  discard: "Discard",
  unsaved: "Typed, not written yet",
  answered: (answer: string) => `Answered: ${answer}`,
  on: (date: string) => `on ${date}`,
  by: (name: string) => `by ${name}`,
  notAnswered: "Not answered yet",
  again: "A new answer counts from now on; the earlier one stays on record.",
  checkRules: "The verdict cell shows an error: check the Rules sheet and the answer on Visits.",

  done: (step: string) => `${step}: written to Visits.`,
  chooseFirst: "Choose an answer first. A blank is never a pass.",
  missing: (label: string) => `${label} is missing. A blank is not measured, never a pass.`,
} as const;
