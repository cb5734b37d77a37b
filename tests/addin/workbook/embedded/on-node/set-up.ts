/** Before the first test on it: the embedded spreadsheet is bundled, once for all of them, as its parts are made for a bundler. */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import type { TestProject } from "vitest/node";
import { plainFields } from "../../../../../addin/hosting/plain-fields.ts";

const ENTRIES = { grid: "entry.ts", agreement: "../../../../agreement/embedded-entry.ts" } as const;

/** Where each entry stands with the grid in one script: what a test runs on the grid comes with it, so that both know the same refusals. */
export type GridBundles = Readonly<Record<keyof typeof ENTRIES, string>>;

declare module "vitest" {
  export interface ProvidedContext {
    readonly gridBundles: GridBundles;
  }
}

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const directory = await mkdtemp(join(tmpdir(), "soakbook-grid-"));
  await esbuild.build({
    entryPoints: Object.fromEntries(Object.entries(ENTRIES).map(([name, file]) => [name, fileURLToPath(new URL(file, import.meta.url))])),
    outdir: directory,
    outExtension: { ".js": ".cjs" },
    bundle: true,
    platform: "node",
    format: "cjs",
    target: "node20",
    loader: { ".css": "empty" },
    define: { "process.env.NODE_ENV": '"production"' },
    // Shapes of icons are made when the grid is loaded.
    banner: { js: "globalThis.Path2D ??= class {};" },
    plugins: [plainFields],
    logLevel: "warning",
  });
  project.provide("gridBundles", { grid: join(directory, "grid.cjs"), agreement: join(directory, "agreement.cjs") });
  return () => rm(directory, { recursive: true, force: true });
}
