import type { NumberKind } from "../../../functions/quantities.ts";
import type { DesignCells } from "../../../addin/actions/program/read-program.ts";
import { yardText } from "./text.ts";

export type ChainKey = Exclude<keyof typeof yardText.chain, "title" | "where" | "water" | "soil" | "basin" | "work" | "holes"> &
  keyof DesignCells;

export interface ChainItem {
  readonly key: ChainKey;
  readonly kind: NumberKind;
  /** As the Design sheet shows it. */
  readonly decimals: number;
  /** Shown large: what a coordinator is asked for on the phone. */
  readonly headline?: true;
  /** Left out where the yard has none, rather than shown as missing. */
  readonly onlyIfThere?: true;
}

export interface ChainGroup {
  readonly title: string;
  readonly items: readonly ChainItem[];
}

/** From the rain to the plants: each number rests on those before it. */
export const chain: readonly ChainGroup[] = [
  {
    title: yardText.chain.water,
    items: [
      { key: "contributingArea", kind: "area", decimals: 1, headline: true },
      { key: "stormDepth", kind: "depth", decimals: 2 },
      { key: "runoff", kind: "waterVolume", decimals: 2 },
    ],
  },
  {
    title: yardText.chain.soil,
    items: [
      { key: "testedRate", kind: "rate", decimals: 2, headline: true },
      { key: "designRate", kind: "rate", decimals: 2 },
      { key: "groundSlopePercent", kind: "percent", decimals: 1 },
    ],
  },
  {
    title: yardText.chain.basin,
    items: [
      { key: "floorArea", kind: "area", decimals: 1, headline: true },
      { key: "rimArea", kind: "area", decimals: 1 },
      { key: "pondingDepth", kind: "depth", decimals: 1 },
      { key: "waterHeld", kind: "waterVolume", decimals: 2 },
      { key: "drawdownHours", kind: "hours", decimals: 1, headline: true },
    ],
  },
  {
    title: yardText.chain.work,
    items: [
      { key: "digVolume", kind: "earthVolume", decimals: 2, headline: true },
      { key: "looseVolume", kind: "earthVolume", decimals: 2 },
      { key: "mixVolume", kind: "earthVolume", decimals: 2 },
      { key: "mixSand", kind: "earthVolume", decimals: 2, onlyIfThere: true },
      { key: "mixTopsoil", kind: "earthVolume", decimals: 2, onlyIfThere: true },
      { key: "mixCompost", kind: "earthVolume", decimals: 2, onlyIfThere: true },
      { key: "mulchVolume", kind: "earthVolume", decimals: 2 },
      { key: "plants", kind: "count", decimals: 0 },
    ],
  },
];
