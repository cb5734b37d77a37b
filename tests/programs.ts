/** The programs beside Node that the tests drive: where they usually are, and how Debian's package manager brings them. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

export interface Program {
  readonly name: string;
  /** The environment variable that names another place. */
  readonly variable: string;
  readonly places: readonly string[];
  readonly packages: readonly string[];
  readonly howToInstall: string;
}

export const CHROMIUM: Program = {
  name: "Chromium",
  variable: "CHROMIUM",
  places: [
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/usr/bin/google-chrome",
    "/snap/bin/chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
    "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
  ],
  packages: ["chromium", "fonts-liberation"],
  howToInstall:
    "The browser tests need Chromium: install it (Debian and Ubuntu: apt-get install chromium; macOS: brew install --cask chromium; Windows: Edge is enough), or set CHROMIUM to a browser's path.",
};

export const LIBREOFFICE: Program = {
  name: "LibreOffice",
  variable: "LIBREOFFICE",
  places: [
    "/usr/bin/soffice",
    "/usr/local/bin/soffice",
    "/snap/bin/libreoffice",
    "/Applications/LibreOffice.app/Contents/MacOS/soffice",
    "C:\\Program Files\\LibreOffice\\program\\soffice.exe",
  ],
  packages: ["libreoffice-calc-nogui"],
  howToInstall:
    "The tests of exported files need LibreOffice: install it (Debian and Ubuntu: apt-get install libreoffice-calc-nogui; macOS: brew install --cask libreoffice; Windows: from its own page), or set LIBREOFFICE to the path of soffice.",
};

export function find({ variable, places }: Program): string | null {
  const named = process.env[variable];
  if (named !== undefined && named !== "") return existsSync(named) ? named : null;
  return places.find((path) => existsSync(path)) ?? null;
}

/** Where the program is. Throws in words where it is not. */
export function pathOf(program: Program): string {
  const path = find(program);
  if (path === null) throw new Error(program.howToInstall);
  return path;
}

/**
 * Brings what is missing where this may be done: by root, with Debian's package manager. Neither of the packages starts a
 * service. Gives the programs that are missing all the same.
 */
export function bring(programs: readonly Program[]): readonly Program[] {
  const missing = () => programs.filter((program) => find(program) === null);
  // A place that somebody named is theirs to mend.
  const packages = missing().flatMap((program) => (process.env[program.variable] ? [] : program.packages));
  if (packages.length > 0 && process.platform === "linux" && process.getuid?.() === 0) {
    console.log(`Installing ${packages.join(", ")} ...`);
    if (apt("update", "-qq")) apt("install", "-y", "-qq", "--no-install-recommends", ...packages);
  }
  return missing();
}

function apt(...words: string[]): boolean {
  const { status } = spawnSync("apt-get", words, { stdio: "ignore", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } });
  return status === 0;
}

/** GNU parallel and no other program of that name, such as the one of moreutils. */
export function hasGnuParallel(): boolean {
  return spawnSync("parallel", ["--version"], { encoding: "utf8" }).stdout?.startsWith("GNU parallel") === true;
}

export const NO_GNU_PARALLEL = "GNU parallel is not on this machine, so the batch is not tried through it.";
