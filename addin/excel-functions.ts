/**
 * Registers every worksheet function with Excel. Built into dist/functions.js, a classic script that needs nothing
 * but the global CustomFunctions, so that the functions answer before any page is shown.
 */
import { catalogue } from "../functions/worksheet/catalogue.ts";
import { isCellError, type Cell, type CellError } from "../functions/worksheet/calling/cell.ts";
import { inputFromHost, withoutBlankRowsBelow } from "../functions/worksheet/calling/host-cells.ts";

for (const { name, parameters, evaluate } of catalogue) {
  CustomFunctions.associate(name, (...inputs: unknown[]) =>
    // Excel hands over its invocation after the last argument.
    evaluate(withoutBlankRowsBelow(inputs.slice(0, parameters.length)).map(inputFromHost)).map(rowForExcel),
  );
}

function rowForExcel(row: readonly Cell[]): readonly unknown[] {
  return row.some(isCellError) ? row.map((cell) => (isCellError(cell) ? errorForExcel(cell) : cell)) : row;
}

/** Excel shows our sentence beside #VALUE! and #N/A, accepts three codes without words, and refuses the rest. */
function errorForExcel({ code, sentence }: CellError): unknown {
  const canShow = SHOWN_WITH_WORDS.has(code) || SHOWN_WITHOUT_WORDS.has(code);
  const shownCode = canShow ? code : "#VALUE!";
  const message = canShow ? sentence : `An input cell shows ${code}.`;
  if (typeof CustomFunctions.Error !== "function") return { code: shownCode, message };
  return message === "" || SHOWN_WITHOUT_WORDS.has(code)
    ? new CustomFunctions.Error(shownCode as CustomFunctions.ErrorCode)
    : new CustomFunctions.Error(shownCode as CustomFunctions.ErrorCode, message);
}

const SHOWN_WITH_WORDS: ReadonlySet<string> = new Set(["#VALUE!", "#N/A"]);
const SHOWN_WITHOUT_WORDS: ReadonlySet<string> = new Set(["#DIV/0!", "#NUM!", "#NULL!"]);
