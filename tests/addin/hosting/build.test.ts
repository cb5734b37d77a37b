import { mkdtemp, readFile, readdir, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createContext, runInContext } from "node:vm";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { build, originFrom } from "../../../addin/hosting/build.ts";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";

const ORIGIN = "https://gardens.example/soakbook";
const BUILD_MILLISECONDS = 60_000;

describe("The origin on the command line", () => {
  it("is an https address, with or without a slash at its end", () => {
    expect(originFrom(["--origin", ORIGIN])).toBe(ORIGIN);
    expect(originFrom(["--origin", `${ORIGIN}/`])).toBe(ORIGIN);
    expect(originFrom([])).toBe("https://localhost:3500");
  });

  it.each(["http://gardens.example", "gardens.example", "", "ftp://gardens.example"])("is refused in a sentence when it is %j", (origin) => {
    expect(() => originFrom(["--origin", origin])).toThrow(
      `The origin must be an https address, such as https://gardens.example/soakbook, and "${origin}" is not.`,
    );
  });
});

describe("A build", () => {
  let directory: string;
  const text = (name: string): Promise<string> => readFile(join(directory, name), "utf8");

  beforeAll(async () => {
    directory = await mkdtemp(join(tmpdir(), "soakbook-build-"));
    await build({ origin: ORIGIN, directory });
  }, BUILD_MILLISECONDS);

  afterAll(async () => {
    await rm(directory, { recursive: true });
  });

  it("has every file that a manifest names at the origin, icons included", async () => {
    const manifests = `${await text("manifest.xml")}${await text("manifest.json")}`;
    const named = [...manifests.matchAll(/https:\/\/gardens\.example\/soakbook\/([a-z0-9./-]+)/g)].map(([, name]) => name ?? "");
    expect(new Set(named).size).toBeGreaterThan(5);
    for (const name of new Set(named)) expect((await stat(join(directory, name))).isFile(), name).toBe(true);
    expect(manifests).not.toContain("localhost");
  });

  it("has a place in the help for every function and for each address that a manifest gives", async () => {
    const help = await text("help.html");
    const metadata = JSON.parse(await text("functions.json")) as { functions: { name: string; helpUrl: string }[] };
    expect(metadata.functions.map(({ name }) => name)).toEqual(catalogue.map(({ name }) => name));
    for (const { name, helpUrl } of metadata.functions) {
      expect(helpUrl).toBe(`${ORIGIN}/help.html#${name}`);
      expect(help).toContain(`<section id="${name}">`);
    }
    for (const anchor of ["support", "privacy", "terms"]) expect(help).toContain(`id="${anchor}"`);
  });

  it("has a functions script that registers every function with nothing but the CustomFunctions global", async () => {
    const script = await text("functions.js");
    const registered = new Map<string, (...inputs: unknown[]) => unknown>();
    const associate = (id: string, compute: (...inputs: unknown[]) => unknown): void => void registered.set(id, compute);
    runInContext(script, createContext({ CustomFunctions: { associate } }));
    expect([...registered.keys()]).toEqual(catalogue.map(({ name }) => name));
  });

  it("refers to no other host from the page without Excel", async () => {
    const page = await text("index.html");
    expect(page).not.toMatch(/https?:/);
    expect(page).toContain("default-src 'none'");
    expect(page).not.toContain("unsafe-eval");
  });

  it("keeps the pane out of the script that the page starts with", async () => {
    const names = await readdir(directory);
    expect(names).toEqual(expect.arrayContaining(["browser.js", "excel.js", "pane.js"]));
    const [start, pane] = [await text("browser.js"), await text("pane.js")];
    const words = "Why a number is not there";
    expect(pane).toContain(words);
    expect(start).not.toContain(words);
  });
});
