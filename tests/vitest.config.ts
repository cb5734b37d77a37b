import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    setupFiles: ["tests/property-seed.ts"],
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
