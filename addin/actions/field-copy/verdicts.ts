/** An answer that is held against a rule has its verdict from the rule, at home as in a copy. */
import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { verdictFormula } from "../../records/formulas.ts";
import type { Place } from "../../records/place.ts";
import type { rulesSheet } from "../../records/rules.ts";
import type { visitsSheet } from "../../records/visits.ts";
import { addressOf, type FormulaWrite } from "../../workbook/port.ts";
import type { Fields } from "./taken-rows.ts";

export interface Answered {
  readonly row: number;
  readonly fields: Fields;
}

export function verdictWrites(
  visits: Place<typeof visitsSheet>,
  rules: Place<typeof rulesSheet>,
  sites: readonly Fields[],
  answers: readonly Answered[],
): readonly FormulaWrite[] {
  const units = new Map(sites.map((fields) => [idOf(fields), plainKey(String(fields.get("units") ?? ""))]));
  return answers.flatMap(({ row, fields }): readonly FormulaWrite[] => {
    const rule = fields.get("rule");
    if (rule === undefined || fields.has("verdict")) return [];
    const answer = addressOf(visits.cell(row, "answer")).replace(/^.*!/, "");
    const system = units.get(idOf(fields)) === "metric" ? "metric" : "us";
    return [{ range: visits.cell(row, "verdict"), formulas: [[verdictFormula(String(rule), answer, system, rules)]] }];
  });
}

/** As IDs are compared. */
function idOf(fields: Fields): string {
  return plainKey(String(fields.get("siteId") ?? ""));
}
