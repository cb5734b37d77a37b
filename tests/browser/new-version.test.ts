import { cp, mkdtemp, readFile, rename, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { hashedName } from "../../addin/hosting/bundle.ts";
import { serve, type Serving } from "../../addin/hosting/serve.ts";
import { expectCell, typeInto } from "./grid.ts";
import { PageHost, started } from "./page.ts";
import { openYard } from "./pane.ts";

const TIME_TO_GO_MILLISECONDS = 5000;

let directory: string;
let serving: Serving;
let host: PageHost;
beforeAll(async () => {
  const pages = inject("pages");
  directory = await mkdtemp(join(tmpdir(), "soakbook-versions-"));
  await cp(pages.directory, directory, { recursive: true });
  serving = await serve(directory, 0);
  host = await PageHost.start({ ...pages, address: serving.address });
});
afterAll(async () => {
  await host.close();
  await serving.stop();
  await rm(directory, { recursive: true });
});

const path = (name: string): string => join(directory, name);

/** The host gets the next build: another start script under another name, the old one gone, as `npm run build` leaves it. */
async function deployNextVersion(): Promise<void> {
  const [page, worker] = await Promise.all(["index.html", "offline-worker.js"].map((name) => readFile(path(name), "utf8")));
  const script = /src="(browser-\w+\.js)"/.exec(page!)![1]!;
  const next = `${await readFile(path(script), "utf8")}\ndocument.documentElement.dataset.build = "next";\n`;
  const nextName = hashedName("browser.js", next);
  await rename(path(script), path(nextName));
  await writeFile(path(nextName), next);
  await writeFile(path("index.html"), page!.replaceAll(script, nextName));
  const version = /version:"(\w+)"/.exec(worker!)![1]!;
  await writeFile(path("offline-worker.js"), worker!.replaceAll(script, nextName).replace(version, `${version.slice(1)}0`));
}

declare global {
  interface Window {
    computingWords?: readonly string[];
  }
}

/** Notes what the bar says about computing, from the page's first moment on. */
function noteComputingWords(): void {
  const words: string[] = [];
  window.computingWords = words;
  new MutationObserver(() => {
    const text = document.getElementById("computing-state")?.textContent ?? "";
    if (text !== (words.at(-1) ?? "")) words.push(text);
  }).observe(document, { childList: true, subtree: true });
}

const buildOf = (page: Page): Promise<string> => page.evaluate(() => document.documentElement.dataset["build"] ?? "first");
const keptVersions = (page: Page): Promise<string[]> => page.evaluate(() => caches.keys());
const workerState = (page: Page) =>
  page.evaluate(async () => {
    const { active, waiting, installing } = await navigator.serviceWorker.ready;
    return { active: active?.state ?? null, waiting: waiting?.state ?? null, installing: installing?.state ?? null };
  });

it("a new version takes the old one's place when its page is gone, and what was typed into a cell and into the pane stays", async () => {
  const { page, context, address, faults } = await host.openProgram();
  const surface = (on: Page) => on.locator("#pane").getByLabel("Surface", { exact: true });
  await page.reload();
  await started(page);
  await typeInto(page, "Program!H5", "typed under the first version");
  await openYard(page, 0, "Yard");
  await page.locator("#pane").getByRole("button", { name: "Add a surface" }).click();
  await surface(page).fill("Shed roof");
  const [first] = await keptVersions(page);

  await deployNextVersion();
  await page.addInitScript(noteComputingWords);
  await page.reload();
  await started(page);
  expect(await buildOf(page)).toBe("next");
  // What was computed before is shown at once, with a word until it has been computed anew.
  expect(await page.evaluate(() => window.computingWords)).toEqual(["Computing… Until then the answers are those of the last save.", ""]);
  await expectCell(page, "Program!H5", "typed under the first version");
  await openYard(page, 0, "Yard");
  expect(await surface(page).inputValue()).toBe("Shed roof");
  // The worker of the first version still answers this page; the next one has fetched its files and waits.
  await expect.poll(() => workerState(page)).toEqual({ active: "activated", waiting: "installed", installing: null });
  expect(await keptVersions(page)).toHaveLength(2);
  await typeInto(page, "Program!H6", "typed under the next version");
  await page.close();

  const later = await context.newPage();
  // On a busy machine a page that was left is still going when the next one asks for its files, and keeps the first version at work.
  const opened = async () => {
    await later.goto("about:blank");
    await new Promise((resolve) => setTimeout(resolve, TIME_TO_GO_MILLISECONDS));
    await later.goto(address);
    await started(later);
    return workerState(later);
  };
  await expect.poll(opened).toEqual({ active: "activated", waiting: null, installing: null });
  await expect.poll(() => keptVersions(later)).toHaveLength(1);
  expect(await keptVersions(later)).not.toEqual([first]);
  await context.setOffline(true);
  await later.reload();
  await started(later);
  expect(await buildOf(later)).toBe("next");
  await expectCell(later, "Program!H5", "typed under the first version");
  await expectCell(later, "Program!H6", "typed under the next version");
  expect(faults).toEqual([]);
});
