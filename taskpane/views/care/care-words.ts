import { isoDate } from "../../../addin/actions/dates.ts";
import type { DueFollowUp } from "../../../addin/actions/care/due-follow-ups.ts";
import { mulchTopUp, wantedMulch, wateringNeed } from "../../../addin/actions/care/garden-care.ts";
import type { Program, Yard } from "../../../addin/actions/program/read-program.ts";
import { gardenArea } from "../../../addin/actions/build/record-as-built.ts";
import { fromUs } from "../../../functions/quantities.ts";
import { shown } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { careText } from "./text.ts";

/** "2026-06-16, overdue by 3 days". */
export function dueWords({ row, state, inDays }: DueFollowUp): string {
  const { due } = row.record;
  const words = careText.due;
  if (due === null || inDays === null) return words.noDay;
  const when = state === "overdue" ? words.overdue(-inDays) : state === "today" ? words.today : words.soon(inDays);
  return `${isoDate(due)}, ${when}`;
}

/** The sentence a homeowner is given: how much, over what, and for how long. */
export function wateringSentence(yard: Pick<Yard, "asBuilt" | "design" | "units">): string {
  const need = wateringNeed(yard);
  const words = careText.water;
  if (need === null) return words.unknown;
  const unit = yard.units === "metric" ? words.liters : words.gallons;
  return words.sentence(
    `${shown(need.amount, 0)} ${unit}`,
    quantityWords("depth", need.weeklyDepth, yard.units),
    quantityWords("area", need.area, yard.units),
    words.from[need.from],
  );
}

/** Where mulch gets too deep, in the words of the inspection items: 2 to 4 in. */
const DEEPEST_MULCH_INCHES = 4;

/** What a measured layer of mulch asks for. */
export function mulchSentence(
  yard: Pick<Yard, "asBuilt" | "design" | "units">,
  measuredDepth: number,
  settings: Program["settings"],
): string {
  const { units } = yard;
  const words = careText.mulch;
  const wanted = quantityWords("depth", wantedMulch(settings, units), units);
  const most = fromUs("depth", DEEPEST_MULCH_INCHES, units);
  if (measuredDepth > most) return words.tooDeep(quantityWords("depth", most, units));
  const volume = mulchTopUp(yard, measuredDepth, settings);
  const area = gardenArea(yard);
  if (volume === null || area === null) return words.noArea;
  return volume === 0
    ? words.enough(wanted)
    : words.topUp(quantityWords("earthVolume", volume, units), wanted, quantityWords("area", area.area, units));
}
