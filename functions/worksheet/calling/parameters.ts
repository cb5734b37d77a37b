import { unitOf } from "../../quantities.ts";
import type { ArgumentRule, ValueKind } from "./arguments.ts";
import type { Cell } from "./cell.ts";
import { isNumberRule } from "./reading.ts";
import { unitNames, type UnitNames } from "./results.ts";
import { orList } from "./sentences.ts";
import { limitInWords } from "./speaker.ts";

/** An argument as readers of the catalogue see it: argument help, functions.json, the reference page. */
export interface Parameter {
  readonly key: string;
  readonly label: string;
  readonly kind: ValueKind;
  readonly optional: boolean;
  /** In US units; a metric sheet gets the same physical quantity. */
  readonly default?: Cell;
  /** What leaving it out means where there is no fixed default. */
  readonly leftOutMeans?: string;
  readonly isRange: boolean;
  readonly units: UnitNames | undefined;
  readonly choices?: readonly string[];
  /** One line of argument help. */
  readonly description: string;
}

/** A parameter may be left out when all after it may; one before a required parameter may only be blank. */
export function parametersFrom(rules: readonly ArgumentRule[]): readonly Parameter[] {
  const lastRequired = rules.findLastIndex(({ optional }) => !optional);
  return rules.map((rule, place) => parameterFrom(rule, place > lastRequired));
}

function parameterFrom(rule: ArgumentRule, optional: boolean): Parameter {
  const fallback = singleCell(rule.fallback);
  return {
    key: rule.key,
    label: rule.label,
    kind: rule.kind,
    optional,
    ...(fallback === undefined ? {} : { default: fallback }),
    ...(rule.leftOutMeans === undefined ? {} : { leftOutMeans: rule.leftOutMeans }),
    isRange: rule.takes !== "cell",
    units: unitNames(rule.kind),
    ...(rule.choices === undefined ? {} : { choices: rule.choices }),
    /** @documentation */
    description: describe(rule, fallback),
  };
}

function singleCell(fallback: unknown): Cell | undefined {
  const value: unknown = Array.isArray(fallback) && fallback.length === 1 ? fallback[0] : fallback;
  return typeof value === "number" || typeof value === "string" || typeof value === "boolean" ? value : undefined;
}

function describe(rule: ArgumentRule, fallback: Cell | undefined): string {
  const units = unitNames(rule.kind);
  const parts = [
    `${rule.label}${rule.takes === "cell" ? "" : " (a range)"}${units === undefined ? "" : `, ${units.us} or ${units.metric}`}`,
    ...limitsInWords(rule),
    ...(rule.leftOutMeans === undefined ? [] : [`if left out, ${rule.leftOutMeans}`]),
    ...(fallback === undefined ? [] : [`if left out, ${defaultInWords(rule, fallback)}`]),
  ];
  return `${parts.join("; ")}.`;
}

function limitsInWords(rule: ArgumentRule): readonly string[] {
  if (rule.choices !== undefined) return rule.choices.length <= LONGEST_LIST ? [orList(rule.choices)] : [];
  if (rule.kind === "flag") return ["TRUE or FALSE"];
  if (!isNumberRule(rule)) return [];
  if (rule.isDate === true) return ["a date from March 1, 1900 on"];
  const unit = unitOf(rule.kind, "us");
  const words = [
    ...(rule.least === undefined
      ? []
      : [rule.leastExcluded === true ? `more than ${limitInWords(rule.least, unit)}` : `at least ${limitInWords(rule.least, unit)}`]),
    ...(rule.most === undefined
      ? []
      : [rule.mostExcluded === true ? `less than ${limitInWords(rule.most, unit)}` : `at most ${limitInWords(rule.most, unit)}`]),
  ];
  return words.length === 0 ? [] : [words.join(", ")];
}

function defaultInWords(rule: ArgumentRule, fallback: Cell): string {
  if (typeof fallback === "number" && isNumberRule(rule)) return limitInWords(fallback, unitOf(rule.kind, "us"));
  return typeof fallback === "boolean" ? String(fallback).toUpperCase() : `"${String(fallback)}"`;
}

const LONGEST_LIST = 6;
