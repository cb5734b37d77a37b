/** npm start: builds, serves on this machine and opens the page that needs no Excel. */
import { spawn } from "node:child_process";
import { env, platform } from "node:process";
import { DEFAULT_ORIGIN, DIST, build } from "./build.ts";
import { serve } from "./serve.ts";

const FIRST_PORT = 3500;

await build({ origin: DEFAULT_ORIGIN, directory: DIST });
const { address } = await serve(DIST, FIRST_PORT);
console.log(`Soakbook is open at ${address} (stop it with Ctrl+C).`);
openInBrowser(address);

/** A machine without a desktop has no browser to open; the printed address is enough there. */
function openInBrowser(url: string): void {
  const hasDesktop = platform === "darwin" || platform === "win32" || Boolean(env["DISPLAY"] ?? env["WAYLAND_DISPLAY"]);
  if (!hasDesktop || env["CI"]) return;
  const [command, ...first] = { darwin: ["open"], win32: ["cmd", "/c", "start", ""] }[platform as string] ?? ["xdg-open"];
  if (command === undefined) return;
  spawn(command, [...first, url], { stdio: "ignore", detached: true })
    .on("error", () => undefined)
    .unref();
}
