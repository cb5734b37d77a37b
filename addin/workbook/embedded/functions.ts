import {
  ArrayValueObject,
  BaseFunction,
  BooleanValueObject,
  ErrorValueObject,
  FunctionType,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/preset-sheets-core";
import type { Nullable } from "@univerjs/core";
import type { BaseValueObject, IFunctionInfo } from "@univerjs/preset-sheets-core";
import { isCellError, type Cell, type CellInput } from "../../../functions/worksheet/calling/cell.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import type { CellSentences } from "./sentences.ts";

/** The prefix that keeps our function names apart from the spreadsheet's own. */
export const FUNCTION_PREFIX = "SOAK.";

/** What the grid needs to compute the functions and to help a person type them. */
export interface FunctionRegistration {
  readonly function: [new (name: string) => BaseFunction, string][];
  readonly description: IFunctionInfo[];
}

/** Every function of the catalogue, ready for the grid. The sentences of errors are left in `sentences`. */
export function functionRegistration(catalogue: readonly WorksheetFunction[], sentences: CellSentences): FunctionRegistration {
  return {
    function: catalogue.map((declared) => [computing(declared, sentences), FUNCTION_PREFIX + declared.name]),
    description: catalogue.map(argumentHelp),
  };
}

/**
 * The class the grid makes one instance of for a function.
 *
 * It overrides `calculate`, not the friendlier `calculateCustom`: there a blank cell arrives as 0, and 0 inches
 * is a measurement where a blank is none.
 */
function computing(declared: WorksheetFunction, sentences: CellSentences): new (name: string) => BaseFunction {
  return class extends BaseFunction {
    override calculate(...given: BaseValueObject[]): BaseValueObject {
      const rows = declared.evaluate(given.map(inputOf));
      if (this.subUnitId) sentences.remember({ sheetId: this.subUnitId, row: this.row, column: this.column }, rows);
      return answerOf(rows);
    }
  };
}

function inputOf(given: BaseValueObject): CellInput {
  if (!given.isArray()) return cellOf(given);
  const grid = given as ArrayValueObject;
  return Array.from({ length: grid.getRowCount() }, (_row, row) =>
    Array.from({ length: grid.getColumnCount() }, (_column, column) => cellOf(grid.get(row, column))),
  );
}

function cellOf(value: Nullable<BaseValueObject>): Cell {
  if (!value || value.isNull()) return null;
  if (value.isError()) return { code: String(value.getValue()), sentence: "" };
  // A LAMBDA is no value; the declaration says so in words when it meets this text.
  if (value.isLambda()) return "LAMBDA";
  return value.getValue() as Cell;
}

function answerOf(rows: readonly (readonly Cell[])[]): BaseValueObject {
  const only = rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : undefined;
  if (only !== undefined) return valueOf(only);
  return ArrayValueObject.create({
    calculateValueList: rows.map((row) => row.map(valueOf)),
    rowCount: rows.length,
    columnCount: rows[0]?.length ?? 0,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

function valueOf(cell: Cell): BaseValueObject {
  if (isCellError(cell)) return ErrorValueObject.create(cell.code as Parameters<typeof ErrorValueObject.create>[0]);
  if (typeof cell === "number") return NumberValueObject.create(cell);
  if (typeof cell === "boolean") return BooleanValueObject.create(cell);
  // An empty text, because the grid shows an empty value as 0.
  return StringValueObject.create(cell ?? "");
}

function argumentHelp(declared: WorksheetFunction): IFunctionInfo {
  return {
    functionName: FUNCTION_PREFIX + declared.name,
    functionType: FunctionType.User,
    abstract: declared.summary,
    description: declared.summary,
    functionParameter: declared.parameters.map((parameter) => ({
      name: parameter.label,
      detail: parameter.description,
      example: parameter.isRange ? "A2:A9" : "A2",
      require: parameter.optional ? 0 : 1,
      repeat: 0,
    })),
  };
}
