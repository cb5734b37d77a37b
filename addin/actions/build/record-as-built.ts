import { mediaWaterCubicFeet, USUAL_VOID_SHARE } from "../../../functions/basin/drawdown.ts";
import { floorAreaOf } from "../../../functions/basin/floor-area.ts";
import type { BasinShape } from "../../../functions/basin/basin-shape.ts";
import { fromUs, toUs } from "../../../functions/quantities.ts";
import { basinVolume } from "../../../functions/worksheet/basin.ts";
import type { Cell } from "../../../functions/worksheet/calling/cell.ts";
import { zoneAreas } from "../../../functions/worksheet/plants.ts";
import { asBuiltSheet, type AsBuiltRow } from "../../records/as-built.ts";
import type { Finding } from "../../records/follow-ups.ts";
import type { SettingValues } from "../../records/program.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { Workbook } from "../../workbook/port.ts";
import type { DesignCells, Yard } from "../program/read-program.ts";
import { appendRow } from "../program/write-records.ts";

/** What was measured on the finished garden, in the yard's units; null where it was not. */
export interface AsBuiltMeasures {
  readonly shape: BasinShape | null;
  readonly floorLength: number | null;
  readonly floorWidth: number | null;
  /** From the floor up to the sill of the overflow. */
  readonly pondingDepth: number | null;
  readonly sideSlope: number | null;
  /** Soil mix as placed under the floor: its voids hold water too. */
  readonly mediaDepth: number | null;
  readonly sillWidth: number | null;
  /** Lowest place of the berm above the sill: negative where water would spill over it. */
  readonly lowestBerm: number | null;
  readonly drainHours: number | null;
}

export interface AsBuiltEntry extends AsBuiltMeasures {
  readonly date: number;
  readonly by: string;
  readonly note: string;
}

/** Adds a row: what was measured earlier stays on record, and the newest counts. */
export async function recordAsBuilt(workbook: Workbook, yard: Yard, entry: AsBuiltEntry): Promise<void> {
  await appendRow(workbook, asBuiltSheet, { siteId: yard.siteId, ...entry });
}

/** The measurement that counts: the one of the latest day, and of two on a day the lower row. */
export function newestAsBuilt(rows: readonly AsBuiltRow[]): AsBuiltRow | null {
  return rows.reduce<AsBuiltRow | null>(
    (newest, row) => (newest === null || (row.record.date ?? 0) >= (newest.record.date ?? 0) ? row : newest),
    null,
  );
}

/** What follows from the measurements, from the same worksheet functions as the sheet; null where something is not measured. */
export interface BuiltBasin {
  readonly floorArea: number | null;
  readonly rimArea: number | null;
  readonly waterHeld: number | null;
}

export function builtBasin(measured: AsBuiltMeasures, units: UnitSystem): BuiltBasin {
  const { floorLength, floorWidth, pondingDepth } = measured;
  if (floorLength === null || floorWidth === null || floorLength <= 0 || floorWidth <= 0)
    return { floorArea: null, rimArea: null, waterHeld: null };
  const shape = measured.shape ?? "ellipse";
  // Sides that were not measured are taken as upright, so that water held is never more than was built.
  const sideSlope = measured.sideSlope ?? 0;
  const lengthToWidth = Math.max(floorLength, floorWidth) / Math.min(floorLength, floorWidth);
  const floorArea = floorAreaOf(floorLength, floorWidth, shape);
  const [floor, sides] = zoneAreas.evaluate([floorArea, pondingDepth, sideSlope, 0, shape, lengthToWidth, units])[0] ?? [];
  const ponded = numberOrNull(basinVolume.evaluate([floorArea, pondingDepth, sideSlope, shape, lengthToWidth, units])[0]?.[0]);
  return {
    floorArea,
    rimArea: typeof floor === "number" && typeof sides === "number" ? floor + sides : null,
    waterHeld: ponded === null ? null : ponded + waterInVoids(floorArea, measured.mediaDepth ?? 0, units),
  };
}

function waterInVoids(floorArea: number, mediaDepth: number, units: UnitSystem): number {
  return fromUs(
    "waterVolume",
    mediaWaterCubicFeet(toUs("area", floorArea, units), toUs("depth", mediaDepth, units), USUAL_VOID_SHARE),
    units,
  );
}

/** One measured thing beside what was designed. */
export interface BuiltBeside {
  readonly built: number;
  /** Null where the design gives no number. */
  readonly designed: number | null;
  /** Null where the difference is only told, not judged. */
  readonly finding: Finding | null;
}

