import { mkdtemp, readFile, readdir, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { extname, join, relative } from "node:path";
import { createContext, runInContext } from "node:vm";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { build, originFrom } from "../../../addin/hosting/build.ts";
import { serve } from "../../../addin/hosting/serve.ts";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";

const ORIGIN = "https://gardens.example/soakbook";
const BUILD_MILLISECONDS = 60_000;

/** The values of each header that the rules of a _headers file give to a path, in their order. */
function rulesFor(rules: string, path: string): Map<string, string[]> {
  const found = new Map<string, string[]>();
  let isMatch = false;
  for (const line of rules.trimEnd().split("\n")) {
    const [, name, value] = /^ +([a-z-]+): (.+)$/.exec(line) ?? [];
    if (name === undefined) isMatch = line.endsWith("*") ? path.startsWith(line.slice(0, -1)) : path === line;
    else if (isMatch) found.set(name, [...(found.get(name) ?? []), value ?? ""]);
  }
  return found;
}

/** What the lines of a .htaccess file make Apache send with a file: later lines over earlier ones, FilesMatch by the name alone. */
function byApache(lines: string, file: string): Record<string, string> {
  const sent: Record<string, string> = {};
  let isMatch = true;
  for (const line of lines.trimEnd().split("\n")) {
    const [, pattern] = /^<FilesMatch "(.+)">$/.exec(line) ?? [];
    const [, type, extension] = /^AddType "(.+)" (\S+)$/.exec(line) ?? [];
    const [, name, value] = /^ *Header always set (\S+) "(.+)"$/.exec(line) ?? [];
    if (pattern !== undefined) isMatch = new RegExp(pattern).test(file);
    else if (line === "</FilesMatch>") isMatch = true;
    else if (type !== undefined && extension === extname(file)) sent["content-type"] = type;
    else if (name !== undefined && value !== undefined && isMatch) sent[name] = value;
  }
  return sent;
}

describe("The origin on the command line", () => {
  it("is an https address, with or without a slash at its end", () => {
    expect(originFrom(["--origin", ORIGIN])).toBe(ORIGIN);
    expect(originFrom(["--origin", `${ORIGIN}/`])).toBe(ORIGIN);
    expect(originFrom([])).toBe("https://localhost:3500");
  });

  it.each(["http://gardens.example", "gardens.example", "", "ftp://gardens.example"])(
    "is refused in a sentence when it is %j",
    (origin) => {
      expect(() => originFrom(["--origin", origin])).toThrow(
        `The origin must be an https address, such as https://gardens.example/soakbook, and "${origin}" is not.`,
      );
    },
  );
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
    const named = [...manifests.matchAll(/https:\/\/gardens\.example\/soakbook\/([A-Za-z0-9./-]+)/g)].map(([, name]) => name ?? "");
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
    for (const page of ["support", "privacy"]) expect(help).toContain(`href="${page}.html"`);
    expect(await text("support.html")).toContain('id="terms"');
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
  });

  it.each(["index.html", "taskpane.html", "help.html", "privacy.html", "support.html", "admin.html", "licences.html"])(
    "lets no inline script and no text run as a program in %s",
    async (name) => {
      const page = await text(name);
      const policy = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(page)?.[1] ?? "";
      const directives = new Map(policy.split("; ").map((directive) => [directive.split(" ")[0], directive]));
      expect(directives.get("default-src")).toBe("default-src 'none'");
      expect(directives.get("script-src") ?? "").not.toMatch(/unsafe|data:|blob:|\*/);
      expect(policy).not.toContain("unsafe-eval");
      expect([...page.matchAll(/<script(?![^>]*\bsrc=)/g)]).toEqual([]);
      expect(page).not.toMatch(/\son[a-z]+="/);
    },
  );

  it("names every script and style sheet of a page by its content, and has each under the name the page gives", async () => {
    for (const page of ["index.html", "taskpane.html", "help.html", "privacy.html", "support.html", "admin.html", "licences.html"]) {
      const loaded = [...(await text(page)).matchAll(/(?:script[^>]*src|stylesheet" href)="([^":]+)"/g)].map(([, name]) => name ?? "");
      expect(loaded.length, page).toBeGreaterThan(0);
      for (const name of loaded) {
        expect(name, page).toMatch(/-[A-Za-z0-9]{8}\.(js|css)$|^functions\.js\?v=[a-z0-9]{8}$/);
        expect((await stat(join(directory, name.replace(/\?.*$/, "")))).isFile(), name).toBe(true);
      }
    }
  });

  it("keeps the names by which Excel knows it, with the version in the addresses that Excel holds on to", async () => {
    const names = await readdir(directory);
    expect(names).toEqual(
      expect.arrayContaining(["manifest.xml", "manifest.json", "functions.json", "functions.js", "taskpane.html", "help.html", "icons"]),
    );
    const manifest = await text("manifest.xml");
    for (const name of ["functions.json", "functions.js"])
      expect(manifest).toMatch(new RegExp(`/${name.replace(".", "\\.")}\\?v=\\d+\\.\\d+\\.\\d+"`));
  });

  it("lists for use without a connection the files of the page without Excel, and none of Excel's", async () => {
    const worker = await text("offline-worker.js");
    const index = await text("index.html");
    const parts = [...worker.matchAll(/"([a-z][\w./-]*\.(?:js|css|png))"/g)].map(([, name]) => name ?? "");
    for (const [, name] of index.matchAll(/(?:src|href)="([^":]+)"/g)) expect(parts).toContain(name);
    expect(parts.some((name) => name.startsWith("pane-"))).toBe(true);
    expect(parts.some((name) => /excel|functions|manifest|taskpane/.test(name))).toBe(false);
    for (const name of parts) expect((await stat(join(directory, name))).isFile(), name).toBe(true);
  });

  it("has the licences of what others wrote on a page that the support page leads to", async () => {
    expect(await text("support.html")).toContain('href="licences.html"');
    const licences = await text("licences.html");
    // Of the pages, of the batch on Node, and of what those rest on in turn.
    for (const name of [
      "@univerjs/core 0.25.1: Apache-2.0",
      "preact 11.2.0: MIT",
      "csv-parse 7.0.3: MIT",
      "rxjs 7.8.2: Apache-2.0",
      "rbush 4",
    ])
      expect(licences).toContain(`<li>${name}`);
    expect(licences).not.toMatch(/<pre>\s*<\/pre>/);
    expect(licences).not.toContain("@univerjs/telemetry");
  });

  it("tells administrators what to let through and how to update, by links that lead somewhere", async () => {
    const admin = await text("admin.html");
    for (const words of ["https://gardens.example", "https://appsforoffice.microsoft.com", "24 hours", "SOAK.VERSION()"])
      expect(admin).toContain(words);
    for (const [, name = ""] of admin.matchAll(/<a href="([^"]+)"/g)) expect((await stat(join(directory, name))).isFile(), name).toBe(true);
    expect(await text("support.html")).toContain('href="admin.html"');
  });

  it("ships nothing that nobody asks for: where the words of other languages break", async () => {
    const patterns = (await readdir("node_modules/@univerjs/engine-render/lib/es")).filter((file) => file !== "index.js");
    expect(patterns.length).toBeGreaterThan(50);
    const chunks = await readdir(join(directory, "chunks"));
    expect(chunks.filter((chunk) => patterns.some((file) => chunk.startsWith(file.replace(/\.js$/, ""))))).toEqual([]);
  });

  it("lets another origin read every file, under a type that is not guessed, and forbids no frame: here and by both header files", async () => {
    const files = (await readdir(directory, { recursive: true, withFileTypes: true }))
      .filter((entry) => entry.isFile() && !["_headers", ".htaccess"].includes(entry.name))
      .map((entry) => relative(directory, join(entry.parentPath, entry.name)));
    expect(files.length).toBeGreaterThan(30);
    const [rules, apache] = [await text("_headers"), await text(".htaccess")];
    const { address, stop } = await serve(directory, 0);
    for (const file of files) {
      const { status, headers } = await fetch(`${address}${file}`, { headers: { origin: "https://excel.officeapps.live.com" } });
      expect(status, file).toBe(200);
      expect(headers.get("access-control-allow-origin"), file).toBe("*");
      expect(headers.get("content-type"), file).toMatch(/^(text|image|application|font)\/(?!octet-stream)/);
      expect(headers.has("x-frame-options"), file).toBe(false);
      expect(headers.get("content-security-policy") ?? "", file).not.toContain("frame-ancestors");
      const kept = headers.get("cache-control")?.includes("immutable") === true;
      const byRules = rulesFor(rules, `/soakbook/${file}`);
      expect(byRules.get("access-control-allow-origin"), file).toEqual(["*"]);
      // A host joins the values of all rules that match: one at most may speak of keeping.
      expect(byRules.get("cache-control") ?? [], file).toEqual(kept ? [headers.get("cache-control")] : []);
      expect(byApache(apache, file), file).toEqual({
        "access-control-allow-origin": "*",
        "x-content-type-options": "nosniff",
        "cache-control": headers.get("cache-control"),
        "content-type": headers.get("content-type"),
      });
    }
    await stop();
  });

  it("says on the privacy page that nothing leaves the workbook, and on the support page what to try first", async () => {
    expect(await text("privacy.html")).toContain("leaves your workbook");
    expect(await text("support.html")).toContain("#NAME?");
  });

  it("keeps the pane out of the script that the page starts with", async () => {
    const names = await readdir(directory);
    const called = (name: string) => names.find((file) => new RegExp(`^${name}-[A-Z0-9]{8}\\.js$`).test(file)) ?? `no ${name}`;
    const [start, pane] = [await text(called("browser")), await text(called("pane"))];
    const words = "Why a number is not there";
    expect(pane).toContain(words);
    expect(start).not.toContain(words);
  });
});
