import type { IRange, Injector } from "@univerjs/core";
import { FORMULA_REF_TO_ARRAY_CACHE, ICalculateFormulaService, IDependencyManagerService } from "@univerjs/preset-sheets-core";
import { reach } from "./reach.ts";

interface Answer {
  readonly v?: unknown;
  readonly t?: unknown;
}

interface SpilledCells {
  getValue(row: number, column: number): Answer | null | undefined;
}

/** A value by workbook and sheet. */
type BySheet<Value> = Readonly<Record<string, Readonly<Record<string, Value | undefined>> | undefined>>;
/** The range that each spilling formula fills, by the formula's row and column. */
type SpillRanges = Readonly<Record<number, Readonly<Record<number, IRange | undefined>> | undefined>>;

interface SpillState {
  readonly arrayFormulaRange: BySheet<SpillRanges>;
  readonly arrayFormulaCellData: BySheet<SpilledCells>;
}

interface DirtyRange {
  readonly unitId: string;
  readonly sheetId: string;
  readonly range: IRange;
}

/** The parts of the grid's calculation that its own second look at spilled cells is made of. */
interface Calculation {
  _apply(isForSpills?: boolean): Promise<SpillState | null | undefined>;
  _executeStep(): Promise<true | undefined>;
  readonly _currentConfigService: {
    _forceCalculate: boolean;
    getArrayFormulaRange(): SpillState["arrayFormulaRange"];
    getArrayFormulaCellData(): SpillState["arrayFormulaCellData"];
    loadDirtyRangesAndExcludedCell(dirty: readonly DirtyRange[], excluded: object): void;
  };
}

interface Dependencies {
  searchDependency(search: readonly DirtyRange[], except?: ReadonlySet<number>): Set<number>;
}

/** What a spilling formula answered, cell by cell. */
interface Spill {
  readonly range: IRange;
  readonly answers: readonly (readonly (Answer | null)[])[];
}

interface ChangedSpill {
  readonly formula: DirtyRange;
  /** The cells below and beside the formula that hold another answer than before. */
  readonly cells: readonly DirtyRange[];
}

/** Longer chains of spills than any workbook of ours has; a loop of cells ends here. */
const MOST_LOOKS = 12;

/**
 * The grid computes what depends on spilled cells in one second look, and leaves out formulas that spill themselves. A
 * chain of spills, such as a yard's Site ID, its area, its basin and then its soil mix, so keeps old answers further
 * down. Here it looks again until no spilled cell changes any more, and each time only at what reads a cell that did: of
 * a thousand yards, one edit changes one.
 */
export function computeChainsOfSpills(injector: Injector): void {
  const calculation = reach<Calculation>(injector.get(ICalculateFormulaService), "calculation", [
    "_apply",
    "_executeStep",
    "_currentConfigService",
  ]);
  const config = reach<Calculation["_currentConfigService"]>(calculation._currentConfigService, "calculation's settings", [
    "_forceCalculate",
    "getArrayFormulaRange",
    "getArrayFormulaCellData",
    "loadDirtyRangesAndExcludedCell",
  ]);
  const dependencies = reach<Dependencies>(injector.get(IDependencyManagerService), "dependencies", ["searchDependency"]);
  const search = dependencies.searchDependency.bind(dependencies);
  let changed: readonly ChangedSpill[] = [];
  let dirty: readonly DirtyRange[] = [];
  dependencies.searchDependency = (ranges, except) => (ranges === dirty ? readersOf(changed, search) : search(ranges, except));
  calculation._executeStep = async () => {
    const known = new Map<string, Spill>();
    let state = await calculation._apply();
    // Every formula has been computed; from here on it is only about some.
    config._forceCalculate = false;
    for (let look = 0; look < MOST_LOOKS; look += 1) {
      if (state === null || state === undefined) return undefined;
      changed = changedSpills(
        state,
        { arrayFormulaRange: config.getArrayFormulaRange(), arrayFormulaCellData: config.getArrayFormulaCellData() },
        known,
      );
      if (changed.length === 0) return true;
      dirty = changed.flatMap(({ cells }) => cells);
      FORMULA_REF_TO_ARRAY_CACHE.clear();
      config.loadDirtyRangesAndExcludedCell(dirty, {});
      state = await calculation._apply(true);
    }
    return true;
  };
}

