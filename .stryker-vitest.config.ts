import { defineConfig } from "vitest/config";

/** The tests of the functions alone: what mutation testing runs again for each mutant. */
export default defineConfig({ test: { include: ["tests/functions/**/*.test.ts"], setupFiles: ["tests/property-seed.ts"], testTimeout: 60_000 } });
