/**
 * Starts Soakbook inside Excel, in the one page that functions, ribbon and pane share.
 *
 * Excel loads this page before the first of our functions can answer, so the functions are registered by a
 * script before this one, and the pane, which is larger, is fetched only after.
 */
import "./excel.css";
import { associateCommands, opensWithWorkbook } from "./excel-commands.ts";
import { partMissing, reasonOf } from "./actions/part-missing.ts";
import { excelWorkbook } from "./workbook/excel/excel-workbook.ts";

const TROUBLE_SHOWN_MILLISECONDS = 10_000;

const pane = element("pane");
const trouble = element("trouble");

try {
  await start();
} catch (error) {
  say(partMissing(error) ?? `Soakbook did not start: ${reasonOf(error)}. Close this pane and open it again; cells go on computing.`);
}

async function start(): Promise<void> {
  if (typeof Office === "undefined")
    return say("Excel's script did not load. Check the connection, then close this pane and open it again.");
  const { host } = await Office.onReady();
  if (host === Office.HostType.Excel) await showPane();
  else say("This page is Soakbook's pane for Excel. Open it from the Home tab of Excel, where the add-in is installed.");
}

async function showPane(): Promise<void> {
  const workbook = excelWorkbook(showTrouble);
  associateCommands(workbook, tell);
  const { mountPane } = await import("../taskpane/pane.tsx");
  pane.replaceChildren();
  mountPane(pane, workbook, theme());
  if (await opensWithWorkbook()) await Office.addin.showAsTaskpane();
}

/** Excel's theme may differ from the system's. Some Excels do not tell theirs; then the system's holds. */
function theme(): "light" | "dark" | "auto" {
  const [, red, green, blue] = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(excelBackground() ?? "") ?? [];
  if (red === undefined || green === undefined || blue === undefined) return "auto";
  const brightness = (Number.parseInt(red, 16) + Number.parseInt(green, 16) + Number.parseInt(blue, 16)) / 3;
  return brightness < 128 ? "dark" : "light";
}

function excelBackground(): string | undefined {
  const { officeTheme }: { readonly officeTheme?: Office.OfficeTheme } = Office.context;
  return officeTheme?.bodyBackgroundColor;
}

let clearing: ReturnType<typeof setTimeout> | undefined;

/** What went wrong while nobody waited for it: a change in the sheet that the pane could not read at once. */
function showTrouble(error: unknown): void {
  tell(partMissing(error) ?? `${reasonOf(error)}.`);
}

function tell(sentence: string): void {
  trouble.textContent = sentence;
  clearTimeout(clearing);
  clearing = setTimeout(() => trouble.replaceChildren(), TROUBLE_SHOWN_MILLISECONDS);
}

function say(sentence: string): void {
  const notice = document.createElement("p");
  notice.className = "notice";
  notice.textContent = sentence;
  pane.replaceChildren(notice);
}

function element(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`The page has no element "${id}".`);
  return found;
}
