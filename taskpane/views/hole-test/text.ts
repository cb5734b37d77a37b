import { LEAST_LIKELY_DIAMETER_INCHES } from "../../../functions/infiltration/hole-rate.ts";
import { STEADY_SHARE } from "../../../functions/infiltration/drop-rate.ts";
import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import { numberWords, quantityWords } from "../../parts/quantity-words.ts";

const depth = (inches: number, units: UnitSystem) => quantityWords("depth", fromUs("depth", inches, units), units);
const holesCounted = (holes: number) => (holes === 1 ? "one hole" : `${holes} holes`);
const percent = (share: number) => `${numberWords("percent", Math.abs(share) * 100, "us")} %`;

/** Every word of the hole test view. Numbers arrive in the yard's units. */
export const holeTestText = {
  caution: {
    title: "Before a hole is dug",
    lines: (units: UnitSystem) => [
      "Have all utilities marked first, and dig by hand. Private lines are never marked: ask the owner.",
      "Cover a hole that is left open, and keep children and animals away from it.",
      `No test during rain, within 24 hours of more than ${units === "metric" ? "13 mm" : "1/2 in"} of rain, or in frozen ground.`,
    ],
    source: "Weather: Oregon State University Extension, EM 9214. Local rules decide.",
  },

  holes: {
    choose: "Hole",
    new: "A new hole",
    named: (name: string | null, row: number) => (name === null ? `Hole in row ${row}` : `Hole ${name}`),
    /** What is wrong with which hole comes first; nobody who tested two is told to test two. */
    hint(holes: number, faults: readonly string[]) {
      if (holes === 0) return "No hole of this yard is on the sheet yet. Test at least two.";
      if (faults.length > 0) return faults.join(" ");
      return holes === 1 ? "One hole is tested: test at least one more." : `${holes} holes are tested: the yard designs with their mean.`;
    },
    running: "clock running",
  },

  fields: {
    hole: "Hole name",
    date: "Date",
    tester: "Tester",
    soaked: "Soaked first",
    soakedHint: "Fill the hole and let it empty once before the test: dry soil drinks faster than it will.",
    yes: "Yes",
    no: "No",
    holeDepth: "Hole depth",
    depthHint: "Ground to floor of the hole",
    holeDiameter: "Hole diameter",
    diameterHint: "Right across, not the radius",
    measured: "How the water is measured",
    up: "Up from the floor",
    down: "Down from a mark",
    downExplained: "I measure down from a mark: what you read is taken from the mark's height. The sheet keeps the water depth.",
    mark: "Mark above the hole's floor",
    markHint: (holeDepth: string | null) => (holeDepth === null ? "Blank: the hole's depth" : `Blank: the hole's depth, ${holeDepth}`),
    minutesOf: (reading: number) => `Minutes of reading ${reading}`,
    waterOf: (reading: number) => `Water depth of reading ${reading}`,
    downOf: (reading: number) => `Distance down of reading ${reading}`,
  },
  smallDiameter: (units: UnitSystem) =>
    `A hole under ${depth(LEAST_LIKELY_DIAMETER_INCHES, units)} across is unusual: give its diameter, not its radius.`,
  notSoaked: "Not soaked first: the rate may be too high. Fill the hole, let it empty, and test again.",
  markMissing: "Mark above the hole's floor is missing: type it, or the hole's depth.",
  belowFloor: (reading: number) => `Reading ${reading} lies below the hole's floor: the mark is not as high as what you read down.`,
  aboveHole: (reading: number) => `Reading ${reading} stands higher than the hole is deep: check the hole's depth and how you measure.`,

  clock: {
    title: "Timer",
    interval: "Read every",
    minutes: (minutes: number) => `${minutes} min`,
    start: "Start",
    startHint: "Fill the hole, type the water's depth and press Start: that is reading 1, at 0 minutes.",
    face: (face: string) => `${face} since the start`,
    next: (face: string) => `Next reading at ${face}`,
    due: (reading: number) => `Reading ${reading} is due: read the water now.`,
    waterNow: "Water depth now",
    downNow: "Distance down now",
    add: "Add reading",
    stop: "Stop the clock",
    notForTyped: "The timer starts with an empty list. For a timed test, remove the readings or take a new hole.",
  },

  readings: {
    title: "Readings",
    empty: "No readings yet. Start the timer, or type readings taken without it.",
    number: "No.",
    minutes: "Minutes",
    water: (unit: string) => `Water depth (${unit})`,
    down: (unit: string) => `Distance down (${unit})`,
    asDepth: (words: string) => `= ${words} of water`,
    add: "Type a reading",
    enter: "Enter after the last water depth begins the next reading.",
    remove: (reading: number) => `Remove reading ${reading}`,
    removeSign: "×",
    full: (room: number) => `All ${room} readings of this hole are used. Write them to the sheet and go on with a new hole.`,
  },

  charts: {
    title: "Level and rate",
    level: (unit: string) => `Water level (${unit})`,
    rate: (unit: string) => `Rate corrected for the wall (${unit})`,
    time: "Minutes",
    levelWords: (points: number) => `Chart of water level against time, ${points} readings. The list of readings holds the same numbers.`,
    rateWords: (intervals: number) => `Chart of the corrected rate, ${intervals} intervals. The table below holds the same numbers.`,
    none: "The charts begin with the second reading.",
  },

  table: {
    title: "Interval by interval",
    until: "Until (min)",
    drop: (unit: string) => `Drop (${unit})`,
    rate: (unit: string) => `Corrected (${unit})`,
    change: "Change",
    steady: "Steady",
    first: "–",
    changeOf: (share: number) => `${share > 0 ? "+" : share < 0 ? "−" : ""}${percent(share)}`,
    steadyWords: { steady: "steady", "not steady": "not yet", "hole dry": "hole dry" },
  },

  setUp: {
    title: "The hole and how it is measured",
    says: (depth: string, diameter: string, unit: string) =>
      [...(depth === "" ? [] : [`${depth} ${unit} deep`]), ...(diameter === "" ? [] : [`${diameter} ${unit} wide`])].join(", "),
  },

  verdict: {
    title: "What the hole says",
    none: "No rate yet",
    rate: "Infiltration rate",
    rateHint: "Drop corrected for water lost through the wall (Porchet)",
    drop: "Drop rate",
    design: "Design rate",
    designHint: (factor: number) => `This hole alone, divided by ${factor}`,
    steady: (change: number) => `Steady: the last two rates differ by ${percent(change)}.`,
    keepGoing: (change: number) =>
      `Keep going: the last two rates differ by ${percent(change)}, and ${percent(STEADY_SHARE)} or less is steady.`,
    oneInterval: "Keep going: one interval cannot show that the rate is steady.",
    emptied: "The hole emptied. The rate may be higher than shown: fill deeper or read more often next time.",
    rule: "Against the Rules sheet",
    fixFirst: "Put right what is marked above; then the rate appears here.",
    homeowner: (dropRate: number, words: string, units: UnitSystem) =>
      `For the homeowner: in an hour the water fell ${quantityWords("depth", dropRate, units)}. ${words} (Common practice, no source.)`,
    fast: (units: UnitSystem) => `About ${depth(FAST_DROP_INCHES, units)} or more is fast: the garden may hold a wide choice of plants.`,
    slow: (units: UnitSystem) => `About ${depth(SLOW_DROP_INCHES, units)} or less is slow: choose plants that bear standing water.`,
    between: (units: UnitSystem) =>
      `That lies between slow, about ${depth(SLOW_DROP_INCHES, units)}, and fast, about ${depth(FAST_DROP_INCHES, units)}: the wettest part wants plants that bear standing water.`,
    announced: (rate: string, steadiness: string) => `Infiltration rate ${rate}. ${steadiness}`,
  },

  sheet: {
    write: "Write to the sheet",
    back: "Back to what the sheet holds",
    fixFirst: "Nothing was written: put right what is marked first.",
    addFirst: "Nothing was written: add the water depth typed at the timer as a reading first, or clear it.",
    nothing: "Nothing was written: there is no reading yet.",
    added: (hole: string) => `Hole ${hole} was added to Hole tests.`,
    changed: (hole: string) => `Hole ${hole} was changed on Hole tests.`,
    same: (rate: string) => `The sheet computes ${rate} from its cells, the same as the pane.`,
    other: (rate: string) => `The sheet holds other readings and computes ${rate}.`,
    differs: (sheet: string, pane: string) =>
      `The sheet computes ${sheet} and the pane ${pane} from the same cells: a formula on Hole tests may have been changed.`,
    noRate: "The sheet has no rate for this hole yet.",
    remove: "Remove this hole",
    removeQuestion: (hole: string) => `Remove hole ${hole} and its readings from Hole tests?`,
    removeKeep: "Keep it",
    removeYes: "Remove it",
    removed: (hole: string) => `Hole ${hole} was removed from Hole tests.`,
  },

  soil: {
    title: "The soil of this yard",
    designedWith: (rate: string) => `design rate ${rate}`,
    notTested: "Soil not tested",
    notTestedHint: "No hole is on the sheet, so nothing is known of this soil: it has no rate, not a rate of 0.",
    noRate: "Rate not known",
    inShort: (rate: string, holes: number) => `Tested rate of the yard: ${rate}, from ${holesCounted(holes)}.`,
    again: "Test again",
    notAgain: "Nothing speaks for testing again.",
    chain: "From the holes to the design rate",
    hole: (name: string) => `Hole ${name}`,
    soaked: { yes: "soaked first", no: "not soaked first", unknown: "soaking not recorded" },
    steady: { yes: "steady", no: "not steady", unknown: "no rate" },
    emptied: "emptied",
    mean: (holes: number) => (holes === 1 ? "Tested rate, of the one hole" : `Tested rate, geometric mean of ${holes} holes`),
    meanOf: (rates: readonly string[]) => (rates.length === 1 ? "" : `(${rates.join(" × ")}) to the power 1/${rates.length}`),
    reduced: "Design rate",
    reducedBy: (factor: string) => `Tested rate divided by ${factor}, the reduction factor on Program`,
    spread: (highest: string, lowest: string, ratio: string | null) =>
      ratio === null
        ? `Spread: the highest rate is ${highest} and the lowest ${lowest}.`
        : `Spread: the highest rate, ${highest}, is ${ratio} times the lowest, ${lowest}.`,
    spreadRule: (widest: number) => `Up to ${widest} times counts as one soil. (Common practice, no source.)`,
    design: (rate: string) =>
      `The Design sheet shows a tested rate of ${rate}, which is not what these holes give: a formula may have been changed.`,
    note: {
      title: "For the homeowner",
      tested: (holes: number, drop: string) =>
        holes === 1
          ? `We tested your soil in one hole: in an hour the water fell ${drop}.`
          : `We tested your soil in ${holes} holes. In the slowest, the water fell ${drop} in an hour.`,
      planned: (rate: string, factor: string) =>
        `Your garden is planned for ${rate}, the tested rate divided by ${factor}, because soil slows down over the years.`,
      empty: (depth: string, hours: string) =>
        `When it is full, ${depth} deep, it should be empty about ${hours} hours after the rain stops.`,
      emptyLater: "When it will be empty is known once its basin is designed.",
      again: "We would like to test it again.",
      trouble: (hours: number) => `Tell us if water still stands ${hours} hours after a rain.`,
      source: "Fast and slow: common practice, no source.",
      copy: "Copy the note",
      copied: "The note was copied.",
      copyByHand: "The clipboard is closed to this pane: select the note and copy it.",
    },
  },
} as const;

/** Drop read off a stick in a test hole. Common practice, no source. */
export const FAST_DROP_INCHES = 8;
export const SLOW_DROP_INCHES = 2;
