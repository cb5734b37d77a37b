/** The real page in a real browser: every file of tests has pages of its own in the one browser of the run. */
import { buffer } from "node:stream/consumers";
import { chromium, type Browser, type BrowserContext, type BrowserContextOptions, type Download, type Page } from "playwright-core";
import { inject } from "vitest";
import type { BuiltPages } from "./built-pages.ts";

export const VIEWPORT = { width: 1440, height: 900 };
/** As wide as the pane is beside the grid of the page without Excel. */
export const PANE_VIEWPORT = { width: 400, height: 900 };
/** How long a page may take over what is asked of it: nothing is measured by it, so a busy machine has time. */
const PATIENCE_MILLISECONDS = 60_000;

export interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Where the page is served, such as http://localhost:40123/. */
  readonly address: string;
  /** Errors that no part of the page caught, and what the content security policy refused. */
  readonly faults: readonly string[];
}

/** The pages that one file of tests opens. Call `close` when the tests are done. */
export class PageHost {
  readonly #opened: BrowserContext[] = [];

  private constructor(
    readonly address: string,
    private readonly browser: Browser,
    /** The file that is Excel for Excel's page. */
    readonly excelScript: string,
  ) {}

  /** What is given is served elsewhere than the pages of the run are. */
  static async start({ address, browser, excelScript }: Omit<BuiltPages, "directory"> = inject("pages")): Promise<PageHost> {
    return new PageHost(address, await connected(browser), excelScript);
  }

  async close(): Promise<void> {
    await Promise.all(this.#opened.splice(0).map((context) => context.close()));
  }

  /** A browser profile of its own with an empty page in it: nothing is kept from one to the next. */
  async newPage(options: BrowserContextOptions = {}): Promise<OpenPage> {
    const context = await this.browser.newContext({ viewport: VIEWPORT, ...options });
    this.#opened.push(context);
    context.setDefaultTimeout(PATIENCE_MILLISECONDS);
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

  /** Excel's page over an Excel in memory, with the demo's workbook open in it; the page is prepared before anything of ours runs. */
  async openInExcel(options: BrowserContextOptions = {}, prepare?: (page: Page) => Promise<unknown>): Promise<OpenPage> {
    const opened = await this.newPage({ viewport: PANE_VIEWPORT, ...options });
    const { page, address } = opened;
    await prepare?.(page);
    await page.route(/^https:/, (route) => route.fulfill({ contentType: "text/javascript", path: this.excelScript }));
    await page.goto(`${address}taskpane.html`);
    await page.locator("#pane h1").first().waitFor();
    return opened;
  }
}

/** What the page saved as a file. The browser may not share a disk with whoever asks. */
export async function savedBytes(download: Download): Promise<Buffer> {
  return buffer(await download.createReadStream());
}

/** The files that a process runs one after the other share its connection to the browser. */
let connection: Promise<Browser> | null = null;

function connected(browser: string): Promise<Browser> {
  return (connection ??= chromium.connect(browser));
}

/** Resolves when the page's workbook is open and computed and its pane is there. */
export async function started(page: Page): Promise<void> {
  const isStarted = (): boolean => performance.getEntriesByName("soakbook: started").length > 0;
  await page.waitForFunction(isStarted);
}
