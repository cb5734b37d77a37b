import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { chromium, type Browser, type Page } from "playwright-core";
import { DEFAULT_ORIGIN, build } from "../../addin/hosting/build.ts";
import { serve } from "../../addin/hosting/serve.ts";
import { CHROMIUM, find } from "../programs.ts";
import { atMost, interleaved, median, medianRatio, type BenchRow, type BenchSection } from "./measure.ts";

const ROUNDS = 7;
const LONGEST_MILLISECONDS = 60_000;

/** As much of Excel as the start asks for. It calls a function as soon as the last one is registered. */
const EXCEL = `
  const registered = new Map();
  window.CustomFunctions = { Error: class {}, associate: (id, compute) => registered.set(id, compute) };
  window.Office = { HostType: { Excel: "Excel" }, StartupBehavior: { none: "None", load: "Load" }, onReady: async () => ({ host: "Excel" }), context: {}, actions: { associate() {} }, addin: { getStartupBehavior: async () => "None" } };
  window.Excel = { run: () => Promise.reject(Object.assign(new Error("busy"), { code: "InvalidOperationInCellEditMode" })) };
  new MutationObserver((_changes, observer) => {
    if (!registered.has("VERSION")) return;
    observer.disconnect();
    if (registered.get("DRAWDOWN")([[6]], [[0.5]])[0][0] === 12) performance.mark("first answer");
  }).observe(document, { childList: true, subtree: true });
  new MutationObserver((_changes, observer) => {
    if (document.querySelector(".pane") === null) return;
    observer.disconnect();
    performance.mark("pane shown");
  }).observe(document, { childList: true, subtree: true });
`;

const BARE_PAGE = "<!doctype html><title>Bare</title><p>Nothing</p><script>performance.mark('bare')</script>";

/** In the page: the script's own evaluation, and the first answer after it. */
const EVALUATION = `(async () => {
  const script = await (await fetch("functions.js")).text();
  const registered = new Map();
  window.CustomFunctions = { Error: class {}, associate: (id, compute) => registered.set(id, compute) };
  const before = performance.now();
  (0, eval)(script);
  const evaluated = performance.now();
  const [[answer]] = registered.get("DRAWDOWN")([[6]], [[0.5]]);
  return { answer, evaluating: evaluated - before, answering: performance.now() - evaluated };
})()`;

export const opening: BenchSection = {
  title: "Opening: each page in a browser profile of its own, beside a bare page from the same server",
  async measure() {
    const executablePath = find(CHROMIUM);
    if (executablePath === null) return { rows: [], notes: [CHROMIUM.howToInstall] };
    const directory = await mkdtemp(join(tmpdir(), "soakbook-bench-"));
    await build({ origin: DEFAULT_ORIGIN, directory });
    await writeFile(join(directory, "bare.html"), BARE_PAGE);
    const serving = await serve(directory, 0);
    const browser = await chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-gpu"] });
    try {
      const compressed = gzipSync(await readFile(join(directory, "functions.js"))).length / 1024;
      return {
        rows: [
          atMost({ name: "functions.js, compressed", value: compressed, unit: "KB" }, 25),
          ...(await evaluation(browser, serving.address)),
          ...(await pages(browser, serving.address)),
        ],
      };
    } finally {
      await browser.close();
      await serving.stop();
      await rm(directory, { recursive: true });
    }
  },
};

async function evaluation(browser: Browser, address: string): Promise<readonly BenchRow[]> {
  const [evaluating, answering]: [number[], number[]] = [[], []];
  for (let round = 0; round < ROUNDS; round += 1) {
    const told = await inFreshProfile(browser, `${address}bare.html`, (page) =>
      page.evaluate<{ answer: unknown; evaluating: number; answering: number }>(EVALUATION),
    );
    if (told.answer !== 12) throw new Error(`DRAWDOWN(6, 0.5) answered ${String(told.answer)}.`);
    evaluating.push(told.evaluating);
    answering.push(told.answering);
  }
  return [
    { name: "functions.js evaluated, every function registered", value: median(evaluating), unit: "ms" },
    atMost({ name: "first function answer after that", value: median(answering), unit: "ms" }, 10),
  ];
}

const MOMENTS = [
  ["a bare page", "bare.html", "bare"],
  ["Excel's page: first function answer", "taskpane.html", "first answer"],
  ["Excel's page: pane to be used", "taskpane.html", "pane shown"],
  ["the page without Excel: pane to be used", "", "soakbook: pane shown"],
  ["the page without Excel: every cell of the demo answered", "", "soakbook: started"],
] as const;

async function pages(browser: Browser, address: string): Promise<readonly BenchRow[]> {
  const contenders = MOMENTS.map(([name, file, mark]) => ({
    name,
    timesItself: true as const,
    run: () => momentOf(browser, `${address}${file}`, mark),
  }));
  const times = await interleaved(contenders, ROUNDS, 1);
  const [bare = []] = times;
  return MOMENTS.map(
    ([name], place): BenchRow => ({
      name,
      value: median(times[place]!),
      unit: "ms",
      ...(place === 0 ? {} : { ratio: medianRatio(times[place]!, bare) }),
    }),
  );
}

/** When the page set the mark, counted from the start of going there. */
function momentOf(browser: Browser, address: string, mark: string): Promise<number> {
  return inFreshProfile(browser, address, async (page) => {
    const moment = await page.waitForFunction((name) => performance.getEntriesByName(name)[0]?.startTime, mark, {
      timeout: LONGEST_MILLISECONDS,
    });
    return Number(await moment.jsonValue());
  });
}

async function inFreshProfile<Answer>(browser: Browser, address: string, work: (page: Page) => Promise<Answer>): Promise<Answer> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  try {
    const page = await context.newPage();
    await page.route(/^https:/, (route) =>
      route.request().url().endsWith("/office.js") ? route.fulfill({ contentType: "text/javascript", body: EXCEL }) : route.abort(),
    );
    await page.goto(address, { waitUntil: "commit" });
    return await work(page);
  } finally {
    await context.close();
  }
}
