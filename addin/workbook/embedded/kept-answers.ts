/**
 * What formulas fill beside their own cells, as a saved workbook holds it. The grid's snapshot has a formula's own answer
 * alone; with these the workbook is shown as it was when it was saved, before anything of it has been computed.
 */
import { CellValueType, ICommandService, type ICellData, type IRange, type Injector, type Nullable } from "@univerjs/core";
import { FormulaDataModel, SetArrayFormulaDataMutation } from "@univerjs/preset-sheets-core";
import * as z from "zod";
import type { WorkbookSnapshot } from "./workbook-file.ts";

/** The name that they have among what a snapshot carries beside its cells. */
const RESOURCE = "SOAKBOOK_ANSWERS";

type Answer = string | number | boolean | null;

const place = z.int().min(0);
const keptAnswers = z.object({
  /** Of the functions that computed them. */
  version: z.string(),
  spills: z.array(
    z.object({ sheet: z.string(), row: place, column: place, answers: z.array(z.array(z.custom<Answer>(isAnswer)).min(1)).min(1) }),
  ),
});

export type KeptAnswers = z.infer<typeof keptAnswers>;

type Carrying = Pick<WorkbookSnapshot, "resources">;

/** The snapshot of the open workbook with its answers. */
export function withAnswers<Snapshot extends Carrying>(snapshot: Snapshot, answers: KeptAnswers): Snapshot {
  return { ...snapshot, resources: [...(snapshot.resources ?? []), { name: RESOURCE, data: JSON.stringify(answers) }] };
}

/** The answers that a snapshot carries; null where there are none, or none that can be shown: then all is computed first. */
export function answersIn({ resources = [] }: Carrying): KeptAnswers | null {
  const kept = resources.find(({ name }) => name === RESOURCE);
  if (kept === undefined || kept.data === "") return null;
  const read = keptAnswers.safeParse(JSON.parse(kept.data));
  return read.success ? read.data : null;
}

export function answersShown(injector: Injector, unitId: string, version: string): KeptAnswers {
  const model = injector.get(FormulaDataModel);
  const cells = model.getArrayFormulaCellData()[unitId] ?? {};
  const spills = Object.entries(model.getArrayFormulaRange()[unitId] ?? {}).flatMap(([sheet, rows]) =>
    Object.values(rows ?? {}).flatMap((columns) =>
      Object.values<IRange>(columns ?? {}).map(({ startRow, endRow, startColumn, endColumn }) => ({
        sheet,
        row: startRow,
        column: startColumn,
        answers: Array.from({ length: endRow - startRow + 1 }, (_row, down) =>
          Array.from({ length: endColumn - startColumn + 1 }, (_column, across) =>
            answerOf(cells[sheet]?.[startRow + down]?.[startColumn + across]),
          ),
        ),
      })),
    ),
  );
  return { version, spills };
}

/** Puts them where the formulas had spilled. */
export function showAnswers(injector: Injector, unitId: string, { spills }: KeptAnswers): void {
  const ranges: Record<string, Record<number, Record<number, object>>> = {};
  const cells: Record<string, Record<number, Record<number, ICellData>>> = {};
  for (const { sheet, row, column, answers } of spills) {
    const endRow = row + answers.length - 1;
    const endColumn = column + (answers[0]?.length ?? 1) - 1;
    ((ranges[sheet] ??= {})[row] ??= {})[column] = { startRow: row, endRow, startColumn: column, endColumn };
    const ofSheet = (cells[sheet] ??= {});
    answers.forEach((line, down) => line.forEach((answer, across) => ((ofSheet[row + down] ??= {})[column + across] = cellWith(answer))));
  }
  const filled = { arrayFormulaRange: { [unitId]: ranges }, arrayFormulaCellData: { [unitId]: cells } };
  injector.get(ICommandService).syncExecuteCommand(SetArrayFormulaDataMutation.id, filled, { onlyLocal: true });
}

function answerOf(cell: Nullable<ICellData>): Answer {
  const value = cell?.v ?? null;
  return cell?.t === CellValueType.BOOLEAN ? Boolean(Number(value)) : value;
}

function cellWith(answer: Answer): ICellData {
  if (typeof answer === "boolean") return { v: answer ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: answer, t: typeof answer === "number" ? CellValueType.NUMBER : CellValueType.STRING };
}

function isAnswer(read: unknown): boolean {
  return read === null || ["string", "number", "boolean"].includes(typeof read);
}
