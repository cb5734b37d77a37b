import type { CellRange, CellValue } from "../../addin/workbook/port.ts";
import { WorkbookInMemory } from "../addin/workbook-in-memory.ts";

/** The workbook in memory, with a person at its grid and a host that can be slow or refuse. */
export class HostInMemory extends WorkbookInMemory {
  /** The verbs by which the workbook was read, in the order they were called. */
  readonly asked: string[] = [];
  /** Runs before a reading verb answers: wait, or throw what a host would. */
  before: (verb: string) => Promise<void> | void = () => undefined;

  override async sheetNames() {
    await this.#about("sheetNames");
    return super.sheetNames();
  }

  override async read(ranges: readonly CellRange[]) {
    await this.#about("read");
    return super.read(ranges);
  }

  override async readSheets(names: readonly string[]) {
    await this.#about("readSheets");
    return super.readSheets(names);
  }

  /** Somebody types into the grid, and everyone hears of it. */
  async type(sheet: string, row: number, column: number, value: CellValue): Promise<void> {
    await this.writeValues([{ range: { sheet, row, column, rows: 1, columns: 1 }, values: [[value]] }]);
  }

  /** Puts a value in place without telling anybody. */
  put(sheet: string, row: number, column: number, value: CellValue): void {
    this.answer({ sheet, row, column, rows: 1, columns: 1 }, value);
  }

  async #about(verb: string): Promise<void> {
    this.asked.push(verb);
    await this.before(verb);
  }
}
