/** A start that finds its workbook unreadable, damaged or unfinished asks, and saves nothing over it. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { expectCell, typeInto, values } from "./grid.ts";
import { asksBeforeClosing, cellInFile, expectSaved, savedFile } from "./keeping.ts";
import { PageHost, savedBytes, started, type OpenPage } from "./page.ts";

describe("A workbook kept in the browser", () => {
  let host: PageHost;
  /** Opened once, for one test after the other, as a start costs more than all that is asked of it. */
  let opened: OpenPage;
  let page: Page;

  beforeAll(async () => {
    host = await PageHost.start();
    opened = await host.openProgram();
    ({ page } = opened);
  });

  afterAll(async () => {
    await host.close();
  });

  it("is asked about and left alone when the browser does not read it", async () => {
    await typeInto(page, "Program!H21", "mine");
    await expectSaved(page);
    const broken = await opened.context.newPage();
    await broken.addInitScript(() => {
      IDBObjectStore.prototype.get = () => {
        throw new DOMException("", "UnknownError");
      };
    });
    await broken.goto(host.address);
    await broken.getByRole("dialog", { name: "What this browser keeps could not be read" }).waitFor();
    await broken.getByRole("button", { name: "Look at the demo; nothing is saved" }).click();
    await started(broken);
    await typeInto(broken, "Program!H22", "over the demo");
    expect(await broken.locator("#saving-state").innerText()).toMatch(/^Not saved in this browser: .*Save to a file\.$/);
    expect(await asksBeforeClosing(broken)).toBe(true);
    expect(await cellInFile(await savedFile(broken), "Program", "H22")).toBe("over the demo");
    await broken.close();
  });

  it("is asked about and left alone when it is damaged, its bytes can be saved to a file, and it is there again once it is whole", async () => {
    await page.evaluate(changeKeptFile, ['"Sites"', '{"no":"name"}'] as const);
    await page.reload();
    const dialog = page.getByRole("dialog", { name: "The workbook kept in this browser cannot be opened" });
    const downloading = page.waitForEvent("download");
    await dialog.getByRole("button", { name: "Save it to a file" }).click();
    const bytes = (await savedBytes(await downloading)).toString();
    expect(bytes).toContain('{"no":"name"}');
    expect(bytes).toContain("mine");
    expect(bytes).not.toContain("over the demo");
    await dialog.getByRole("button", { name: "Look at the demo; nothing is saved" }).click();
    await started(page);
    await typeInto(page, "Program!H22", "over the demo");
    await page.evaluate(changeKeptFile, ['{"no":"name"}', '"Sites"'] as const);
    await page.reload();
    await started(page);
    expect(await values(page, "Program!H21:H22")).toEqual([["mine"], [null]]);
  });

  it("is offered with its earlier saves when the last start did not finish", async () => {
    await typeInto(page, "Program!H21", "two");
    await expectSaved(page);
    const stuck = await opened.context.newPage();
    await stuck.addInitScript(() => {
      localStorage.setItem("soakbook.start.unfinished", "a start that nothing is left of");
    });
    await stuck.goto(host.address);
    const dialog = stuck.getByRole("dialog", { name: "The last start did not finish" });
    await dialog.waitFor();
    expect(await dialog.getByRole("button").allInnerTexts()).toEqual([
      expect.stringMatching(/^Open the latest, saved /),
      expect.stringMatching(/^Open the one saved /),
      "Save it to a file",
      "Look at the demo; nothing is saved",
    ]);
    await stuck.close();
    await page.reload();
    await started(page);
    await expectCell(page, "Program!H21", "two");
  });

  it("is asked about before the page closes while the storage is full", async () => {
    expect(await asksBeforeClosing(page)).toBe(false);
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("", "QuotaExceededError");
      };
    });
    await typeInto(page, "Program!H21", "kept nowhere yet");
    await expect.poll(() => page.locator("#saving-state").innerText()).toContain("its storage is full. Save to a file.");
    expect(await asksBeforeClosing(page)).toBe(true);
    await opened.context.close();
  });

  it("says so when the browser keeps nothing", async () => {
    const { page, context } = await host.newPage();
    await page.addInitScript(() => {
      Object.defineProperty(window, "indexedDB", { get: () => undefined });
    });
    await page.goto(host.address);
    await page.getByRole("button", { name: "Look at the demo; nothing is saved" }).click();
    await started(page);
    await expect.poll(() => page.locator("#saving-state").innerText()).toMatch(/^Not saved in this browser: .*Save to a file\.$/);
    await typeInto(page, "Program!H21", "works all the same");
    expect(await cellInFile(await savedFile(page), "Program", "H21")).toBe("works all the same");
    await context.close();
  });
});

/** Puts other text in place of some in the workbook that this browser keeps. */
async function changeKeptFile([text, other]: readonly [string, string]): Promise<void> {
  const request = indexedDB.open("soakbook");
  const database = await new Promise<IDBDatabase>((resolve) => (request.onsuccess = () => resolve(request.result)));
  const records = database.transaction("workbooks", "readwrite").objectStore("workbooks");
  const key = "save 0";
  const reading = records.get(key) as IDBRequest<{ readonly file: string }>;
  await new Promise((resolve) => {
    reading.onsuccess = () => {
      records.put({ ...reading.result, file: reading.result.file.replace(text, other) }, key).onsuccess = resolve;
    };
  });
  database.close();
}
