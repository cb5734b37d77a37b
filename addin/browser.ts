/** Starts Soakbook without Excel: the same functions, actions and pane, on the embedded spreadsheet. */
import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import "@univerjs/preset-sheets-drawing/lib/index.css";
import "@univerjs/preset-sheets-filter/lib/index.css";
import "./browser.css";
import { SOAKBOOK_VERSION } from "../functions/worksheet/about.ts";
import { catalogue } from "../functions/worksheet/catalogue.ts";
import { saveFile } from "../taskpane/parts/save-file.ts";
import { fillDemoProgram } from "./actions/demo/demo-program.ts";
import { keepDeleted, whatGoes } from "./actions/workbook/deleted-sheets.ts";
import { setUpWorkbook, sheetNamesOfProgram } from "./actions/workbook/set-up-workbook.ts";
import { DEMO_SETTING, IS_DEMO } from "./records/demo-mark.ts";
import { firstRow } from "./records/place.ts";
import { computedSheets, recordSheets, sheetsKeptInOrder } from "./records/program-sheets.ts";
import { wordsOverResults } from "./records/sheet.ts";
import { sitesSheet } from "./records/sites.ts";
import { UNFINISHED_SETTING } from "./records/unfinished-mark.ts";
import { ask, tell } from "./window/ask.ts";
import { showCellWords } from "./window/cell-words.ts";
import { askWhichSave, openFirstWorkbook } from "./window/first-workbook.ts";
import { keepOffline } from "./window/keep-offline.ts";
import { makeResizable } from "./window/pane-splitter.ts";
import { moveBetweenRegions } from "./window/regions.ts";
import { lastStartWasCutShort, startBegins } from "./window/start-mark.ts";
import { connectWorkbookBar, element } from "./window/workbook-bar.ts";
import { BrowserStorage, keptWorkbook } from "./workbook/embedded/browser-storage.ts";
import { DraftedWorkbook } from "./workbook/embedded/draft.ts";
import { EmbeddedGrid, SETTINGS } from "./workbook/embedded/embedded-grid.ts";
import { EmbeddedWorkbook } from "./workbook/embedded/embedded-workbook.ts";
import { answersIn, withAnswers } from "./workbook/embedded/kept-answers.ts";
import {
  WORKBOOK_FILE_EXTENSION,
  WorkbookFileRefused,
  contentsOf,
  readWorkbookFile,
  writeWorkbookFile,
} from "./workbook/embedded/workbook-file.ts";
import type { OpenedFile } from "./workbook/embedded/xlsx/read-xlsx.ts";
import type { XlsxKind } from "./workbook/embedded/xlsx/xlsx-file.ts";
import type { CellRange, Workbook } from "./workbook/port.ts";

/** Moments of the start, in the page's timeline: the pane is asked for after the first. */
const FUNCTIONS_REGISTERED = "soakbook: functions registered";
const PANE_SHOWN = "soakbook: pane shown";
/** Every cell shows its answer. */
const STARTED = "soakbook: started";

declare global {
  interface Window {
    /** The workbook port, for anyone's own scripts in the browser's console. */
    soakbook?: { readonly workbook: Workbook };
  }
}

const KEPT_ANSWERS = "Computing… Until then the answers are those of the last save.";
const KEEP_PRESENT = "Keep the present workbook";
const JSON_TYPE = "application/json";
const XLSX_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

const FIRST_YARD: CellRange = { sheet: sitesSheet.name, row: firstRow(sitesSheet), column: 0, rows: 1, columns: 1 };

const darkScheme = matchMedia("(prefers-color-scheme: dark)");
const grid = new EmbeddedGrid({
  container: element("grid", HTMLElement),
  functions: catalogue,
  dark: darkScheme.matches,
  sheetRules: {
    computed: new Map(computedSheets.map(({ name, columns }) => [name, Object.keys(columns).length])),
    results: new Map(recordSheets.map((sheet) => [sheet.name, wordsOverResults(sheet)])),
    keptInOrder: new Set(sheetsKeptInOrder.map(({ name }) => name)),
    ours: new Set(sheetNamesOfProgram),
  },
});
const workbook = new EmbeddedWorkbook(grid);

/** What the workbook held when it was last in a file of the person's own, or when it was the untouched demo. */
let contentsInFile: string | null = null;
let selection: CellRange | null = null;
/** The version of the functions that computed what is shown. */
let answersBy = SOAKBOOK_VERSION;
const bar = connectWorkbookBar({ saveToFile, saveValues, openFile, openEarlier, startOver }, (error) => {
  void tell("That did not work", error instanceof Error ? error.message : String(error));
});
const storage = new BrowserStorage(
  () => ({ file: fileText(), contentsInFile, selection, isDemo: workbook.settingNow(DEMO_SETTING) === IS_DEMO }),
  (state) => {
    bar.showSaving(state);
  },
);

