import { readdir, readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { gridWords } from "../../../../addin/workbook/embedded/grid-words.ts";

const PACKAGES = fileURLToPath(new URL("../../../../node_modules/@univerjs/", import.meta.url));
/** A sentence asked for by its name, as the grid's packages write it. */
const ASKED_FOR = /\bt\("([a-zA-Z-]+(?:\.[\w-]+)+)"/g;

function wordOf(name: string): unknown {
  return name.split(".").reduce<unknown>((words, part) => (words as Readonly<Record<string, unknown>> | undefined)?.[part], gridWords);
}

test("the grid has words for whatever it says, and never shows the name of a sentence instead", async () => {
  const asked = new Set<string>();
  for (const name of await readdir(PACKAGES)) {
    const text = await readFile(`${PACKAGES}${name}/lib/es/index.js`, "utf8").catch(() => "");
    for (const [, word] of text.matchAll(ASKED_FOR)) if (word !== undefined) asked.add(word);
  }
  expect(asked.size).toBeGreaterThan(100);
  expect([...asked].filter((name) => typeof wordOf(name) !== "string" || wordOf(name) === "")).toEqual([]);
});