/** Null where it was not measured: a blank is never a pass. */
export interface AsBuiltComparison {
  readonly floorArea: BuiltBeside | null;
  readonly pondingDepth: BuiltBeside | null;
  readonly sideSlope: BuiltBeside | null;
  /** Not judged where the design counts on a soil mix and its depth was not measured. */
  readonly waterHeld: BuiltBeside | null;
  /** Beside the freeboard that is usual. */
  readonly lowestBerm: BuiltBeside | null;
  /** Beside the longest time the program allows. */
  readonly drainHours: BuiltBeside | null;
}

/** Common practice, no source: the sill stands where it was meant to within half an inch, and is looked at again within one. */
export const LEVEL_PASS_INCHES = 0.5;
export const LEVEL_WATCH_INCHES = 1;

/** Common practice, no source: 2 to 4 in of berm above the sill. */
export const USUAL_FREEBOARD_INCHES = 2;

/** Common practice, no source: half an inch of 8 in is about 5 %; a fifth short no longer holds the storm it was designed for. */
export const HELD_PASS_SHARE = 0.95;
export const HELD_WATCH_SHARE = 0.8;

export function compareAsBuilt(
  measured: AsBuiltMeasures,
  design: DesignCells,
  designedSideSlope: number,
  settings: Pick<SettingValues, "drainHours">,
  units: UnitSystem,
): AsBuiltComparison {
  const { floorArea, waterHeld } = builtBasin(measured, units);
  const inches = (value: number) => fromUs("depth", value, units);
  const mixNotMeasured = measured.mediaDepth === null && (numberOrNull(design.mediaDepth) ?? 0) > 0;
  return {
    floorArea: beside(floorArea, numberOrNull(design.floorArea), () => null),
    pondingDepth: beside(measured.pondingDepth, numberOrNull(design.pondingDepth), (built, designed) =>
      designed === null ? null : byDistance(Math.abs(built - designed), inches(LEVEL_PASS_INCHES), inches(LEVEL_WATCH_INCHES)),
    ),
    sideSlope: beside(measured.sideSlope, designedSideSlope, (built, designed) =>
      designed === null ? null : atLeast(built, designed) ? "pass" : "watch",
    ),
    waterHeld: beside(waterHeld, numberOrNull(design.waterHeld), (built, designed) =>
      designed === null || designed <= 0 || mixNotMeasured
        ? null
        : atLeast(built / designed, HELD_PASS_SHARE)
          ? "pass"
          : atLeast(built / designed, HELD_WATCH_SHARE)
            ? "watch"
            : "fail",
    ),
    lowestBerm: beside(measured.lowestBerm, inches(USUAL_FREEBOARD_INCHES), (built, usual) =>
      built < 0 ? "fail" : atLeast(built, usual ?? 0) ? "pass" : "watch",
    ),
    drainHours: beside(measured.drainHours, settings.drainHours, (built, limit) =>
      limit === null ? null : built <= limit ? "pass" : "fail",
    ),
  };
}

function beside(
  built: number | null,
  designed: number | null,
  judge: (built: number, designed: number | null) => Finding | null,
): BuiltBeside | null {
  return built === null ? null : { built, designed, finding: judge(built, designed) };
}

function byDistance(distance: number, pass: number, watch: number): Finding {
  if (atLeast(pass, distance)) return "pass";
  return atLeast(watch, distance) ? "watch" : "fail";
}

/** 7.1 in less 6.6 in is half an inch to a person, and a hair more to a computer. */
function atLeast(value: number, limit: number): boolean {
  return value >= limit - 1e-9 * Math.max(1, Math.abs(limit));
}

/** Area that is watered, weeded and mulched: inside the rim as built, or as designed while nothing was measured. */
export interface GardenArea {
  readonly area: number;
  readonly from: "as-built" | "design";
}

export function gardenArea(yard: Pick<Yard, "asBuilt" | "design" | "units">): GardenArea | null {
  const newest = newestAsBuilt(yard.asBuilt);
  const { floorArea, rimArea } = newest === null ? { floorArea: null, rimArea: null } : builtBasin(newest.record, yard.units);
  const built = rimArea ?? floorArea;
  if (built !== null) return { area: built, from: "as-built" };
  const designed = numberOrNull(yard.design.rimArea);
  return designed === null ? null : { area: designed, from: "design" };
}

function numberOrNull(cell: Cell | undefined): number | null {
  return typeof cell === "number" ? cell : null;
}
