/**
 * Who may import whom: npx depcruise --config tests/dependency-rules.cjs addin functions taskpane manifest
 *
 * Each rule's comment is the reason, and is what a person reads when the check fails.
 */

const OURS = "^(addin|functions|taskpane|manifest)/";
const CALCULATIONS = "^functions/(?!worksheet/)";
const PORT = "^addin/workbook/port\\.ts$";
const ADAPTERS = "^addin/workbook/(?!port\\.ts$)";
const DATA = "^addin/(records|checklist)/";
const START_FILES = "^addin/(excel|browser|excel-functions|batch/soakbook-batch|window/start-watch)\\.ts$";
const SPREADSHEET_FILE = "^addin/actions/export/spreadsheet-file\\.ts$";
const WORKBOOK_FILE = "^addin/workbook/embedded/xlsx/";
const LIST_FILE = "^addin/actions/bring-in/list-file\\.ts$";
/** What is packed into a file is the same whatever spreadsheet is there: both sides look it through, and copies are written with none. */
const FILES = "^addin/workbook/file/";
const PACKED_FILE = "^addin/workbook/file/packed-file\\.ts$";
const TABLE_FILES = "^addin/actions/export/table-files\\.ts$";
const COPY_FILE = "^addin/actions/field-copy/copy-file\\.ts$";
const RUNS_IN_A_PAGE = "^(functions/|taskpane/|addin/(?!(hosting|batch)/))";

const package_ = (name) => `(^|/)node_modules/${name}(/|$)`;

