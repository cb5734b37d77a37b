import type { UnitSystem } from "../quantities.ts";
import type { ArgumentRule } from "./arguments.ts";
import { broadcastSize, cellAt, columnSize, gridOf, singleSize, type Grid } from "./broadcasting.ts";
import { isCellError, type Cell, type CellInput } from "./cell.ts";
import { laneOf, type Lane } from "./lanes.ts";
import { isBlank, type Reader } from "./reading.ts";
import { filledWith, type Answer, type Presenter, type Result } from "./results.ts";
import { couldNotCompute, isMissing, isTooLarge, whyRefused } from "./sentences.ts";
import { speakers, type Speaker } from "./speaker.ts";

/** What a declaration comes to once it is compiled: everything that is the same in every call. */
export interface Plan {
  readonly name: string;
  /** Of every argument, `units` last where it is taken. */
  readonly rules: readonly ArgumentRule[];
  readonly takesUnits: boolean;
  readonly result: Result;
  readonly calculate: (...inputs: unknown[]) => unknown;
  readonly in: Readonly<Record<UnitSystem, { readonly readers: readonly Reader[]; readonly presenter: Presenter }>>;
}

/** One call from a host: the arguments are read once, then each row of the result is guarded and computed. */
export class Call {
  private readonly grids: readonly Grid[];
  private readonly units: Lane | undefined;
  private readonly lanes: Partial<Record<UnitSystem, readonly Lane[]>> = {};
  /** The inputs of the row at hand, refilled for each: a call over many rows allocates for its results only. */
  private readonly inputs: unknown[];
  private readonly ownCount: number;

  constructor(
    private readonly plan: Plan,
    inputs: readonly CellInput[],
  ) {
    const { rules, takesUnits } = plan;
    this.grids = rules.map((_, place) => gridOf(inputs[place]));
    this.ownCount = takesUnits ? rules.length - 1 : rules.length;
    this.inputs = new Array(this.ownCount + 1);
    if (takesUnits) this.units = laneOf(rules[this.ownCount]!, this.grids[this.ownCount]!, plan.in.us.readers[this.ownCount]!);
  }

  answers(): readonly (readonly Cell[])[] {
    const { rules, result } = this.plan;
    const lifted = rules.flatMap((rule, place) => (rule.takes === "cell" ? [{ rule, grid: this.grids[place]! }] : []));
    const size = sizes[result.shape](lifted);
    if (isCellError(size)) return [[size]];
    if (result.shape === "table") return this.answer(0, 0) as readonly (readonly Cell[])[];
    const rows: (readonly Cell[])[] = new Array(size.rows);
    for (let row = 0; row < size.rows; row += 1) {
      rows[row] = result.shape === "row" ? (this.answer(row, 0) as readonly Cell[]) : this.rowOfValues(row, size.columns);
    }
    return rows;
  }

  /** The inputs of the first row in US units, with its speaker; undefined when any is missing or impossible. */
  firstRow(): { readonly values: readonly unknown[]; readonly speaker: Speaker } | undefined {
    const system = this.systemAt(0, 0);
    if (this.isRefused(system, 0, 0)) return undefined;
    return { values: this.lanesIn(system).map((lane) => lane.at(0, 0)), speaker: speakers[system] };
  }

  private rowOfValues(row: number, columns: number): readonly Cell[] {
    const cells: Cell[] = new Array(columns);
    for (let column = 0; column < columns; column += 1) cells[column] = this.answer(row, column) as Cell;
    return cells;
  }

  private answer(row: number, column: number): Answer {
    const system = this.systemAt(row, column);
    if (this.isRefused(system, row, column)) return filledWith(this.whyNot(system, row, column), this.plan.result);
    const lanes = this.lanesIn(system);
    for (let place = 0; place < this.ownCount; place += 1) this.inputs[place] = lanes[place]!.at(row, column);
    this.inputs[this.ownCount] = speakers[system];
    return this.compute(this.plan.in[system].presenter);
  }

  private compute(present: Presenter): Answer {
    const { name, calculate, result } = this.plan;
    try {
      const output = calculate(...this.inputs);
      if (isCellError(output)) return filledWith(output, result);
      const answer = present(output);
      if (answer !== undefined) return answer;
    } catch {
      // Said below, as every other fault of ours.
    }
    const overflowed = this.inputs.flat().some(isHuge);
    return filledWith(overflowed ? isTooLarge(result.values[0]!.label) : couldNotCompute(name), result);
  }

  private systemAt(row: number, column: number): UnitSystem {
    return this.units?.at(row, column) === "metric" ? "metric" : "us";
  }

  /** Every argument read for a unit system, when the first row in that system asks. */
  private lanesIn(system: UnitSystem): readonly Lane[] {
    return (this.lanes[system] ??= this.plan.rules.map((rule, place) =>
      laneOf(rule, this.grids[place]!, this.plan.in[system].readers[place]!),
    ));
  }

  private isRefused(system: UnitSystem, row: number, column: number): boolean {
    const lanes = this.lanesIn(system);
    for (let place = 0; place < lanes.length; place += 1) if (lanes[place]!.isRefused(row, column)) return true;
    return false;
  }

  /** Why a row has no answer: an error handed in, nothing typed yet, something missing, or something impossible. */
  private whyNot(system: UnitSystem, row: number, column: number): Cell {
    const { rules } = this.plan;
    const lanes = this.lanesIn(system);
    const cells = rules.map((rule, place) =>
      rule.takes === "cell" ? cellAt(this.grids[place]!, row, column) : lanes[place]!.standsFor.cell,
    );
    const error = cells.find(isCellError);
    if (error !== undefined) return error;
    const required = cells.filter((_, place) => !rules[place]!.optional);
    if (required.length > 0 && required.every(isBlank)) return "";
    const blank = rules.findIndex((rule, place) => !rule.optional && isBlank(cells[place]));
    if (blank >= 0) return isMissing(rules[blank]!.label);
    const place = lanes.findIndex((lane) => lane.isRefused(row, column));
    const { label } = rules[place]!;
    const { number } = lanes[place]!.standsFor;
    return whyRefused(rules[place]!, cells[place]!, system, number === undefined ? label : `${label} ${number}`);
  }
}

const sizes = { value: broadcastSize, row: columnSize, table: singleSize };

/** Beyond anything in a garden: an answer that overflows from such input is no fault of the calculation. */
function isHuge(value: unknown): boolean {
  return typeof value === "number" && Math.abs(value) > 1e100;
}
