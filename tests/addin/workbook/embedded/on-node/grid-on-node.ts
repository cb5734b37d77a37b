/** The embedded spreadsheet on Node, from the scripts that set-up.ts made. */
import { createRequire } from "node:module";
import { beforeAll, inject } from "vitest";
import { fillDemoProgram } from "../../../../../addin/actions/demo/demo-program.ts";
import { setUpWorkbook } from "../../../../../addin/actions/workbook/set-up-workbook.ts";
import type { WorkbookWriting } from "../../../../../addin/workbook/port.ts";
import type * as agreement from "../../../../agreement/embedded-entry.ts";
import type * as grid from "./entry.ts";

export type GridModule = typeof grid;
interface Modules {
  readonly grid: GridModule;
  readonly agreement: typeof agreement;
}

const require = createRequire(import.meta.url);

/** A grid that shares nothing with another: some repairs change what all grids of one module have in common. */
export function freshModule<Name extends keyof Modules>(name: Name): Modules[Name] {
  const script = inject("gridBundles")[name];
  Reflect.deleteProperty(require.cache, script);
  return require(script) as Modules[Name];
}

/** Hands a grid over before the tests around this call, with what is written into its workbook before it computes. */
export function onGrid(take: (on: grid.GridOnNode) => void, write: (workbook: WorkbookWriting) => Promise<void>): void {
  beforeAll(async () => {
    const on = freshModule("grid").startGrid();
    await on.open(write);
    take(on);
  });
}

export async function demo(workbook: WorkbookWriting): Promise<void> {
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
}
