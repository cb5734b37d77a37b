import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { costOfUnit } from "../../../functions/cost/estimate-totals.ts";
import { GALLONS_PER_CUBIC_FOOT } from "../../../functions/planting/water-need.ts";
import { isBlank } from "../../records/sheet.ts";
import { reportUnits } from "../../records/report-formulas.ts";
import { reportFigures, type ReportFigure, type ReportFigureKey } from "../../records/report.ts";
import type { YardFigureKey } from "../../records/report-yards.ts";
import { isoDate } from "../dates.ts";
import { dueFollowUps, type DueFollowUp } from "../care/due-follow-ups.ts";
import { isBelievable, volunteerHoursValue } from "../estimate/estimate.ts";
import type { Program, Yard } from "../program/read-program.ts";
import { EVERY_ROW, funderOf, reportYard, signIns, type ReportYard, type RowsCounted } from "./report-yard.ts";

/** Which part of the program the report is asked about; null for no limit. Days are counted, the last one included. */
export interface ReportQuestion {
  readonly from: number | null;
  readonly to: number | null;
  readonly funder: string | null;
}

/** A total with every yard that it was asked of: those without the number are named, never counted as 0. */
export interface ReportTotal {
  /** In the US unit of the figure. */
  readonly value: number | null;
  /** Why there is no total. */
  readonly why: string | null;
  readonly behind: readonly { readonly yard: Yard; readonly value: number | null }[];
}

/** The units a line is shown in, and how many metric ones make one of the US. */
export function unitsOf({ unit }: ReportFigure): (typeof reportUnits)[ReportFigure["unit"]] {
  return reportUnits[unit];
}

export interface ReportLine {
  readonly figure: ReportFigure;
  readonly built: ReportTotal;
  readonly designed: ReportTotal;
}

/** Money or area of one funder or one year. */
export interface ReportPart {
  readonly name: string;
  readonly built: number;
  readonly designed: number;
}

export interface Report {
  readonly lines: readonly ReportLine[];
  readonly built: readonly ReportYard[];
  readonly designed: readonly ReportYard[];
  readonly notYet: readonly ReportYard[];
  /** Built, but in no period, because As-built bears no day. */
  readonly undated: readonly ReportYard[];
  readonly cashByFunder: readonly ReportPart[];
  readonly areaByYear: readonly ReportPart[];
  readonly overdue: readonly DueFollowUp[];
  /** Every funder that any line names, for the filter. */
  readonly funders: readonly string[];
}

/**
 * The report for a period and a funder. Built yards count by the day of As-built, hours by their own day; designed
 * yards count as they stand today, because a design is no event. For the whole period it is what sheet Report shows.
 */
export function reportOf(program: Program, question: ReportQuestion, today: number): Report {
  const { funder } = question;
  const rows: RowsCounted =
    funder === null && isUnlimited(question)
      ? EVERY_ROW
      : { lines: (line) => funder === null || sameName(funderOf(line), funder), digDay: (date) => isWithin(question, date) };
  const yards = program.yards
    .filter(({ estimateLines }) => funder === null || estimateLines.some(rows.lines))
    .map((yard) => reportYard(program, yard, rows));
  const everyBuilt = yards.filter(({ countsAs }) => countsAs === "built");
  const built = everyBuilt.filter(({ date }) => isWithin(question, date));
  const designed = yards.filter(({ countsAs }) => countsAs === "designed");
  // Hours belong to the day they were worked, whenever the garden was measured.
  const worked = { built: everyBuilt, designed };
  const counted = { built, designed };
  const funders = fundersOf(program);
  const lineOf = (figure: ReportFigure): ReportLine => {
    const of = HOURS.has(figure.key) ? worked : counted;
    return { figure, built: totalOf(program, figure, of.built, rows), designed: totalOf(program, figure, of.designed, rows) };
  };
  return {
    lines: reportFigures.map(lineOf),
    built,
    designed,
    notYet: yards.filter(({ countsAs }) => countsAs === "not yet"),
    undated: isUnlimited(question) ? [] : everyBuilt.filter(({ date }) => date === null),
    cashByFunder: cashByFunder(counted, rows, funders),
    areaByYear: areaByYear(counted),
    overdue: dueFollowUps({ yards: [...built, ...designed].map(({ yard }) => yard) }, today).filter(({ state }) => state === "overdue"),
    funders,
  };
}

