import {
  checkRule,
  DRAWDOWN_RULE,
  PONDING_RULE,
  SLOPE_RULE,
  TESTED_RATE_RULE,
  type RuleCheck,
} from "../../../addin/actions/visits/check-rule.ts";
import type { RimSize } from "../../../addin/actions/basin/basin-earthwork.ts";
import type { Remedy, Room, RoomCheck } from "../../../addin/actions/basin/basin-room.ts";
import type { Answer, BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { Program } from "../../../addin/actions/program/read-program.ts";
import type { CellValue } from "../../../addin/workbook/port.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { drawdown } from "../../../functions/worksheet/basin.ts";
import { shown } from "../../parts/numbers.ts";
import { numberWords, quantityWords } from "../../parts/quantity-words.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";
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

export interface MeasuredRoom {
  readonly check: RoomCheck;
  readonly there: Room;
}

const NO_ROOM: MeasuredRoom = { check: { verdict: "not measured" }, there: { length: null, width: null } };

export function basinChecks(
  draft: BasinDraft,
  testedRate: number | null,
  rules: Program["rules"],
  room: MeasuredRoom = NO_ROOM,
): readonly BasinCheck[] {
  const { checks } = basinText;
  const { units, groundSlopePercent } = draft;
  const roomSays = roomWords(room.check, room.there, units);
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
    // Room that nobody measured keeps no basin from passing: the pane says beside the fields that it is not checked.
    ...(roomSays === null
      ? []
      : [{ name: basinText.room.name, words: roomSays, verdict: room.check.verdict === "fits" ? ("pass" as const) : ("stop" as const) }]),
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
  return [...(section.toe === null ? [cautions.noToe] : [])];
}

/** The room that was measured, in words; null while nothing was. */
export function roomWords(check: RoomCheck, room: Room, units: UnitSystem): string | null {
  if (check.verdict === "no size" || check.verdict === "not measured") return null;
  const words = basinText.room;
  const there = [roomSide(room.length, words.across, units), roomSide(room.width, words.down, units)]
    .filter((side) => side !== null)
    .join(" and ");
  return words[check.verdict === "fits" ? "fits" : "tooLarge"](rimWords(check.rim, units), there);
}

function roomSide(side: CellValue, says: (length: string) => string, units: UnitSystem): string | null {
  return typeof side === "number" ? says(quantityWords("length", side, units)) : null;
}

export function remedyWords({ kind, changes, rim }: Remedy, units: UnitSystem): string {
  const words = basinText.room;
  const outline = words.outline(changes.shape === "rectangle" ? "rectangle" : "ellipse", shown(Number(changes.lengthToWidth), 2));
  const depth = changes.pondingDepth ?? changes.mediaDepth ?? changes.stormDepth;
  return words.remedies[kind](outline, rimWords(rim, units), quantityWords("depth", Number(depth), units));
}

/** "17.2 × 10.1 ft". */
export function rimWords({ length, width }: RimSize, units: UnitSystem): string {
  return `${numberWords("length", length, units)} × ${quantityWords("length", width, units)}`;
}

/** Beside the rule of thumb, and why the two part where they do by a quarter or more. */
export function ruleOfThumbWords(draft: BasinDraft, units: UnitSystem): string | null {
  const floor = valueOf(draft.floorArea);
  const rule = valueOf(draft.ruleArea);
  const ponding = valueOf(draft.pondingDepth);
  const { stormDepth, mediaDepth } = draft;
  if (floor === null || rule === null || ponding === null || rule === 0 || stormDepth === null || mediaDepth === null) return null;
  const words = basinText.ruleOfThumb;
  const storm = quantityWords("depth", stormDepth, units);
  const pondingWords = quantityWords("depth", ponding, units);
  if (floor > rule * (1 + MUCH)) return words.more(storm, pondingWords);
  if (floor < rule * (1 - MUCH)) return words.less(storm, pondingWords, mediaDepth > 0);
  return words.near;
}

const MUCH = 0.25;

export function valueOf(answer: Answer): number | null {
  return "value" in answer ? answer.value : null;
}
