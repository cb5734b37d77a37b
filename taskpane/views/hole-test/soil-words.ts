import { smallestOf } from "../../../functions/extremes.ts";
import { PONDING_LIMIT_HOURS, type CombinedHole, type CombinedHoles } from "../../../addin/actions/hole-test/combine-holes.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { numberWords, quantityWords } from "../../parts/quantity-words.ts";
import { holeTestText } from "./text.ts";
import { plantWords } from "./verdict-words.ts";

const words = holeTestText.soil;

/** One number of the way from the holes to the design rate, with what it is and where it comes from. */
export interface ChainLink {
  readonly label: string;
  readonly hint: string;
  /** "1.26 in/h", or why there is none. */
  readonly says: string;
  readonly known: boolean;
}

export function chainOf(soil: CombinedHoles, units: UnitSystem): readonly ChainLink[] {
  const link = (label: string, hint: string, answer: CombinedHole["rate"]): ChainLink => ({
    label,
    hint,
    says: "value" in answer ? quantityWords("rate", answer.value, units) : answer.sentence,
    known: "value" in answer,
  });
  const rates = soil.rates.map((rate) => numberWords("rate", rate, units));
  return [
    ...soil.holes.map((hole) => link(words.hole(hole.name), holeHint(hole), hole.rate)),
    link(words.mean(soil.rates.length), soil.standing === "tested" ? words.meanOf(rates) : "", soil.testedRate),
    link(words.reduced, words.reducedBy(shown(soil.reductionFactor, 2)), soil.designRate),
  ];
}

function holeHint({ soaked, steady, emptied }: CombinedHole): string {
  const said = (known: boolean | null) => (known === null ? "unknown" : known ? "yes" : "no");
  return [words.soaked[said(soaked)], words.steady[said(steady)], ...(emptied ? [words.emptied] : [])].join(", ");
}

/** Null while fewer than two holes have a rate. */
export function spreadWords({ spread }: CombinedHoles, units: UnitSystem): string | null {
  if (spread === null) return null;
  const rate = (value: number) => quantityWords("rate", value, units);
  return words.spread(rate(spread.highest), rate(spread.lowest), spread.ratio === null ? null : shown(spread.ratio, 1));
}

/** A few plain sentences that can be handed over; null while the soil has no rate. */
export function homeownerNote(soil: CombinedHoles, units: UnitSystem): string | null {
  const drops = soil.holes.flatMap(({ dropRate }) => ("value" in dropRate ? [dropRate.value] : []));
  if (soil.standing !== "tested" || drops.length === 0 || !("value" in soil.designRate)) return null;
  const slowest = smallestOf(drops);
  const { note } = words;
  const { ponding } = soil;
  return [
    note.tested(drops.length, quantityWords("depth", slowest, units)),
    plantWords(slowest, units),
    note.planned(quantityWords("rate", soil.designRate.value, units), shown(soil.reductionFactor, 2)),
    ponding === null ? note.emptyLater : note.empty(aboutDepth(ponding.depth, units), shown(ponding.hours, 0)),
    ...(soil.retest.length > 0 ? [note.again] : []),
    note.trouble(PONDING_LIMIT_HOURS),
  ].join(" ");
}

/** No finer than a person reads off a stick. */
function aboutDepth(depth: number, units: UnitSystem): string {
  return `${shown(depth, units === "us" ? 1 : 0)} ${shownUnit("depth", units)}`;
}
