/**
 * How the project is linted: npx eslint --config tests/eslint.config.js .
 *
 * An import rule cannot see a global, so this file guards the globals; dependency-rules.cjs guards the imports.
 */
import officeAddins from "eslint-plugin-office-addins";
import tseslint from "typescript-eslint";

const SOURCE = ["addin/**/*.{ts,tsx}", "functions/**/*.ts", "taskpane/**/*.{ts,tsx}", "manifest/**/*.ts"];
const EXCEL = [
  "addin/workbook/excel/add-sheets.ts",
  "addin/workbook/excel/excel-workbook.ts",
  "addin/workbook/excel/run.ts",
  "addin/workbook/excel/layout.ts",
  "addin/workbook/excel/page-layout.ts",
  "addin/workbook/excel/pictures.ts",
  "addin/excel.ts",
  "addin/excel-commands.ts",
  "addin/excel-functions.ts",
];
const TESTS = ["tests/**/*.{ts,tsx}"];

const dialogs = ["alert", "confirm", "prompt"].map((name) => ({
  name,
  message: "Office blocks this dialog: show it in the pane.",
}));

const excelGlobals = ["Excel", "Office", "OfficeExtension", "CustomFunctions"].map((name) => ({
  name,
  message: "Only the Excel adapter and the Excel start files know Excel: ask the workbook port instead.",
}));

const hostGlobals = ["window", "document", "navigator", "localStorage", "fetch", "console", "process", "setTimeout"].map((name) => ({
  name,
  message: "A calculation knows no host: it turns numbers into numbers.",
}));

const skippedTests = ["it", "test", "describe"].flatMap((object) =>
  ["skip", "only", "todo", "fails"].map((property) => ({ object, property, message: "Every test runs, every time." })),
);

const markupFromText = ["innerHTML", "outerHTML", "insertAdjacentHTML"].map((property) => ({
  property,
  message: "Cell text enters the page as text only: use textContent.",
}));

const unkeepable = [
  { selector: "ExportDefaultDeclaration", message: "Export by name, so that a thing has one name everywhere." },
  { selector: "ExportAllDeclaration", message: "Import from the file that declares it; no barrel files." },
  {
    selector: "ImportDeclaration[source.value=/^zod/] > ImportSpecifier[imported.name='z']",
    message: 'Write import * as z from "zod": the named import bundles four times as large.',
  },
  { selector: "JSXAttribute[name.name='dangerouslySetInnerHTML']", message: "Cell text enters the page as text only." },
];

// A column of a sheet is longer than the list of arguments that a function takes: a spread of cells ends in a stack overflow.
const spreadsOfCells = [
  "CallExpression[callee.object.name='Math'][callee.property.name=/^(min|max|hypot)$/] > SpreadElement",
  "CallExpression[callee.property.name=/^(push|unshift)$/] > SpreadElement",
].map((selector) => ({
  selector,
  message: "Cells are more than a call takes: smallestOf and largestOf of functions/extremes.ts, or a push for each.",
}));

// no-restricted-globals does not look at types.
const excelTypes = {
  selector: "TSQualifiedName[left.name=/^(Excel|Office|OfficeExtension|CustomFunctions)$/]",
  message: "Only the Excel adapter and the Excel start files know Excel: use the port's types.",
};

// An inch, a foot, a pound and what follows from them: a factor that is written twice is once written wrong.
const factors = {
  selector: "Literal[raw=/^0?(25[.]40*$|[.]3048|304[.]8|2[.]540*$|[.]0254|[.]0929|[.]02831|28[.]31|[.]7645|[.]4535|[.]9071)/]",
  message: "Units are converted in functions/quantities.ts alone: toUs and fromUs.",
};

// What is no promise of the grid's is reached in one folder, so that a newer grid is tried against one list.
const gridMembers = [
  "AssignmentExpression[left.property.name=/^(?!on)/][right.type=/^(Arrow)?FunctionExpression$/]",
  "MemberExpression[property.name=/^(_[a-z]|prototype$)/]",
  "TSAsExpression > TSAsExpression[typeAnnotation.type='TSUnknownKeyword']",
].map((selector) => ({ selector, message: "The grid's own members are reached in repairs/ alone: see its list.ts." }));

