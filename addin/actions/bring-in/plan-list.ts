/** What a list would add to a sheet: the rows as they would stand, what is there already, and what is not taken and why. */
import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { isBlank } from "../../records/sheet.ts";
import type { CellValue } from "../../workbook/port.ts";
import { siteIdsAfter } from "../yard/site-ids.ts";
import { inputKeys, type ListTarget } from "./known-columns.ts";
import { LIST_UNITS } from "./list-units.ts";
import type { ListRow, ListTable } from "./list-table.ts";
import { addressKey, type Destination } from "./propose-columns.ts";
import { decimalMarkOf, takenCell } from "./taken-cell.ts";
import type { DateOrder } from "../rain-record/moment-reading.ts";

export interface ListChoices {
  readonly columns: readonly Destination[];
  /** The system of yards that do not say theirs. */
  readonly units: UnitSystem;
  readonly dateOrder: DateOrder | null;
}

/** What stands in the workbook, as far as a list is held against it. */
export interface PresentRecords {
  readonly yards: readonly KnownYard[];
  /** Every Site ID ever given out counts. */
  readonly lastSiteId: string;
  /** What the IDs begin with that this workbook gives out. */
  readonly series: string;
  /** The target's rows: cells by key. */
  readonly rows: readonly Readonly<Record<string, CellValue>>[];
  readonly ownHeadings: readonly string[];
}

export interface KnownYard {
  readonly siteId: string;
  readonly address: string | null;
  readonly yard: string | null;
  readonly units: UnitSystem;
}

export interface PlannedRow {
  readonly line: number;
  readonly values: Readonly<Record<string, CellValue>>;
  /** By the heading of the list. */
  readonly own: ReadonlyMap<string, CellValue>;
}

export interface NotTaken {
  readonly line: number;
  readonly sentence: string;
  /** Null where the whole row is not taken. */
  readonly heading: string | null;
}

export interface ListPlan {
  readonly rows: readonly PlannedRow[];
  readonly alreadyThere: number;
  readonly notTaken: readonly NotTaken[];
  /** Some date can be read in two ways, and nobody has said which. */
  readonly asksDateOrder: boolean;
}

export function planList(target: ListTarget, table: ListTable, choices: ListChoices, present: PresentRecords): ListPlan {
  const planner = new Planner(target, table, choices, present);
  for (const row of table.rows) planner.take(row);
  return planner.plan();
}

const TWICE = "It stands in the list a second time: the first row is taken.";

class Planner {
  readonly #rows: PlannedRow[] = [];
  readonly #notTaken: NotTaken[] = [];
  #alreadyThere = 0;
  /** How many rows of the sheet agree in what rows are told apart by. */
  readonly #known = new Map<string, number>();
  readonly #inList = new Set<string>();
  readonly #byAddress: ReadonlyMap<string, KnownYard>;
  readonly #byId: ReadonlyMap<string, KnownYard>;
  readonly #nextSiteId: () => string;
  readonly #marks: readonly ("." | ",")[];

  constructor(
    private readonly target: ListTarget,
    table: ListTable,
    private readonly choices: ListChoices,
    present: PresentRecords,
  ) {
    for (const row of present.rows) this.#known.set(this.#keyOf(row), (this.#known.get(this.#keyOf(row)) ?? 0) + 1);
    this.#byId = new Map(present.yards.map((yard) => [plainKey(yard.siteId), yard]));
    this.#byAddress = new Map(present.yards.flatMap((yard) => (yard.address === null ? [] : [[addressKey(yard.address), yard]])));
    const listIds = this.#column("siteId");
    const given = listIds === -1 ? [] : table.rows.map(({ cells }) => String(cells[listIds] ?? ""));
    this.#nextSiteId = siteIdsAfter([...present.yards.map(({ siteId }) => siteId), present.lastSiteId, ...given], present.series);
    this.#marks = table.headings.map((_, column) => decimalMarkOf(table.rows.map(({ cells }) => cells[column] ?? null)));
    this.headings = table.headings;
  }

  private readonly headings: readonly string[];

  take(row: ListRow): void {
    const yard = this.#yardOf(row);
    if (this.target.ofYards && yard === null) return this.#leave(row, this.#noYard(row));
    const system = yard?.units ?? this.#systemOf(row);
    const taken = this.#takenOf(row, system);
    const values = yard === null ? taken.values : { ...taken.values, siteId: yard.siteId };
    if (!this.target.ofYards && this.target.sheet.columns["siteId"] !== undefined) return this.#takeYard(row, { ...taken, values }, system);
    const first = this.target.sameBy[0] ?? "";
    if (isBlank(values[first] ?? null)) return this.#leave(row, `${this.target.sheet.columns[first]?.heading ?? first} is missing.`);
    this.#addUnlessThere(row, { ...taken, values }, this.#keyOf(values));
  }

