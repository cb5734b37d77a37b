import { captureKnee } from "../../../functions/basin/capture-knee.ts";
import type { Garden } from "../../../functions/basin/water-balance.ts";
import { areaForCaptureSquareFeet } from "../../../functions/long-term/area-for-capture.ts";
import {
  capturedShare,
  LEAST_RECORD_YEARS,
  LONGEST_TELLING_STEP_HOURS,
  longTermBalance,
  yearsOf,
} from "../../../functions/long-term/long-term-balance.ts";
import { rainRecord, type RainRecord } from "../../../functions/long-term/rain-record.ts";
import { fromUs, toUs } from "../../../functions/quantities.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { BasinDraft, BasinInputs } from "./draft-basin.ts";
import { draftedGarden } from "./route-basin.ts";
import type { RecordedRain } from "../rain-record/recorded-rain.ts";

/** What a garden of one floor does with the years of the record, in the yard's units, as SOAK.LONGTERM has it. */
export interface CapturedYears {
  readonly area: number;
  readonly capturedShare: number;
  readonly runoffAYear: number;
  readonly overflowAYear: number;
  readonly overflowsAYear: number;
  readonly longestPondingHours: number;
}

export interface CaptureCurve {
  /** From no garden to the end of the curve. */
  readonly points: readonly CapturedYears[];
  /** From there to areas well beyond the draft's, where that is larger. */
  readonly further: readonly CapturedYears[];
  /** What the last point captures at least, or the area where that takes more than drains to it. */
  readonly endsAt: "share wanted" | "contributing area";
  readonly knee: CapturedYears | null;
  /** Of the rain on all that drains here, in every step of the record: that of the design storm. */
  readonly runoffShare: number;
  /** The basin as drafted, wherever the curve ends. */
  readonly drafted: CapturedYears;
  /** The same garden with another floor. */
  readonly at: (area: number) => CapturedYears;
}

/** The years of rain that gardens are tried on. */
export interface YearsOfRain {
  readonly record: RainRecord;
  readonly years: number;
  readonly rainInchesAYear: number;
  readonly isShort: boolean;
  readonly hasLongSteps: boolean;
}

/** Common practice, no source: the last twentieth of the water takes gardens that nobody builds. */
export const SHARE_AT_END = 0.95;

const POINTS = 60;
const FURTHER_POINTS = 12;

/** So that gardens somewhat larger than the draft can be looked at too. */
const BEYOND_DRAFT = 1.25;

/** Null where the record is empty or has a fault that the record's sheet names. */
export function yearsOfRain({ depths, faults, stepMinutes, unit, readings }: RecordedRain): YearsOfRain | null {
  if (readings < 2 || faults.length > 0 || stepMinutes === null || unit === null) return null;
  const stepHours = stepMinutes / 60;
  const record = rainRecord(
    depths.map((depth) => toUs("depth", depth ?? 0, unit === "mm" ? "metric" : "us")),
    stepHours,
  );
  if (record.totalRainInches === 0) return null;
  const years = yearsOf(record.steps, stepHours);
  return {
    record,
    years,
    rainInchesAYear: record.totalRainInches / years,
    isShort: years < LEAST_RECORD_YEARS,
    hasLongSteps: stepHours > LONGEST_TELLING_STEP_HOURS,
  };
}

/** Null while the basin has no size. */
export function captureCurve(inputs: BasinInputs, draft: BasinDraft, { record }: YearsOfRain): CaptureCurve | null {
  const { units } = draft;
  const garden = draftedGarden(inputs, draft);
  if (garden === null) return null;
  const { floorSquareFeet, contributingSquareFeet } = garden;
  const wanted = areaForCaptureSquareFeet(SHARE_AT_END, record, garden) ?? Infinity;
  const end = Math.min(wanted, contributingSquareFeet);
  const at = (squareFeet: number) => capturedYears(record, garden, squareFeet, units);
  const points = Array.from({ length: POINTS + 1 }, (_, index) => at((end * index) / POINTS));
  const last = BEYOND_DRAFT * floorSquareFeet;
  return {
    points,
    further:
      last <= end ? [] : Array.from({ length: FURTHER_POINTS }, (_, index) => at(end + ((last - end) * (index + 1)) / FURTHER_POINTS)),
    endsAt: wanted <= contributingSquareFeet ? "share wanted" : "contributing area",
    knee: captureKnee(points) ?? null,
    runoffShare: garden.runoffShare,
    drafted: at(floorSquareFeet),
    at: (area) => at(toUs("area", area, units)),
  };
}

/** A garden without a floor has no sides either: it captures nothing. */
function capturedYears(record: RainRecord, garden: Garden, floorSquareFeet: number, units: UnitSystem): CapturedYears {
  const balance = longTermBalance(
    record,
    floorSquareFeet === 0 ? { ...garden, floorSquareFeet, pondingInches: 0 } : { ...garden, floorSquareFeet },
  );
  return {
    area: fromUs("area", floorSquareFeet, units),
    capturedShare: capturedShare(balance) ?? 1,
    runoffAYear: fromUs("waterVolume", balance.runoffCubicFeet / balance.years, units),
    overflowAYear: fromUs("waterVolume", balance.overflowCubicFeet / balance.years, units),
    overflowsAYear: balance.overflows / balance.years,
    longestPondingHours: balance.longestPondingHours,
  };
}
