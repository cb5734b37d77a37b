import { unitOf } from "../../../functions/quantities.ts";
import { columnLetters } from "../../workbook/port.ts";
import { isoDate } from "../dates.ts";
import type { Answer } from "../basin/draft-basin.ts";
import type { Estimate, PricedLine } from "../estimate/estimate.ts";
import type { Yard } from "../program/read-program.ts";
import { quotedSheet, sheetNames, type FileCell, type FileSheet } from "./spreadsheet-file.ts";
import { text } from "./text.ts";

export interface YardEstimate {
  readonly yard: Yard;
  readonly estimate: Estimate;
}

/** The columns of an estimate, in the order of every file. */
export const ESTIMATE_COLUMNS = [
  "group",
  "item",
  "quantity",
  "unit",
  "bought",
  "unitPrice",
  "delivery",
  "amount",
  "kind",
  "funder",
  "priceDate",
  "note",
] as const;

export type EstimateColumn = (typeof ESTIMATE_COLUMNS)[number];

const WIDTHS: Readonly<Record<EstimateColumn, number>> = {
  group: 15,
  item: 26,
  quantity: 10,
  unit: 8,
  bought: 8,
  unitPrice: 10,
  delivery: 10,
  amount: 12,
  kind: 9,
  funder: 15,
  priceDate: 12,
  note: 38,
};

const MONEY = "#,##0.00";
const QUANTITY = "#,##0.##";
const DATE = "yyyy-mm-dd";

/** A sheet a yard, and before them one that adds the yards up where there are several. */
export function estimateSheets(yards: readonly YardEstimate[], date: number): readonly FileSheet[] {
  const isMany = yards.length > 1;
  const names = sheetNames([...(isMany ? [text.estimate.summary] : []), ...yards.map(({ yard }) => yard.siteId)]);
  const laidOut = yards.map((yard, index) => yardSheet(yard, names[index + (isMany ? 1 : 0)] ?? "", date));
  return isMany ? [summarySheet(names[0] ?? "", laidOut, date), ...laidOut.map(({ sheet }) => sheet)] : laidOut.map(({ sheet }) => sheet);
}

interface YardSheet extends YardEstimate {
  readonly sheet: FileSheet;
  /** Where the totals that the summary asks for stand. */
  readonly totals: Readonly<Record<SummaryTotal, string>>;
}

const SUMMARY_TOTALS = ["cash", "contingency", "cost", "costShare", "ownPart", "inKind"] as const;
type SummaryTotal = (typeof SUMMARY_TOTALS)[number];

const at = (column: EstimateColumn, row: number): string => `${columnLetters(ESTIMATE_COLUMNS.indexOf(column))}${row + 1}`;

