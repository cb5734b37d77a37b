import { costOfUnit, estimateTotals, STALE_PRICE_DAYS } from "../../../functions/cost/estimate-totals.ts";
import { orderedQuantity, type Price } from "../../../functions/cost/order-amount.ts";
import { GALLONS_PER_CUBIC_FOOT } from "../../../functions/planting/water-need.ts";
import { IMPERVIOUS_COVERS } from "../../../functions/published/tr-55.ts";
import { LARGEST_NUMBER, toUs, unitOf } from "../../../functions/quantities.ts";
import { isCellError, type Cell } from "../../../functions/worksheet/calling/cell.ts";
import { costShare, priced, volunteerValue } from "../../../functions/worksheet/cost.ts";
import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { priceOf } from "../../../functions/worksheet/price-table.ts";
import type { EstimateLineRow } from "../../records/estimate-lines.ts";
import { DRAFTED_ITEMS, pricesSheet, type PriceRow } from "../../records/prices.ts";
import type { SettingValues } from "../../records/program.ts";
import { isBlank } from "../../records/sheet.ts";
import { isErrorCode, type CellValue } from "../../workbook/port.ts";
import { isoDate } from "../dates.ts";
import { basinInputsOf, draftBasin, type Answer, type BasinDraft } from "../basin/draft-basin.ts";
import { draftLines, priceRowOf, type LineKind } from "./draft-estimate.ts";
import type { Program, Yard } from "../program/read-program.ts";

/** A line with its price. Blank words are "". */
export interface PricedLine {
  /** Null for a line that is only drafted. */
  readonly row: EstimateLineRow | null;
  readonly group: string;
  readonly item: string;
  readonly quantity: number | null;
  readonly unit: string;
  readonly kind: LineKind;
  readonly funder: string;
  readonly note: string;
  /** Null where the item has no price. */
  readonly price: { readonly unitPrice: number; readonly bought: number; readonly delivery: number; readonly date: number | null } | null;
  readonly amount: Answer;
  /** What to look at again: an old price, another unit, more bought than asked. */
  readonly flags: readonly string[];
}

export interface Estimate {
  readonly siteId: string;
  readonly lines: readonly PricedLine[];
  readonly cash: number;
  readonly inKind: number;
  readonly contingencyPercent: number;
  readonly contingency: number;
  /** Cash and contingency. */
  readonly cost: number;
  /** What the program's cost share pays; null where Program names none. */
  readonly costShare: number | null;
  readonly ownPart: number;
  /** Roofs and paving that drain here, in the yard's unit of area. */
  readonly treated: { readonly area: number; readonly cost: Answer };
  /** In gallons, or cubic meters of a metric yard. */
  readonly held: { readonly volume: number | null; readonly unit: "gal" | "m³"; readonly cost: Answer };
  /** Lines without an amount: the totals are short by them. */
  readonly unpriced: number;
  /** Of the estimate as a whole. */
  readonly flags: readonly string[];
}

/** The estimate that stands on Estimate lines for this yard, priced by Prices as it stands today. */
export function estimateOf(program: Program, yard: Yard, today: number): Estimate {
  return totalled(
    program,
    yard,
    draftBasin(basinInputsOf(yard), program.settings),
    yard.estimateLines.flatMap((row) => lineOfRow(program, row, today)),
  );
}

/** What a garden of this size would cost, by the lines that a draft for it has. */
export function estimateOfDraft(program: Program, yard: Yard, basin: BasinDraft, today: number): Estimate {
  const { lines } = draftLines(program, yard, basin);
  return totalled(
    program,
    yard,
    basin,
    lines.map((line) => pricedLine(program, { ...line, row: null, funder: "" }, today)),
  );
}

/** The in-kind value of hours at the rate on Prices, or why there is none. */
export function volunteerHoursValue(program: Program, hours: number): Answer {
  const row = priceRowOf(program.prices, DRAFTED_ITEMS.volunteerHour);
  if (row === undefined) return { sentence: `Item "${DRAFTED_ITEMS.volunteerHour}" is not on Prices: its unit price is the rate an hour.` };
  if (row.record.unitPrice === null) return { sentence: `Item "${DRAFTED_ITEMS.volunteerHour}" has no unit price on Prices.` };
  return answerOf(volunteerValue.evaluate([hours, row.record.unitPrice])[0]?.[0]);
}

