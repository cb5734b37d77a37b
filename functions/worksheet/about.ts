import { computedByHand } from "../published/source.ts";
import { text } from "./calling/arguments.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

/** Counted as in package.json; a workbook that shows an older one is being computed by a cached copy. */
export const SOAKBOOK_VERSION = "1.0.0";

const byDefinition = computedByHand("The version is the one in package.json");

export const version = worksheetFunction({
  name: "VERSION",
  summary: "Version of the Soakbook functions that compute this workbook.",
  arguments: [],
  result: text("Version"),
  sources: [byDefinition],
  example: { arguments: [], result: SOAKBOOK_VERSION, from: byDefinition },
  equation: ["version = major.minor.patch, as in package.json"],
  calculate: () => SOAKBOOK_VERSION,
});
