import type { UnitSystem } from "../../quantities.ts";
import { units as unitsArgument, type ArgumentRule } from "./arguments.ts";
import { broadcastSize, columnSize, gridOf, singleSize, type Grid } from "./broadcasting.ts";
import { isCellError, type Cell, type CellInput } from "./cell.ts";
import { laneOf, type Lane } from "./lanes.ts";
import { isBlank, readerOf, refused, type Reader } from "./reading.ts";
import { filledWith, type Answer, type Presenter, type Result } from "./results.ts";
import { areTooExtreme, couldNotCompute, isMissing, whyRefused } from "./sentences.ts";
import { speakers, type Speaker } from "./speaker.ts";

/** What a declaration comes to once it is compiled: everything that is the same in every call. */
export interface Plan {
  readonly name: string;
  /** Without `units`, which says how to read the others. */
  readonly arguments: readonly PlannedArgument[];
  /** Where a call hands over `units`; undefined where nothing has a dimension. */
  readonly unitsPlace: number | undefined;
  readonly result: Result;
  readonly presenters: Readonly<Record<UnitSystem, Presenter>>;
  readonly calculate: (inputs: Inputs, speaker: Speaker) => unknown;
}

/** What the arguments of one row come to, by their names. */
type Inputs = Record<string, unknown>;

interface PlannedArgument {
  /** Where a call hands it over. */
  readonly place: number;
  readonly rule: ArgumentRule;
  readonly readers: Readonly<Record<UnitSystem, Reader>>;
}

const unitsRule: ArgumentRule = unitsArgument.rule;
const readUnits = readerOf(unitsRule, "us");
const sizes = { value: broadcastSize, row: columnSize, table: singleSize };

/** One call from a host: the arguments are taken apart once, then each row of the result is read, guarded and computed. */
export class Call {
  private readonly given: readonly (PlannedArgument & { readonly grid: Grid })[];
  private readonly units: Lane | undefined;
  private readonly lanes: Partial<Record<UnitSystem, readonly Lane[]>> = {};
  /** The inputs of the row at hand, refilled for each: a call over many rows allocates for its results only. */
  private readonly inputs: Inputs = {};

  constructor(
    private readonly plan: Plan,
    inputs: readonly CellInput[],
  ) {
    this.given = plan.arguments.map((one) => ({ ...one, grid: gridOf(inputs[one.place]) }));
    this.units = plan.unitsPlace === undefined ? undefined : laneOf(unitsRule, gridOf(inputs[plan.unitsPlace]), readUnits);
  }

  answers(): readonly (readonly Cell[])[] {
    const { shape } = this.plan.result;
    const lifted = [...this.given, ...(this.units === undefined ? [] : [this.units])].filter(({ rule }) => rule.takes === "cell");
    const size = sizes[shape](lifted);
    if (isCellError(size)) return [[size]];
    if (shape === "table") return this.answer(0, 0) as readonly (readonly Cell[])[];
    const rows: (readonly Cell[])[] = new Array(size.rows);
    for (let row = 0; row < size.rows; row += 1) {
      rows[row] = shape === "row" ? (this.answer(row, 0) as readonly Cell[]) : this.rowOfValues(row, size.columns);
    }
    return rows;
  }

  /**
   * The inputs of the first row in US units, with its speaker; undefined when any is missing or impossible.
   * @documentation
   */
  firstRow(): { readonly inputs: Readonly<Inputs>; readonly speaker: Speaker } | undefined {
    const units = this.unitsAt(0, 0);
    const system = systemOf(units);
    const values = this.lanesIn(system).map((lane) => [lane.rule.key, lane.at(0, 0)] as const);
    const isRefused = units === refused || values.some(([, value]) => value === refused);
    return isRefused ? undefined : { inputs: Object.fromEntries(values), speaker: speakers[system] };
  }

  private rowOfValues(row: number, columns: number): readonly Cell[] {
    const cells: Cell[] = new Array(columns);
    for (let column = 0; column < columns; column += 1) cells[column] = this.answer(row, column) as Cell;
    return cells;
  }