/** "The price of compost is from 2026-01-04, 210 days ago: ask again." Null while it is fresh or has no date. */
export function stalePriceSentence(item: string, priceDate: number | null, today: number): string | null {
  if (priceDate === null || today - priceDate <= STALE_PRICE_DAYS) return null;
  return `The price of ${item} is from ${isoDate(priceDate)}, ${Math.floor(today - priceDate)} days ago: ask for it again.`;
}

function lineOfRow(program: Program, row: EstimateLineRow, today: number): PricedLine[] {
  const { group, item, quantity, unit, kind, funder, note } = row.record;
  if (item === null && isBlank(row.cells.quantity)) return [];
  const line = {
    row,
    group: group ?? "",
    item: item ?? "",
    quantity,
    unit: unit ?? "",
    kind: kind ?? "cash",
    funder: funder ?? "",
    note: note ?? "",
  } as const;
  return [pricedLine(program, line, today)];
}

type UnpricedLine = Omit<PricedLine, "price" | "amount" | "flags">;

function pricedLine(program: Program, line: UnpricedLine, today: number): PricedLine {
  const table = priceTable(program.prices);
  const item = line.item === "" ? null : line.item;
  const typed = line.row?.cells.quantity ?? null;
  // A quantity that is no number is a slip of its cell; its amount says the same as the sheet's.
  const quantity = typeof typed === "string" && typed.trim() !== "" ? typed : line.quantity;
  const found = priceOf(line.item, table);
  const row = priceRowOf(program.prices, line.item);
  const price =
    isCellError(found) || !Number.isFinite(boughtOf(line.quantity, found))
      ? null
      : {
          unitPrice: found.unitPrice,
          bought: boughtOf(line.quantity, found),
          delivery: found.delivery,
          date: row?.record.priceDate ?? null,
        };
  return {
    ...line,
    price,
    amount: answerOf(priced.evaluate([quantity, item, table])[0]?.[0]),
    flags: [
      stalePriceSentence(line.item, price?.date ?? null, today),
      unitSentence(line, row),
      // What is bought stands beside what is asked, so that only other cautions are left to say.
      ...priced.cautionsFor([price?.bought ?? null, item, table]),
      ...rateCautions(line, row),
    ].filter((flag) => flag !== null),
  };
}

function boughtOf(quantity: number | null, price: Price): number {
  return quantity === null || quantity === 0 ? 0 : orderedQuantity(quantity, price);
}

/** The columns that SOAK.PRICED reads, cell by cell as typed. */
export function priceTable(prices: readonly PriceRow[]): readonly (readonly Cell[])[] {
  const keys = (Object.keys(pricesSheet.columns) as (keyof typeof pricesSheet.columns)[]).slice(0, PRICED_COLUMNS);
  return prices.map(({ cells }) => keys.map((key) => asCell(cells[key])));
}

const PRICED_COLUMNS = 7;

function asCell(value: CellValue): Cell {
  return isErrorCode(value) ? { code: value, sentence: "" } : value;
}

function unitSentence(line: UnpricedLine, row: PriceRow | undefined): string | null {
  const onPrices = row?.record.unit ?? null;
  if (onPrices === null || line.unit === "" || plainKey(onPrices) === plainKey(line.unit)) return null;
  return `${line.item} is counted in ${line.unit} here and priced in ${onPrices}: the amount is wrong until both are one unit.`;
}

function rateCautions(line: UnpricedLine, row: PriceRow | undefined): readonly string[] {
  return plainKey(line.item) === DRAFTED_ITEMS.volunteerHour
    ? volunteerValue.cautionsFor([line.quantity, row?.record.unitPrice ?? null])
    : [];
}

