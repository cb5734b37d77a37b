/**
 * Excel on the web shows the pane in a frame of another origin that may do little: no dialogs and so no print(), no downloads,
 * no windows, no clipboard but by a copied selection, and no storage where third parties have none. The browser holds it to that.
 */
import type { Frame, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type {} from "./excel-entry.ts";
import { PageHost, type OpenPage } from "./page.ts";

const EXCEL = "https://excel.example/";
/** Where the pages of the run are for this browser: it lets no page from elsewhere show one of this machine. */
const HOSTED = "https://gardens.example/";

/** A browser with third-party storage blocked, and a system whose locale the language does not know. */
function withoutStorageOrLocale(): void {
  for (const name of ["localStorage", "sessionStorage"])
    Object.defineProperty(window, name, {
      get() {
        throw new DOMException("Access is denied for this document.", "SecurityError");
      },
    });
  for (const kind of [Number, Date]) {
    const own = kind.prototype as { toLocaleString(locale?: string, options?: object): string };
    const plain = own.toLocaleString;
    own.toLocaleString = function (locale?: string, options?: object) {
      if (locale === undefined) throw new RangeError("Incorrect locale information provided");
      return plain.call(this, locale, options);
    };
  }
}

let host: PageHost;
beforeAll(async () => {
  host = await PageHost.start();
});
afterAll(() => host.close());

async function openFramed(
  prepare: (page: Page) => Promise<unknown> = () => Promise.resolve(),
): Promise<OpenPage & { readonly frame: Frame }> {
  const opened = await host.newPage({ viewport: { width: 420, height: 900 } });
  const { page, address } = opened;
  await page.addInitScript(withoutStorageOrLocale);
  await page.route(/^https:/, (route) => route.fulfill({ contentType: "text/javascript", path: host.excelScript }));
  await page.route(`${HOSTED}**`, async (route) => {
    await route.fulfill({ response: await route.fetch({ url: route.request().url().replace(HOSTED, address) }) });
  });
  await page.route(EXCEL, (route) =>
    route.fulfill({
      contentType: "text/html",
      body: `<iframe sandbox="allow-scripts allow-same-origin allow-forms" src="${HOSTED}taskpane.html" style="width:400px;height:880px"></iframe>`,
    }),
  );
  await prepare(page);
  await page.goto(EXCEL);
  await page.locator("iframe").waitFor();
  const frame = await (await page.locator("iframe").elementHandle())?.contentFrame();
  if (!frame) throw new Error("The page of Excel has no frame.");
  return { ...opened, frame };
}

describe("In a frame of another origin, without storage, dialogs, downloads, windows and clipboard,", () => {
  let opened: Awaited<ReturnType<typeof openFramed>>;
  let frame: Frame;
  const downloads: string[] = [];
  beforeAll(async () => {
    opened = await openFramed();
    ({ frame } = opened);
    opened.page.on("download", (download) => downloads.push(download.suggestedFilename()));
    await frame.locator("#pane h1").first().waitFor();
  });

  const tab = (name: string) => frame.getByRole("tab", { name }).click();
  const button = (name: string | RegExp) => frame.locator("#pane").getByRole("button", { name, exact: typeof name === "string" });
  const status = () => frame.locator("#pane .status-line p");
  const sheets = () => frame.evaluate(async () => (await window.soakbook?.workbook.sheetNames()) ?? []);

  it("the pane starts and shows the selected yard", async () => {
    expect(await frame.locator("#pane h1").first().innerText()).toContain("Y-001");
    await expect(frame.evaluate(() => window.localStorage.length)).rejects.toThrow("Access is denied");
  });

  it("every file may be read from Excel's own page", async () => {
    const read = await opened.page.evaluate(
      (address) =>
        Promise.all(["functions.json", "functions.js", "taskpane.html"].map(async (name) => (await fetch(address + name)).status)),
      HOSTED,
    );
    expect(read).toEqual([200, 200, 200]);
  });

  it("a field sheet that cannot be printed stands on a sheet of the workbook, and the paper is taken down", async () => {
    await tab("Visits");
    await button("Print a field sheet").click();
    await expect.poll(() => status().innerText()).toContain("This window does not print, so the same stands on a sheet named Y-001");
    const name = (await sheets()).find((each) => each.startsWith("Y-001 ")) ?? "";
    const cells = await frame.evaluate(async (sheet) => (await window.soakbook?.workbook.readSheets([sheet]))?.[0] ?? [], name);
    expect(String(cells[0]?.[0])).toMatch(/^Field sheet: .+ Y-001$/);
    expect(cells.flat()).toContain("Step");
    expect(cells.length).toBeGreaterThan(20);
    expect(await frame.locator(".paper").count()).toBe(0);
  });

  it("what cannot be saved is not said to be saved, and goes onto a sheet instead", async () => {
    await tab("Estimate");
    await button("Estimate, to print").click();
    await frame.getByText("Where no file arrives, this window saves none: use the buttons below.").waitFor();
    await button("Handout").click();
    await expect.poll(() => status().innerText()).toContain("A sheet named Handout Y-001 was added");
    expect(await sheets()).toContain("Handout Y-001");
    expect(downloads).toEqual([]);
  });

  it("cells are copied at the first press", async () => {
    await button("Copy the estimate as cells").click();
    await frame.getByText("The estimate is on the clipboard: paste it into any spreadsheet.").waitFor();
    await opened.context.grantPermissions(["clipboard-read"], { origin: EXCEL });
    await opened.page.bringToFront();
    await opened.page.evaluate(() => {
      window.focus();
    });
    expect(await opened.page.evaluate(() => navigator.clipboard.readText())).toContain("Site ID\tYard\tGroup\tItem");
  });

  it("the help says where it is", async () => {
    await frame.evaluate(() => new Promise<void>((done) => window.excelCommands?.["help"]?.({ completed: done })));
    expect(await frame.locator("#trouble").innerText()).toBe(`This window opens no others. The help is at ${HOSTED}help.html`);
  });

  it("nothing was left uncaught", () => {
    expect(opened.faults).toEqual([]);
  });
});

describe("Where something does not load,", () => {
  const gone = (name: RegExp) => (page: Page) =>
    page.route(name, (route) => route.fulfill({ status: 404, body: "There is no such file." }));

  it("the pane says so instead of starting for ever", async () => {
    const { frame } = await openFramed(gone(/pane-[A-Z0-9]+\.js$/));
    await frame.getByText("A part of Soakbook did not load. Check the connection, then close this pane and open it again.").waitFor();
  });

  it("and where its first script does not, the watch says it", async () => {
    const { frame } = await openFramed(gone(/excel-[A-Z0-9]+\.js$/));
    await frame.getByText("A part of Soakbook did not load. Check the connection, then close this pane and open it again.").waitFor();
  });

  it("a file to save says which part did not load", async () => {
    const { frame } = await openFramed(gone(/chunks\/export-files-[A-Z0-9]+\.js$/));
    await frame.locator("#pane h1").first().waitFor();
    await frame.getByRole("tab", { name: "Estimate" }).click();
    await frame.getByRole("button", { name: "Estimate, spreadsheet" }).click();
    await frame.getByText("The file was not made: A part of Soakbook did not load.").waitFor();
  });

  it("a script that the window is too old for is told from one that did not come", async () => {
    const { frame } = await openFramed((page) =>
      page.route(/excel-[A-Z0-9]+\.js$/, (route) =>
        route.fulfill({ contentType: "text/javascript", body: "const later = of?? the:language" }),
      ),
    );
    await frame.getByText("Soakbook cannot run in this window: it is too old for it.").waitFor();
  });

  it("an Excel that never answers is told after half a minute", async () => {
    const { page, address } = await host.newPage();
    await page.clock.install();
    await page.route(/^https:/, (route) =>
      route.fulfill({
        contentType: "text/javascript",
        body: "window.CustomFunctions = { associate() {} }; window.Office = { onReady: () => new Promise(() => {}) };",
      }),
    );
    await page.goto(`${address}taskpane.html`);
    await page.getByText("Soakbook is starting.").waitFor();
    await page.clock.fastForward(31_000);
    await page.getByText("Soakbook has not started for half a minute.").waitFor();
  });
});
