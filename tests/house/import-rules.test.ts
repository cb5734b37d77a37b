import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { cruise, type ICruiseResult, type IConfiguration } from "dependency-cruiser";
import extractTypeScriptConfig from "dependency-cruiser/config-utl/extract-ts-config";
import { afterEach, describe, expect, test } from "vitest";

const rules: IConfiguration = createRequire(import.meta.url)("../dependency-rules.cjs");

const package_ = (name: string, field = "dependencies") => ({
  "package.json": JSON.stringify({ type: "module", [field]: { [name]: "1.0.0" } }),
  [`node_modules/${name}/package.json`]: JSON.stringify({ name, version: "1.0.0", type: "module", main: "index.js" }),
  [`node_modules/${name}/index.js`]: "export const it = 1;",
});

/** One small house a rule, each breaking that rule: file names and what stands in them. */
const planted: Record<string, Record<string, string>> = {
  "calculations-import-calculations": {
    "functions/runoff/runoff-depth.ts": 'import { it } from "../worksheet/runoff.ts"; export const depth = it;',
    "functions/worksheet/runoff.ts": "export const it = 1;",
  },
  "published-values-stand-alone": {
    "functions/published/tr-55.ts": 'import { it } from "../runoff/runoff-depth.ts"; export const table = it;',
    "functions/runoff/runoff-depth.ts": "export const it = 1;",
  },
  "quantities-stand-alone": {
    "functions/quantities.ts": 'import { it } from "./runoff/runoff-depth.ts"; export const inch = it;',
    "functions/runoff/runoff-depth.ts": "export const it = 1;",
  },
  "declarations-import-calculations": {
    ...package_("zod"),
    "functions/worksheet/runoff.ts": 'import { it } from "zod"; export const declaration = it;',
  },
  "port-imports-nobody": {
    "addin/workbook/port.ts": 'import { it } from "../../functions/quantities.ts"; export const port = it;',
    "functions/quantities.ts": "export const it = 1;",
  },
  "records-and-checklist-are-data": {
    "addin/records/sites.ts": 'import { it } from "../actions/add-site.ts"; export const sites = it;',
    "addin/actions/add-site.ts": "export const it = 1;",
  },
  "actions-speak-to-the-port": {
    "addin/actions/add-site.ts": 'import { it } from "../../taskpane/pane.tsx"; export const add = it;',
    "taskpane/pane.tsx": "export const it = 1;",
  },
  "one-module-writes-spreadsheet-files": {
    ...package_("hucre"),
    "taskpane/export.ts": 'import { it } from "hucre"; export const file = it;',
  },
  "one-module-packs-files": {
    ...package_("fflate"),
    "addin/actions/pack.ts": 'import { it } from "fflate"; export const packed = it;',
  },
  "exports-load-when-asked-for": {
    "taskpane/pane.tsx": 'import { it } from "../addin/actions/export/export-files.ts"; export const pane = it;',
    "addin/actions/export/export-files.ts": "export const it = 1;",
  },
  "pane-asks-actions": {
    "taskpane/pane.tsx": 'import { it } from "../addin/records/sites.ts"; export const pane = it;',
    "addin/records/sites.ts": "export const it = 1;",
  },
  "pane-takes-only-types-from-the-port": {
    "taskpane/pane.tsx": 'import { it } from "../addin/workbook/port.ts"; export const pane = it;',
    "addin/workbook/port.ts": "export const it = 1;",
  },
  "start-files-choose-the-adapter": {
    "addin/actions/add-site.ts": 'import { it } from "../workbook/excel/excel-workbook.ts"; export const add = it;',
    "addin/workbook/excel/excel-workbook.ts": "export const it = 1;",
  },
  "adapters-serve-the-port": {
    "addin/workbook/embedded/embedded-workbook.ts": 'import { it } from "../../actions/add-site.ts"; export const adapter = it;',
    "addin/actions/add-site.ts": "export const it = 1;",
  },
  "excel-adapter-uses-globals": {
    ...package_("office"),
    "addin/workbook/excel/excel-workbook.ts": 'import { it } from "office"; export const adapter = it;',
  },
  "excel-loads-no-grid": {
    ...package_("@univerjs/core"),
    "addin/excel.ts": 'import { it } from "./workbook/embedded/embedded-workbook.ts"; export const start = it;',
    "addin/workbook/embedded/embedded-workbook.ts": 'import { it as core } from "@univerjs/core"; export const it = core;',
  },
  "pane-comes-after-the-functions": {
    "addin/excel.ts": 'import { it } from "../taskpane/pane.tsx"; export const start = it;',
    "taskpane/pane.tsx": "export const it = 1;",
  },
  "functions-bundle-is-functions-alone": {
    "addin/excel-functions.ts": 'import { it } from "./actions/add-site.ts"; export const start = it;',
    "addin/actions/add-site.ts": "export const it = 1;",
  },
  "start-files-start": {
    "addin/actions/add-site.ts": 'import { it } from "../browser.ts"; export const add = it;',
    "addin/browser.ts": "export const it = 1;",
  },
  "only-the-embedded-spreadsheet-uses-univer": {
    ...package_("react"),
    "taskpane/pane.tsx": 'import { it } from "react"; export const pane = it;',
  },
  "excel-start-file-detects-the-host": {
    ...package_("@microsoft/office-js-helpers"),
    "taskpane/pane.tsx": 'import { it } from "@microsoft/office-js-helpers"; export const pane = it;',
  },
  "office-js-is-not-bundled": {
    ...package_("@microsoft/office-js"),
    "addin/excel.ts": 'import { it } from "@microsoft/office-js"; export const start = it;',
  },
  "hosting-stays-on-the-developers-machine": {
    "addin/browser.ts": 'import { it } from "./hosting/serve.ts"; export const start = it;',
    "addin/hosting/serve.ts": "export const it = 1;",
  },
  "no-node-in-a-page": {
    "functions/runoff/runoff-depth.ts": 'import { readFileSync } from "node:fs"; export const depth = readFileSync;',
  },
  "manifest-describes": {
    "manifest/xml-manifest.ts": 'import { it } from "../addin/excel.ts"; export const xml = it;',
    "addin/excel.ts": "export const it = 1;",
  },
  "nothing-imports-tests": {
    "addin/actions/add-site.ts": 'import { it } from "../../tests/demo.ts"; export const add = it;',
    "tests/demo.ts": "export const it = 1;",
  },
  "no-developer-packages-in-the-add-in": {
    ...package_("preact", "devDependencies"),
    "taskpane/pane.tsx": 'import { it } from "preact"; export const pane = it;',
  },
  "batch-computes": {
    "addin/batch/csv-stream.ts": 'import { it } from "../records/sites.ts"; export const rows = it;',
    "addin/records/sites.ts": "export const it = 1;",
  },
  "batch-runs-on-node": {
    "taskpane/pane.tsx": 'import { it } from "../addin/batch/csv-stream.ts"; export const pane = it;',
    "addin/batch/csv-stream.ts": "export const it = 1;",
  },
  "only-the-batch-parses-csv-by-package": {
    ...package_("csv-parse"),
    "addin/actions/import-rain.ts": 'import { it } from "csv-parse"; export const rain = it;',
  },
  "no-junk-drawers": {
    "addin/actions/add-site.ts": 'import { it } from "./utils.ts"; export const add = it;',
    "addin/actions/utils.ts": "export const it = 1;",
  },
  "no-circles": {
    "addin/actions/add-site.ts": 'import { it } from "./remove-site.ts"; export const add = it;',
    "addin/actions/remove-site.ts": 'import { add } from "./add-site.ts"; export const it = () => add;',
  },
  "no-orphans": { "addin/actions/add-site.ts": "export const add = 1;" },
  "no-broken-imports": { "addin/actions/add-site.ts": 'import { it } from "./remove-site.ts"; export const add = it;' },
};

