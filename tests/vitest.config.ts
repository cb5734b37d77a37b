import { defineConfig } from "vitest/config";

/** Tests that open a page: all of them in the one browser that set-up.ts starts. */
const IN_BROWSER = ["tests/browser/**/*.test.ts", "tests/contract/excel-page.test.ts"];
/** Tests of the page's grid on Node, which set-up.ts there bundles: each file in a process of its own. */
const ON_THE_GRID = ["tests/addin/workbook/embedded/on-node/**/*.test.ts", "tests/agreement/{actions,embedded}.test.ts"];
/** Tests that run other programs or plant faults in modules: each file in a process of its own. */
const APART = [
  "tests/house/**/*.test.ts",
  "tests/contract/adapter-faults.test.ts",
  "tests/addin/{batch,hosting}/**/*.test.ts",
  "tests/addin/actions/export/**/*.test.ts",
];
const ALL = ["tests/**/*.test.{ts,tsx}"];

export default defineConfig({
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: "browser",
          include: IN_BROWSER,
          globalSetup: "tests/browser/set-up.ts",
          isolate: false,
          expect: { poll: { timeout: 60_000 } },
        },
      },
      {
        extends: true,
        test: { name: "grid", include: ON_THE_GRID, globalSetup: "tests/addin/workbook/embedded/on-node/set-up.ts" },
      },
      { extends: true, test: { name: "apart", include: APART } },
      // Most files are small: loading everything anew for each would take longer than the tests.
      { extends: true, test: { name: "together", include: ALL, exclude: [...APART, ...ON_THE_GRID, ...IN_BROWSER], isolate: false } },
    ],
    setupFiles: ["tests/property-seed.ts"],
    // Left to itself the runner keeps one core of two free.
    maxWorkers: 2,
    // What takes long on a busy machine is not wrong: these only end what would never end.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    coverage: {
      provider: "v8",
      include: ["functions/**/*.ts"],
      exclude: ["tests/**"],
      reportsDirectory: ".coverage",
      thresholds: { lines: 100, branches: 100 },
    },
  },
});
