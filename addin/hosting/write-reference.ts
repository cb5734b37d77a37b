/** Writes what the repository keeps of the catalogue, for review: npm run reference */
import { writeFile } from "node:fs/promises";
import { argv } from "node:process";
import { fileURLToPath } from "node:url";
import { DEFAULT_ORIGIN, functionsJson } from "./build.ts";
import { referenceMarkdown } from "./reference-markdown.ts";

/** The generated files that are committed, by path from the top of the repository. */
export function keptFiles(): Readonly<Record<string, string>> {
  return {
    "functions/worksheet/REFERENCE.md": referenceMarkdown(),
    "manifest/functions.json": functionsJson(DEFAULT_ORIGIN),
  };
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  await Promise.all(
    Object.entries(keptFiles()).map(([path, text]) => writeFile(fileURLToPath(new URL(`../../${path}`, import.meta.url)), text)),
  );
}