function totalled(program: Program, yard: Yard, basin: BasinDraft, lines: readonly PricedLine[]): Estimate {
  const { settings } = program;
  const sumOf = (kind: LineKind) =>
    lines.reduce((sum, line) => (line.kind === kind && "value" in line.amount ? sum + line.amount.value : sum), 0);
  const cash = sumOf("cash");
  const share = shareOf(settings, yard, basin, estimateTotals(cash, settings.contingencyPercent, 0).cost);
  const { contingency, cost, ownPart } = estimateTotals(cash, settings.contingencyPercent, share.value ?? 0);
  const area = imperviousArea(yard);
  const volume = "value" in basin.waterHeld ? heldVolume(basin.waterHeld.value, yard) : null;
  const unpriced = lines.filter(({ amount }) => !("value" in amount)).length;
  const perUnit = (quantity: number | null, missing: string): Answer => {
    if (lines.length === 0) return { sentence: "There are no lines yet." };
    if (quantity === null || quantity <= 0) return { sentence: missing };
    const each = costOfUnit(cost, quantity);
    return Number.isFinite(each) ? { value: each } : { sentence: "The cost of one unit is too large to be true." };
  };
  return {
    siteId: yard.siteId,
    lines,
    cash,
    inKind: sumOf("in-kind"),
    contingencyPercent: settings.contingencyPercent,
    contingency,
    cost,
    costShare: share.value,
    ownPart,
    treated: { area, cost: perUnit(area, "No roof or paving that drains here is on Surfaces.") },
    held: { volume, unit: yard.units === "metric" ? "m³" : "gal", cost: perUnit(volume, "The basin has no size yet.") },
    unpriced,
    flags: share.flags,
  };
}

/** Roofs and paving of the yard that drain to the garden, in its unit of area. */
export function imperviousArea(yard: Yard): number {
  const areas = yard.surfaces.map(({ record: { cover, area, share } }) =>
    cover !== null && IMPERVIOUS_COVERS.includes(cover) && isBelievable(area) ? area * (share ?? 1) : 0,
  );
  return areas.reduce((sum, area) => sum + area, 0);
}

/** A formula computes on with whatever was typed: what is beyond any yard is left out, so that a total stays a number. */
export function isBelievable(value: CellValue): value is number {
  return typeof value === "number" && Math.abs(value) <= LARGEST_NUMBER;
}

function heldVolume(waterHeld: number, yard: Yard): number {
  return yard.units === "metric" ? waterHeld : waterHeld * GALLONS_PER_CUBIC_FOOT;
}

interface Share {
  readonly value: number | null;
  readonly flags: readonly string[];
}

/** Every form of cost share that Program fills in, added up and capped by SOAK.COSTSHARE, and no more than the cost. */
function shareOf(settings: SettingValues, yard: Yard, basin: BasinDraft, cost: number): Share {
  const garden = "value" in basin.rimArea ? toUs("area", basin.rimArea.value, yard.units) : null;
  const gallons = "value" in basin.waterHeld ? toUs("waterVolume", basin.waterHeld.value, yard.units) * GALLONS_PER_CUBIC_FOOT : null;
  const forms = [
    { kind: "per area", basis: garden, rate: settings.costSharePerSquareFoot },
    { kind: "per volume", basis: gallons, rate: settings.costSharePerGallon },
    { kind: "percent", basis: cost, rate: settings.costSharePercent },
    { kind: "flat", basis: 0, rate: settings.costShareFlat },
  ].filter(({ rate }) => rate !== null);
  if (forms.length === 0) return { value: null, flags: [] };
  const smallest = settings.costShareSmallestSquareFeet;
  if (smallest !== null && (garden === null || garden < smallest)) {
    return {
      value: 0,
      flags: [
        `The garden is under the smallest that the cost share counts, ${smallest} ${unitOf("area", "us")} at the rim: it pays nothing.`,
      ],
    };
  }
  const paid = forms.map(({ kind, basis, rate }) => answerOf(costShare.evaluate([kind, basis, rate])[0]?.[0]));
  const earned = paid.reduce((sum, answer) => ("value" in answer ? sum + answer.value : sum), 0);
  const capped = answerOf(costShare.evaluate(["flat", 0, earned, settings.costShareCap])[0]?.[0]);
  const share = "value" in capped ? capped.value : 0;
  return {
    value: Math.min(share, cost),
    flags: [
      ...paid.flatMap((answer) => ("sentence" in answer ? [`Cost share: ${answer.sentence}`] : [])),
      ...costShare.cautionsFor(["flat", 0, earned, settings.costShareCap]),
      ...(share > cost ? ["The cost share would be more than the garden costs: the cost alone is counted."] : []),
    ],
  };
}

function answerOf(cell: Cell | undefined): Answer {
  if (typeof cell === "number")
    return isBelievable(cell) ? { value: cell } : { sentence: "The amount is too large to be true. Look at quantity and price." };
  if (isCellError(cell)) return { sentence: cell.sentence === "" ? `A cell on ${pricesSheet.name} shows ${cell.code}.` : cell.sentence };
  return { sentence: "Quantity and item are missing." };
}
