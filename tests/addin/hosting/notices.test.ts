/** What may ship: a package in a bundle names a licence that somebody has accepted, and its notice goes along. */
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { noticesOf, noticesPage, packagesIn } from "../../../addin/hosting/notices.ts";

let directory: string;

async function aPackage(name: string, said: object, files: Readonly<Record<string, string>> = {}): Promise<string> {
  const folder = join(directory, "node_modules", name);
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, "package.json"), JSON.stringify({ name, version: "1.0.0", ...said }));
  for (const [file, text] of Object.entries(files)) await writeFile(join(folder, file), text);
  return folder;
}

beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "soakbook-notices-"));
});

afterAll(() => rm(directory, { recursive: true }));

describe("A package in a bundle", () => {
  it("ships with the licence and the notices that it carries", async () => {
    const folder = await aPackage(
      "ditch",
      { license: "Apache-2.0" },
      { LICENSE: "The licence.\r\n", NOTICE: "The notice.", "index.js": "1" },
    );
    expect(await noticesOf([folder, folder])).toEqual([
      { name: "ditch", version: "1.0.0", licence: "Apache-2.0", text: "The licence.\n\nThe notice." },
    ]);
  });

  it("ships with the standard text where it names its licence and carries none", async () => {
    const [notice] = await noticesOf([await aPackage("swale", { license: "ISC" })]);
    // The ISC licence, as the Open Source Initiative prints it.
    expect(notice?.text).toContain("Permission to use, copy, modify, and/or distribute this software for any purpose");
  });

  it.each([
    ["names no licence", {}, "no licence"],
    ["names one in words", { license: "SEE LICENSE IN terms.txt" }, 'the licence "SEE LICENSE IN terms.txt"'],
    ["names one that nobody has accepted", { license: "GPL-3.0-only" }, 'the licence "GPL-3.0-only"'],
    ["asks for two at once, one of them not accepted", { license: "(MIT AND GPL-3.0-only)" }, 'the licence "(MIT AND GPL-3.0-only)"'],
  ])("does not ship when it %s", async (what, said, named) => {
    const folder = await aPackage(`berm-${what.length}`, said);
    await expect(noticesOf([folder])).rejects.toThrow(`berm-${what.length} 1.0.0 names ${named}, so it cannot ship.`);
  });

  it("ships when one of the licences to choose from is accepted", async () => {
    expect(await noticesOf([await aPackage("weir", { license: "(GPL-3.0-only OR MIT)" }, { COPYING: "Either." })])).toHaveLength(1);
  });
});

it("the packages of a bundle are those of which anything is left in it", () => {
  const inputs = {
    "../node_modules/@soil/clay/lib/index.js": { bytesInOutput: 5 },
    "../node_modules/@soil/clay/lib/more.js": { bytesInOutput: 1 },
    "../node_modules/loam/node_modules/sand/index.js": { bytesInOutput: 2 },
    "../node_modules/silt/index.js": { bytesInOutput: 0 },
    "../addin/browser.ts": { bytesInOutput: 9 },
  };
  const output = { bytes: 17, inputs, imports: [], exports: [] };
  expect(packagesIn({ inputs: {}, outputs: { "browser.js": output } }, "/garden/dist")).toEqual([
    "/garden/node_modules/@soil/clay",
    "/garden/node_modules/loam/node_modules/sand",
  ]);
});

it("the licences page shows one text once, and no text of a package as markup", () => {
  const notice = { version: "1.0.0", licence: "MIT", text: "<script>free</script>" };
  const page = noticesPage([
    { ...notice, name: "one" },
    { ...notice, name: "two" },
  ]);
  expect(page.match(/&lt;script&gt;free/g)).toHaveLength(1);
  expect(page).toContain("two 1.0.0: MIT");
  expect(page).not.toContain("<script>");
});
