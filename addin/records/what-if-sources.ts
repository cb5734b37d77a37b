import type { designSheet } from "./design.ts";
import type { ProgramKey } from "./program.ts";
import type { sitesSheet } from "./sites.ts";

/** Where the workbook keeps what an argument of a worksheet function asks for. */
export type Source =
  | { readonly kind: "design"; readonly key: keyof typeof designSheet.columns }
  | { readonly kind: "site"; readonly key: keyof typeof sitesSheet.columns; readonly otherwise?: ProgramKey }
  | { readonly kind: "setting"; readonly key: ProgramKey }
  /** A whole series or table. Those of one yard are no good where every yard has a row of its own. */
  | { readonly kind: "series"; readonly series: "covers" | "areas" | "shares" | "infiltrationRates" | "rains" | "prices" };

const design = (key: keyof typeof designSheet.columns): Source => ({ kind: "design", key });
const setting = (key: ProgramKey): Source => ({ kind: "setting", key });
const series = (of: Extract<Source, { kind: "series" }>["series"]): Source => ({ kind: "series", series: of });

/** By the key of the argument; before the dot the one function where the same key asks for something else. */
const SOURCES: ReadonlyMap<string, Source> = new Map<string, Source>([
  ["contributingArea", design("contributingArea")],
  ["testedRate", design("testedRate")],
  ["designRate", design("designRate")],
  ["storm", design("stormDepth")],
  ["rain", design("stormDepth")],
  ["ponding", design("pondingDepth")],
  ["SITEDESIGN.runoff", design("surfaceRunoff")],
  ["SITEDESIGN.notCounted", design("notCounted")],
  ["SITEDESIGN.ponding", { kind: "site", key: "pondingDepth" }],
  ["mulch", setting("mulchDepthInches")],
  ["floorLength", design("floorLength")],
  ["floorWidth", design("floorWidth")],
  ["media", { kind: "site", key: "mediaDepth" }],
  ["sideSlope", { kind: "site", key: "sideSlope", otherwise: "sideSlope" }],
  ["reductionFactor", setting("reductionFactor")],
  ["drainHours", setting("drainHours")],
  ["floorArea", design("floorArea")],
  ["groundSlope", design("groundSlopePercent")],
  ["soilGroup", { kind: "site", key: "soilGroup" }],
  ["looseVolume", design("looseVolume")],
  ["inPlaceVolume", design("digVolume")],
  ["materialVolume", design("mulchVolume")],
  ["RUNOFFVOLUME.area", design("contributingArea")],
  ["POLLUTANTLOAD.area", design("contributingArea")],
  ["PEAKFLOW.area", design("contributingArea")],
  ["LAYERVOLUME.area", design("rimArea")],
  ["PLANTCOUNT.area", design("rimArea")],
  ["WATERNEED.area", design("rimArea")],
  ["BASINVOLUME.depth", design("pondingDepth")],
  ["LAYERVOLUME.depth", setting("mulchDepthInches")],
  ["PLANTCOUNT.spacing", setting("plantSpacingFeet")],
  ["BASINDEPTH.volume", design("waterHeld")],
  ["SOILSTATE.volume", design("digVolume")],
  ["FILTERAREA.waterVolume", design("runoff")],
  ["covers", series("covers")],
  ["areas", series("areas")],
  ["shares", series("shares")],
  ["testedRates", series("infiltrationRates")],
  ["rains", series("rains")],
  ["prices", series("prices")],
]);

export function sourceOf(functionName: string, argumentKey: string): Source | undefined {
  return SOURCES.get(`${functionName}.${argumentKey}`) ?? SOURCES.get(argumentKey);
}

/** A series in the units of one yard, or of one yard's rows: a table with a row a yard cannot take it. */
export function isOfOneYard(source: Source): boolean {
  return source.kind === "series" && source.series !== "prices";
}
