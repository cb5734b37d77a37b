import type { RoutedBasin } from "../../../addin/actions/basin/route-basin.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { shown } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import type { ChartPoints } from "../../parts/time-chart.tsx";
import { basinText } from "./text.ts";

const words = basinText.routing;

export interface RoutedFact {
  readonly label: string;
  readonly says: string;
  readonly hint?: string;
}

/** What the storm does, in words: the chart shows no more than this. */
export function routedFacts(routed: RoutedBasin, units: UnitSystem): readonly RoutedFact[] {
  return [
    { label: words.rain, says: words.rainWords(quantityWords("depth", routed.stormDepth, units), routed.type) },
    { label: words.allInflow, says: quantityWords("waterVolume", routed.inflow, units) },
    { label: words.peak, says: peakWords(routed, units) },
    { label: words.pondingGone, says: routed.peakPonding === 0 ? words.noPonding : hoursWords(routed.pondingGoneHours, units) },
    { label: words.empty, says: hoursWords(routed.emptyHours, units), hint: words.emptyHint },
    { label: words.spills, says: quantityWords("waterVolume", routed.overflow, units) },
    { label: words.captured, says: capturedWords(routed) },
  ];
}

export function routedSentence(routed: RoutedBasin, units: UnitSystem): string {
  return words.sentence(
    peakWords(routed, units),
    hoursWords(routed.emptyHours, units),
    quantityWords("waterVolume", routed.overflow, units),
    capturedWords(routed),
  );
}

/** A part that was lost never rounds to all of it. */
export function capturedWords({ capturedShare, overflow }: RoutedBasin): string {
  const percent = overflow > 0 ? Math.min(capturedShare * 100, 99.9) : 100;
  return `${shown(percent, 1)} %`;
}

function peakWords({ peakPonding, peakHours }: RoutedBasin, units: UnitSystem): string {
  return peakPonding === 0
    ? words.noPonding
    : words.peakWords(quantityWords("depth", peakPonding, units), quantityWords("hours", peakHours, units));
}

function hoursWords(hours: number | null, units: UnitSystem): string {
  return hours === null ? words.notEmpty : quantityWords("hours", hours, units);
}

/** A level step for each step of the storm, from its start to its end. */
export function stepPoints({ steps, stepHours }: RoutedBasin, key: "inflow" | "overflow"): ChartPoints {
  const [first] = steps;
  if (first === undefined) return { times: [], values: [] };
  return { times: [first.hours - stepHours, ...steps.map(({ hours }) => hours)], values: [first[key], ...steps.map((step) => step[key])] };
}

/** The water's depth at the end of each step, from none at the start. */
export function pondingPoints({ steps }: RoutedBasin): ChartPoints {
  return { times: [0, ...steps.map(({ hours }) => hours)], values: [0, ...steps.map(({ pondingDepth }) => pondingDepth)] };
}