function yardSheet({ yard, estimate }: YardEstimate, name: string, date: number): YardSheet {
  const rows: (FileCell | null)[][] = [
    [
      {
        value: `${text.estimate.title} ${yard.siteId}${yard.site.record.yard === null ? "" : `, ${yard.site.record.yard}`}`,
        look: "title",
      },
    ],
    [{ value: [yard.site.record.address, text.computed(isoDate(date))].filter((part) => part !== null).join(". "), look: "note" }],
    [],
    ESTIMATE_COLUMNS.map((column) => ({ value: text.columns[column], look: "heading" })),
  ];
  const headingRow = rows.length - 1;
  const firstLine = rows.length;
  estimate.lines.forEach((line) => rows.push(lineCells(line, rows.length)));
  if (estimate.lines.length === 0) rows.push([{ value: text.estimate.noLines }]);
  const lastLine = rows.length - 1;
  rows.push([], [{ value: text.totals.title, look: "total" }]);

  const ofKind = (kind: string) =>
    `SUMIF(${at("kind", firstLine)}:${at("kind", lastLine)},"${kind}",${at("amount", firstLine)}:${at("amount", lastLine)})`;
  const total = (label: string, cell: FileCell, look: FileCell["look"] = undefined): string => {
    const row = rows.length;
    const looks = look === undefined ? {} : { look };
    rows.push(
      ESTIMATE_COLUMNS.map((column) =>
        column === "group" ? { value: label, runsOn: true, ...looks } : column === "amount" ? { ...cell, ...looks } : null,
      ),
    );
    return at("amount", row);
  };
  const money = (value: number, formula?: string): FileCell => ({ value, format: MONEY, ...(formula === undefined ? {} : { formula }) });
  const cash = total(text.totals.cash, money(estimate.cash, ofKind("cash")));
  const percent = total(text.totals.contingencyPercent, { value: estimate.contingencyPercent, format: QUANTITY });
  const contingency = total(
    text.totals.contingency(String(estimate.contingencyPercent)),
    money(estimate.contingency, `${cash}*${percent}/100`),
  );
  const cost = total(text.totals.cost, money(estimate.cost, `${cash}+${contingency}`), "total");
  const costShare = total(text.totals.costShare, money(estimate.costShare ?? 0));
  const ownPart = total(text.totals.ownPart, money(estimate.ownPart, `${cost}-${costShare}`), "total");
  const inKind = total(text.totals.inKind, money(estimate.inKind, ofKind("in-kind")));
  const each = (label: string, quantity: number | null, costLabel: string, answer: Answer) => {
    if (quantity === null) return;
    const counted = total(label, { value: quantity, format: QUANTITY });
    if ("value" in answer) total(costLabel, money(answer.value, `${cost}/${counted}`));
  };
  const area = unitOf("area", yard.units);
  each(text.totals.treated(area), estimate.treated.area, text.totals.costOfTreated(area), estimate.treated.cost);
  each(text.totals.held(estimate.held.unit), estimate.held.volume, text.totals.costOfHeld(estimate.held.unit), estimate.held.cost);

  const flags = flagsOf(estimate);
  if (flags.length > 0) rows.push([], [{ value: text.estimate.lookAgain, look: "total" }]);
  for (const flag of flags) rows.push([{ value: flag }]);
  rows.push([], [{ value: text.confirm, look: "note" }]);
  return {
    yard,
    estimate,
    sheet: { name, widths: ESTIMATE_COLUMNS.map((column) => WIDTHS[column]), rows, headingRow },
    totals: { cash, contingency, cost, costShare, ownPart, inKind },
  };
}

/** Bought, price and delivery are numbers; the amount is their ordinary arithmetic. */
function lineCells(line: PricedLine, row: number): (FileCell | null)[] {
  const { price, amount } = line;
  const cells: Readonly<Record<EstimateColumn, FileCell | null>> = {
    group: words(line.group),
    item: words(line.item),
    quantity: line.quantity === null ? null : { value: line.quantity, format: QUANTITY },
    unit: words(line.unit),
    bought: price === null ? null : { value: price.bought, format: QUANTITY },
    unitPrice: price === null ? null : { value: price.unitPrice, format: MONEY },
    delivery: price === null ? null : { value: line.quantity === 0 ? 0 : price.delivery, format: MONEY },
    amount:
      "value" in amount
        ? { value: amount.value, format: MONEY, formula: `${at("bought", row)}*${at("unitPrice", row)}+${at("delivery", row)}` }
        : { value: text.estimate.noPrice },
    kind: words(line.kind),
    funder: words(line.funder),
    priceDate: price?.date === undefined || price.date === null ? null : { value: price.date, format: DATE },
    note: words(line.note),
  };
  return ESTIMATE_COLUMNS.map((column) => cells[column]);
}

function words(value: string): FileCell | null {
  return value === "" ? null : { value };
}

