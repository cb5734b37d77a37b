import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serve, type Serving } from "../../../addin/hosting/serve.ts";

describe("The server on this machine", () => {
  let folder: string;
  let serving: Serving;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "soakbook-serve-"));
    await mkdir(join(folder, "dist"));
    await writeFile(join(folder, "dist", "index.html"), "<!doctype html>");
    await writeFile(join(folder, "dist", "browser.js"), "export {};");
    await writeFile(join(folder, "dist", "browser-QX7L2ABC.js"), "export {};");
    await writeFile(join(folder, "dist", "help-3f9a2c41.css"), "");
    await writeFile(join(folder, "secret.txt"), "outside");
    serving = await serve(join(folder, "dist"), 0);
  });

  afterAll(async () => {
    await serving.stop();
    await rm(folder, { recursive: true });
  });

  it("answers with the page and names each kind of file", async () => {
    const page = await fetch(serving.address);
    expect(page.headers.get("content-type")).toBe("text/html; charset=utf-8");
    expect(await page.text()).toBe("<!doctype html>");
    expect((await fetch(`${serving.address}browser.js`)).headers.get("content-type")).toBe("text/javascript; charset=utf-8");
  });

  it("lets a browser keep for ever what bears the hash of its content, and asks it to look again for the rest", async () => {
    const keeping = async (name: string) => (await fetch(`${serving.address}${name}`)).headers.get("cache-control");
    for (const name of ["browser-QX7L2ABC.js", "help-3f9a2c41.css"]) expect(await keeping(name)).toContain("immutable");
    for (const name of ["", "browser.js"]) expect(await keeping(name)).toBe("no-cache");
  });

  it("says when there is no such file", async () => {
    const answer = await fetch(`${serving.address}nothing.js`);
    expect(answer.status).toBe(404);
    expect(await answer.text()).toBe("There is no such file.");
  });

  // fetch tidies an address before it asks, so these go out as they are written.
  it.each(["/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt", "/dist/../../secret.txt", "/%"])(
    "hands out nothing from outside its folder for %s",
    async (path) => {
      const { port } = new URL(serving.address);
      const status = await new Promise<number | undefined>((resolve, reject) => {
        request({ host: "localhost", port, path }, (answer) => {
          answer.resume();
          resolve(answer.statusCode);
        })
          .on("error", reject)
          .end();
      });
      expect(status).toBe(404);
    },
  );

  it("takes the next port when its own is taken", async () => {
    const port = Number(new URL(serving.address).port);
    const second = await serve(join(folder, "dist"), port);
    expect(Number(new URL(second.address).port)).toBeGreaterThan(port);
    await second.stop();
  });
});
