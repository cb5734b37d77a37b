/** npm run dev: serves the page that needs no Excel, builds it again on every save, and lets the open page load itself anew. */
import { spawn } from "node:child_process";
import { watch } from "node:fs";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { DIST } from "./build.ts";
import { source } from "./bundle.ts";
import { serve } from "./serve.ts";

const FIRST_PORT = 3500;
const WATCHED = ["addin", "functions", "taskpane", "manifest"];
/** An editor that saves many files at once makes one build of it. */
const QUIET_MILLISECONDS = 150;

/** Runs in the page: asks once a second whether there is another build. */
const RELOAD = `let built;
setInterval(async () => {
  const latest = await fetch("built.txt", { cache: "no-store" }).then((answer) => (answer.ok ? answer.text() : built), () => built);
  if (built !== undefined && latest !== built) location.reload();
  built = latest;
}, 1000);
`;

let building: Promise<void> = Promise.resolve();
let waiting: ReturnType<typeof setTimeout> | undefined;

await buildAnew();
const { address } = await serve(DIST, FIRST_PORT);
console.log(`Soakbook is open at ${address}. Save a file, and it is built and loaded anew (stop it with Ctrl+C).`);
for (const folder of WATCHED) {
  watch(source(folder), { recursive: true }, () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      building = building.then(buildAnew);
    }, QUIET_MILLISECONDS);
  });
}

/** In a process of its own, because this one has loaded the files as they were. */
async function buildAnew(): Promise<void> {
  const begun = performance.now();
  const child = spawn(process.execPath, ["--import", "tsx", source("addin/hosting/build.ts")], { stdio: ["ignore", "ignore", "inherit"] });
  const code = await new Promise((resolve) => child.on("close", resolve));
  if (code !== 0) return console.error("It was not built: mend what is said above and save again.");
  const page = join(DIST, "index.html");
  await writeFile(join(DIST, "reload.js"), RELOAD);
  await writeFile(page, (await readFile(page, "utf8")).replace("</head>", '<script type="module" src="reload.js"></script>\n</head>'));
  await writeFile(join(DIST, "built.txt"), String(Date.now()));
  console.log(`Built in ${((performance.now() - begun) / 1000).toFixed(1)} s.`);
}