makeResizable({
  frame: element("frame", HTMLElement),
  separator: element("splitter", HTMLElement),
  pane: element("pane", HTMLElement),
  button: element("toggle-pane", HTMLButtonElement),
});
moveBetweenRegions([
  { element: element("workbook-bar", HTMLElement) },
  { element: element("grid", HTMLElement), focus: () => grid.focus() },
  { element: element("pane", HTMLElement) },
]);
darkScheme.addEventListener("change", () => {
  grid.setDark(darkScheme.matches);
});
const wasCutShort = await lastStartWasCutShort();
const start = startBegins();
await openFirst();
performance.mark(FUNCTIONS_REGISTERED);
workbook.onSelectionChanged((selected) => {
  selection = selected;
});
keepByItself();
grid.onDeletion((sheet) => {
  askBeforeDeleting(sheet).catch((error: unknown) =>
    tell("The sheet was not deleted", error instanceof Error ? error.message : String(error)),
  );
});
showCellWords(workbook, workbook, { line: element("cell-sentence", HTMLElement), grid: element("grid", HTMLElement) });
const [{ mountPane }, { forgetDrafts, hasDraft }] = await Promise.all([
  import("../taskpane/pane.tsx"),
  import("../taskpane/parts/drafts.ts"),
]);
let leavePane = mountPane(element("pane", HTMLElement), workbook, "auto");
performance.mark(PANE_SHOWN);
await grid.drawn();
await comeBackTo(selection);
window.soakbook = { workbook };
await computeAnew();
performance.mark(STARTED);
start.isFinished();
await keepOffline();

async function openFirst(): Promise<void> {
  const opened = await openFirstWorkbook({
    keeping: storage,
    open: openKept,
    openDemo,
    saveToFile: (read) => {
      saveFile(fileName(WORKBOOK_FILE_EXTENSION), keptWorkbook(read)?.file ?? JSON.stringify(read), JSON_TYPE);
    },
    lastStartWasCutShort: wasCutShort,
    ask,
  });
  if (opened === "the latest") bar.showSaving({ state: "saved" });
  if (opened === "the demo") bar.showSaving({ state: "unchanged" });
  // The next visit begins with it, not with the later one that was passed over.
  if (opened === "an earlier one") await storage.save();
}

/** Opens what was read from a save. Throws in words where that cannot be opened. */
async function openKept(read: unknown): Promise<void> {
  const kept = keptWorkbook(read);
  if (kept === null) throw new WorkbookFileRefused("What is kept in this browser is no workbook.");
  const saved = readWorkbookFile("The workbook kept in this browser", kept.file);
  const answers = answersIn(saved);
  grid.open(saved, answers);
  answersBy = answers?.version ?? SOAKBOOK_VERSION;
  if (answers) bar.showComputing(answersBy === SOAKBOOK_VERSION ? KEPT_ANSWERS : `${KEPT_ANSWERS} Version ${answersBy} computed them.`);
  ({ contentsInFile, selection } = kept);
  await comeBackTo(selection);
}

/** Resolves when every cell shows its answer to what stands in the workbook now, where kept answers were shown until then. */
async function computeAnew(): Promise<void> {
  grid.computeAnew();
  await workbook.calculated();
  answersBy = SOAKBOOK_VERSION;
  bar.showComputing(null);
}

/** What stands on a sheet of ours is kept before it goes, so that the pane can bring it back. */
async function askBeforeDeleting(name: string): Promise<void> {
  const cells = await workbook.readSheets([name]);
  const answer = await ask({
    title: `Delete sheet ${name}?`,
    text: whatGoes(name, cells[0] ?? []),
    choices: [
      { answer: "keep", label: "Keep the sheet" },
      { answer: "delete", label: "Delete it" },
    ],
  });
  if (answer !== "delete") return;
  await keepDeleted(workbook, new Map([[name, cells[0] ?? []]]), [name]);
  grid.deleteSheet(name);
}

/** Selects where the person was, or the first yard when that place is gone. */
async function comeBackTo(place: CellRange | null): Promise<void> {
  const sheets = await workbook.sheetNames();
  const there = [place, FIRST_YARD].find((wanted) => wanted && sheets.includes(wanted.sheet));
  if (there) await workbook.select(there);
}

async function openDemo(): Promise<void> {
  const demo = new DraftedWorkbook();
  await setUpWorkbook(demo);
  await fillDemoProgram(demo);
  grid.openDraft(demo);
  await workbook.select(FIRST_YARD);
  contentsInFile = presentContents();
}

/** Saves in the browser after every change, and at once when the page may be about to go. */
function keepByItself(): void {
  grid.onPersonalChange(() => {
    storage.changed();
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") storage.flush();
  });
  window.addEventListener("pagehide", () => {
    storage.flush();
  });
  // Leaving saves by itself what is waiting; it asks only where that would not help.
  window.addEventListener("beforeunload", (event) => {
    const isMidWrite = (workbook.settingNow(UNFINISHED_SETTING) ?? "") !== "";
    if (storage.wouldBeLost || isMidWrite) event.preventDefault();
  });
}

