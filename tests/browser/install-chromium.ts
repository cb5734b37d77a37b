import { findChromium, HOW_TO_INSTALL, installChromium } from "./chromium.ts";

/** Before the browser tests: a browser is there, or is brought, or one line says what to install. */
if (findChromium() === null && !(installChromium() && findChromium() !== null)) {
  console.error(HOW_TO_INSTALL);
  process.exitCode = 1;
}
