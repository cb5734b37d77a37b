/** npm run sideload: builds, serves over https on this machine, and says how to put the add-in into an Excel here. */
import { join } from "node:path";
import { platform } from "node:process";
import { getHttpsServerOptions } from "office-addin-dev-certs";
import { DEFAULT_ORIGIN, DIST, build } from "./build.ts";
import { serve } from "./serve.ts";
import type { Certificate } from "./serve.ts";
import { sideloadSteps, withoutCertificate } from "./sideload-steps.ts";

const certificate = await trustedCertificate();
if (certificate !== null) {
  const port = Number(new URL(DEFAULT_ORIGIN).port);
  // The manifests name the port, so it is taken first and the build follows what was free.
  const { address } = await serve(DIST, port, certificate);
  await build({ origin: address.replace(/\/$/, ""), directory: DIST });
  console.log(sideloadSteps(platform, { address, manifest: join(DIST, "manifest.xml"), folder: DIST }).join("\n"));
}

/** Asks for this machine's trust in a certificate of its own making, once; null where that was refused. */
async function trustedCertificate(): Promise<Certificate | null> {
  try {
    const { cert, key } = await getHttpsServerOptions();
    return { cert, key };
  } catch (error) {
    console.error(withoutCertificate(error instanceof Error ? error.message.split("\n")[0] ?? "" : String(error)).join("\n"));
    process.exitCode = 1;
    return null;
  }
}
