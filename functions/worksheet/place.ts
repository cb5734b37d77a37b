import { slopeBands } from "../published/wisconsin-size-factors.ts";
import { pondingForSlope } from "../siting/depth-for-slope.ts";
import { STEEPEST_PUBLISHED_PERCENT } from "../siting/ground-slope.ts";
import { depth, percent, type ResultValue, units } from "./calling/arguments.ts";
import { rowOf } from "./calling/results.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

/** A depth, or words where the slope has none. */
const ponding = (label: string): ResultValue<number | string> => depth(label);

const TOO_STEEP = `Too steep: over ${STEEPEST_PUBLISHED_PERCENT}% look for another place.`;

export const depthForSlope = worksheetFunction({
  name: "DEPTHFORSLOPE",
  summary: "Shallowest and deepest ponding that suit the slope of the ground, by the published bands.",
  arguments: [percent("groundSlope", "Ground slope"), units],
  result: rowOf([ponding("Shallowest ponding"), ponding("Deepest ponding")]),
  sources: [slopeBands.from],
  cautions: [
    {
      when: ({ groundSlope }) => pondingForSlope(groundSlope)?.isBetweenBands === true,
      says: "The slope lies between two published bands (under 4, 5 to 7, 8 to 12 percent): the shallower ponding is given, which needs the larger garden.",
    },
    {
      when: ({ groundSlope }) => pondingForSlope(groundSlope) === undefined,
      says: "The published manuals send a garden on ground this steep to another place; building there is work for a licensed engineer.",
    },
  ],
  example: { arguments: [6.11], result: [[6, 7]], from: slopeBands.from },
  equation: ["slope under 4%: 3 to 5 in; 5 to 7%: 6 to 7 in; 8 to 12%: 8 in; above: another place   (ponding in in)"],
  calculate({ groundSlope }) {
    const suits = pondingForSlope(groundSlope);
    return suits === undefined ? ([TOO_STEEP, TOO_STEEP] as const) : ([suits.shallowestInches, suits.deepestInches] as const);
  },
});