async function saveToFile(): Promise<void> {
  await saveXlsx("with formulas", ".xlsx");
  contentsInFile = presentContents();
  await storage.save();
}

/** A copy for who has no add-in; the workbook in the page stays as it is, and so does what its own file holds. */
function saveValues(): Promise<void> {
  return saveXlsx("values only", " values.xlsx");
}

async function saveXlsx(kind: XlsxKind, ending: string): Promise<void> {
  await workbook.calculated();
  const [{ xlsxFile }, { contentsOf: sheetContents }] = await Promise.all([
    import("./workbook/embedded/xlsx/xlsx-file.ts"),
    import("./workbook/embedded/xlsx/contents.ts"),
  ]);
  saveFile(fileName(ending), await xlsxFile(grid.snapshot(), sheetContents(grid), workbook.settingsNow(), kind), XLSX_TYPE);
}

async function openFile(file: File): Promise<void> {
  let opened: OpenedFile;
  try {
    opened = await readAnyFile(file);
  } catch (error) {
    if (!(error instanceof WorkbookFileRefused)) throw error;
    await tell("The file was not opened", `${error.message} Your present workbook is unchanged.`);
    return;
  }
  if (!(await mayReplace(`Open "${file.name}"?`, "Open it without saving", opened.leftBehind))) return;
  await replaceWorkbook(() => {
    grid.open(opened.workbook);
    contentsInFile = presentContents();
    return Promise.resolve();
  });
}

/** Files of the page from before it kept its workbook as .xlsx are opened as they were. */
async function readAnyFile(file: File): Promise<OpenedFile> {
  if (/\.(soakbook|json)$/i.test(file.name)) return { workbook: readWorkbookFile(file.name, await file.text()), leftBehind: [] };
  const { readXlsxFile } = await import("./workbook/embedded/xlsx/read-xlsx.ts");
  return readXlsxFile(file.name, new Uint8Array(await file.arrayBuffer()), SETTINGS);
}

async function startOver(): Promise<void> {
  if (!(await mayReplace("Start over with the demo?", "Start over"))) return;
  await replaceWorkbook(openDemo);
}

async function openEarlier(): Promise<void> {
  // What is waiting to be saved is the latest one then, and stays among those kept.
  if (storage.isWaiting) await storage.save();
  const saves = await storage.saves();
  const earlier = storage.isHeldBack ? saves : saves.slice(1);
  if (earlier.length === 0)
    return tell("There is no earlier one", "This browser keeps the last three saves of a workbook, and this is the first.");
  const chosen = await askWhichSave(
    ask,
    { title: "Open an earlier one", text: "The workbook as it was when it was saved.", noneOfThem: KEEP_PRESENT },
    earlier,
  );
  if (chosen === null) return;
  const losesSomething = storage.wouldBeLost || hasDraft("");
  if (losesSomething && !(await mayReplace("Open an earlier one?", "Open it"))) return;
  await replaceWorkbook(async () => openKept(await storage.read(chosen)));
}

/** Asks before the present workbook goes; a workbook that is in no file can be saved to one first. */
async function mayReplace(title: string, goOn: string, besides: readonly string[] = []): Promise<boolean> {
  const inNoFile = contentsInFile !== presentContents();
  const losses = [
    ...besides,
    inNoFile
      ? "The present workbook will be replaced, and it has changes that are in no file of yours."
      : "The present workbook will be replaced.",
    ...(hasDraft("") ? ["What is typed in the pane and not written yet goes with it."] : []),
  ];
  const answer = await ask({
    title,
    text: losses.join(" "),
    choices: [
      { answer: "cancel", label: KEEP_PRESENT },
      ...(inNoFile ? [{ answer: "save", label: "Save to file first" } as const] : []),
      { answer: "go on", label: goOn },
    ],
  });
  if (answer === "save") await saveToFile();
  return answer === "save" || answer === "go on";
}

/** Puts another workbook in place; when that fails, the present one comes back. */
async function replaceWorkbook(open: () => Promise<void>): Promise<void> {
  const present = grid.snapshot();
  try {
    await open();
    await computeAnew();
  } catch (error) {
    grid.open(present);
    throw error;
  }
  forgetDrafts();
  // What the pane still says is of the workbook that is gone, its "Undo" above all.
  leavePane();
  leavePane = mountPane(element("pane", HTMLElement), workbook, "auto");
  storage.goOnSaving();
  await storage.save();
}

function fileText(): string {
  return writeWorkbookFile(withAnswers(grid.snapshot(), grid.answers(answersBy)), new Date());
}

function presentContents(): string {
  return contentsOf(grid.snapshot());
}

function fileName(extension: string): string {
  const now = new Date();
  const twoDigits = (part: number): string => String(part).padStart(2, "0");
  return `rain-gardens-${now.getFullYear()}-${twoDigits(now.getMonth() + 1)}-${twoDigits(now.getDate())}${extension}`;
}
