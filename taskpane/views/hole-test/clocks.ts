import { useDraft } from "../../parts/drafts.ts";
import type { Clock } from "./clock.ts";

/** The running clocks of a yard's holes, by hole: two holes filled one after the other are read in turn. */
export interface Clocks {
  readonly of: (hole: string) => Clock | null;
  /** Starts a clock, or stops it with null. */
  readonly set: (hole: string, clock: Clock | null) => void;
  /** A new hole was written: its clock belongs to its row from now on. */
  readonly handOver: (from: string, to: string) => void;
}

export type KeptClocks = readonly (readonly [hole: string, clock: Clock])[];

const NONE: KeptClocks = [];

export function useClocks(siteId: string): Clocks {
  const kept = useDraft<KeptClocks>(`${siteId}/hole-clocks`, NONE);
  const keep = (clocks: KeptClocks) => (clocks.length === 0 ? kept.clear() : kept.set(clocks));
  return {
    of: (hole) => clockOf(kept.value, hole),
    set: (hole, clock) => keep(withClock(kept.value, hole, clock)),
    handOver: (from, to) => keep(withClock(withClock(kept.value, from, null), to, clockOf(kept.value, from))),
  };
}

export function clockOf(clocks: KeptClocks, hole: string): Clock | null {
  return clocks.find(([name]) => name === hole)?.[1] ?? null;
}

export function withClock(clocks: KeptClocks, hole: string, clock: Clock | null): KeptClocks {
  const others = clocks.filter(([name]) => name !== hole);
  return clock === null ? others : [...others, [hole, clock]];
}
