/** What every browser test shares: the pages, built once and served, and one browser. */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { chromium } from "playwright-core";
import { DEFAULT_ORIGIN, build, withNames } from "../../addin/hosting/build.ts";
import { serve } from "../../addin/hosting/serve.ts";
import { CHROMIUM, pathOf } from "../programs.ts";

/** Plain data: it goes from the process that starts the tests to those that run them. */
export interface BuiltPages {
  readonly directory: string;
  /** Where the directory is served, such as http://localhost:40123/. */
  readonly address: string;
  /** A script that is Excel for Excel's page: Microsoft's object model and, behind it, an Excel in memory. */
  readonly excelScript: string;
  /** Where the browser is spoken to. */
  readonly browser: string;
}

const CHROMIUM_ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // A page of a test lives for a minute: most of what the engine would compile a second time for speed never pays for it.
  "--js-flags=--no-maglev --max-optimized-bytecode-size=0",
];

const path = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

/** Entries that only tests load, beside the pages that are shipped: the page's name, and its script. */
const TEST_PAGES = {
  commands: path("commands-entry.ts"),
  draft: path("draft-entry.ts"),
  "many-sites": path("../bench/many-sites-entry.ts"),
  repairs: path("repairs-entry.ts"),
};

/** Builds, serves and starts the browser. Call `stop` when nobody needs them any more. */
export async function startPages(): Promise<BuiltPages & { stop(): Promise<void> }> {
  const executablePath = pathOf(CHROMIUM);
  const directory = await mkdtemp(join(tmpdir(), "soakbook-pages-"));
  const scripts = Object.fromEntries(Object.entries(TEST_PAGES).map(([name, script]) => [`${name}-entry`, script]));
  const names = await build({ origin: DEFAULT_ORIGIN, directory, scripts });
  await Promise.all(
    Object.keys(TEST_PAGES).map((name) => writeFile(join(directory, `${name}.html`), withNames(gridPage(`${name}-entry.js`), names))),
  );
  const excelScript = join(directory, "excel-in-memory.js");
  await writeFile(excelScript, `${await readFile(OBJECT_MODEL, "utf8")}\n${await excelInMemory()}`);
  const serving = await serve(directory, 0);
  const browser = await chromium.launchServer({ executablePath, args: CHROMIUM_ARGUMENTS });
  return {
    directory,
    address: serving.address,
    excelScript,
    browser: browser.wsEndpoint(),
    async stop() {
      await browser.close();
      await serving.stop();
      await rm(directory, { recursive: true, force: true });
    },
  };
}

const OBJECT_MODEL = createRequire(import.meta.url).resolve("@microsoft/office-js/dist/excel-web-16.00.debug.js");

async function excelInMemory(): Promise<string> {
  const { outputFiles = [] } = await esbuild.build({
    entryPoints: [path("excel-entry.ts")],
    bundle: true,
    format: "iife",
    write: false,
    logLevel: "error",
  });
  return outputFiles[0]?.text ?? "";
}

/** A page with a grid and nothing else, for a test's own script. */
function gridPage(script: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>${script}</title>
<link rel="stylesheet" href="browser.css">
</head>
<body>
<div id="grid"></div>
<script type="module" src="${script}"></script>
</body>
</html>
`;
}
