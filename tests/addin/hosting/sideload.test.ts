import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { request } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { generateCertificates } from "office-addin-dev-certs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serve } from "../../../addin/hosting/serve.ts";
import { sideloadSteps, withoutTrust } from "../../../addin/hosting/sideload-steps.ts";

const served = {
  address: "https://localhost:3500/",
  manifest: "/home/me/soakbook/dist/manifest.xml",
  folder: "/home/me/soakbook/dist",
  isTrusted: true,
};

describe("Sideloading", () => {
  let folder: string;
  const path = (name: string): string => join(folder, name);

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "soakbook-https-"));
    await writeFile(path("taskpane.html"), "<!doctype html>");
  });

  afterAll(() => rm(folder, { recursive: true }));

  it("serves over https with a certificate made on this machine, which its own authority vouches for", async () => {
    // Made and used, never installed: this machine trusts it no more than before.
    await generateCertificates(path("ca.crt"), path("localhost.crt"), path("localhost.key"), 1, ["localhost"]);
    const [ca, cert, key] = await Promise.all(["ca.crt", "localhost.crt", "localhost.key"].map((name) => readFile(path(name))));
    const serving = await serve(folder, 0, { cert: cert ?? Buffer.of(), key: key ?? Buffer.of() });
    try {
      expect(serving.address).toMatch(/^https:\/\/localhost:\d+\/$/);
      const ask = (trusted: Buffer | undefined) =>
        new Promise<number | undefined>((resolve, reject) => {
          request(`${serving.address}taskpane.html`, { ...(trusted === undefined ? {} : { ca: trusted }), agent: false }, (answer) => {
            answer.resume();
            resolve(answer.statusCode);
          })
            .on("error", reject)
            .end();
        });
      expect(await ask(ca)).toBe(200);
      await expect(ask(undefined)).rejects.toThrow(/certificate|self-signed|issuer/i);
    } finally {
      await serving.stop();
    }
  });

  it.each(["win32", "darwin", "linux"] as const)(
    "says step by step on %s where the manifest goes and what a cell then answers",
    (platform) => {
      const steps = sideloadSteps(platform, served).join("\n");
      expect(steps).toContain(platform === "win32" ? served.folder : served.manifest);
      expect(steps).toContain("Excel on the web");
      expect(steps).toContain("=SOAK.DRAWDOWN(6,0.5) in a cell: it answers 12");
      expect(steps).not.toMatch(/undefined|null/);
    },
  );

  it.each(["win32", "darwin", "linux"] as const)(
    "without a trusted certificate leads %s to Excel on the web, where a browser can be told to accept it",
    (platform) => {
      const steps = sideloadSteps(platform, { ...served, isTrusted: false }).join("\n");
      expect(steps).toContain("Accept its warning about the certificate");
      expect(steps).not.toContain("no warning");
      expect(steps).not.toMatch(/wef|Trusted Add-in Catalogs/);
      expect(steps).toContain("it answers 12");
    },
  );

  it("says why the certificate is not trusted and what else can be done", () => {
    const words = withoutTrust("certutil was not found").join("\n");
    expect(words).toContain("certutil was not found");
    expect(words).toContain("npx office-addin-dev-certs install");
    expect(words).toContain("npm start");
  });
});
