import type { Plugin } from "esbuild";

const GRID_ENGINE = /[\\/]@univerjs[\\/]engine-render[\\/]/;
const HERE = "left-out";

/** What the grid brings along and nothing here uses, each replaced by the least that the grid still works with. */
export const leftOut: Plugin = {
  name: HERE,
  setup(build) {
    // Where the words of a text document break, a file a language, five million bytes in all. A sheet breaks no words, and
    // the engine does without the patterns of a language whose file gives none.
    build.onResolve({ filter: /^\.\// }, ({ kind, importer }) =>
      kind === "dynamic-import" && GRID_ENGINE.test(importer) ? { path: "hyphenation", namespace: HERE } : undefined,
    );
    build.onLoad({ filter: /^hyphenation$/, namespace: HERE }, () => ({ contents: "export {};" }));
    // Names a service that counts what people do. Nobody provides one here, and the package names no licence.
    build.onResolve({ filter: /^@univerjs\/telemetry$/ }, ({ resolveDir }) => ({
      path: "telemetry",
      namespace: HERE,
      pluginData: resolveDir,
    }));
    build.onLoad({ filter: /^telemetry$/, namespace: HERE }, ({ pluginData }) => ({
      contents:
        'import { createIdentifier } from "@univerjs/core"; export const ITelemetryService = createIdentifier("telemetry.service");',
      resolveDir: String(pluginData),
    }));
  },
};
