import { FIRST_SOUND_DATE, LAST_DATE } from "../../earthwork/dig-date.ts";
import { kinds, type Kind, type NumberKind } from "../../quantities.ts";
import type { Cell } from "./cell.ts";

/** What an argument or a result holds: a kind of number, or words, or yes and no, or raw cells. */
export type ValueKind = NumberKind | "choice" | "flag" | "text" | "cells";

/** The rules of one argument, as data. Limits are in US units. */
export interface ArgumentRule {
  readonly key: string;
  /** As the user sees it in sentences and argument help. */
  readonly label: string;
  readonly kind: ValueKind;
  readonly least?: number | undefined;
  readonly leastExcluded?: boolean;
  readonly most?: number | undefined;
  readonly mostExcluded?: boolean;
  readonly whole?: boolean;
  /** A day of the calendar, as the worksheet numbers days; a share of the day may follow. */
  readonly isDate?: boolean;
  readonly choices?: readonly string[];
  /** "cell" lifts over ranges; "range" takes a whole series; "table" takes rows of cells as they are. */
  readonly takes: "cell" | "range" | "table";
  readonly keepsBlanks?: boolean;
  readonly optional: boolean;
  readonly fallback?: unknown;
  /** What a left-out argument without a fixed default means. */
  readonly leftOutMeans?: string;
}

/** One argument of a worksheet function; `Value` is what the calculation receives. */
export class Argument<Key extends string, Value> {
  /** Exists for the type checker only. */
  declare readonly value: Value;

  constructor(readonly rule: ArgumentRule & { readonly key: Key }) {}

  /** May be left out or blank; then it is `fallback`, in US units. */
  optional(fallback: Value): Argument<Key, Value> {
    return new Argument({ ...this.rule, optional: true, fallback });
  }

  /** May be left out or blank; the calculation then receives undefined, and `meaning` says what it does about it. */
  leftOutMeans(meaning: string): Argument<Key, Value | undefined> {
    return new Argument({ ...this.rule, optional: true, leftOutMeans: meaning });
  }
}

/** A number with limits. Setting a limit replaces the natural one of its kind. */
export class NumberArgument<Key extends string> extends Argument<Key, number> {
  atLeast(least: number): NumberArgument<Key> {
    return new NumberArgument({ ...this.rule, least, leastExcluded: false });
  }

  moreThan(least: number): NumberArgument<Key> {
    return new NumberArgument({ ...this.rule, least, leastExcluded: true });
  }

  atMost(most: number): NumberArgument<Key> {
    return new NumberArgument({ ...this.rule, most, mostExcluded: false });
  }

  lessThan(most: number): NumberArgument<Key> {
    return new NumberArgument({ ...this.rule, most, mostExcluded: true });
  }

  whole(): NumberArgument<Key> {
    return new NumberArgument({ ...this.rule, whole: true });
  }
}

/** A whole series of values. Blank cells in it are skipped. */
export class RangeArgument<Key extends string, Value> extends Argument<Key, readonly Value[]> {
  /** For series that pair up cell by cell: a blank cell arrives as null and keeps its place. */
  keepingBlanks(): RangeArgument<Key, Value | null> {
    return new RangeArgument({ ...this.rule, keepsBlanks: true });
  }
}

/** What a result cell holds. */
export interface ResultValue<Value> {
  readonly label: string;
  readonly kind: ValueKind;
  /** Exists for the type checker only. */
  readonly output?: Value;
}

/** With a key and a label an argument; with a label alone a result. */
interface NumberBuilder {
  <const Key extends string>(key: Key, label: string): NumberArgument<Key>;
  (label: string): ResultValue<number>;
}

function numberBuilder(kind: NumberKind): NumberBuilder {
  const natural: Kind = kinds[kind];
  const limits = { least: natural.least, most: natural.most, whole: natural.whole ?? false };
  function build<const Key extends string>(key: Key, label: string): NumberArgument<Key>;
  function build(label: string): ResultValue<number>;
  function build(keyOrLabel: string, label?: string): NumberArgument<string> | ResultValue<number> {
    if (label === undefined) return { label: keyOrLabel, kind };
    return new NumberArgument({ key: keyOrLabel, label, kind, ...limits, takes: "cell", optional: false });
  }
  return build;
}

export const depth = numberBuilder("depth");
export const length = numberBuilder("length");
export const rate = numberBuilder("rate");
export const area = numberBuilder("area");
export const waterVolume = numberBuilder("waterVolume");
export const earthVolume = numberBuilder("earthVolume");
export const flow = numberBuilder("flow");
export const weight = numberBuilder("weight");
export const load = numberBuilder("load");
export const lengthInSameUnit = numberBuilder("lengthInSameUnit");
export const money = numberBuilder("money");
export const hours = numberBuilder("hours");
export const minutes = numberBuilder("minutes");
export const share = numberBuilder("share");
export const percent = numberBuilder("percent");
export const number = numberBuilder("number");
export const count = numberBuilder("count");

/** 1 March 1900, before which worksheets count a day that never was, to 31 December 9999. */
export function date<const Key extends string>(key: Key, label: string): NumberArgument<Key> {
  return new NumberArgument({ ...number(key, label).rule, least: FIRST_SOUND_DATE, most: LAST_DATE, isDate: true });
}

/** One of a list of keys, written in any case and with any spacing. */
export function choice<const Key extends string, const Choice extends string>(
  key: Key,
  label: string,
  choices: readonly Choice[],
): Argument<Key, Choice> {
  return new Argument({ key, label, kind: "choice", choices, takes: "cell", optional: false });
}

export function flag<const Key extends string>(key: Key, label: string): Argument<Key, boolean>;
export function flag(label: string): ResultValue<boolean>;
export function flag(keyOrLabel: string, label?: string): Argument<string, boolean> | ResultValue<boolean> {
  if (label === undefined) return { label: keyOrLabel, kind: "flag" };
  return new Argument({ key: keyOrLabel, label, kind: "flag", takes: "cell", optional: false });
}

export function text<const Key extends string>(key: Key, label: string): Argument<Key, string>;
export function text(label: string): ResultValue<string>;
export function text(keyOrLabel: string, label?: string): Argument<string, string> | ResultValue<string> {
  if (label === undefined) return { label: keyOrLabel, kind: "text" };
  return new Argument({ key: keyOrLabel, label, kind: "text", takes: "cell", optional: false });
}

/**
 * Which units the caller's numbers are in. Every function with a dimension lists it; the calculation is not handed it, because
 * all it sees is in US units. Up to version 1.0.0 it stands last; an argument added later is declared after it.
 */
export const units = choice("units", "Units", ["us", "metric"]).optional("us");

/** A whole series of one kind. The label is that of one value: a sentence about the third says "Tested rate 3". */
export function rangeOf<Key extends string, Value>(one: Argument<Key, Value>): RangeArgument<Key, Value> {
  return new RangeArgument({ ...one.rule, takes: "range" });
}

/**
 * A column of a list, or several, that every row of the result looks its own rows up in: handed over as it stands, blank
 * when left out. Each cell is read by the rule of the one argument when its row is looked at.
 */
export function listOf<Key extends string, Value>(one: Argument<Key, Value>): Argument<Key, readonly (readonly Cell[])[]> {
  return new Argument({ ...one.rule, takes: "table", optional: true, fallback: [] });
}

/** Rows of cells, handed to the calculation as they stand. */
export function tableRange<const Key extends string>(key: Key, label: string): Argument<Key, readonly (readonly Cell[])[]> {
  return new Argument({ key, label, kind: "cells", takes: "table", optional: false });
}
