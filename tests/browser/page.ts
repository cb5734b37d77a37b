/**
 * The real page in a real browser, for every browser test: the project is built once for a run of the tests, served
 * from a free port, and opened in Chromium.
 */
import { access, mkdir, readdir, rm, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { kill, ppid } from "node:process";
import { fileURLToPath } from "node:url";
import { chromium, type Browser, type BrowserContext, type BrowserContextOptions, type Page } from "playwright-core";
import { DEFAULT_ORIGIN, build, withNames } from "../../addin/hosting/build.ts";
import { serve, type Serving } from "../../addin/hosting/serve.ts";
import { HOW_TO_INSTALL, findChromium } from "./chromium.ts";

const BUILDS = fileURLToPath(new URL("../../node_modules/.cache/soakbook-pages/", import.meta.url));
const CHROMIUM_ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
const LONGEST_START_MILLISECONDS = 60_000;

/** Entries that only tests load, beside the pages that are shipped. */
const TEST_SCRIPTS = {
  "agreement-entry": fileURLToPath(new URL("../agreement/embedded-entry.ts", import.meta.url)),
  "commands-entry": fileURLToPath(new URL("commands-entry.ts", import.meta.url)),
  "draft-entry": fileURLToPath(new URL("draft-entry.ts", import.meta.url)),
  "many-sites-entry": fileURLToPath(new URL("../bench/many-sites-entry.ts", import.meta.url)),
};

export interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Where the page is served, such as http://localhost:40123/. */
  readonly address: string;
  /** Errors that no part of the page caught, and what the content security policy refused. */
  readonly faults: readonly string[];
}

/** One browser and one server for a test file. Call `close` when the tests are done. */
export class PageHost {
  private constructor(
    readonly address: string,
    private readonly browser: Browser,
    private readonly serving: Serving,
  ) {}

  /** `directory` holds a build of the test's own, for tests that change what is hosted. */
  static async start(directory?: string): Promise<PageHost> {
    const executablePath = findChromium();
    if (executablePath === null) throw new Error(HOW_TO_INSTALL);
    const serving = await serve(directory ?? (await builtOnce()), 0);
    return new PageHost(serving.address, await chromium.launch({ executablePath, args: CHROMIUM_ARGUMENTS }), serving);
  }

  async close(): Promise<void> {
    await this.browser.close();
    await this.serving.stop();
  }

  /** A browser profile of its own with an empty page in it: nothing is kept from one to the next. */
  async newPage(options: BrowserContextOptions = {}): Promise<OpenPage> {
    const context = await this.browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
    const page = await context.newPage();
    const faults: string[] = [];
    page.on("pageerror", (error) => faults.push(error.message));
    page.on("console", (message) => {
      if (message.text().includes("Content Security Policy")) faults.push(message.text());
    });
    return { page, context, address: this.address, faults };
  }

  /** The page without Excel, started: functions registered, workbook open and computed, pane mounted. */
  async openProgram(options: BrowserContextOptions = {}): Promise<OpenPage> {
    const opened = await this.newPage(options);
    await opened.page.goto(this.address);
    await started(opened.page);
    return opened;
  }
}

/** Resolves when the page's workbook is open and computed and its pane is there. */
export async function started(page: Page): Promise<void> {
  const isStarted = (): boolean => performance.getEntriesByName("soakbook: started").length > 0;
  await page.waitForFunction(isStarted, undefined, { timeout: LONGEST_START_MILLISECONDS });
}

/** The folder with the built pages, shared by all test files of one run. */
async function builtOnce(): Promise<string> {
  const directory = join(BUILDS, String(ppid));
  const done = `${directory}.done`;
  const failed = `${directory}.failed`;
  await mkdir(dirname(directory), { recursive: true });
  const isFirst = await mkdir(`${directory}.building`).then(
    () => true,
    () => false,
  );
  if (!isFirst) return waitForBuild(directory, done, failed);
  await removeBuildsOfFinishedRuns();
  try {
    const names = await build({ origin: DEFAULT_ORIGIN, directory, scripts: TEST_SCRIPTS });
    await writeFile(join(directory, "agreement.html"), withNames(gridPage("Agreement", "agreement-entry.js"), names));
    await writeFile(join(directory, "commands.html"), withNames(gridPage("Commands", "commands-entry.js"), names));
    await writeFile(join(directory, "draft.html"), withNames(gridPage("Draft", "draft-entry.js"), names));
    await writeFile(join(directory, "many-sites.html"), withNames(gridPage("Many sites", "many-sites-entry.js"), names));
    await writeFile(done, "");
  } catch (error) {
    await writeFile(failed, "");
    throw error;
  }
  return directory;
}

async function waitForBuild(directory: string, done: string, failed: string): Promise<string> {
  for (;;) {
    if (await exists(done)) return directory;
    if (await exists(failed)) throw new Error("The page could not be built; another test file of this run says why.");
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

async function removeBuildsOfFinishedRuns(): Promise<void> {
  const names = await readdir(BUILDS);
  const finished = names.filter((name) => !isRunning(Number.parseInt(name, 10)));
  await Promise.all(finished.map((name) => rm(join(BUILDS, name), { recursive: true, force: true })));
}

function isRunning(processId: number): boolean {
  try {
    kill(processId, 0);
    return true;
  } catch {
    return false;
  }
}

function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}

/** A page with a grid and nothing else, for a test's own script. */
function gridPage(title: string, script: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>${title}</title>
<link rel="stylesheet" href="browser.css">
</head>
<body>
<div id="grid"></div>
<script type="module" src="${script}"></script>
</body>
</html>
`;
}