/**
 * The formulas that read changed cells. One that also reads the cell of the spilling formula is left out: it has been
 * computed after that, as after every formula that it reads.
 */
function readersOf(changed: readonly ChangedSpill[], search: Dependencies["searchDependency"]): Set<number> {
  const readers = new Set<number>();
  for (const { formula, cells } of changed) {
    for (const reader of search(cells, search([formula]))) readers.add(reader);
  }
  return readers;
}

/** The spills with cells that differ from what is known of them, or from before; the new answers are known from now on. */
function changedSpills(state: SpillState, before: SpillState, known: Map<string, Spill>): ChangedSpill[] {
  const changed: ChangedSpill[] = [];
  for (const { unitId, sheetId, row, column } of spillingFormulas(state)) {
    const key = `${unitId} ${sheetId} ${row} ${column}`;
    const last = known.get(key) ?? spillAt(before, unitId, sheetId, row, column);
    const present = spillAt(state, unitId, sheetId, row, column);
    known.set(key, present);
    const cells = differences(last, present, row, column).map((range) => ({ unitId, sheetId, range }));
    if (cells.length > 0) changed.push({ formula: { unitId, sheetId, range: cellRange(row, column) }, cells });
  }
  return changed;
}

function* spillingFormulas({ arrayFormulaRange }: SpillState) {
  for (const [unitId, sheets] of Object.entries(arrayFormulaRange)) {
    for (const [sheetId, rows] of Object.entries(sheets ?? {})) {
      for (const [row, columns] of Object.entries(rows ?? {})) {
        for (const column of Object.keys(columns ?? {})) yield { unitId, sheetId, row: Number(row), column: Number(column) };
      }
    }
  }
}

function spillAt(
  { arrayFormulaRange, arrayFormulaCellData }: SpillState,
  unitId: string,
  sheetId: string,
  row: number,
  column: number,
): Spill {
  const range = arrayFormulaRange[unitId]?.[sheetId]?.[row]?.[column] ?? cellRange(row, column);
  const cells = arrayFormulaCellData[unitId]?.[sheetId];
  const answers: (Answer | null)[][] = [];
  for (let r = range.startRow; r <= range.endRow; r += 1) {
    const line: (Answer | null)[] = [];
    for (let c = range.startColumn; c <= range.endColumn; c += 1) line.push(cells?.getValue(r, c) ?? null);
    answers.push(line);
  }
  return { range, answers };
}

/** Runs of cells down a column that differ, the formula's own cell aside. */
function differences(last: Spill, present: Spill, row: number, column: number): IRange[] {
  const lastRow = Math.max(last.range.endRow, present.range.endRow);
  const lastColumn = Math.max(last.range.endColumn, present.range.endColumn);
  const runs: IRange[] = [];
  for (let c = column; c <= lastColumn; c += 1) {
    let run: IRange | undefined;
    for (let r = row; r <= lastRow; r += 1) {
      const isOther = !(r === row && c === column) && differ(last.answers[r - row]?.[c - column], present.answers[r - row]?.[c - column]);
      if (!isOther) run = undefined;
      else if (run) run.endRow = r;
      else runs.push((run = cellRange(r, c)));
    }
  }
  return runs;
}

function differ(one: Answer | null | undefined, other: Answer | null | undefined): boolean {
  return (one?.v ?? null) !== (other?.v ?? null) || (one?.t ?? null) !== (other?.t ?? null);
}

function cellRange(row: number, column: number): IRange {
  return { startRow: row, endRow: row, startColumn: column, endColumn: column };
}
