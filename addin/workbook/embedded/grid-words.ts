import { mergeLocales } from "@univerjs/core";
import coreWords from "@univerjs/preset-sheets-core/locales/en-US";
import dataValidationWords from "@univerjs/preset-sheets-data-validation/locales/en-US";
import drawingWords from "@univerjs/preset-sheets-drawing/locales/en-US";
import filterWords from "@univerjs/preset-sheets-filter/locales/en-US";

type Words = ReturnType<typeof mergeLocales>;

/** The grid's own lists lack these, and it would show people their names. */
const LACKING: Words = {
  "sheets-formula": {
    progress: {
      analyzing: "Computing…",
      calculating: "Computing…",
      "array-analysis": "Computing…",
      "array-calculation": "Computing…",
      done: "Computed",
    },
  },
  "sheets-filter-ui": { permission: { filterErr: "The filter cannot be changed: the sheet is protected." } },
  "sheets-ui": {
    merge: { confirm: { warning: "Merge these cells?", dismantleMergeCellWarning: "Some merged cells would be split. Go on?" } },
    filter: {
      confirm: {
        error: "That cannot be done",
        notAllowedToInsertRange: "Cells cannot be moved while the sheet is filtered. Clear the filter first.",
      },
    },
    info: { error: "That cannot be done", forceStringInfo: "This number is kept as text." },
  },
  ui: { ribbon: { menu: "Menu" } },
};

/** What the grid says. */
export const gridWords = filledIn(mergeLocales(coreWords, dataValidationWords, drawingWords, filterWords), LACKING);

function filledIn(words: Words, lacking: Words): Words {
  const all: Words = { ...words };
  for (const [name, word] of Object.entries(lacking)) {
    const present = all[name];
    all[name] = isWords(present) && isWords(word) ? filledIn(present, word) : (present ?? word);
  }
  return all;
}

function isWords(value: unknown): value is Words {
  return typeof value === "object" && value !== null;
}
