/** npm run sideload: builds, serves over https on this machine, and says how to put the add-in into an Excel here. */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { platform } from "node:process";
import { ensureCertificatesAreInstalled } from "office-addin-dev-certs";
import { localhostCertificatePath, localhostKeyPath } from "office-addin-dev-certs/lib/defaults.js";
import { DEFAULT_ORIGIN, DIST, build } from "./build.ts";
import { serve } from "./serve.ts";
import { sideloadSteps, withoutTrust } from "./sideload-steps.ts";

/** A certificate that this machine makes is good for so long; running the command again makes another. */
const CERTIFICATE_DAYS = 365;

const refusal = await ensureCertificatesAreInstalled(CERTIFICATE_DAYS).then(() => null, firstLine);
try {
  const [cert, key] = await Promise.all([readFile(localhostCertificatePath), readFile(localhostKeyPath)]);
  // The manifests name the port, so it is taken first and the build follows what was free.
  const { address } = await serve(DIST, Number(new URL(DEFAULT_ORIGIN).port), { cert, key });
  await build({ origin: address.replace(/\/$/, ""), directory: DIST });
  if (refusal !== null) console.error(`\n${withoutTrust(refusal).join("\n")}\n`);
  console.log(
    sideloadSteps(platform, { address, manifest: join(DIST, "manifest.xml"), folder: DIST, isTrusted: refusal === null }).join("\n"),
  );
} catch (error) {
  console.error([...(refusal === null ? [] : withoutTrust(refusal)), `Nothing is served: ${firstLine(error)}`].join("\n"));
  process.exitCode = 1;
}

function firstLine(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).split("\n")[0] ?? "";
}
