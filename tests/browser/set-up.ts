/** Before the first test that opens a page: the pages are built and served and the browser started, once for all of them. */
import type { TestProject } from "vitest/node";
import { startPages, type BuiltPages } from "./built-pages.ts";

declare module "vitest" {
  export interface ProvidedContext {
    readonly pages: BuiltPages;
  }
}

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { stop, ...pages } = await startPages();
  project.provide("pages", pages);
  return stop;
}
