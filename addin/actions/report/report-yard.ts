import { smallestOf } from "../../../functions/extremes.ts";
import { USUAL_RUNOFF_STORM_SHARE, runoffCoefficient } from "../../../functions/runoff/pollutant-load.ts";
import { toUs, type NumberKind } from "../../../functions/quantities.ts";
import type { CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { pollutantLoad } from "../../../functions/worksheet/pollutant-load.ts";
import { runoffVolume } from "../../../functions/worksheet/runoff.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import type { EstimateLineRow } from "../../records/estimate-lines.ts";
import type { SettingValues } from "../../records/program.ts";
import { NO_FUNDER } from "../../records/report.ts";
import type { YardFigureKey } from "../../records/report-yards.ts";
import type { CellValue } from "../../workbook/port.ts";
import { openFollowUps } from "../care/due-follow-ups.ts";
import { imperviousArea, isBelievable } from "../estimate/estimate.ts";
import type { Program, Yard } from "../program/read-program.ts";
import { newestAsBuilt } from "../build/record-as-built.ts";

/** A yard that counts as built has been measured; a designed one fits and is not built. Never added up. */
export type CountsAs = "built" | "designed" | "not yet";

/** What one yard brings to the report, in US units: the same row as on sheet Report yards. */
export interface ReportYard {
  readonly yard: Yard;
  readonly countsAs: CountsAs;
  /** The day it was measured; of a yard that is not built its first dig day. */
  readonly date: number | null;
  readonly figures: Readonly<Record<YardFigureKey, number | null>>;
}

/** Which rows of the yard count: one funder's lines, and the dig days of a period. */
export interface RowsCounted {
  readonly lines: (line: EstimateLineRow) => boolean;
  readonly digDay: (date: number | null) => boolean;
}

export const EVERY_ROW: RowsCounted = { lines: () => true, digDay: () => true };

export function reportYard({ settings }: Pick<Program, "settings">, yard: Yard, rows: RowsCounted = EVERY_ROW): ReportYard {
  const countsAs = countsAsOf(yard);
  const contributingArea = inUs(yard, "area", yard.design.contributingArea);
  const impervious = yard.surfaces.length === 0 ? null : inUs(yard, "area", imperviousArea(yard));
  const measured = newestAsBuilt(yard.asBuilt)?.record;
  const builtOr = (key: "floorArea" | "waterHeld") => (measured === undefined ? yard.design[key] : measured[key]);
  const storage = inUs(yard, "waterVolume", builtOr("waterHeld"));
  const lines = yard.estimateLines.filter(rows.lines);
  return {
    yard,
    countsAs,
    date: dateOf(yard),
    figures: {
      contributingArea,
      imperviousArea: impervious,
      gardenArea: inUs(yard, "area", builtOr("floorArea")),
      storage,
      stormCapture: stormCapture(yard, storage),
      ...yearly(settings, contributingArea, impervious),
      plants:
        yard.clumps.length === 0 ? null : sum(yard.clumps.map(({ record }) => (countsAs === "built" ? record.planted : record.planned))),
      hours: sum(
        signIns(yard)
          .filter(({ record }) => rows.digDay(record.date))
          .map(({ record }) => record.hours),
      ),
      cash: moneyOf(lines, (kind) => kind !== "in-kind"),
      inKind: moneyOf(lines, (kind) => kind === "in-kind"),
      looksDone: yard.followUps.filter(({ record }) => (record.done ?? 0) > 0).length,
      looksOpen: openFollowUps(yard.followUps).length,
    },
  };
}

function countsAsOf({ asBuilt, design }: Yard): CountsAs {
  return asBuilt.length > 0 ? "built" : design.status === "fits" ? "designed" : "not yet";
}

function dateOf({ asBuilt, digDays }: Yard): number | null {
  const measured = newestAsBuilt(asBuilt);
  if (measured !== null) return measured.record.date;
  const days = digDays.flatMap(({ record }) => (record.date === null ? [] : [record.date]));
  return days.length === 0 ? null : smallestOf(days);
}

export function signIns({ digDays }: Yard): Yard["digDays"] {
  return digDays.filter(({ record }) => record.entry === "sign-in");
}

export function funderOf({ record }: EstimateLineRow): string {
  return record.funder ?? NO_FUNDER;
}

function inUs({ units }: Yard, kind: NumberKind, value: CellValue): number | null {
  return isBelievable(value) ? toUs(kind, value, units) : null;
}

function sum(values: readonly (number | null)[]): number {
  return values.reduce<number>((total, value) => total + (value ?? 0), 0);
}

/** Null where there are no lines at all; lines without an amount are left out, and counted by the report. */
function moneyOf(lines: readonly EstimateLineRow[], ofKind: (kind: EstimateLineRow["record"]["kind"]) => boolean): number | null {
  if (lines.length === 0) return null;
  return sum(lines.filter(({ record }) => ofKind(record.kind)).map(({ record }) => (isBelievable(record.amount) ? record.amount : null)));
}

/** Of the runoff that the basin was sized for: each surface by the rule of its own cover. */
function stormCapture(yard: Yard, storage: number | null): number | null {
  const runoff = inUs(yard, "waterVolume", yard.design.runoff);
  return runoff === null || storage === null ? null : Math.min(runoff, storage);
}

type Yearly = Pick<Record<YardFigureKey, number | null>, "yearRunoff" | "phosphorus" | "nitrogen" | "solids">;

/** The simple method, whose coefficient is a straight line: roof and paving, and the rest, add up to the whole. */
function yearly({ yearlyRainInches: rain }: SettingValues, contributingArea: number | null, impervious: number | null): Yearly {
  const parts = (of: (area: number, imperviousPercent: number) => number | null): number | null => {
    if (rain === null || contributingArea === null || impervious === null) return null;
    const [hard, soft] = [of(impervious, 100), of(contributingArea - impervious, 0)];
    return hard === null || soft === null ? null : hard + soft;
  };
  const load = (pollutant: string) => parts((area, imperviousPercent) => answer(pollutantLoad, [area, rain, imperviousPercent, pollutant]));
  return {
    yearRunoff: parts((area, imperviousPercent) =>
      answer(runoffVolume, [area, (rain ?? 0) * USUAL_RUNOFF_STORM_SHARE, runoffCoefficient(imperviousPercent)]),
    ),
    phosphorus: load("TP"),
    nitrogen: load("TN"),
    solids: load("TSS"),
  };
}

function answer(worksheetFunction: WorksheetFunction, inputs: readonly CellInput[]): number | null {
  const cell = worksheetFunction.evaluate(inputs)[0]?.[0];
  return typeof cell === "number" ? cell : null;
}
