/** Bundled with the embedded spreadsheet for Node: runs the agreement cases on it, one at a time by title. */
import { checkWorkbook } from "../../addin/actions/workbook/check-workbook.ts";
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { readProgram } from "../../addin/actions/program/read-program.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import type { CellValue } from "../../addin/workbook/port.ts";
import { readWorkbookFile, writeWorkbookFile } from "../../addin/workbook/embedded/workbook-file.ts";
import { startGrid } from "../addin/workbook/embedded/on-node/entry.ts";
import { actionCases } from "./action-cases.ts";
import { actionOutcome, type ActionOutcome } from "./action-outcome.ts";
import { cases } from "./cases.ts";
import type { LookAt } from "./looks.ts";
import { picture } from "./picture-cases.ts";

/** What people do to rows in a spreadsheet. */
export type RowChange = "insert rows" | "delete a yard's rows" | "sort the yards";

/** By Site ID, the computed cells that tell one yard from another. */
export type Designs = Readonly<Record<string, readonly CellValue[]>>;

const { grid, workbook } = startGrid();

const lookAt: LookAt = ({ sheet, row, column }) => {
  const cell = grid.workbook().getSheetByName(sheet)?.getRange(row, column);
  const style = cell?.getCellStyleData("cell");
  const rule = cell?.getDataValidation();
  return {
    format: style?.n?.pattern ?? null,
    fill: style?.bg?.rgb ?? null,
    choices: rule == null ? null : (JSON.parse(rule.rule.formula1 ?? "[]") as string[]),
  };
};

/** Null when the case holds, otherwise what does not. */
export async function runAgreementCase(title: string): Promise<string | null> {
  const found = cases.find((one) => one.title === title);
  if (!found) return `There is no case titled "${title}".`;
  grid.openBlank();
  try {
    await found.run(workbook, lookAt);
    return null;
  } catch (error) {
    return error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  }
}

/** Blank again, for the action cases, which go on where the one before stopped. */
export const beginActionCases = (): void => grid.openBlank();

export function runActionCase(title: string): Promise<ActionOutcome> {
  const found = actionCases.find((one) => one.title === title);
  if (!found) throw new Error(`There is no action titled "${title}".`);
  return actionOutcome(workbook, lookAt, found);
}

/** Whether placing a picture counts as a change to keep, and the pictures of the saved workbook opened again. */
export async function pictureKept(): Promise<{ readonly isChange: boolean; readonly names: readonly string[] }> {
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
}

/** The designs before and after what somebody does to rows, and what the check of the workbook would mend after it. */
export async function designsAround(
  change: RowChange,
): Promise<{ readonly before: Designs; readonly after: Designs; readonly repairs: readonly string[] }> {
  grid.openBlank();
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
  await workbook.calculated();
  const before = await designs();
  await rowChanges[change]();
  await workbook.calculated();
  const findings = await checkWorkbook(workbook);
  return { before, after: await designs(), repairs: findings.flatMap(({ sentence, repair }) => (repair === undefined ? [] : [sentence])) };
}

async function designs(): Promise<Designs> {
  const { yards } = await readProgram(workbook);
  return Object.fromEntries(
    yards.map(({ siteId, design, surfaces, answers }) => [
      siteId,
      [
        design.yard,
        design.contributingArea,
        design.testedRate,
        design.floorArea,
        design.mixSand,
        design.runoff,
        design.runoffRule,
        design.status,
        surfaces.length,
        answers.get("foundation")?.record.verdict ?? null,
      ],
    ]),
  );
}

const sheetOf = (name: string) => {
  const sheet = grid.workbook().getSheetByName(name);
  if (!sheet) throw new Error(`The demo has no sheet ${name}.`);
  return sheet;
};

const rowChanges: Readonly<Record<RowChange, () => Promise<void>>> = {
  "insert rows": async () => {
    for (const name of ["Sites", "Surfaces", "Hole tests", "Visits", "Rules"]) sheetOf(name).insertRowBefore(6);
    sheetOf("Sites").insertRowBefore(0);
    await Promise.resolve();
  },
  "delete a yard's rows": async () => {
    const yard = (await readProgram(workbook)).yards[2];
    sheetOf("Sites").deleteRow(yard?.site.row ?? 0);
    for (const { row } of [...(yard?.surfaces ?? [])].reverse()) sheetOf("Surfaces").deleteRow(row);
  },
  "sort the yards": async () => {
    const { yards } = await readProgram(workbook);
    const keys = Object.keys(sitesSheet.columns) as (keyof typeof sitesSheet.columns)[];
    const sorted = [...yards].sort((one, other) => String(one.site.record.address).localeCompare(String(other.site.record.address)));
    await workbook.writeValues(
      yards.flatMap(({ site }, place) => keys.map((key) => ({ range: site.at(key), values: [[sorted[place]?.site.cells[key] ?? null]] }))),
    );
  },
};

/** The sentence under an impossible formula, before and after a row is inserted above it. */
export async function sentenceAroundInsertedRow(): Promise<readonly (string | null)[]> {
  grid.openBlank();
  const [sheet = ""] = await workbook.sheetNames();
  const place = { sheet, row: 4, column: 0, rows: 1, columns: 1 };
  await workbook.writeFormulas([{ range: place, formulas: [["=SOAK.RUNOFFDEPTH(4,180)"]] }]);
  await workbook.calculated();
  const before = workbook.sentenceAt(place);
  grid.workbook().getActiveSheet().insertRowBefore(1);
  await workbook.calculated();
  return [before, workbook.sentenceAt(place), workbook.sentenceAt({ ...place, row: 5 })];
}

/** What is said of a cell, sentence and note, once selected; after its sheet in front is renamed; and after it is deleted. */
export async function wordsOfGoneSheet(): Promise<readonly (readonly (string | null)[])[]> {
  grid.openBlank();
  const layout = { name: "Yards", headingRow: 0, rows: 5, frozenColumns: 0, preface: [] };
  await workbook.addSheets([{ ...layout, columns: [{ heading: "Area", widthPixels: 90, role: "input", note: "Measured, not guessed." }] }]);
  const heading = { sheet: "Yards", row: 0, column: 0, rows: 1, columns: 1 };
  const below = { ...heading, row: 1 };
  await workbook.writeFormulas([{ range: below, formulas: [["=SOAK.RUNOFFDEPTH(4,180)"]] }]);
  await workbook.calculated();
  await workbook.select(heading);
  const words = (): readonly (string | null)[] => [workbook.sentenceAt(below), workbook.noteAt(heading)];
  const said = [words()];
  const inFront = grid.workbook().getActiveSheet();
  inFront.setName("Elsewhere");
  said.push(words());
  grid.workbook().deleteSheet(inFront);
  said.push(words());
  return said;
}