const HOURS: ReadonlySet<string> = new Set<ReportFigureKey>(["volunteers", "hours", "volunteerValue"]);

interface Counted {
  readonly built: readonly ReportYard[];
  readonly designed: readonly ReportYard[];
}

function isUnlimited({ from, to }: ReportQuestion): boolean {
  return from === null && to === null;
}

function isWithin({ from, to }: ReportQuestion, date: number | null): boolean {
  if (from === null && to === null) return true;
  return date !== null && (from === null || date >= from) && (to === null || date < to + 1);
}

/** A name written in two ways, "Water fund" and "water fund", is one. */
function sameName(one: string, other: string): boolean {
  return plainKey(one) === plainKey(other);
}

function different(names: readonly (string | null)[]): number {
  return new Set(names.flatMap((name) => (name === null ? [] : [plainKey(name)]))).size;
}

/** Every funder once, in the spelling that stands first on Estimate lines. */
function fundersOf({ yards }: Program): readonly string[] {
  const byName = new Map<string, string>();
  const lines = yards.flatMap(({ estimateLines }) => estimateLines).sort((one, other) => one.row - other.row);
  for (const name of lines.map(funderOf)) if (!byName.has(plainKey(name))) byName.set(plainKey(name), name);
  return [...byName.values()].sort((one, other) => one.localeCompare(other));
}

function totalOf(program: Program, figure: ReportFigure, yards: readonly ReportYard[], rows: RowsCounted): ReportTotal {
  const of = (value: (yard: ReportYard) => number | null) => yards.map((each) => ({ yard: each.yard, value: value(each) }));
  const column = (key: YardFigureKey, factor = 1) => added(of(({ figures }) => times(figures[key], factor)));
  const setting = (total: ReportTotal, missing: string | null): ReportTotal =>
    missing === null ? total : { ...total, value: null, why: missing };
  const rain = program.settings.yearlyRainInches === null ? "Rain in a year is blank on Program." : null;
  const share = program.settings.yearlyCaptureShare;
  const key = figure.key as ReportFigureKey;
  const counted = (value: number, behind: ReportTotal["behind"]): ReportTotal => ({ value, why: null, behind });
  const people = ({ yard }: ReportYard) =>
    signIns(yard)
      .filter(({ record }) => rows.digDay(record.date))
      .map(({ record }) => record.who);
  const plants = ({ yard, countsAs }: ReportYard) =>
    yard.clumps
      .filter(({ record }) => ((countsAs === "built" ? record.planted : record.planned) ?? 0) > 0)
      .map(({ record }) => record.plant);
  const unpriced = ({ yard }: ReportYard) =>
    yard.estimateLines.filter((line) => rows.lines(line) && line.record.item !== null && !isBelievable(line.record.amount)).length;
  const ofItsOwn: Partial<Record<ReportFigureKey, () => ReportTotal>> = {
    yards: () =>
      counted(
        yards.length,
        of(() => 1),
      ),
    storageGallons: () => column("storage", GALLONS_PER_CUBIC_FOOT),
    stormGallons: () => column("stormCapture", GALLONS_PER_CUBIC_FOOT),
    yearGallons: () => setting(column("yearRunoff", GALLONS_PER_CUBIC_FOOT), rain),
    capturedGallons: () =>
      setting(
        column("yearRunoff", GALLONS_PER_CUBIC_FOOT * (share ?? 0)),
        rain ?? (share === null ? "Runoff captured in a year is blank on Program." : null),
      ),
    phosphorus: () => setting(column("phosphorus"), rain),
    nitrogen: () => setting(column("nitrogen"), rain),
    solids: () => setting(column("solids"), rain),
    species: () =>
      counted(
        different(yards.flatMap(plants)),
        of((each) => different(plants(each))),
      ),
    volunteers: () =>
      counted(
        different(yards.flatMap(people)),
        of((each) => different(people(each))),
      ),
    volunteerValue: () => valueOfHours(program, column("hours")),
    unpriced: () => added(of(unpriced)),
    costPerArea: () => costFor(yards, "contributingArea", 1),
    costPerGallon: () => costFor(yards, "storage", GALLONS_PER_CUBIC_FOOT),
  };
  return ofItsOwn[key]?.() ?? column(figure.column ?? "hours");
}

