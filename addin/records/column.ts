import "./validation.ts";
import * as z from "zod";
import type { CellValue } from "../workbook/workbook.ts";

/** One column of a sheet: what it is called, how it looks, and what a cell of it may hold. */
export interface Column<Value = unknown> {
  readonly heading: string;
  readonly cell: z.ZodType<Value, CellValue>;
  readonly role: "input" | "result";
  readonly widthPixels: number;
  readonly numberFormat?: string;
  readonly choices?: readonly string[];
  readonly note?: string;
}

interface Looks {
  readonly widthPixels?: number;
  readonly numberFormat?: string;
  readonly note?: string;
}

/** Words of any length. A number typed where words belong is kept as its digits. */
export function textColumn(heading: string, looks: Looks = {}): Column<string | null> {
  const cell = z.custom<CellValue>().transform((value): string | null => {
    const text = value === null ? "" : String(value).trim();
    return text === "" ? null : text;
  });
  return { heading, cell, role: "input", widthPixels: 140, ...looks };
}

interface NumberRule {
  /** The label that sentences use; the heading without its unit. */
  readonly label: string;
  readonly atLeast?: number;
  readonly moreThan?: number;
  readonly atMost?: number;
}

export function numberColumn(heading: string, rule: NumberRule, looks: Looks = {}): Column<number | null> {
  const cell = z.custom<CellValue>().transform((value, context): number | null => {
    const sentence = numberFault(value, rule);
    if (sentence !== null) {
      context.addIssue({ code: "custom", message: sentence });
      return z.NEVER;
    }
    return typeof value === "number" ? value : null;
  });
  return { heading, cell, role: "input", widthPixels: 96, ...looks };
}

function numberFault(value: CellValue, rule: NumberRule): string | null {
  if (value === null || (typeof value === "string" && value.trim() === "")) return null;
  if (typeof value === "string") return `${rule.label} must be a number; it is the text "${value.slice(0, 40)}".`;
  if (typeof value !== "number" || !Number.isFinite(value)) return `${rule.label} must be a number.`;
  if (rule.moreThan !== undefined && value <= rule.moreThan) return `${rule.label} must be more than ${rule.moreThan}.`;
  if (rule.atLeast !== undefined && value < rule.atLeast) return `${rule.label} must be ${rule.atLeast} or more.`;
  if (rule.atMost !== undefined && value > rule.atMost) return `${rule.label} must be ${rule.atMost} or less.`;
  return null;
}

/** A calendar day, held as the spreadsheet's day number. */
export function dateColumn(heading: string, label: string, looks: Looks = {}): Column<number | null> {
  return numberColumn(heading, { label, atLeast: 1 }, { numberFormat: "yyyy-mm-dd", ...looks });
}

/** One of a list of keys, whatever its case. */
export function choiceColumn<Key extends string>(
  heading: string,
  label: string,
  choices: readonly Key[],
  looks: Looks = {},
): Column<Key | null> {
  const cell = z.custom<CellValue>().transform((value, context): Key | null => {
    const typed = value === null ? "" : String(value).trim();
    if (typed === "") return null;
    const key = choices.find((choice) => choice.toLowerCase() === typed.toLowerCase());
    if (key !== undefined) return key;
    context.addIssue({ code: "custom", message: `${label} "${typed.slice(0, 40)}" is not in the list: ${choices.join(", ")}.` });
    return z.NEVER;
  });
  return { heading, cell, role: "input", widthPixels: 110, choices, ...looks };
}

/** A cell that the workbook computes: read as it stands, an error code included. */
export function resultColumn(heading: string, looks: Looks = {}): Column<CellValue> {
  return { heading, cell: z.custom<CellValue>(), role: "result", widthPixels: 100, ...looks };
}
