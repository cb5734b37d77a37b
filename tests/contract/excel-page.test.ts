import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { COMMAND_IDS } from "../../manifest/addin-description.ts";
import { PageHost, type OpenPage } from "../browser/page.ts";

const HOSTED = "https://appsforoffice.microsoft.com/lib/1/hosted/";
const installed = createRequire(import.meta.url)
  .resolve("@microsoft/office-js/dist/office.js")
  .replace(/office\.js$/, "");

/** As much of Excel as the start asks for: it notes what happens in which order, and refuses every request. */
const standIn = (background: string) => () =>
  `
  window.seen = [];
  new PerformanceObserver((list) => list.getEntries().forEach(({ name }) => seen.push(new URL(name).pathname))).observe({ type: "resource", buffered: true });
  window.CustomFunctions = { associate: (id) => seen.push(id), Error: class {} };
  window.commands = {};
  window.shown = 0;
  window.startup = "None";
  window.Office = { HostType: { Excel: "Excel" }, StartupBehavior: { none: "None", load: "Load" }, actions: { associate: (id, run) => { commands[id] = run; } }, addin: { showAsTaskpane: async () => { shown += 1; }, getStartupBehavior: async () => startup, setStartupBehavior: async (behavior) => { startup = behavior; } }, onReady: async () => ({ host: "Excel" }), context: { officeTheme: { bodyBackgroundColor: ${JSON.stringify(background)} } } };
  window.Excel = { run: () => Promise.reject(Object.assign(new Error("busy"), { code: "InvalidOperationInCellEditMode" })) };
`;

let host: PageHost;
beforeAll(async () => {
  host = await PageHost.start();
});
afterAll(() => host.close());

/** `script` gives what Microsoft's address answers for a file; nothing else beyond this machine answers. */
async function open(script: (file: string) => string | null): Promise<OpenPage> {
  const opened = await host.newPage({ viewport: { width: 320, height: 800 } });
  await opened.page.route(/^https:/, (route) => {
    const { origin, pathname } = new URL(route.request().url());
    const body = `${origin}${pathname}`.startsWith(HOSTED) ? script(pathname.slice(pathname.lastIndexOf("/") + 1)) : null;
    return body === null ? route.abort() : route.fulfill({ contentType: "text/javascript", body });
  });
  await opened.page.goto(`${opened.address}taskpane.html`);
  return opened;
}

describe("Excel's page", () => {
  test("registers every function before the pane is fetched", async () => {
    const { page, faults } = await open(standIn("#FFFFFF"));
    await page.locator(".pane").waitFor();
    const names = catalogue.map((each) => each.name);
    const seen: string[] = await page.evaluate("seen");
    const fetched = seen.findIndex((name) => name.startsWith("/pane") && name.endsWith(".js"));
    expect(seen.filter((name) => names.includes(name))).toEqual(names);
    expect(fetched).toBeGreaterThan(seen.lastIndexOf(names.at(-1)!));
    expect(faults).toEqual([]);
  });

  test("says in the pane what Excel refused", async () => {
    const { page } = await open(standIn("#FFFFFF"));
    await page.getByText("Press Enter or Esc in the sheet, then try again.").first().waitFor();
  });

  test("has a command behind each button that the manifests declare", async () => {
    const { page } = await open(standIn("#FFFFFF"));
    await page.locator(".pane").waitFor();
    expect(await page.evaluate("Object.keys(commands).sort()")).toEqual([...COMMAND_IDS].sort());
  });

  test("carries a command out, says in words what came of it, and tells Excel when it is done", async () => {
    const { page, faults } = await open(standIn("#FFFFFF"));
    await page.locator(".pane").waitFor();
    const run = (id: string) =>
      page.evaluate(
        (command) =>
          new Promise((completed) =>
            (window as unknown as { commands: Record<string, (event: object) => void> }).commands[command]!({
              completed: () => completed(true),
            }),
          ),
        id,
      );
    const said = () => page.locator("#trouble").textContent();
    await run("openWithWorkbook");
    expect(await said()).toContain("The pane opens with this workbook from now on");
    expect(await page.evaluate("[startup, shown]")).toEqual(["Load", 1]);
    await run("openWithWorkbook");
    expect(await said()).toBe("The pane no longer opens with this workbook.");
    await run("turnIntoValues");
    expect(await said()).toContain("Press Enter or Esc in the sheet, then try again.");
    for (const id of ["newVisit", "checkWorkbook", "showWorking"]) await run(id);
    expect(await page.evaluate("shown")).toBe(6);
    expect(faults).toEqual([]);
  });

  test.each([
    ["#262626", true],
    ["#F3F3F3", false],
  ])("follows Excel's theme %s", async (background, dark) => {
    const { page } = await open(standIn(background));
    await page.locator(".pane").waitFor();
    expect(await page.locator("html").evaluate((html) => html.classList.contains("soakbook-dark"))).toBe(dark);
  });

  test("opened in a browser without Excel, with Microsoft's own script, says where to open it", async () => {
    const { page, faults } = await open((file) => readFileSync(`${installed}${file}`, "utf8"));
    await page.getByText("Open it from the Home tab of Excel").waitFor();
    expect(faults).toEqual([]);
  });

  test("says so when Excel's script does not load", async () => {
    const { page } = await open(() => null);
    await page.getByText("Excel's script did not load.").waitFor();
  });
});
