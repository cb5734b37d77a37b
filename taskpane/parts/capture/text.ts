/** Every word of the capture curve. Numbers arrive in the yard's units. */
export const captureText = {
  title: "Years of rain: captured share",
  explain:
    "What gardens of other sizes, alike in all else, would capture of the water of the workbook's Rain record: runoff, and rain on the garden.",
  noRain: "There is no rain on the sheet Rain record yet. Import a gauge's file on the program's Rain tab (All yards, Rain).",
  faulty: "The Rain record cannot be computed from yet. The program's Rain tab (All yards, Rain) says which rows to put right.",
  dry: "It did not rain in the Rain record: there is nothing to capture.",
  noSize: "The curve is drawn when the basin has a size.",
  reading: "Reading the Rain record",
  chart: (unit: string) => `Captured share (%) by floor area (${unit})`,
  chartWords: (sentence: string) => `Chart: captured share by floor area. ${sentence} The numbers are in the table below.`,
  axis: (unit: string) => `Floor area (${unit})`,
  marks: { drafted: "D", knee: "K", tried: "T" },
  legend: { drafted: "D, circle: this draft", knee: "K, diamond: the knee", tried: "T, square: an area you try" },
  facts: {
    rain: "Rain record",
    rainWords: (years: string, yearly: string, step: string) => `${years}, ${yearly}, in steps of ${step}`,
    drafted: "This draft",
    knee: "Knee",
    noKnee: "None: the curve does not bend",
    point: (area: string, share: string) => `${area} captures ${share}`,
    overflow: "Overflow of this draft",
    overflowWords: (times: string, volume: string) => `${times} a year, ${volume} a year`,
    longest: "Longest ponding of this draft",
  },
  years: (years: string) => (years === "1" ? "1 year" : `${years} years`),
  sentence: (drafted: string, knee: string) => `This draft: ${drafted}. Knee: ${knee}.`,
  tryArea: "Area to try",
  tryAnswer: (area: string, share: string, times: string, longest: string) =>
    `${area} captures ${share}; it overflows ${times} a year and ponds ${longest} at the longest.`,
  times: (count: string) => `${count} times`,
  table: { title: "The curve as numbers", area: (unit: string) => `Floor area (${unit})`, share: "Captured (%)" },
  basis: (end: string) =>
    `The knee is the point farthest above a straight line from no garden to ${end}: from there on, area brings less than it did on average (common practice, no prices in it).`,
  ends: {
    "share wanted": (percent: string) => `the garden that captures ${percent}`,
    "contributing area": (_percent: string) => "a garden as large as what drains to it",
  },
  runoff: (share: string) =>
    `Of every rain ${share} runs off, as in the design storm; ground other than roof and paving sheds less of a small rain and more of a large one.`,
  short: (years: string) => `The record covers ${years}: 20 to 30 are advised before a design rests on it.`,
  longSteps: "Rain is spread evenly over each step, so steps longer than an hour hide bursts: more will overflow than this shows.",
} as const;
