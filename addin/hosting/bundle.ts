/** The bundles of the build: what esbuild makes of the start files. */
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import ts from "typescript";
import type { OfflineFiles } from "../window/offline-files.ts";
import { leftOut } from "./left-out.ts";
import { packagesIn } from "./notices.ts";
import { plainFields } from "./plain-fields.ts";
import { withoutDocumentation } from "./without-documentation.ts";

export interface BundledPages {
  /** By the name a page uses, such as "browser.js", the name with the hash of its content. */
  readonly names: ReadonlyMap<string, string>;
  /** Every script and style sheet that the entry can come to load. */
  partsOf(entry: string): readonly string[];
  /** The folders of the packages that are in them. */
  readonly packages: readonly string[];
}

/** A script in one file. */
export interface Script {
  readonly text: string;
  readonly packages: readonly string[];
}

const COMPACT = {
  bundle: true,
  minify: true,
  target: "es2022",
  define: { "process.env.NODE_ENV": '"production"' },
  logLevel: "warning",
} as const satisfies esbuild.BuildOptions;

/** The pages share chunks, and what is imported on demand is loaded on demand. */
export async function bundlePages(directory: string, entryPoints: Record<string, string>): Promise<BundledPages> {
  const { metafile } = await esbuild.build({
    ...COMPACT,
    entryPoints,
    outdir: directory,
    format: "esm",
    splitting: true,
    entryNames: "[name]-[hash]",
    chunkNames: "chunks/[name]-[hash]",
    jsx: "automatic",
    jsxImportSource: "preact",
    plugins: [plainFields, leftOut],
    absWorkingDir: directory,
    metafile: true,
  });
  const outputs = new Map(Object.entries(metafile.outputs));
  const names = new Map<string, string>();
  for (const [file, { entryPoint, cssBundle }] of outputs) {
    const entry = Object.keys(entryPoints).find((name) => entryPoint !== undefined && entryPoints[name] === join(directory, entryPoint));
    if (entry === undefined) continue;
    names.set(`${entry}.js`, file);
    if (cssBundle !== undefined) names.set(`${entry}.css`, cssBundle);
  }
  return {
    names,
    partsOf: (entry) => reachable(outputs, names.get(`${entry}.js`) ?? ""),
    packages: packagesIn(metafile, directory),
  };
}

function reachable(outputs: ReadonlyMap<string, esbuild.Metafile["outputs"][string]>, first: string): readonly string[] {
  const found = new Set<string>([first]);
  for (const file of found) {
    const { imports = [], cssBundle } = outputs.get(file) ?? {};
    for (const { path, external } of imports) if (external !== true && outputs.has(path)) found.add(path);
    if (cssBundle !== undefined) found.add(cssBundle);
  }
  return [...found];
}

/** Excel runs this script without a page, as a classic script that needs nothing else. */
export async function functionsScript(): Promise<Script> {
  return script("addin/excel-functions.ts", { plugins: [withoutDocumentation] });
}

/** A window of any age runs this one: TypeScript still writes ES5, which esbuild does not. */
export async function startWatch(): Promise<Script> {
  const { outputText } = ts.transpileModule(await readFile(source("addin/window/start-watch.ts"), "utf8"), {
    compilerOptions: { target: ts.ScriptTarget.ES5, module: ts.ModuleKind.None, ignoreDeprecations: "6.0" },
  });
  const { code } = await esbuild.transform(outputText, { target: "es5", format: "iife", minify: true });
  return { text: code, packages: [] };
}

export async function offlineWorker(files: OfflineFiles): Promise<Script> {
  return script("addin/window/offline-worker.ts", { define: { ...COMPACT.define, OFFLINE_FILES: JSON.stringify(files) } });
}

/** Runs on Node, in one file that needs nothing beside it. */
export async function batchScript(): Promise<Script> {
  return script("addin/batch/soakbook-batch.ts", {
    format: "esm",
    platform: "node",
    target: "node20",
    banner: { js: "#!/usr/bin/env node" },
  });
}

async function script(path: string, options: esbuild.BuildOptions): Promise<Script> {
  const absWorkingDir = source("");
  const { outputFiles, metafile } = await esbuild.build({
    ...COMPACT,
    entryPoints: [source(path)],
    format: "iife",
    absWorkingDir,
    ...options,
    write: false as const,
    metafile: true as const,
  });
  return { text: outputFiles[0]?.text ?? "", packages: packagesIn(metafile, absWorkingDir) };
}

/** "help-3f9a2c41.css" for "help.css": another content, another name. */
export function hashedName(name: string, content: string): string {
  const dot = basename(name).lastIndexOf(".");
  return `${name.slice(0, dot)}-${hashOf(content)}${name.slice(dot)}`;
}

export function hashOf(content: string): string {
  return createHash("sha256").update(content).digest("hex").slice(0, 8);
}

export function source(path: string): string {
  return fileURLToPath(new URL(`../../${path}`, import.meta.url));
}
