import { fromUs } from "../../../functions/quantities.ts";
import { isCellError, type Cell, type CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { holeRate } from "../../../functions/worksheet/hole-test.ts";
import { siteDesign } from "../../../functions/worksheet/site-design.ts";
import { siteRunoff } from "../../../functions/worksheet/site-runoff.ts";
import { groundSlope } from "../../../functions/worksheet/siting.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import { isErrorCode, type CellRange, type CellValue } from "../../workbook/port.ts";
import type { designSheet } from "../../records/design.ts";
import { designLimits } from "../../records/program.ts";
import { minutesKey, READINGS, waterKey, type HoleTestRow } from "../../records/hole-tests.ts";
import type { KeyOf } from "../../records/sheet.ts";
import type { Program, Yard } from "../program/read-program.ts";

/** Why a number of this yard is not there, in words, and the cell to look at. */
export interface Explanation {
  readonly what: string;
  readonly where: CellRange;
  readonly sentence: string;
}

/**
 * Everything about the yard that stops a number: cells that do not hold what they should, and the sentences of the
 * worksheet functions for the cells that show an error. A grid shows only #VALUE!; this is what it means.
 */
export function explainYard(program: Program, yard: Yard): readonly Explanation[] {
  const slips = yard.slips.map((slip) => ({ what: "Typed", ...slip }));
  return [
    ...slips,
    ...slopeFaults(yard),
    ...yard.holeTests.flatMap((test) => holeTestFaults(yard, test)),
    ...runoffFaults(yard),
    ...designFaults(program, yard),
  ];
}

function slopeFaults(yard: Yard): Explanation[] {
  const { slopeDrop, slopeRun } = yard.site.cells;
  return faults("Ground slope", groundSlope, [slopeDrop, slopeRun], yard.site.at("slopeDrop"));
}

/** The infiltration rate of one hole, as the sheet computes it from the readings as typed. */
export function holeRateInputs(yard: Yard, test: HoleTestRow): readonly CellInput[] {
  const readings = Array.from({ length: READINGS }, (_, index) => index + 1);
  return [
    [readings.map((reading) => test.cells[minutesKey(reading)])],
    [readings.map((reading) => test.cells[waterKey(reading)])],
    test.cells.holeDiameter,
    yard.units,
  ];
}

function holeTestFaults(yard: Yard, test: HoleTestRow): Explanation[] {
  const name = test.record.hole === null ? "Hole test" : `Hole ${test.record.hole}`;
  return faults(name, holeRate, holeRateInputs(yard, test), test.at("infiltrationRate"));
}

function runoffFaults(yard: Yard): Explanation[] {
  const column = (key: "siteId" | "cover" | "area" | "share") => yard.surfaces.map(({ cells }) => [cells[key]]);
  const inputs = [
    yard.siteId,
    yard.design.stormDepth,
    yard.site.cells.soilGroup,
    ...(["siteId", "cover", "area", "share"] as const).map(column),
    yard.units,
  ];
  return faults("Runoff", siteRunoff, inputs.map(asInput), designCell(yard, "contributingArea"));
}

function designFaults(program: Program, yard: Yard): Explanation[] {
  const { settings } = program;
  const { cells } = yard.site;
  const inputs: CellValue[] = [
    yard.design.contributingArea,
    yard.design.testedRate,
    settings.reductionFactor,
    yard.design.stormDepth,
    yard.design.surfaceRunoff,
    cells.pondingDepth,
    cells.mediaDepth,
    fromUs("depth", settings.mulchDepthInches, yard.units),
    cells.sideSlope ?? settings.sideSlope,
    settings.drainHours,
    cells.shape,
    cells.lengthToWidth,
    yard.design.groundSlopePercent === "#N/A" ? null : yard.design.groundSlopePercent,
    ...designLimits(settings, yard.units),
    yard.design.notCounted,
    yard.units,
  ];
  return faults("Basin", siteDesign, inputs.map(asInput), designCell(yard, "designRate"));
}

function designCell(yard: Yard, key: KeyOf<typeof designSheet>): CellRange {
  return yard.designAt?.(key) ?? yard.site.at("siteId");
}

function faults(what: string, worksheetFunction: WorksheetFunction, inputs: readonly CellInput[], where: CellRange): Explanation[] {
  const sentences = worksheetFunction
    .evaluate(inputs)
    .flat()
    .flatMap((cell: Cell) => (isCellError(cell) ? [cell.sentence] : []));
  return [...new Set(sentences)].filter((sentence) => sentence !== "").map((sentence) => ({ what, where, sentence }));
}

/** A cell as a worksheet function is handed it: an error code as an error, so that it passes through without words. */
function asInput(value: CellValue | readonly (readonly CellValue[])[]): CellInput {
  if (Array.isArray(value)) return (value as readonly (readonly CellValue[])[]).map((row) => row.map((cell) => asInput(cell) as Cell));
  const cell = value as CellValue;
  return isErrorCode(cell) ? { code: cell, sentence: "" } : cell;
}
