import { afterAll, beforeAll, expect, it } from "vitest";
import { expectCell, typeInto } from "./grid.ts";
import { PageHost, started } from "./page.ts";

let host: PageHost;
beforeAll(async () => {
  host = await PageHost.start();
});
afterAll(() => host.close());

it("with a connection the page comes from its host and one version alone is kept; without one it opens with the workbook and computes", async () => {
  const { page, context, address, faults } = await host.openProgram();
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();
  await started(page);
  expect(await page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  const kept = await page.evaluate(async () => {
    const names = await caches.keys();
    const cache = await caches.open(names[0] ?? "");
    return { names, files: (await cache.keys()).map(({ url }) => new URL(url).pathname) };
  });
  expect(kept.names).toHaveLength(1);
  expect(kept.files).toContain("/");
  // Excel's page and its functions do not come out of a cache.
  expect(kept.files.filter((file) => /excel|functions|manifest|taskpane/.test(file))).toEqual([]);

  await context.setOffline(true);
  await page.reload();
  await started(page);
  expect(
    await page.evaluate(() =>
      fetch("manifest.xml").then(
        () => "answered",
        () => "no connection",
      ),
    ),
  ).toBe("no connection");
  await typeInto(page, "Program!H5", "=SOAK.DRAWDOWN(6,0.5)");
  await expectCell(page, "Program!H5", 12);
  await expect(page.goto(`${address}taskpane.html`)).rejects.toThrow("ERR_INTERNET_DISCONNECTED");
  expect(faults).toEqual([]);
});