function times(value: number | null, factor: number): number | null {
  return value === null ? null : value * factor;
}

/** What no yard has a number for is not known: never 0. */
function added(behind: ReportTotal["behind"]): ReportTotal {
  if (behind.length > 0 && behind.every(({ value }) => value === null)) return { value: null, why: "No yard has a number for it.", behind };
  return { value: behind.reduce((sum, { value }) => sum + (value ?? 0), 0), why: null, behind };
}

function valueOfHours(program: Program, hours: ReportTotal): ReportTotal {
  const worth = volunteerHoursValue(program, hours.value ?? 0);
  const behind = hours.behind.map(({ yard, value }) => {
    const own = volunteerHoursValue(program, value ?? 0);
    return { yard, value: "value" in own ? own.value : null };
  });
  return "value" in worth ? { value: worth.value, why: null, behind } : { value: null, why: worth.sentence, behind };
}

/** Cash by a quantity, over the yards that have both, so that neither is divided by another yard's. */
function costFor(yards: readonly ReportYard[], key: "contributingArea" | "storage", factor: number): ReportTotal {
  const pairs = yards.map(({ yard, figures }) => ({ yard, cash: figures.cash, quantity: times(figures[key], factor) }));
  const both = pairs.flatMap(({ cash, quantity }) => (cash === null || quantity === null ? [] : [{ cash, quantity }]));
  const quantity = both.reduce((sum, each) => sum + each.quantity, 0);
  const cash = both.reduce((sum, each) => sum + each.cash, 0);
  const behind = pairs.map((each) => ({
    yard: each.yard,
    value: each.cash === null || each.quantity === null || each.quantity <= 0 ? null : finite(costOfUnit(each.cash, each.quantity)),
  }));
  return quantity > 0 && finite(costOfUnit(cash, quantity)) !== null
    ? { value: costOfUnit(cash, quantity), why: null, behind }
    : { value: null, why: "No yard has both.", behind };
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function cashByFunder(counted: Counted, rows: RowsCounted, funders: readonly string[]): readonly ReportPart[] {
  const lines = (yards: readonly ReportYard[]) =>
    yards.flatMap(({ yard }) =>
      yard.estimateLines.filter((line) => rows.lines(line) && line.record.kind !== "in-kind" && !isBlank(line.cells.item)),
    );
  const [built, designed] = [lines(counted.built), lines(counted.designed)];
  const cash = (of: typeof built, funder: string) =>
    of.reduce((sum, line) => (sameName(funderOf(line), funder) && isBelievable(line.record.amount) ? sum + line.record.amount : sum), 0);
  const named = new Set([...built, ...designed].map((line) => plainKey(funderOf(line))));
  return funders
    .filter((name) => named.has(plainKey(name)))
    .map((name) => ({ name, built: cash(built, name), designed: cash(designed, name) }));
}

/** Contributing area treated, by the year in which the garden was measured; designed gardens have no year and stand last. */
function areaByYear({ built, designed }: Counted): readonly ReportPart[] {
  const area = (yards: readonly ReportYard[]) => yards.reduce((sum, { figures }) => sum + (figures.contributingArea ?? 0), 0);
  const years = [...new Set(built.map(({ date }) => yearOf(date)))].sort();
  return [
    ...years.map((year) => ({ name: year, built: area(built.filter(({ date }) => yearOf(date) === year)), designed: 0 })),
    ...(designed.length === 0 ? [] : [{ name: "not built yet", built: 0, designed: area(designed) }]),
  ];
}

function yearOf(date: number | null): string {
  return date === null ? "without a date" : isoDate(date).slice(0, 4);
}
