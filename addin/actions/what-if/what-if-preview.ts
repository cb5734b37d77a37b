import type { Cell, CellInput } from "../../../functions/worksheet/calling/cell.ts";
import type { Parameter } from "../../../functions/worksheet/calling/parameters.ts";
import { designSheet } from "../../records/design.ts";
import { programSettings, programSheet } from "../../records/program.ts";
import { sitesSheet } from "../../records/sites.ts";
import type { Source } from "../../records/what-if-sources.ts";
import { isErrorCode, type CellValue } from "../../workbook/port.ts";
import type { Program, Yard } from "../program/read-program.ts";
import { factorOf, feedOf, type WhatIfRequest } from "./what-if-request.ts";

export type InputSource = Source;

/** "Design, Floor area": the sheet and the heading without its units. */
export function placeWords(source: Exclude<Source, { kind: "series" }>): string {
  if (source.kind === "setting") return `${programSheet.name}, ${programSettings[source.key].setting}`;
  const [sheet, heading] =
    source.kind === "design"
      ? [designSheet, designSheet.columns[source.key].heading]
      : [sitesSheet, sitesSheet.columns[source.key].heading];
  return `${sheet.name}, ${heading.replace(/ \([^)]*\)$/, "")}`;
}

/** What a source holds now for the yard, in its units; undefined for a whole series, and for a yard's own without a yard. */
export function valueNow(program: Program, yard: Yard | undefined, source: Source, parameter: Parameter): CellValue | undefined {
  if (source.kind === "series") return undefined;
  const settingInUnits = (key: Extract<Source, { kind: "setting" }>["key"]): CellValue => {
    const value = program.settings[key];
    return value === null ? null : value * (yard?.units === "metric" ? factorOf(parameter) : 1);
  };
  if (source.kind === "setting") return settingInUnits(source.key);
  if (yard === undefined) return undefined;
  if (source.kind === "design") return yard.design[source.key];
  const own = yard.site.cells[source.key];
  return (own === null || own === "") && source.otherwise !== undefined ? settingInUnits(source.otherwise) : own;
}

/** The answer that the table's first cell will show, from one single call; null where a series of the workbook decides, or every yard. */
export function firstAnswer(program: Program, request: WhatIfRequest): Cell | null {
  const { scope, worksheetFunction, down, across, result } = request;
  if (scope.kind === "all" || down === null) return null;
  const yard = scope.kind === "yard" ? program.yards.find(({ siteId }) => siteId === scope.siteId) : undefined;
  const inputs: CellInput[] = [];
  for (const parameter of worksheetFunction.parameters) {
    if (parameter.key === "units") inputs.push(scope.units);
    else if (parameter.key === down.key) inputs.push(down.values[0]);
    else if (parameter.key === across?.key) inputs.push(across.values[0]);
    else {
      const feed = feedOf(request, parameter);
      const value = feed.kind === "typed" ? feed.value : feed.kind === "workbook" ? valueNow(program, yard, feed.source, parameter) : null;
      if (value === undefined) return null;
      inputs.push(isErrorCode(value) ? { code: value, sentence: `${parameter.label} shows ${value} in the workbook.` } : value);
    }
  }
  return worksheetFunction.evaluate(inputs)[0]?.[result === "all" ? 0 : result] ?? null;
}
