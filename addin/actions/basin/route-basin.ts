import { routedTotals, routeStorm, typedStormRains } from "../../../functions/basin/storm-route.ts";
import type { Garden } from "../../../functions/basin/water-balance.ts";
import { USUAL_VOID_SHARE } from "../../../functions/basin/drawdown.ts";
import type { StormType } from "../../../functions/published/scs-24-hour-storms.ts";
import { fromUs, toUs } from "../../../functions/quantities.ts";
import type { BasinDraft, BasinInputs } from "./draft-basin.ts";

/** One step of the design storm through the basin, in the yard's units, as SOAK.STORMROUTE has it. */
export interface RoutedStep {
  /** When the step ends, since the rain began. */
  readonly hours: number;
  readonly inflow: number;
  readonly stored: number;
  readonly pondingDepth: number;
  readonly soaked: number;
  readonly overflow: number;
}

export interface RoutedBasin {
  readonly type: StormType;
  readonly stormDepth: number;
  /** Of the rain on all that drains here. */
  readonly runoffShare: number;
  readonly runoffRule: string;
  readonly stepHours: number;
  readonly steps: readonly RoutedStep[];
  readonly inflow: number;
  readonly overflow: number;
  /** Of the inflow, what does not overflow. */
  readonly capturedShare: number;
  readonly peakPonding: number;
  readonly peakHours: number;
  /** Since the rain began, when no water stands any more; null where it still does when the routing ends. */
  readonly pondingGoneHours: number | null;
  /** The same, soil mix included. */
  readonly emptyHours: number | null;
}

/** The drafted basin as its water sees it; null while it has no size, or no floor. */
export function draftedGarden(inputs: BasinInputs, draft: BasinDraft): Garden | null {
  const { units, shape, lengthToWidth, floorArea, pondingDepth, designRate, mediaDepth, sideSlope } = draft;
  if (mediaDepth === null || sideSlope === null || typeof inputs.contributingArea !== "number") return null;
  if (!("value" in floorArea) || !("value" in pondingDepth) || !("value" in designRate) || floorArea.value <= 0) return null;
  return {
    contributingSquareFeet: toUs("area", inputs.contributingArea, units),
    runoffShare: draft.runoffShare,
    floorSquareFeet: toUs("area", floorArea.value, units),
    pondingInches: toUs("depth", pondingDepth.value, units),
    designInchesPerHour: toUs("rate", designRate.value, units),
    mediaInches: toUs("depth", mediaDepth, units),
    voidShare: USUAL_VOID_SHARE,
    sideSlope,
    evapotranspirationInchesPerDay: 0,
    outline: { shape, lengthToWidth },
  };
}

export function routeBasin(inputs: BasinInputs, draft: BasinDraft, type: StormType): RoutedBasin | null {
  const { units, stormDepth } = draft;
  const garden = draftedGarden(inputs, draft);
  if (stormDepth === null || garden === null) return null;
  const rains = typedStormRains(toUs("depth", stormDepth, units), type);
  const routed = routeStorm(rains, garden);
  const volume = (cubicFeet: number) => fromUs("waterVolume", cubicFeet, units);
  const { inflowCubicFeet, overflowCubicFeet } = routedTotals(routed);
  const peak = routed.reduce((deepest, step) => (step.pondingInches > deepest.pondingInches ? step : deepest));
  return {
    type,
    stormDepth,
    runoffShare: garden.runoffShare,
    runoffRule: draft.runoffRule,
    stepHours: rains.stepMinutes / 60,
    steps: routed.map((step) => ({
      hours: step.hours,
      inflow: volume(step.inflowCubicFeet),
      stored: volume(step.storedCubicFeet),
      pondingDepth: fromUs("depth", step.pondingInches, units),
      soaked: volume(step.soakedCubicFeet),
      overflow: volume(step.overflowCubicFeet),
    })),
    inflow: volume(inflowCubicFeet),
    overflow: volume(overflowCubicFeet),
    capturedShare: inflowCubicFeet === 0 ? 1 : 1 - overflowCubicFeet / inflowCubicFeet,
    peakPonding: fromUs("depth", peak.pondingInches, units),
    peakHours: peak.hours,
    pondingGoneHours: hoursAfterLast(routed, ({ pondingInches }) => pondingInches > 0),
    emptyHours: hoursAfterLast(routed, ({ storedCubicFeet }) => storedCubicFeet > 0),
  };
}

/** The end of the first step from which on it holds no more; null where it still holds at the end. */
function hoursAfterLast<Step extends { readonly hours: number }>(routed: readonly Step[], holds: (step: Step) => boolean): number | null {
  return routed[routed.findLastIndex(holds) + 1]?.hours ?? null;
}