const houses: string[] = [];
afterEach(() => {
  for (const house of houses.splice(0)) rmSync(house, { recursive: true });
});

async function brokenRules(files: Record<string, string>): Promise<readonly string[]> {
  const house = mkdtempSync(join(tmpdir(), "soakbook-house-"));
  houses.push(house);
  const tsconfig = { compilerOptions: { module: "ESNext", moduleResolution: "Bundler", allowImportingTsExtensions: true, noEmit: true } };
  const all = { "package.json": '{ "type": "module" }', "tsconfig.json": JSON.stringify(tsconfig), ...files };
  for (const [name, text] of Object.entries(all)) {
    mkdirSync(join(house, dirname(name)), { recursive: true });
    writeFileSync(join(house, name), text);
  }
  const folders = ["addin", "functions", "taskpane", "manifest"].filter((folder) =>
    Object.keys(files).some((name) => name.startsWith(`${folder}/`)),
  );
  const { tsConfig: _, ...options } = rules.options ?? {};
  const result = await cruise(
    folders,
    { ...options, baseDir: house, validate: true, ruleSet: { forbidden: rules.forbidden ?? [] } },
    {},
    { tsConfig: extractTypeScriptConfig(join(house, "tsconfig.json")) },
  );
  return (result.output as ICruiseResult).summary.violations.map((violation) => violation.rule.name);
}

describe("the import rules", () => {
  test("every rule has a planted violation, so each of them can fail", () => {
    expect(Object.keys(planted).sort()).toEqual(rules.forbidden?.map((rule) => rule.name).sort());
  });

  test.each(Object.entries(planted))("catch what breaks %s", async (rule, files) => {
    expect(await brokenRules(files)).toContain(rule);
  });

  test("leave a house alone in which each part imports only what it may", async () => {
    const sound = {
      ...package_("zod"),
      "functions/runoff/runoff-depth.ts": 'import { inch } from "../quantities.ts"; export const depth = inch;',
      "functions/quantities.ts": "export const inch = 1;",
      "functions/worksheet/runoff.ts": 'import { depth } from "../runoff/runoff-depth.ts"; export const runoffDepth = depth;',
      "addin/excel-functions.ts": 'import { runoffDepth } from "../functions/worksheet/runoff.ts"; export const registered = runoffDepth;',
      "addin/workbook/port.ts": "export interface Workbook { readonly name: string }",
      "addin/workbook/excel/excel-workbook.ts":
        'import type { Workbook } from "../port.ts"; export const excelWorkbook = (): Workbook => ({ name: "" });',
      "addin/records/sites.ts": 'import { it } from "zod"; export const sites = it;',
      "addin/actions/add-site.ts":
        'import type { Workbook } from "../workbook/port.ts"; import { sites } from "../records/sites.ts"; export const add = (_: Workbook) => sites;',
      "taskpane/pane.tsx":
        'import { add } from "../addin/actions/add-site.ts"; import type { Workbook } from "../addin/workbook/port.ts"; export const mount = (workbook: Workbook) => add(workbook);',
      "addin/excel.ts":
        'import { excelWorkbook } from "./workbook/excel/excel-workbook.ts"; export const start = async () => (await import("../taskpane/pane.tsx")).mount(excelWorkbook());',
    };
    expect(await brokenRules(sound)).toEqual([]);
  });
});
