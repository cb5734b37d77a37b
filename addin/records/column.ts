import "./validation.ts";
import * as z from "zod";
import { LARGEST_NUMBER } from "../../functions/quantities.ts";
import { isBlank } from "../../functions/worksheet/calling/reading.ts";
import { keyAmong, plainWords } from "../../functions/worksheet/calling/typed-words.ts";
import { isErrorCode, type CellValue, type Tone } from "../workbook/port.ts";
import { LAST_DAY } from "./calendar-day.ts";

/** One column of a sheet: what it is called, how it looks, and what a cell of it may hold. */
export interface Column<Value = unknown> {
  readonly heading: string;
  readonly cell: z.ZodType<Value, CellValue>;
  readonly role: "input" | "result";
  readonly widthPixels: number;
  readonly numberFormat?: string;
  readonly choices?: readonly string[];
  readonly note?: string;
  /** Of a result: what to type, and where, to change it. Its sheet may say it for all of them. */
  readonly typedInstead?: string;
  /** What its words mean; "other" is for every word that no other tone names. */
  readonly tones?: Tones;
}

type Tones = Readonly<Partial<Record<Tone, readonly string[] | "other">>>;

interface Looks {
  readonly widthPixels?: number;
  readonly numberFormat?: string;
  readonly note?: string;
  readonly tones?: Tones;
}

interface ResultLooks extends Looks {
  readonly typedInstead?: string;
}

/** Words of any length. A number typed where words belong is kept as its digits; an error is no word of anybody's. */
export function textColumn(heading: string, looks: Looks = {}): Column<string | null> {
  return wordsColumn(heading, (typed) => typed.trim(), looks);
}

/** Words that rows are found by, such as an ID: a space too many makes no other name. */
export function nameColumn(heading: string, looks: Looks = {}): Column<string | null> {
  return wordsColumn(heading, plainWords, looks);
}

function wordsColumn(heading: string, read: (typed: string) => string, looks: Looks): Column<string | null> {
  const cell = z.custom<CellValue>().transform((value, context): string | null => {
    const error = errorIn(value, heading);
    if (error !== null) return refused(context, error);
    const text = isBlank(value) ? "" : read(String(value));
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
  return measuredColumn(
    heading,
    (value) => numberFault(value, rule),
    (value) => value,
    looks,
  );
}

function measuredColumn(
  heading: string,
  faultOf: (value: CellValue) => string | null,
  read: (value: number) => number,
  looks: Looks,
): Column<number | null> {
  const cell = z.custom<CellValue>().transform((value, context): number | null => {
    const sentence = faultOf(value);
    if (sentence !== null) return refused(context, sentence);
    return typeof value === "number" ? read(value) : null;
  });
  return { heading, cell, role: "input", widthPixels: 96, ...looks };
}

function refused(context: z.RefinementCtx, sentence: string): never {
  context.addIssue({ code: "custom", message: sentence });
  return z.NEVER;
}

function errorIn(value: CellValue, label: string): string | null {
  return isErrorCode(value) ? `${label} shows the error ${value}. Type over it, or put right what it is computed from.` : null;
}

function numberFault(value: CellValue, rule: NumberRule): string | null {
  if (isBlank(value)) return null;
  if (typeof value === "string")
    return errorIn(value, rule.label) ?? `${rule.label} must be a number; it is the text "${value.slice(0, 40)}".`;
  if (typeof value !== "number" || !Number.isFinite(value)) return `${rule.label} must be a number.`;
  if (rule.moreThan !== undefined && value <= rule.moreThan) return `${rule.label} must be more than ${rule.moreThan}.`;
  if (rule.atLeast !== undefined && value < rule.atLeast) return `${rule.label} must be ${rule.atLeast} or more.`;
  if (rule.atMost !== undefined && value > rule.atMost) return `${rule.label} must be ${rule.atMost} or less.`;
  return Math.abs(value) > LARGEST_NUMBER ? `${rule.label} is too large to be true.` : null;
}

/** A calendar day, held as the spreadsheet's day number. Of a pasted day with a time the day counts. */
export function dateColumn(heading: string, label: string, looks: Looks = {}): Column<number | null> {
  return measuredColumn(heading, (value) => dateFault(value, label), Math.floor, { numberFormat: "yyyy-mm-dd", ...looks });
}

/** A minute of a calendar day: the day number, and the share of the day that has passed. */
export function momentColumn(heading: string, label: string, looks: Looks = {}): Column<number | null> {
  return measuredColumn(
    heading,
    (value) => dateFault(value, label),
    (value) => value,
    { widthPixels: 130, numberFormat: "yyyy-mm-dd hh:mm", ...looks },
  );
}

function dateFault(value: CellValue, label: string): string | null {
  if (isBlank(value)) return null;
  if (typeof value === "string")
    return errorIn(value, label) ?? `${label} must be a date; it is the text "${value.slice(0, 40)}". Type the date again.`;
  return typeof value === "number" && value >= 1 && value < LAST_DAY + 1 ? null : `${label} must be a date, such as 2026-05-04.`;
}

/** One of a list of keys, whatever its case and the spaces around it. */
export function choiceColumn<Key extends string>(
  heading: string,
  label: string,
  choices: readonly Key[],
  looks: Looks = {},
): Column<Key | null> {
  const cell = z.custom<CellValue>().transform((value, context): Key | null => {
    if (isBlank(value)) return null;
    const typed = plainWords(String(value));
    const key = keyAmong(choices, typed);
    return key ?? refused(context, errorIn(value, label) ?? `${label} "${typed.slice(0, 40)}" is not in the list: ${choices.join(", ")}.`);
  });
  return { heading, cell, role: "input", widthPixels: 110, choices, ...looks };
}

/** A cell that the workbook computes: read as it stands, an error code included. */
export function resultColumn(heading: string, looks: ResultLooks = {}): Column<CellValue> {
  return { heading, cell: z.custom<CellValue>(), role: "result", widthPixels: 100, ...looks };
}
