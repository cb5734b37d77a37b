/** Runs the agreement cases inside a page, on the embedded spreadsheet, one at a time by title. */
import { EmbeddedGrid } from "../../addin/workbook/embedded-grid.ts";
import { EmbeddedWorkbook } from "../../addin/workbook/embedded-workbook.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { cases } from "./cases.ts";

declare global {
  interface Window {
    /** Null when the case holds, otherwise what does not. */
    runAgreementCase?: (title: string) => Promise<string | null>;
  }
}

const container = document.getElementById("grid");
if (!container) throw new Error("The page has no place for the grid.");
const grid = new EmbeddedGrid({ container, functions: catalogue, dark: false });
const workbook = new EmbeddedWorkbook(grid);

window.runAgreementCase = async (title) => {
  const found = cases.find((one) => one.title === title);
  if (!found) return `There is no case titled "${title}".`;
  grid.openBlank();
  try {
    await found.run(workbook);
    return null;
  } catch (error) {
    return error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  }
};