export default tseslint.config(
  { ignores: ["dist/**", ".coverage/**", ".stryker-tmp/**", "node_modules/**"] },
  {
    // A rule that could be switched off beside the line it catches would not be a rule.
    linterOptions: { noInlineConfig: true },
  },
  ...tseslint.configs.strict.map((config) => ({ ...config, files: [...SOURCE, ...TESTS] })),
  {
    name: "soakbook/everywhere",
    files: [...SOURCE, ...TESTS],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname + "/.." } },
    rules: {
      "@typescript-eslint/await-thenable": "error",
      "@typescript-eslint/no-floating-promises": "error",
      "@typescript-eslint/no-misused-promises": ["error", { checksVoidReturn: { attributes: false } }],
      "@typescript-eslint/switch-exhaustiveness-check": "error",
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
      eqeqeq: ["error", "always", { null: "ignore" }],
      "no-alert": "error",
      "no-eval": "error",
      "no-implied-eval": "error",
      "no-new-func": "error",
      "no-console": "off",
      "no-warning-comments": ["error", { terms: ["todo", "fixme", "hack", "xxx"] }],
      // The formatter gives each argument of a long call a line of its own.
      "max-lines": ["error", { max: 500, skipBlankLines: true, skipComments: true }],
      "prefer-const": "error",
      "no-restricted-syntax": ["error", ...unkeepable],
      "no-restricted-properties": ["error", ...skippedTests],
    },
  },
  {
    name: "soakbook/source",
    files: SOURCE,
    rules: {
      "@typescript-eslint/no-non-null-assertion": "error",
      "no-restricted-globals": ["error", ...dialogs, ...excelGlobals],
      "no-restricted-syntax": ["error", ...unkeepable, ...spreadsOfCells, factors, excelTypes],
      "no-restricted-properties": ["error", ...skippedTests, ...markupFromText],
    },
  },
  {
    name: "soakbook/embedded",
    files: ["addin/workbook/embedded/*.ts", "addin/workbook/embedded/xlsx/*.ts", "addin/window/*.ts", "addin/browser.ts"],
    rules: { "no-restricted-syntax": ["error", ...unkeepable, ...spreadsOfCells, factors, excelTypes, ...gridMembers] },
  },
  {
    name: "soakbook/factors and printed tables",
    files: ["functions/quantities.ts", "functions/published/*.ts"],
    rules: { "no-restricted-syntax": ["error", ...unkeepable, ...spreadsOfCells, excelTypes] },
  },
  {
    name: "soakbook/calculations",
    files: ["functions/**/*.ts"],
    rules: {
      // An index within the length of its array is there; a guard would be a branch that no test can reach.
      "@typescript-eslint/no-non-null-assertion": "off",
      "no-restricted-globals": ["error", ...dialogs, ...excelGlobals, ...hostGlobals],
      "no-restricted-properties": [
        "error",
        { object: "Math", property: "random", message: "The same inputs give the same answer." },
        { object: "Date", property: "now", message: "The same inputs give the same answer on any day." },
      ],
    },
  },
  {
    name: "soakbook/excel",
    files: EXCEL,
    plugins: { "office-addins": officeAddins },
    rules: {
      "no-restricted-globals": ["error", ...dialogs],
      "no-restricted-syntax": ["error", ...unkeepable, ...spreadsOfCells],
      "office-addins/call-sync-after-load": "error",
      "office-addins/call-sync-before-read": "error",
      "office-addins/load-object-before-read": "error",
      "office-addins/no-context-sync-in-loop": "error",
      "office-addins/no-empty-load": "error",
      "office-addins/no-navigational-load": "error",
      "office-addins/no-office-initialize": "error",
      "office-addins/test-for-null-using-isNullObject": "error",
    },
  },
  {
    name: "soakbook/tests",
    files: TESTS,
    rules: { "@typescript-eslint/no-non-null-assertion": "off" },
  },
  {
    name: "soakbook/tool configuration",
    files: ["tests/vitest.config.ts", "tests/bench/vitest.config.ts"],
    rules: { "no-restricted-syntax": "off" },
  },
);
