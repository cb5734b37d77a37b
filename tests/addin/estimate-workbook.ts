import { readProgram, type Program, type Yard } from "../../addin/actions/program/read-program.ts";
import { addSurface, addYard } from "../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { appendRows } from "../../addin/actions/program/write-records.ts";
import { designSheet } from "../../addin/records/design.ts";
import { estimateLinesSheet } from "../../addin/records/estimate-lines.ts";
import { pricesSheet } from "../../addin/records/prices.ts";
import { settingCell, type ProgramKey } from "../../addin/records/program.ts";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import type { UnitSystem } from "../../addin/records/site-terms.ts";
import type { CellValue } from "../../addin/workbook/port.ts";
import { WorkbookInMemory } from "./workbook-in-memory.ts";

/** 25 November 2026, as a spreadsheet counts days. */
export const TODAY = 46_351;

export interface TypedLine {
  readonly item: CellValue;
  readonly quantity: CellValue;
  readonly unit?: CellValue;
  readonly group?: CellValue;
  readonly kind?: "cash" | "in-kind";
  readonly note?: CellValue;
  readonly funder?: CellValue;
}

export interface TypedPrice {
  readonly item: CellValue;
  readonly unitPrice: CellValue;
  readonly unit?: CellValue;
  readonly packageSize?: CellValue;
  readonly minimumOrder?: CellValue;
  readonly delivery?: CellValue;
  readonly priceDate?: CellValue;
}

/** A program with a price list of its own, and yards of 1,000 sq ft of roof on a soil of 1 in/h, or 100 m² on 25 mm/h. */
export class EstimateWorkbook {
  private constructor(readonly workbook: WorkbookInMemory) {}

  static async start(): Promise<EstimateWorkbook> {
    const workbook = new WorkbookInMemory();
    await setUpWorkbook(workbook);
    return new EstimateWorkbook(workbook);
  }

  /** Fills in the price of an item that stands on the list, or adds the item. */
  async price({ item, ...price }: TypedPrice): Promise<void> {
    const standing = (await readProgram(this.workbook)).prices.find(({ record }) => record.item === item);
    if (standing === undefined) return void (await appendRows(this.workbook, pricesSheet, [{ item, ...price }]));
    const cells = Object.entries(price).map(([key, value]) => ({ range: standing.at(key as "unit"), values: [[value]] }));
    await this.workbook.writeValues(cells);
  }

  async setting(key: ProgramKey, value: CellValue): Promise<void> {
    await this.workbook.writeValues([{ range: settingCell(key), values: [[value]] }]);
  }

  async yard(name = "Lantern House", units: UnitSystem = "us"): Promise<string> {
    const siteId = await addYard(this.workbook, { yard: name, address: "3 Cooper's Rise", units, soilGroup: "B" });
    const isMetric = units === "metric";
    const area = isMetric ? 100 : 1000;
    await addSurface(this.workbook, await this.read(siteId), { surface: "Whole roof", cover: "roof", area, share: 1 });
    const place = Number(siteId.slice(2)) - 1;
    const design = (key: "siteId" | "units" | "contributingArea" | "testedRate", value: CellValue) =>
      this.workbook.answer(cellOf(designSheet, firstRow(designSheet) + place, key), value);
    design("siteId", siteId);
    design("units", units);
    design("contributingArea", area);
    design("testedRate", isMetric ? 50 : 2);
    return siteId;
  }

  async lines(siteId: string, lines: readonly TypedLine[]): Promise<void> {
    await appendRows(
      this.workbook,
      estimateLinesSheet,
      lines.map((line) => ({ siteId, ...line })),
    );
  }

  program(): Promise<Program> {
    return readProgram(this.workbook);
  }

  async read(siteId: string): Promise<Yard> {
    const yard = (await this.program()).yards.find((one) => one.siteId === siteId);
    if (yard === undefined) throw new Error(`no yard ${siteId}`);
    return yard;
  }
}
