import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import type { BenchSection } from "./measure.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const VITEST = fileURLToPath(new URL("../../node_modules/vitest/vitest.mjs", import.meta.url));

export const timeTrial: BenchSection = {
  title: "Time trial: keys and clicks for the same records, by the pane and typed into bare cells",
  async measure() {
    const words = [VITEST, "run", "--config", "tests/bench/vitest.config.ts", "--root", "."];
    const { stdout } = await promisify(execFile)(process.execPath, words, { cwd: ROOT });
    return { rows: [], notes: stdout.split("\n").filter((line) => line.includes("by the pane")) };
  },
};
