import { defineConfig } from "vitest/config";

/** The trials of npm run bench that are made on the page, with what the browser tests are made with. */
export default defineConfig({
  test: {
    include: ["tests/bench/*.trial.ts"],
    globalSetup: "tests/browser/set-up.ts",
    maxWorkers: 1,
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
