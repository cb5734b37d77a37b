/**
 * The what-if sheet: a column of contributing areas against a row of tested rates, answered by one formula.
 * Further tables are laid out below it. It has no records; its inputs are the headings of the grid and the few cells above it.
 */
export const whatIfSheet = {
  name: "What-if",
  preface: [
    "What-if: basin floor area for each contributing area (down) and design rate (across), in one formula",
    "Change any area, rate or shared input. A cell that shows #VALUE! says why in words when it is selected. Tables laid out from the pane follow below.",
  ],
  /** Formatted for the tables below, too: two of every yard, or a dozen smaller ones. */
  rows: 450,
  sharedInputs: [
    { label: "Ponding depth (in)", value: 6 },
    { label: "Storm depth (in)", value: 1 },
    { label: "Soaking counted during the storm (h)", value: 6 },
    { label: "Side slope (run to 1)", value: 3 },
    { label: "Drain hours (h)", value: 48 },
  ],
  designRatesInchesPerHour: [0.1, 0.15, 0.25, 0.5, 1, 2, 4],
  contributingAreasSquareFeet: [250, 500, 750, 1000, 1250, 1500, 2000, 2500],
} as const;