  private answer(row: number, column: number): Answer {
    const units = this.unitsAt(row, column);
    const system = systemOf(units);
    const lanes = this.lanesIn(system);
    // One pass reads and guards: this loop is most of what a call over many rows costs.
    for (let place = 0; place < lanes.length; place += 1) {
      const lane = lanes[place]!;
      const input = lane.at(row, column);
      if (input === refused) return this.refusal(lane, system, row, column);
      this.inputs[lane.rule.key] = input;
    }
    if (this.units !== undefined && units === refused) return this.refusal(this.units, system, row, column);
    return computed(this.plan, this.inputs, system);
  }

  private refusal(lane: Lane, system: UnitSystem, row: number, column: number): Answer {
    return filledWith(this.whyNot(lane, system, row, column), this.plan.result);
  }

  private unitsAt(row: number, column: number): unknown {
    return this.units === undefined ? "us" : this.units.at(row, column);
  }

  /** Every argument read for a unit system, when the first row in that system asks. */
  private lanesIn(system: UnitSystem): readonly Lane[] {
    return (this.lanes[system] ??= this.given.map(({ rule, grid, readers }) => laneOf(rule, grid, readers[system])));
  }

  /** Why a row has no answer: an error handed in, nothing typed yet, something missing, or something impossible. */
  private whyNot(refusal: Lane, system: UnitSystem, row: number, column: number): Cell {
    const lanes = [...this.lanesIn(system), ...(this.units === undefined ? [] : [this.units])];
    const error = lanes.map((lane) => lane.shown(row, column).cell).find(isCellError);
    if (error !== undefined) return error;
    const required = lanes.filter(({ rule }) => !rule.optional);
    const missing = required.filter((lane) => isBlank(lane.shown(row, column).cell));
    const [firstMissing] = missing;
    if (firstMissing !== undefined) return missing.length === required.length ? "" : isMissing(firstMissing.rule.label);
    const { cell, label } = refusal.shown(row, column);
    return whyRefused(refusal.rule, cell, system, label);
  }
}

/**
 * The answer to a row of single cells that nothing is wrong with, as most calls are: it needs no grid and no lanes, and
 * costs a quarter. Undefined where there is more to a call.
 */
export function answerToCells(plan: Plan, inputs: readonly CellInput[]): readonly (readonly Cell[])[] | undefined {
  const units = plan.unitsPlace === undefined ? "us" : valueOf(inputs[plan.unitsPlace], readUnits);
  if (units === refused) return undefined;
  const system = systemOf(units);
  const values: Inputs = {};
  for (const { rule, readers, place } of plan.arguments) {
    const value = rule.takes === "cell" ? valueOf(inputs[place], readers[system]) : refused;
    if (value === refused) return undefined;
    values[rule.key] = value;
  }
  const answer = computed(plan, values, system);
  const { shape } = plan.result;
  return shape === "value" ? [[answer as Cell]] : shape === "row" ? [answer as readonly Cell[]] : (answer as readonly (readonly Cell[])[]);
}

function valueOf(input: CellInput, read: Reader): unknown {
  return Array.isArray(input) ? refused : read(input as Cell | undefined);
}

function systemOf(units: unknown): UnitSystem {
  return units === "metric" ? "metric" : "us";
}

function computed({ name, calculate, result, presenters }: Plan, inputs: Inputs, system: UnitSystem): Answer {
  try {
    const answer = presenters[system](calculate(inputs, speakers[system]));
    if (answer !== undefined) return answer;
  } catch {
    // Said below, as every other fault of ours.
  }
  return filledWith(Object.values(inputs).flat().some(isExtreme) ? areTooExtreme() : couldNotCompute(name), result);
}

/** Beyond anything in a garden: what gets lost between such numbers is no fault of the calculation. */
function isExtreme(value: unknown): boolean {
  if (typeof value !== "number" || value === 0) return false;
  const size = Math.abs(value);
  return size > 1e100 || size < 1e-100;
}
