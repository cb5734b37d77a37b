import type { ICommandInfo } from "@univerjs/core";
import {
  COMMAND_LISTENER_VALUE_CHANGE,
  InsertColMutation,
  InsertRowMutation,
  InsertSheetMutation,
  MoveColsMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
  RemoveSheetMutation,
  SetFormulaCalculationResultMutation,
  SetWorksheetNameMutation,
} from "@univerjs/preset-sheets-core";

const CELL_MUTATIONS: ReadonlySet<string> = new Set([
  ...COMMAND_LISTENER_VALUE_CHANGE,
  InsertRowMutation.id,
  InsertColMutation.id,
  RemoveRowMutation.id,
  RemoveColMutation.id,
  MoveRowsMutation.id,
  MoveColsMutation.id,
  InsertSheetMutation.id,
  RemoveSheetMutation.id,
  SetWorksheetNameMutation.id,
  SetFormulaCalculationResultMutation.id,
]);

/** The sheets whose cells a mutation of the grid changed. */
export function sheetsTouched({ id, params }: Readonly<ICommandInfo>, unitId: string): readonly string[] {
  if (!CELL_MUTATIONS.has(id)) return [];
  const { subUnitId, sheet, unitData } = (params ?? {}) as {
    subUnitId?: string;
    sheet?: { id?: string };
    unitData?: Record<string, object | undefined>;
  };
  return [
    ...(subUnitId === undefined ? [] : [subUnitId]),
    ...(sheet?.id === undefined ? [] : [sheet.id]),
    ...Object.keys(unitData?.[unitId] ?? {}),
  ];
}