  plan(): ListPlan {
    const asksDateOrder = this.choices.dateOrder === null && this.#notTaken.some(({ sentence }) => sentence.includes("may be two days"));
    return { rows: this.#rows, alreadyThere: this.#alreadyThere, notTaken: this.#notTaken, asksDateOrder };
  }

  /** A yard is known by its Site ID, and without one by its address. One that is new gets the next ID. */
  #takeYard(row: ListRow, taken: TakenRow, system: UnitSystem): void {
    const { siteId = null, address = null, yard = null } = taken.values;
    if (isBlank(siteId) && isBlank(address) && isBlank(yard)) return this.#leave(row, "It has no Site ID, name or address.");
    const id = isBlank(siteId) ? null : plainKey(String(siteId));
    const place = addressKey(address);
    if (id === null ? place !== "" && this.#byAddress.has(place) : this.#byId.has(id)) return void (this.#alreadyThere += 1);
    const marks = [...(id === null ? [] : [`id ${id}`]), ...(place === "" ? [] : [`address ${place}`])];
    const again = id === null ? marks.some((mark) => this.#inList.has(mark)) : this.#inList.has(`id ${id}`);
    if (again) return this.#leave(row, TWICE);
    for (const mark of marks) this.#inList.add(mark);
    const given = isBlank(siteId) ? this.#nextSiteId() : String(siteId);
    this.#add(row, { ...taken, values: { ...taken.values, siteId: given, units: taken.values["units"] ?? system } });
  }

  /** Each row of the sheet is one row of the list: a second roof of the same size is a roof. An item or a plant is there once. */
  #addUnlessThere(row: ListRow, taken: TakenRow, key: string): void {
    const there = this.#known.get(key) ?? 0;
    if (there > 0) {
      this.#known.set(key, this.target.isOnce ? there : there - 1);
      this.#alreadyThere += 1;
      return;
    }
    if (this.target.isOnce && this.#inList.has(key)) return this.#leave(row, TWICE);
    this.#inList.add(key);
    this.#add(row, taken);
  }

  #add({ line }: ListRow, { values, own, notTaken }: TakenRow): void {
    this.#rows.push({ line, values, own });
    for (const each of notTaken) this.#notTaken.push(each);
  }

  #leave({ line }: ListRow, sentence: string): void {
    this.#notTaken.push({ line, sentence, heading: null });
  }

  #takenOf({ line, cells }: ListRow, system: UnitSystem): TakenRow {
    const values: Record<string, CellValue> = {};
    const own = new Map<string, CellValue>();
    const notTaken: NotTaken[] = [];
    this.choices.columns.forEach((destination, at) => {
      const cell = cells[at] ?? null;
      const heading = this.headings[at] ?? "";
      if (isBlank(cell) || destination.kind === "left out" || destination.kind === "address of the yard") return;
      if (destination.kind === "own") return void own.set(heading, cell);
      const column = this.target.sheet.columns[destination.key];
      if (column === undefined) return;
      const unit = LIST_UNITS.find(({ name }) => name === destination.unit);
      const taken = takenCell(column, cell, {
        system,
        unit,
        dateOrder: this.choices.dateOrder,
        decimalMark: this.#marks[at] ?? ".",
      });
      if ("value" in taken) values[destination.key] = taken.value;
      else notTaken.push({ line, sentence: taken.sentence, heading });
    });
    return { values, own, notTaken };
  }

  #yardOf({ cells }: ListRow): KnownYard | null {
    if (!this.target.ofYards) return null;
    const id = plainKey(String(cells[this.#column("siteId")] ?? ""));
    const address = this.choices.columns.findIndex(({ kind }) => kind === "address of the yard");
    return this.#byId.get(id) ?? (id === "" && address !== -1 ? (this.#byAddress.get(addressKey(cells[address] ?? null)) ?? null) : null);
  }

  #noYard({ cells }: ListRow): string {
    const id = String(cells[this.#column("siteId")] ?? "");
    return id === "" ? "No yard on Sites has its address, and it has no Site ID." : `No yard on Sites has the Site ID "${id}".`;
  }

  #systemOf({ cells }: ListRow): UnitSystem {
    const column = this.target.sheet.columns["units"];
    const at = this.#column("units");
    if (column === undefined || at === -1) return this.choices.units;
    const taken = takenCell(column, cells[at] ?? null, { system: "us", unit: undefined, dateOrder: null, decimalMark: "." });
    return "value" in taken && (taken.value === "us" || taken.value === "metric") ? taken.value : this.choices.units;
  }

  #column(key: string): number {
    return this.choices.columns.findIndex((destination) => destination.kind === "ours" && destination.key === key);
  }

  #keyOf(values: Readonly<Record<string, CellValue>>): string {
    return JSON.stringify(this.target.sameBy.map((key) => plainKey(String(values[key] ?? ""))));
  }
}

interface TakenRow {
  readonly values: Readonly<Record<string, CellValue>>;
  readonly own: ReadonlyMap<string, CellValue>;
  readonly notTaken: readonly NotTaken[];
}

/** The keys that some row of the plan fills, in the order of the sheet. */
export function filledKeys(target: ListTarget, rows: readonly PlannedRow[]): readonly string[] {
  return inputKeys(target.sheet).filter((key) => rows.some(({ values }) => !isBlank(values[key] ?? null)));
}
