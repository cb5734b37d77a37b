/**
 * Builds everything that is hosted: npm run build -- --origin https://gardens.example/soakbook
 *
 * The origin is written into the manifests and functions.json, because Excel is told whole addresses; the pages
 * themselves use relative ones and run from any folder.
 */
import { copyFile, cp, mkdir, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { argv } from "node:process";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import * as esbuild from "esbuild";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { addinDescription, addressAt } from "../../manifest/addin-description.ts";
import { functionsMetadata } from "../../manifest/functions-metadata.ts";
import type { FunctionsMetadata } from "../../manifest/functions-metadata.ts";
import { jsonManifest } from "../../manifest/json-manifest.ts";
import { xmlManifest } from "../../manifest/xml-manifest.ts";
import { helpPage } from "./help-page.ts";
import { plainFields } from "./plain-fields.ts";
import { withoutDocumentation } from "./without-documentation.ts";

export const DIST = source("dist");
export const DEFAULT_ORIGIN = "https://localhost:3500";

export interface BuildOptions {
  /** The https address that the files will be hosted under. */
  readonly origin: string;
  readonly directory: string;
  /** Further scripts by name, for pages that are not shipped. */
  readonly scripts?: Readonly<Record<string, string>>;
}

/** Writes the pages, the functions, both manifests and the help into the directory. */
export async function build({ origin, directory, scripts = {} }: BuildOptions): Promise<void> {
  const metadata = metadataAt(origin);
  const texts = {
    "functions.json": functionsJson(origin),
    "manifest.xml": xmlManifest(addinDescription, origin),
    "manifest.json": inJson(jsonManifest(addinDescription, origin, metadata.functions)),
    "help.html": helpPage(),
  };
  const copies = {
    "index.html": "addin/browser.html",
    "taskpane.html": "addin/taskpane.html",
    "help.css": "addin/hosting/help.css",
  };
  await rm(directory, { recursive: true, force: true });
  await mkdir(directory, { recursive: true });
  await Promise.all([
    bundlePages(directory, { ...PAGES, ...scripts }),
    functionsScript().then((script) => writeFile(join(directory, "functions.js"), script)),
    cp(source("manifest/icons"), join(directory, "icons"), { recursive: true }),
    ...Object.entries(copies).map(([name, from]) => copyFile(source(from), join(directory, name))),
    ...Object.entries(texts).map(([name, text]) => writeFile(join(directory, name), text)),
  ]);
}

/** The pane has an entry of its own although each start file imports it on demand: so its script has a lasting name. */
const PAGES = {
  browser: source("addin/browser.ts"),
  excel: source("addin/excel.ts"),
  pane: source("taskpane/pane.tsx"),
};

/** The pages share chunks, and what is imported on demand is loaded on demand. */
async function bundlePages(directory: string, entryPoints: Record<string, string>): Promise<void> {
  await esbuild.build({
    ...COMPACT,
    entryPoints,
    outdir: directory,
    format: "esm",
    splitting: true,
    chunkNames: "chunks/[name]-[hash]",
    jsx: "automatic",
    jsxImportSource: "preact",
    plugins: [plainFields],
  });
}

/** Excel runs this script without a page, as a classic script that needs nothing else. */
export async function functionsScript(): Promise<string> {
  const { outputFiles } = await esbuild.build({
    ...COMPACT,
    entryPoints: [source("addin/excel-functions.ts")],
    write: false,
    format: "iife",
    plugins: [withoutDocumentation],
  });
  return outputFiles[0]?.text ?? "";
}

const COMPACT = {
  bundle: true,
  minify: true,
  target: "es2022",
  define: { "process.env.NODE_ENV": '"production"' },
  logLevel: "warning",
} as const satisfies esbuild.BuildOptions;

/** What Excel reads to list the functions of an add-in that is hosted under the origin. */
export function functionsJson(origin: string): string {
  return inJson(metadataAt(origin));
}

function metadataAt(origin: string): FunctionsMetadata {
  return functionsMetadata(catalogue, (name) => addressAt(origin, `${addinDescription.files.help}#${name}`));
}

function inJson(content: object): string {
  return `${JSON.stringify(content, null, 2)}\n`;
}

function source(path: string): string {
  return fileURLToPath(new URL(`../../${path}`, import.meta.url));
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
