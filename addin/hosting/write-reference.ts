/** Writes what the repository keeps of the catalogue, for review: npm run reference */
import { readFile, writeFile } from "node:fs/promises";
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

interface Listed {
  readonly functions: readonly { readonly id: string; readonly parameters: readonly { readonly name: string }[] }[];
}

/** What a newer functions.json no longer offers as the older one did; nothing where it only adds. */
export function takenBack(before: Listed, after: Listed): readonly string[] {
  const now = new Map(after.functions.map(({ id, parameters }) => [id, parameters]));
  return before.functions.flatMap(({ id, parameters }) => {
    const names = now.get(id)?.map(({ name }) => name);
    if (names === undefined) return [`SOAK.${id} is gone.`];
    const moved = parameters.findIndex(({ name }, place) => names[place] !== name);
    return moved === -1 ? [] : [`SOAK.${id} takes ${names[moved] ?? "nothing"} where it took ${parameters[moved]?.name ?? "nothing"}.`];
  });
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  const kept = JSON.parse(await readFile(fileURLToPath(new URL("../../manifest/functions.json", import.meta.url)), "utf8")) as Listed;
  const lost = takenBack(kept, JSON.parse(functionsJson(DEFAULT_ORIGIN)) as Listed);
  if (lost.length > 0) throw new Error(`Nothing was written. People's workbooks rest on what was offered:\n${lost.join("\n")}`);
  await Promise.all(
    Object.entries(keptFiles()).map(([path, text]) => writeFile(fileURLToPath(new URL(`../../${path}`, import.meta.url)), text)),
  );
}
