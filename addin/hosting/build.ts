/**
 * Builds everything that is hosted: npm run build -- --origin https://gardens.example/soakbook
 *
 * The origin is written into the manifests and functions.json, because Excel is told whole addresses; the pages
 * themselves use relative ones and run from any folder.
 */
import { cp, mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { argv } from "node:process";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { addinDescription, addressAt } from "../../manifest/addin-description.ts";
import { functionsMetadata } from "../../manifest/functions-metadata.ts";
import { jsonManifest } from "../../manifest/json-manifest.ts";
import { shortcuts } from "../../manifest/shortcuts.ts";
import { xmlManifest } from "../../manifest/xml-manifest.ts";
import { batchScript, bundlePages, functionsScript, hashedName, hashOf, offlineWorker, source, startWatch } from "./bundle.ts";
import { headersFile, htaccess } from "./headers.ts";
import { helpPage } from "./help-page.ts";
import { noticesOf, noticesPage } from "./notices.ts";
import { adminPage, privacyPage, supportPage } from "./word-pages.ts";

export const DIST = source("dist");
export const DEFAULT_ORIGIN = "https://localhost:3500";

export interface BuildOptions {
  /** The https address that the files will be hosted under. */
  readonly origin: string;
  readonly directory: string;
  /** Further scripts by name, for pages that are not shipped. */
  readonly scripts?: Readonly<Record<string, string>>;
}

/** By the name that a page uses, the name that the file has now. */
export type FileNames = ReadonlyMap<string, string>;

/**
 * Writes the pages, the functions, both manifests and the help into the directory. Scripts and style sheets bear the
 * hash of their content in their names, so that a host may let browsers keep them for ever; pages, manifests, icons and
 * what a manifest names keep their names, and their content changes with each version.
 */
export async function build({ origin, directory, scripts = {} }: BuildOptions): Promise<FileNames> {
  await rm(directory, { recursive: true, force: true });
  await mkdir(directory, { recursive: true });
  const [pages, functions, batch, watch, helpStyle, browserPage, excelPage] = await Promise.all([
    bundlePages(directory, { ...PAGES, ...scripts }),
    functionsScript(),
    batchScript(),
    startWatch(),
    ...["addin/hosting/help.css", "addin/browser.html", "addin/taskpane.html"].map((path) => readFile(source(path), "utf8")),
  ]);
  if (helpStyle === undefined || browserPage === undefined || excelPage === undefined) throw new Error("A page of the build is missing.");
  const names = new Map([
    ...pages.names,
    ["start-watch.js", hashedName("start-watch.js", watch.text)],
    ["help.css", hashedName("help.css", helpStyle)],
    ["functions.js", `functions.js?v=${hashOf(functions.text)}`],
  ]);
  const index = withNames(browserPage, names);
  const worker = await offlineWorker(offlineFiles(index, pages.partsOf("browser")));
  const notices = await noticesOf([pages, functions, batch, worker].flatMap(({ packages }) => packages));
  const words = {
    "help.html": helpPage(),
    "privacy.html": privacyPage(),
    "support.html": supportPage(),
    "admin.html": adminPage(origin),
    "licences.html": noticesPage(notices),
  };
  const texts = {
    "index.html": index,
    "taskpane.html": withNames(excelPage, names),
    ...Object.fromEntries(Object.entries(words).map(([name, page]) => [name, withNames(page, names)])),
    [names.get("help.css") ?? ""]: helpStyle,
    [names.get("start-watch.js") ?? ""]: watch.text,
    "functions.js": functions.text,
    "functions.json": functionsJson(origin),
    "soakbook-batch.mjs": batch.text,
    "shortcuts.json": inJson(shortcuts(addinDescription)),
    "manifest.xml": xmlManifest(addinDescription, origin),
    "manifest.json": inJson(jsonManifest(addinDescription, origin)),
    "offline-worker.js": worker.text,
    _headers: headersFile(origin, [...names.values()]),
    ".htaccess": htaccess(),
  };
  await Promise.all([
    cp(source("manifest/icons"), join(directory, "icons"), { recursive: true }),
    ...Object.entries(texts).map(async ([name, text]) => {
      await mkdir(dirname(join(directory, name)), { recursive: true });
      await writeFile(join(directory, name), text);
    }),
  ]);
  return names;
}

/** The pane has an entry of its own although each start file imports it on demand: so its style sheet can stand in the page. */
const PAGES = {
  browser: source("addin/browser.ts"),
  excel: source("addin/excel.ts"),
  pane: source("taskpane/pane.tsx"),
};

/** The page with the present names of the files it loads. */
export function withNames(page: string, names: FileNames): string {
  return page.replace(/(src|href)="([^":]+)"/g, (attribute, kind: string, name: string) =>
    names.has(name) ? `${kind}="${names.get(name)}"` : attribute,
  );
}

function offlineFiles(page: string, parts: readonly string[]) {
  return { version: hashOf(`${page}${parts.join()}`), page: "./", parts: [...parts, "icons/icon-32.png"] };
}

/** What Excel reads to list the functions of an add-in that is hosted under the origin. */
export function functionsJson(origin: string): string {
  return inJson(functionsMetadata(catalogue, (name) => addressAt(origin, `${addinDescription.files.help}#${name}`)));
}

function inJson(content: object): string {
  return `${JSON.stringify(content, null, 2)}\n`;
}

/** The origin asked for on the command line. Throws in words when Excel could not load from it. */
export function originFrom(commandLine: readonly string[]): string {
  const { values } = parseArgs({ args: [...commandLine], options: { origin: { type: "string", default: DEFAULT_ORIGIN } } });
  if (!URL.canParse(values.origin) || new URL(values.origin).protocol !== "https:") {
    throw new Error(`The origin must be an https address, such as https://gardens.example/soakbook, and "${values.origin}" is not.`);
  }
  return values.origin.replace(/\/+$/, "");
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  try {
    const origin = originFrom(argv.slice(2));
    await build({ origin, directory: DIST });
    console.log(`Built dist/ for ${origin}. Host the folder there, then install dist/manifest.xml in Excel.`);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
