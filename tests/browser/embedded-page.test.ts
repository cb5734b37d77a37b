import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { expectCell, goTo } from "./grid.ts";
import { PageHost, started, type OpenPage } from "./page.ts";

describe("The page without Excel", () => {
  let host: PageHost;
  let opened: OpenPage;
  let page: Page;
  const asked: string[] = [];

  beforeAll(async () => {
    host = await PageHost.start();
    opened = await host.newPage();
    page = opened.page;
    opened.context.on("request", (request) => asked.push(request.url()));
    await page.goto(opened.address);
    await started(page);
  });

  afterAll(() => host.close());

  it("asks for the pane only when a cell can already call the functions", async () => {
    const { registered, fetched } = await page.evaluate(() => ({
      registered: performance.getEntriesByName("soakbook: functions registered")[0]?.startTime ?? Number.NaN,
      fetched: performance
        .getEntriesByType("resource")
        .filter(({ name }) => /\/pane-[A-Z0-9]+\.js$/.test(name))
        .map(({ startTime }) => startTime),
    }));
    expect(fetched).toHaveLength(1);
    expect(fetched[0]).toBeGreaterThan(registered);
  });

  it("shows the first yard of the demo beside its pane", async () => {
    const selection = await page.evaluate(() => window.soakbook?.workbook.selection());
    expect(selection?.sheet).toBe("Sites");
    await expect.poll(() => page.locator("#pane").innerText()).not.toBe("");
    expect(await page.locator("#saving-state").innerText()).toBe("Demo, nothing changed yet");
  });

  it("runs no text as a program", async () => {
    const policy = await page.locator("meta[http-equiv=Content-Security-Policy]").getAttribute("content");
    expect(policy).toContain("default-src 'none'");
    expect(policy).toMatch(/script-src 'self'(;|$)/);
    expect(await page.evaluate(() => document.querySelectorAll("head > script:not([src])").length)).toBe(0);
  });

  it("lets the keyboard leave the grid with F6, to the pane, the bar and back", async () => {
    const region = (): Promise<string> =>
      page.evaluate(
        () => ["workbook-bar", "grid", "pane"].find((id) => document.getElementById(id)?.contains(document.activeElement)) ?? "nowhere",
      );
    await goTo(page, "Program!H21");
    expect(await region()).toBe("grid");
    for (const next of ["pane", "workbook-bar", "grid"]) {
      await page.keyboard.press("F6");
      await expect.poll(region).toBe(next);
    }
    await page.keyboard.type("typed after coming back");
    await page.keyboard.press("Enter");
    await expectCell(page, "Program!H21", "typed after coming back");
    await page.keyboard.press("Shift+F6");
    await expect.poll(region).toBe("workbook-bar");
  });

  describe("loaded anew by somebody who asked for dark", () => {
    const width = async (): Promise<number> => (await page.locator("#pane").boundingBox())?.width ?? 0;

    it("has the width that the pane was given with the keyboard, and lets it be closed", async () => {
      const splitter = page.getByRole("separator", { name: "Width of the pane" });
      await splitter.focus();
      const before = await width();
      await page.keyboard.press("ArrowLeft");
      expect(await width()).toBe(before + 16);
      await page.keyboard.press("Home");
      expect(await width()).toBe(640);
      await page.keyboard.press("End");
      expect(await width()).toBe(320);
      expect(await splitter.getAttribute("aria-valuenow")).toBe("320");

      await page.emulateMedia({ colorScheme: "dark" });
      await page.reload();
      await started(page);
      expect(await width()).toBe(320);
      await page.getByRole("button", { name: "Hide the pane" }).press("Enter");
      expect(await page.locator("#pane").isVisible()).toBe(false);
      await page.getByRole("button", { name: "Show the pane" }).press("Enter");
      expect(await width()).toBe(320);
    });

    it("shows the grid and the pane dark", async () => {
      const brightness = (screenshot: Buffer): Promise<number> =>
        page.evaluate(async (base64) => {
          const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
          const picture = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
          const { width, height } = picture;
          const context2d = new OffscreenCanvas(width, height).getContext("2d");
          context2d?.drawImage(picture, 0, 0);
          const data = Array.from(context2d?.getImageData(0, 0, width, height).data ?? [255]);
          // Every fourth byte is how opaque a point is.
          return data.reduce((sum, part, at) => (at % 4 === 3 ? sum : sum + part), 0) / (width * height * 3);
        }, screenshot.toString("base64"));
      for (const part of ["#grid", "#pane", "#workbook-bar"]) {
        expect(await brightness(await page.locator(part).screenshot()), part).toBeLessThan(90);
      }
    });
  });

  it("asked no other host for anything in all of this, and nothing went wrong unheard", () => {
    expect(asked.length).toBeGreaterThan(3);
    expect(asked.filter((url) => !url.startsWith(opened.address) && !/^(data|blob):/.test(url))).toEqual([]);
    expect(opened.faults).toEqual([]);
  });
});
