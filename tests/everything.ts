/**
 * npm test: asks for the programs that the tests drive, then runs everything there is, what needs a browser beside what
 * does not. The tests in the browser are shown as they go; what runs beside them is shown when it is over, in one piece.
 */
import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { bring, CHROMIUM, hasGnuParallel, LIBREOFFICE, NO_GNU_PARALLEL } from "./programs.ts";

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const VITEST = ["vitest", "run", "--config", "tests/vitest.config.ts", "--root", "."] as const;

interface Step {
  readonly name: string;
  readonly words: readonly string[];
  readonly isShownAsItGoes?: true;
  /** How many files of tests at once, where it is not two. */
  readonly workers?: 1;
}

/** What the browser leaves of the machine is for the rest. */
const LANES: readonly (readonly Step[])[] = [
  [
    { name: "tests in the browser", words: [...VITEST, "--project", "browser"], isShownAsItGoes: true },
    { name: "tests of the grid without a browser", words: [...VITEST, "--project", "grid"] },
  ],
  [
    { name: "types", words: ["tsc", "-p", "."] },
    { name: "imports", words: ["npm", "run", "-s", "imports"] },
    {
      name: "tests of the functions and everything else",
      words: [...VITEST, "--project", "together", "--project", "apart", "--coverage"],
      workers: 1,
    },
    { name: "lint", words: ["npm", "run", "-s", "lint"] },
  ],
];

const missing = bring([CHROMIUM, LIBREOFFICE]);
if (missing.length > 0) {
  console.error(missing.map(({ howToInstall }) => howToInstall).join(" "));
  process.exitCode = 1;
} else {
  if (!hasGnuParallel()) console.log(NO_GNU_PARALLEL);
  const failed = (await Promise.all(LANES.map(runInTurn))).flat();
  console.log(failed.length === 0 ? `\nEverything passed${after(0)}.` : `\nFailed${after(0)}: ${failed.join(", ")}.`);
  process.exitCode = failed.length === 0 ? 0 : 1;
}

/** The names of the steps that failed; a step that fails keeps no other from being run. */
async function runInTurn(steps: readonly Step[]): Promise<readonly string[]> {
  const failed: string[] = [];
  for (const step of steps) {
    const begun = performance.now();
    const { passed, output } = await run(step);
    console.log(`\n== ${step.name}: ${passed ? "passed" : "FAILED"}${after(begun)}\n${output}`);
    if (!passed) failed.push(step.name);
  }
  return failed;
}

function run({ words, isShownAsItGoes, workers }: Step): Promise<{ readonly passed: boolean; readonly output: string }> {
  const [program = "", ...rest] = words;
  const shown = isShownAsItGoes === true ? "inherit" : "pipe";
  return new Promise((resolve) => {
    const child = spawn(program, rest, {
      cwd: ROOT,
      env: { ...process.env, ...(workers === undefined ? {} : { VITEST_MAX_WORKERS: String(workers) }) },
      shell: process.platform === "win32",
      stdio: ["ignore", shown, shown],
    });
    let output = "";
    for (const stream of [child.stdout, child.stderr]) stream?.setEncoding("utf8").on("data", (piece: string) => (output += piece));
    child.on("error", (error) => resolve({ passed: false, output: `${output}${error.message}` }));
    child.on("close", (code) => resolve({ passed: code === 0, output: output.trim() }));
  });
}

function after(begun: number): string {
  return ` after ${((performance.now() - begun) / 1000).toFixed(0)} s`;
}
