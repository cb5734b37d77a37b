import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** Where browsers that the tests can drive usually are; CHROMIUM names another. */
const USUAL_PLACES = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/snap/bin/chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

export function findChromium(): string | null {
  const named = process.env["CHROMIUM"];
  if (named !== undefined && named !== "") return existsSync(named) ? named : null;
  return USUAL_PLACES.find((path) => existsSync(path)) ?? null;
}

export const HOW_TO_INSTALL =
  "The browser tests need Chromium: install it (Debian and Ubuntu: apt-get install chromium; macOS: brew install --cask chromium; Windows: Edge is enough), or set CHROMIUM to a browser's path.";

/** Installs Debian's Chromium where this may be done; otherwise the caller says what to install. */
export function installChromium(): boolean {
  if (process.platform !== "linux" || process.getuid?.() !== 0) return false;
  const apt = (...words: string[]) =>
    spawnSync("apt-get", words, { stdio: "inherit", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } }).status === 0;
  return apt("update", "-qq") && apt("install", "-y", "-qq", "--no-install-recommends", "chromium", "fonts-liberation");
}
