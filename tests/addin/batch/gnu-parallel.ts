import { spawnSync } from "node:child_process";

export const HOW_TO_INSTALL =
  "The tests of the batch need GNU parallel: install it (Debian and Ubuntu: apt-get install parallel; macOS: brew install parallel).";

/** GNU parallel and no other program of that name, such as the one of moreutils. */
export function hasGnuParallel(): boolean {
  return spawnSync("parallel", ["--version"], { encoding: "utf8" }).stdout?.startsWith("GNU parallel") === true;
}

/** Installs Debian's package where this may be done; otherwise the caller says what to install. */
export function installGnuParallel(): boolean {
  if (process.platform !== "linux" || process.getuid?.() !== 0) return false;
  const apt = (...words: string[]) =>
    spawnSync("apt-get", words, { stdio: "inherit", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } }).status === 0;
  return apt("update", "-qq") && apt("install", "-y", "-qq", "--no-install-recommends", "parallel");
}