module.exports = {
  forbidden: [
    {
      name: "calculations-import-calculations",
      severity: "error",
      comment: "A calculation is plain arithmetic: it imports only calculations, quantities and published values.",
      from: { path: CALCULATIONS },
      to: { pathNot: CALCULATIONS },
    },
    {
      name: "published-values-stand-alone",
      severity: "error",
      comment: "Published values are transcribed, not computed: they import only quantities and each other.",
      from: { path: "^functions/published/" },
      to: { pathNot: "^functions/(published/|quantities\\.ts$)" },
    },
    {
      name: "quantities-stand-alone",
      severity: "error",
      comment: "Everything converts by quantities.ts, so it depends on nothing.",
      from: { path: "^functions/quantities\\.ts$" },
      to: { path: ".+" },
    },
    {
      name: "declarations-import-calculations",
      severity: "error",
      comment: "A worksheet declaration imports functions/ alone: it is the same in every host, and its bundle stays small.",
      from: { path: "^functions/worksheet/" },
      to: { pathNot: "^functions/" },
    },
    {
      name: "port-imports-nobody",
      severity: "error",
      comment: "The workbook port is what both hosts and every action rest on, so it rests on nothing.",
      from: { path: PORT },
      to: { path: ".+" },
    },
    {
      name: "records-and-checklist-are-data",
      severity: "error",
      comment: "Records and the checklist are data: they import each other, the port's vocabulary, functions and zod.",
      from: { path: DATA },
      to: { pathNot: [DATA, "^functions/", PORT, package_("zod")] },
    },
    {
      name: "actions-speak-to-the-port",
      severity: "error",
      comment: "An action is written in terms of the port, the records, the checklist and the functions, so it runs on any host.",
      from: { path: "^addin/actions/", pathNot: [SPREADSHEET_FILE, LIST_FILE, COPY_FILE, TABLE_FILES] },
      to: { pathNot: ["^addin/actions/", DATA, "^functions/", PORT] },
    },
    {
      name: "one-module-writes-spreadsheet-files",
      severity: "error",
      comment:
        "hucre is young: what exports tables, what reads a list and what writes the whole workbook stand before it, so that it can be exchanged and checked.",
      from: { path: OURS, pathNot: [SPREADSHEET_FILE, LIST_FILE, WORKBOOK_FILE, FILES] },
      to: { path: package_("hucre") },
    },
    {
      name: "one-module-packs-files",
      severity: "error",
      comment:
        "fflate packs the tables into one file, and lists what is packed into a workbook's before that is unpacked by its own reader.",
      from: { path: OURS, pathNot: [TABLE_FILES, PACKED_FILE] },
      to: { path: package_("fflate") },
    },
    {
      name: "exports-load-when-asked-for",
      severity: "error",
      comment: "Few openings of the pane export a file, so what writes files is loaded by import() when one is asked for.",
      from: { path: "^(taskpane|addin/(?!actions/export/))" },
      to: { path: "^addin/actions/export/", dependencyTypesNot: ["dynamic-import", "type-only"] },
    },
    {
      name: "pane-asks-actions",
      severity: "error",
      comment: "The pane shows and asks; actions read and write. It imports actions, functions and the port's types.",
      from: { path: "^taskpane/" },
      to: { path: OURS, pathNot: ["^taskpane/", "^addin/actions/", "^functions/", PORT] },
    },
    {
      name: "pane-takes-only-types-from-the-port",
      severity: "error",
      comment: "The pane is handed a workbook; it makes none. Use import type.",
      from: { path: "^taskpane/" },
      to: { path: PORT, dependencyTypesNot: ["type-only"] },
    },
    {
      name: "start-files-choose-the-adapter",
      severity: "error",
      comment: "Only addin/excel.ts and addin/browser.ts know which spreadsheet is there.",
      from: { path: OURS, pathNot: [ADAPTERS, "^addin/(excel|browser)\\.ts$"] },
      to: { path: ADAPTERS, pathNot: FILES },
    },
    {
      name: "adapters-serve-the-port",
      severity: "error",
      comment:
        "An adapter turns the port's verbs into one host's calls: it knows the port and the functions, and no action, record or pane.",
      from: { path: ADAPTERS },
      to: { path: OURS, pathNot: ["^addin/workbook/", "^functions/"] },
    },
    {
      name: "excel-adapter-uses-globals",
      severity: "error",
      comment: "office.js comes from its own address, never from a package; the Excel adapter imports the port alone.",
      from: { path: "^addin/workbook/excel/" },
      to: { pathNot: "^addin/workbook/(port\\.ts$|excel/)" },
    },
    {
      name: "excel-loads-no-grid",
      severity: "error",
      comment: "Inside Excel the grid is Excel's: the embedded spreadsheet must not reach that page.",
      from: { path: "^addin/excel" },
      to: { path: package_("@univerjs"), reachable: true },
    },
    {
      name: "pane-comes-after-the-functions",
      severity: "error",
      comment: "Excel waits for this page before the first function runs, so the pane is loaded by import() once they are registered.",
      from: { path: "^addin/excel(-commands)?\\.ts$" },
      to: { path: "^taskpane/", dependencyTypesNot: ["dynamic-import", "type-only"] },
    },
    {
      name: "functions-bundle-is-functions-alone",
      severity: "error",
      comment: "dist/functions.js answers the first cell within milliseconds: it holds the functions and nothing else.",
      from: { path: "^addin/excel-functions\\.ts$" },
      to: { pathNot: "^functions/" },
    },
    {
      name: "start-files-start",
      severity: "error",
      comment: "A start file wires the parts together, so no part may import it.",
      from: { path: OURS },
      to: { path: START_FILES },
    },
    {
      name: "only-the-embedded-spreadsheet-uses-univer",
      severity: "error",
      comment: "Univer, React and RxJS belong to the embedded spreadsheet's adapter; everything else is Preact and the port.",
      from: { path: OURS, pathNot: ["^addin/workbook/embedded/", "^addin/browser\\.ts$"] },
      to: { path: package_("(@univerjs|react|react-dom|rxjs)") },
    },
    {
      name: "excel-start-file-detects-the-host",
      severity: "error",
      comment: "office-js-helpers is old and rewrites sheets: only the Excel start file may use it, to detect the platform.",
      from: { path: OURS, pathNot: "^addin/excel\\.ts$" },
      to: { path: package_("@microsoft/office-js-helpers") },
    },
    {
      name: "office-js-is-not-bundled",
      severity: "error",
      comment: "Microsoft serves office.js; a copy would break its licence and its updates.",
      from: { path: OURS },
      to: { path: package_("@microsoft/office-js") },
    },
    {
      name: "hosting-stays-on-the-developers-machine",
      severity: "error",
      comment: "addin/hosting builds and serves on Node: no part of the add-in may import it.",
      from: { path: OURS, pathNot: "^addin/hosting/" },
      to: { path: "^addin/hosting/" },
    },
    {
      name: "batch-computes",
      severity: "error",
      comment: "The batch is the functions over a stream: it knows no workbook, record or pane.",
      from: { path: "^addin/batch/" },
      to: { path: OURS, pathNot: ["^addin/batch/", "^functions/"] },
    },
    {
      name: "batch-runs-on-node",
      severity: "error",
      comment: "addin/batch reads standard input and files on Node: no part of the add-in may import it.",
      from: { path: OURS, pathNot: "^addin/batch/" },
      to: { path: "^addin/batch/" },
    },
    {
      name: "only-the-batch-parses-csv-by-package",
      severity: "error",
      comment: "csv-parse is for streams on Node; a page reads CSV by its own few lines.",
      from: { path: OURS, pathNot: "^addin/batch/" },
      to: { path: package_("csv-parse") },
    },
    {
      name: "no-node-in-a-page",
      severity: "error",
      comment: "This part runs in a web page, where Node's own modules do not exist.",
      from: { path: RUNS_IN_A_PAGE },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "manifest-describes",
      severity: "error",
      comment: "The manifest is generated from its own data, the worksheet declarations and package.json.",
      from: { path: "^manifest/" },
      to: { path: "^(addin|taskpane)/" },
    },
    {
      name: "nothing-imports-tests",
      severity: "error",
      comment: "What ships does not depend on what checks it.",
      from: { path: OURS },
      to: { path: "^tests/" },
    },
    {
      name: "no-developer-packages-in-the-add-in",
      severity: "error",
      comment: "A package that the add-in runs on belongs in dependencies, at an exact version.",
      from: { path: RUNS_IN_A_PAGE },
      to: { dependencyTypes: ["npm-dev", "npm-no-pkg", "npm-unknown"], dependencyTypesNot: ["type-only"] },
    },
    {
      name: "no-junk-drawers",
      severity: "error",
      comment: "Name a file for what it is about, not for being useful.",
      from: { path: OURS },
      to: { path: "/(util|utils|helper|helpers|common|shared|manager|service|services|misc|index)(/|[.]ts)", pathNot: "node_modules/" },
    },
    {
      name: "no-circles",
      severity: "error",
      comment: "Two files that need each other are one idea in two places.",
      from: {},
      to: { circular: true, dependencyTypesNot: ["type-only"] },
    },
    {
      name: "no-orphans",
      severity: "error",
      comment: "A file that nothing imports and that imports nothing does no work, unless a page starts it.",
      from: { orphan: true, path: OURS, pathNot: `\\.d\\.ts$|${START_FILES}` },
      to: {},
    },
    {
      name: "no-broken-imports",
      severity: "error",
      comment: "The imported file or package is not there.",
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    tsConfig: { fileName: "tsconfig.json" },
    tsPreCompilationDeps: true,
    doNotFollow: { path: "node_modules" },
    exclude: { path: "^dist/" },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "browser", "default", "types"] },
  },
};
