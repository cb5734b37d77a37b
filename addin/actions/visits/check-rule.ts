import { isCellError } from "../../../functions/worksheet/calling/cell.ts";
import { siteCheck } from "../../../functions/worksheet/siting.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import { VERDICTS, type Verdict } from "../../records/visits.ts";
import type { Program } from "../program/read-program.ts";
import { ruleTable } from "./rule-table.ts";

/** A computed value held against the Rules sheet. */
export interface RuleCheck {
  readonly rule: string;
  readonly verdict: Verdict;
  /** Why the Rules sheet gives no verdict, where it is at fault. */
  readonly sentence: string | null;
}

/** Rules that a design is held against, by the names a new workbook starts with. */
export const TESTED_RATE_RULE = "Tested infiltration rate";
export const PONDING_RULE = "Ponding depth";
export const DRAWDOWN_RULE = "Drawdown";
export const SLOPE_RULE = "Ground slope";

/** A value that is not there is "not measured", never a pass. */
export function checkRule(rule: string, value: number | null, rules: Program["rules"], units: UnitSystem): RuleCheck {
  const cell = siteCheck.evaluate([rule, value, ruleTable(rules), units])[0]?.[0];
  const verdict = VERDICTS.find((one) => one === cell);
  if (verdict !== undefined) return { rule, verdict, sentence: null };
  return { rule, verdict: "not measured", sentence: isCellError(cell) && cell.sentence !== "" ? cell.sentence : null };
}
