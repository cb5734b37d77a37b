/** Runs the agreement cases inside a page, on the embedded spreadsheet, one at a time by title. */
import { EmbeddedGrid } from "../../addin/workbook/embedded-grid.ts";
import { EmbeddedWorkbook } from "../../addin/workbook/embedded-workbook.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { readWorkbookFile, writeWorkbookFile } from "../../addin/workbook/workbook-file.ts";
import { cases } from "./cases.ts";
import { picture } from "./picture-cases.ts";

declare global {
  interface Window {
    /** Null when the case holds, otherwise what does not. */
    runAgreementCase?: (title: string) => Promise<string | null>;
    /** The sentence under an impossible formula, before and after a row is inserted above it. */
    sentenceAroundInsertedRow?: () => Promise<readonly (string | null)[]>;
    /** Whether placing a picture counts as a change to keep, and the pictures of the saved workbook opened again. */
    pictureKept?: () => Promise<{ readonly isChange: boolean; readonly names: readonly string[] }>;
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

window.pictureKept = async () => {
  grid.openBlank();
  const [sheet = ""] = await workbook.sheetNames();
  let isChange = false;
  const stop = grid.onPersonalChange(() => {
    isChange = true;
  });
  await workbook.placePicture({ ...picture("Y-001"), sheet });
  stop();
  const file = writeWorkbookFile(grid.snapshot(), new Date());
  grid.openBlank();
  grid.open(readWorkbookFile("saved.soakbook", file));
  return { isChange, names: await workbook.pictureNames(sheet) };
};

window.sentenceAroundInsertedRow = async () => {
  grid.openBlank();
  const [sheet = ""] = await workbook.sheetNames();
  const place = { sheet, row: 4, column: 0, rows: 1, columns: 1 };
  await workbook.writeFormulas([{ range: place, formulas: [["=SOAK.RUNOFFDEPTH(4,180)"]] }]);
  await workbook.calculated();
  const before = workbook.sentenceAt(place);
  grid.workbook().getActiveSheet().insertRowBefore(1);
  await workbook.calculated();
  return [before, workbook.sentenceAt(place), workbook.sentenceAt({ ...place, row: 5 })];
};
