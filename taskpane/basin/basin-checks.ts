import { checkRule, DRAWDOWN_RULE, PONDING_RULE, SLOPE_RULE, TESTED_RATE_RULE } from "../../addin/actions/check-rule.ts";
import type { RuleCheck } from "../../addin/actions/check-rule.ts";
import type { Answer, BasinDraft } from "../../addin/actions/draft-basin.ts";
import type { Program } from "../../addin/actions/read-program.ts";
import type { UnitSystem } from "../../functions/quantities.ts";
import { drawdown } from "../../functions/worksheet/basin.ts";
import { quantityWords } from "../quantity-words.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";
import { roundDepthWords } from "./depths.ts";
import { sectionGeometry } from "./section-geometry.ts";
import { basinText } from "./text.ts";

/** One thing a basin is held against, in words and a verdict. */
export interface BasinCheck {
  readonly name: string;
  readonly words: string;
  readonly verdict: RuleCheck["verdict"];
}

/** SITEDESIGN's own word for a basin that holds the storm and drains in time. */
const FITS = "fits";

export function basinChecks(
  draft: BasinDraft,
  testedRate: number | null,
  groundSlopePercent: number | null,
  rules: Program["rules"],
  units: UnitSystem,
): readonly BasinCheck[] {
  const { checks } = basinText;
  const size: BasinCheck = {
    name: checks.size,
    words: draft.status === FITS ? checks.fits : draft.status === "" ? checks.nothingYet : draft.status,
    verdict: draft.status === FITS ? "pass" : "value" in draft.designRate ? "stop" : "not measured",
  };
  const held = (rule: string, value: number | null, words: string | null): BasinCheck => {
    const check = checkRule(rule, value, rules, units);
    return { name: rule, words: check.sentence ?? words ?? checks.notMeasured, verdict: check.verdict };
  };
  const ponding = valueOf(draft.pondingDepth);
  const standing = pondingHours(draft, units);
  return [
    size,
    held(DRAWDOWN_RULE, standing, standing === null ? null : checks.drawdown(quantityWords("hours", standing, units))),
    held(PONDING_RULE, ponding, ponding === null ? null : quantityWords("depth", ponding, units)),
    held(TESTED_RATE_RULE, testedRate, testedRate === null ? null : quantityWords("rate", testedRate, units)),
    held(SLOPE_RULE, groundSlopePercent, groundSlopePercent === null ? null : quantityWords("percent", groundSlopePercent, units)),
  ];
}

/** The limit is on standing water, as SITEDESIGN's own is: water in the soil mix breeds no mosquitoes. */
export function pondingHours(draft: BasinDraft, units: UnitSystem): number | null {
  const hours = drawdown.evaluate([valueOf(draft.pondingDepth), valueOf(draft.designRate), 0, null, units])[0]?.[0];
  return typeof hours === "number" ? hours : null;
}

/** The worst of the checks decides; one that is not measured keeps the whole from passing. */
export function worstOf(checks: readonly BasinCheck[]): BasinCheck["verdict"] {
  return (["stop", "refer", "not measured"] as const).find((worst) => checks.some(({ verdict }) => verdict === worst)) ?? "pass";
}

/** Cautions of the drawing: what the numbers alone do not show. */
export function drawingCautions(basin: BasinDimensions): readonly string[] {
  const section = sectionGeometry(basin);
  const { cautions } = basinText;
  return [
    ...(section.floorOnFill ? [cautions.floorOnFill(roundDepthWords(section.groundDrop, basin.units))] : []),
    ...(section.toe === null ? [cautions.noToe] : []),
  ];
}

/** Beside the rule of thumb, and why the two part where they do by a quarter or more. */
export function ruleOfThumbWords(draft: BasinDraft, units: UnitSystem): string | null {
  const floor = valueOf(draft.floorArea);
  const rule = valueOf(draft.ruleArea);
  const ponding = valueOf(draft.pondingDepth);
  if (floor === null || rule === null || ponding === null || rule === 0) return null;
  const words = basinText.ruleOfThumb;
  const storm = quantityWords("depth", draft.stormDepth, units);
  const pondingWords = quantityWords("depth", ponding, units);
  if (floor > rule * (1 + MUCH)) return words.more(storm, pondingWords);
  if (floor < rule * (1 - MUCH)) return words.less(storm, pondingWords, draft.mediaDepth > 0);
  return words.near;
}

const MUCH = 0.25;

export function valueOf(answer: Answer): number | null {
  return "value" in answer ? answer.value : null;
}
