import type { IRange, Injector } from "@univerjs/core";
import { FORMULA_REF_TO_ARRAY_CACHE, ICalculateFormulaService } from "@univerjs/preset-sheets-core";

/** A value by workbook, sheet, row and column. */
type ByCell<Value> = Readonly<Record<string, Readonly<Record<string, Readonly<Record<number, Readonly<Record<number, Value>>>>>>>>;

interface SpillState {
  /** The range that each spilling formula fills, by the formula's cell. */
  readonly arrayFormulaRange: ByCell<IRange>;
  readonly arrayFormulaCellData: Readonly<Record<string, Readonly<Record<string, { getValue(row: number, column: number): { readonly v?: unknown } | null | undefined }>>>>;
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
  readonly _currentConfigService: { loadDirtyRangesAndExcludedCell(dirty: readonly DirtyRange[], excluded: object): void };
}

/** Longer chains of spills than any workbook of ours has; a loop of cells ends here. */
const MOST_LOOKS = 12;

/**
 * The grid computes what depends on spilled cells in one second look, and leaves out formulas that spill themselves. A
 * chain of spills, such as a yard's Site ID, its area, its basin and then its soil mix, so keeps old answers further
 * down. Here it looks again until no spilled cell changes any more.
 */
export function computeChainsOfSpills(injector: Injector): void {
  const calculation = injector.get(ICalculateFormulaService) as unknown as Calculation;
  calculation._executeStep = async () => {
    let state = await calculation._apply();
    if (state === null || state === undefined) return undefined;
    const known = new Map<string, string>();
    for (let look = 0; look < MOST_LOOKS; look += 1) {
      const changed = changedSpills(state, known);
      if (changed.length === 0) return true;
      FORMULA_REF_TO_ARRAY_CACHE.clear();
      calculation._currentConfigService.loadDirtyRangesAndExcludedCell(changed, {});
      const next = await calculation._apply(true);
      if (next === null || next === undefined) return undefined;
      state = next;
    }
    return true;
  };
}

/** The spills whose cells differ from what is known of them; the new answers are known from now on. */
function changedSpills({ arrayFormulaRange, arrayFormulaCellData }: SpillState, known: Map<string, string>): DirtyRange[] {
  const changed: DirtyRange[] = [];
  for (const [unitId, sheets] of Object.entries(arrayFormulaRange)) {
    for (const [sheetId, rows] of Object.entries(sheets)) {
      const cells = arrayFormulaCellData[unitId]?.[sheetId];
      for (const [row, columns] of Object.entries(rows)) {
        for (const [column, range] of Object.entries(columns)) {
          const key = `${unitId} ${sheetId} ${row} ${column}`;
          const answers = valuesIn(range, (r, c) => cells?.getValue(r, c)?.v ?? null);
          if (known.get(key) === answers) continue;
          known.set(key, answers);
          changed.push({ unitId, sheetId, range });
        }
      }
    }
  }
  return changed;
}

function valuesIn({ startRow, endRow, startColumn, endColumn }: IRange, valueAt: (row: number, column: number) => unknown): string {
  const values: unknown[] = [endRow, endColumn];
  for (let row = startRow; row <= endRow; row += 1) {
    for (let column = startColumn; column <= endColumn; column += 1) values.push(valueAt(row, column));
  }
  return JSON.stringify(values);
}