function summarySheet(name: string, yards: readonly YardSheet[], date: number): FileSheet {
  const headings = [
    text.columns.siteId,
    text.columns.yard,
    ...SUMMARY_TOTALS.map((key) => (key === "contingency" ? "Contingency" : text.totals[key])),
  ];
  const rows: (FileCell | null)[][] = [
    [{ value: text.estimate.many, look: "title" }],
    [{ value: text.computed(isoDate(date)), look: "note" }],
    [],
    headings.map((value) => ({ value, look: "heading" as const })),
  ];
  const firstYard = rows.length;
  const valueOf = ({ estimate }: YardSheet, key: SummaryTotal) => (key === "costShare" ? (estimate.costShare ?? 0) : estimate[key]);
  yards.forEach((yard) =>
    rows.push([
      { value: yard.yard.siteId },
      words(yard.yard.site.record.yard ?? ""),
      ...SUMMARY_TOTALS.map((key) => ({
        value: valueOf(yard, key),
        format: MONEY,
        formula: `${quotedSheet(yard.sheet.name)}!${yard.totals[key]}`,
      })),
    ]),
  );
  const sums = SUMMARY_TOTALS.map((key, index): FileCell => {
    const letter = columnLetters(index + 2);
    return {
      value: yards.reduce((sum, yard) => sum + valueOf(yard, key), 0),
      format: MONEY,
      formula: `SUM(${letter}${firstYard + 1}:${letter}${firstYard + yards.length})`,
      look: "total",
    };
  });
  rows.push([{ value: text.estimate.sum, look: "total" }, null, ...sums], [], [{ value: text.confirm, look: "note" }]);
  return { name, widths: [12, 32, ...SUMMARY_TOTALS.map(() => 15)], rows, headingRow: firstYard - 1 };
}

/** Everything to look at again: lines without an amount, then what is said of lines and of the whole. */
export function flagsOf(estimate: Estimate): readonly string[] {
  const ofLines = estimate.lines.flatMap(({ item, amount, flags }) => [
    "sentence" in amount ? `${item === "" ? text.columns.item : item}: ${amount.sentence}` : null,
    ...flags,
  ]);
  return [...new Set([...ofLines, ...estimate.flags].filter((flag) => flag !== null))];
}

/** The same lines and totals as a flat table: a row a line, then a row a total, each under its yard. */
export function estimateTable(yards: readonly YardEstimate[]): readonly (readonly (string | number | null)[])[] {
  const headings = [text.columns.siteId, text.columns.yard, ...ESTIMATE_COLUMNS.map((column) => text.columns[column])];
  const rows = yards.flatMap(({ yard, estimate }) => {
    const head = [yard.siteId, yard.site.record.yard];
    const lines = estimate.lines.map((line) => [...head, ...lineValues(line)]);
    const total = (item: string, amount: number) => {
      const cells: Partial<Record<EstimateColumn, string | number>> = { group: text.totals.title, item, amount };
      return [...head, ...ESTIMATE_COLUMNS.map((column) => cells[column] ?? null)];
    };
    return [
      ...lines,
      total(text.totals.cash, estimate.cash),
      total(text.totals.contingency(String(estimate.contingencyPercent)), estimate.contingency),
      total(text.totals.cost, estimate.cost),
      total(text.totals.costShare, estimate.costShare ?? 0),
      total(text.totals.ownPart, estimate.ownPart),
      total(text.totals.inKind, estimate.inKind),
    ];
  });
  return [headings, ...rows];
}

function lineValues({ price, amount, ...line }: PricedLine): (string | number | null)[] {
  const values: Readonly<Record<EstimateColumn, string | number | null>> = {
    group: line.group,
    item: line.item,
    quantity: line.quantity,
    unit: line.unit,
    bought: price?.bought ?? null,
    unitPrice: price?.unitPrice ?? null,
    delivery: price?.delivery ?? null,
    amount: "value" in amount ? amount.value : null,
    kind: line.kind,
    funder: line.funder,
    priceDate: price?.date === undefined || price.date === null ? null : isoDate(price.date),
    note: line.note,
  };
  return ESTIMATE_COLUMNS.map((column) => values[column]);
}
