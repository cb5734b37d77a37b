import { toUs, type NumberKind } from "../quantities.ts";
import { computedByHand } from "../published/source.ts";
import { westernWashingtonRainGardens } from "../published/western-washington-rain-gardens.ts";
import { wisconsinRainGardens } from "../published/wisconsin-rain-gardens.ts";
import { groundSlopePercent, STEEPEST_PUBLISHED_PERCENT } from "../siting/ground-slope.ts";
import { siteVerdict } from "../siting/site-check.ts";
import { lengthInSameUnit, number, percent, tableRange, text, units } from "./calling/arguments.ts";
import { isCellError } from "./calling/cell.ts";
import { rulesNamed } from "./site-rules.ts";
import { aboutSmallPercent, isSmallPercent, takenAsItStands } from "./calling/small-percents.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

const stringAndStakes = wisconsinRainGardens.place("measuring the slope with stakes and a level string, as adapted by URI", "read");

export const groundSlope = worksheetFunction({
  name: "GROUNDSLOPE",
  summary: "Ground slope from the drop of a level string over its run, both in the same unit.",
  arguments: [lengthInSameUnit("drop", "Drop"), lengthInSameUnit("run", "Run").moreThan(0)],
  result: percent("Ground slope"),
  sources: [stringAndStakes],
  cautions: [
    {
      when: ({ drop, run }) => groundSlopePercent(drop, run) > STEEPEST_PUBLISHED_PERCENT,
      says: `Steeper than ${STEEPEST_PUBLISHED_PERCENT}%: the published manuals send the garden to another place. Check that both lengths are in the same unit.`,
    },
  ],
  example: { arguments: [11, 180], result: 6.11, within: 0.005, from: computedByHand("11 in over 15 ft, which is 180 in") },
  equation: ["slope = 100 x drop / run   (percent; both lengths in one unit)"],
  calculate: ({ drop, run }) => groundSlopePercent(drop, run),
});

const foundationSetback = westernWashingtonRainGardens.place("page 13", "read");

export const siteCheck = worksheetFunction({
  name: "SITECHECK",
  summary: "One measured value against the Rules table: pass, refer, stop or not measured. Local codes decide.",
  arguments: [
    text("ruleName", "Rule name"),
    number("value", "Measured value").atLeast(0).leftOutMeans('the answer is "not measured"'),
    tableRange("rules", "Rules table"),
    units,
  ],
  result: text("Verdict"),
  sources: [foundationSetback],
  cautions: [
    {
      when: ({ ruleName, value, rules }) => isSmallPercent(value) && kindOf(ruleName, rules) === "percent",
      about: aboutSmallPercent("Measured value"),
      says: ({ value = 0 }, speaker) => takenAsItStands("Measured value", value, speaker),
    },
    {
      when: ({ value }) => value !== undefined,
      says: "The limits are the program's presets. Local codes and licensed practice decide.",
    },
  ],
  example: {
    arguments: ["Distance to foundation", 9.5, [["Distance to foundation", "at least", 10, "ft", "stop"]]],
    result: "stop",
    from: foundationSetback,
  },
  equation: [
    "at least: passes where value >= limit; at most: passes where value <= limit",
    "of several rules of one name the worst verdict stands: stop, then refer, then pass",
  ],
  working: ({ ruleName, value, rules: table }, speaker) =>
    stepsOf(rulesNamed(ruleName, table), ({ kind, rules }) =>
      value === undefined
        ? []
        : rules.flatMap((rule, place): readonly WorkingStep[] => [
            { label: `Limit ${place + 1}, ${rule.comparison}`, value: rule.limit, kind },
            { label: `Limit ${place + 1}, verdict`, value: siteVerdict(toUs(kind, value, speaker.system), [rule]) },
          ]),
    ),
  calculate({ ruleName, value, rules: table }, speaker) {
    const named = rulesNamed(ruleName, table);
    if (isCellError(named)) return named;
    return value === undefined ? "not measured" : siteVerdict(toUs(named.kind, value, speaker.system), named.rules);
  },
});

function kindOf(ruleName: string, table: Parameters<typeof rulesNamed>[1]): NumberKind | undefined {
  const named = rulesNamed(ruleName, table);
  return isCellError(named) ? undefined : named.kind;
}
