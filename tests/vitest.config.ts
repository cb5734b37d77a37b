import { defineConfig } from "vitest/config";

/** Tests that open a browser, run other programs or plant faults in modules: each file in a process of its own. */
const APART = [
  "tests/{browser,agreement,house}/**/*.test.ts",
  "tests/contract/adapter-faults.test.ts",
  "tests/addin/{batch,hosting}/**/*.test.ts",
  "tests/addin/actions/export/**/*.test.ts",
];
const ALL = ["tests/**/*.test.{ts,tsx}"];

export default defineConfig({
  test: {
    projects: [
      { extends: true, test: { name: "apart", include: APART } },
      // Most files are small: loading everything anew for each would take longer than the tests.
      { extends: true, test: { name: "together", include: ALL, exclude: APART, isolate: false } },
    ],
    setupFiles: ["tests/property-seed.ts"],
    // Left to itself the runner keeps one core of two free.
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    coverage: {
      provider: "v8",
      include: ["functions/**/*.ts"],
      exclude: ["tests/**"],
      reportsDirectory: ".coverage",
      thresholds: { lines: 100, branches: 100 },
    },
  },
});
