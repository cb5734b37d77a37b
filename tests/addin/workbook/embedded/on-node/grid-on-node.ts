/** The embedded spreadsheet on Node. Its parts are made for a bundler, so they are bundled, once for a file of tests. */
import { mkdtemp, rm } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { plainFields } from "../../../../../addin/hosting/plain-fields.ts";
import { afterAll, beforeAll } from "vitest";
import { fillDemoProgram } from "../../../../../addin/actions/demo/demo-program.ts";
import { setUpWorkbook } from "../../../../../addin/actions/workbook/set-up-workbook.ts";
import type { WorkbookWriting } from "../../../../../addin/workbook/port.ts";
import type * as entry from "./entry.ts";

export type GridModule = typeof entry;

export interface BundledGrid<Module = GridModule> {
  /** A grid that shares nothing with another: some repairs change what all grids of one module have in common. */
  fresh(): Module;
  remove(): Promise<void>;
}

/** What a test runs on the grid comes from one bundle with it, so that both know the same refusals. */
export async function bundleGrid<Module = GridModule>(from = new URL("entry.ts", import.meta.url)): Promise<BundledGrid<Module>> {
  const directory = await mkdtemp(join(tmpdir(), "soakbook-grid-"));
  const outfile = join(directory, "grid.cjs");
  await esbuild.build({
    entryPoints: [fileURLToPath(from)],
    outfile,
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
  const require = createRequire(import.meta.url);
  return {
    fresh() {
      Reflect.deleteProperty(require.cache, outfile);
      return require(outfile) as Module;
    },
    remove: () => rm(directory, { recursive: true, force: true }),
  };
}

/** Hands a grid over before the tests around this call, with what is written into its workbook before it computes. */
export function onGrid(take: (on: entry.GridOnNode) => void, write: (workbook: WorkbookWriting) => Promise<void>): void {
  let bundled: BundledGrid;
  beforeAll(async () => {
    bundled = await bundleGrid();
    const on = bundled.fresh().startGrid();
    await on.open(write);
    take(on);
  });
  afterAll(() => bundled.remove());
}

export async function demo(workbook: WorkbookWriting): Promise<void> {
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
}
