import type { Cell } from "../../../functions/worksheet/calling/cell.ts";
import { isErrorCode, type CellValue } from "../../workbook/port.ts";
import type { Program } from "../program/read-program.ts";

export type RuleTable = readonly (readonly Cell[])[];

const tables = new WeakMap<Program["rules"], RuleTable>();

/** The Rules sheet as functions take it: one table for every step of every yard, so that its rules are looked up once. */
export function ruleTable(rules: Program["rules"]): RuleTable {
  const table = tables.get(rules) ?? rules.map((row) => row.map(asCell));
  tables.set(rules, table);
  return table;
}

export function asCell(value: CellValue): Cell {
  return isErrorCode(value) ? { code: value, sentence: "" } : value;
}
