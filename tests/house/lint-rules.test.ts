import { fileURLToPath } from "node:url";
import { ESLint } from "eslint";
import tseslint from "typescript-eslint";
import { describe, expect, test } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

// The planted files are not on disk, so the rules that need the compiler's types are off here.
const eslint = new ESLint({
  cwd: root,
  overrideConfigFile: "tests/eslint.config.js",
  overrideConfig: [tseslint.configs.disableTypeChecked, { languageOptions: { parserOptions: { projectService: false } } }],
});

async function rulesBrokenBy(file: string, text: string): Promise<readonly (string | null)[]> {
  const [result] = await eslint.lintText(text, { filePath: `${root}/${file}` });
  return result?.messages.map((message) => message.ruleId ?? message.message) ?? [];
}

describe("the lint rules", () => {
  test.each([
    ["an action", "addin/actions/planted.ts"],
    ["the pane", "taskpane/planted.tsx"],
    ["a calculation", "functions/runoff/planted.ts"],
    ["the browser's start file", "addin/browser.ts"],
  ])("keep %s from speaking to Excel", async (_who, file) => {
    for (const used of [
      "Excel.run(work)",
      "Office.onReady(work)",
      "OfficeExtension.config",
      "CustomFunctions.associate('A', work)",
      "work as Excel.Range",
    ]) {
      expect(await rulesBrokenBy(file, `export const planted = (work: unknown) => [work, ${used}];`)).toEqual([
        expect.stringMatching(/^no-restricted-(globals|syntax)$/),
      ]);
    }
  });

  test("let the Excel adapter and the Excel start files speak to Excel", async () => {
    for (const file of ["addin/workbook/excel/excel-workbook.ts", "addin/excel.ts", "addin/excel-functions.ts"]) {
      expect(await rulesBrokenBy(file, "export const planted = Excel.run;")).toEqual([]);
    }
  });

  test("refuse the dialogs that Office blocks, in the Excel files too", async () => {
    for (const file of ["addin/excel.ts", "taskpane/planted.tsx"]) {
      for (const call of ["alert('x')", "confirm('x')", "prompt('x')"]) {
        expect(await rulesBrokenBy(file, `export const planted = () => ${call};`)).toContain("no-restricted-globals");
      }
    }
  });

  test("refuse a factor of units outside the file that converts, and let printed tables hold any number", async () => {
    for (const factor of ["25.4", "0.3048", ".0254", "0.09290304", "28.316846592", "0.45359237"]) {
      const text = `export const planted = (depth: number) => depth * ${factor};`;
      for (const file of ["functions/runoff/planted.ts", "taskpane/planted.tsx", "addin/actions/planted.ts"])
        expect(await rulesBrokenBy(file, text)).toEqual(["no-restricted-syntax"]);
      expect(await rulesBrokenBy("functions/quantities.ts", text)).toEqual([]);
      expect(await rulesBrokenBy("functions/published/planted.ts", text)).toEqual([]);
    }
    expect(await rulesBrokenBy("functions/runoff/planted.ts", "export const planted = [25.43, 0.305, 2.545];")).toEqual([]);
  });

  test("refuse a calculation that knows its host, the day or chance", async () => {
    const file = "functions/runoff/planted.ts";
    expect(await rulesBrokenBy(file, "export const planted = () => document.title;")).toContain("no-restricted-globals");
    expect(await rulesBrokenBy(file, "export const planted = () => Date.now();")).toContain("no-restricted-properties");
    expect(await rulesBrokenBy(file, "export const planted = () => Math.random();")).toContain("no-restricted-properties");
  });

  test("refuse markup made from text", async () => {
    expect(await rulesBrokenBy("taskpane/planted.tsx", "export const planted = (it: HTMLElement) => { it.innerHTML = 'x'; };")).toContain(
      "no-restricted-properties",
    );
    expect(
      await rulesBrokenBy("taskpane/planted.tsx", "export const planted = <p dangerouslySetInnerHTML={{ __html: 'x' }} />;"),
    ).toContain("no-restricted-syntax");
  });

  test("refuse a property of Excel's that is read before it was loaded", async () => {
    const text =
      "export async function planted(context: Excel.RequestContext) { const range = context.workbook.getSelectedRange(); await context.sync(); return range.address; }";
    expect(await rulesBrokenBy("addin/workbook/excel/excel-workbook.ts", text)).toContain("office-addins/load-object-before-read");
  });

  test("refuse a round trip to Excel inside a loop", async () => {
    const text = "export async function planted(context: Excel.RequestContext) { for (const _ of [1, 2]) { await context.sync(); } }";
    expect(await rulesBrokenBy("addin/workbook/excel/excel-workbook.ts", text)).toContain("office-addins/no-context-sync-in-loop");
  });

  test("refuse a default export, a barrel file, a skipped test and a note to finish later", async () => {
    expect(await rulesBrokenBy("addin/actions/planted.ts", "export default 1;")).toContain("no-restricted-syntax");
    expect(await rulesBrokenBy("addin/actions/planted.ts", 'export * from "./add-site.ts";')).toContain("no-restricted-syntax");
    expect(await rulesBrokenBy("tests/planted.test.ts", 'test.skip("rain", () => undefined);')).toContain("no-restricted-properties");
    expect(await rulesBrokenBy("addin/actions/planted.ts", `export const planted = 1; // ${"TO"}DO`)).toContain("no-warning-comments");
  });

  test("cannot be switched off beside the line they catch", async () => {
    const text = `// eslint-${"disable"}-next-line\nexport const planted = () => alert('x');`;
    expect(await rulesBrokenBy("taskpane/planted.tsx", text)).toContain("no-restricted-globals");
  });

  test("refuse zod's named import, which bundles four times as large", async () => {
    expect(await rulesBrokenBy("addin/records/planted.ts", 'import { z } from "zod"; export const planted = z;')).toContain(
      "no-restricted-syntax",
    );
    expect(await rulesBrokenBy("addin/records/planted.ts", 'import * as z from "zod"; export const planted = z;')).toEqual([]);
  });

  test("keep cells from being spread into a call, which a column of them overflows", async () => {
    for (const spread of ["Math.min(...cells)", "Math.max(0, ...cells)", "kept.push(...cells)", "kept.unshift(...cells)"])
      for (const file of [
        "addin/actions/planted.ts",
        "functions/basin/planted.ts",
        "addin/workbook/excel/excel-workbook.ts",
        "taskpane/planted.tsx",
      ])
        expect(await rulesBrokenBy(file, `export const planted = (cells: number[], kept: number[]) => [kept, ${spread}];`)).toEqual([
          "no-restricted-syntax",
        ]);
    expect(
      await rulesBrokenBy("addin/actions/planted.ts", "export const planted = (cells: number[]) => [...cells, Math.min(1, 2)];"),
    ).toEqual([]);
  });

  test("keep the grid's own members in the folder of its repairs", async () => {
    const reaching = [
      "(grid: any) => grid._engine.stop()",
      "(grid: any) => { grid.engine.execute = () => undefined; }",
      "(grid: any) => { grid.prototype.calculate(); }",
      "(grid: unknown) => grid as unknown as { readonly engine: object }",
    ];
    for (const text of reaching) {
      for (const file of ["addin/workbook/embedded/planted.ts", "addin/workbook/embedded/xlsx/planted.ts", "addin/window/planted.ts"])
        expect(await rulesBrokenBy(file, `export const planted = ${text};`), `${file}: ${text}`).toContain("no-restricted-syntax");
      expect(await rulesBrokenBy("addin/workbook/embedded/repairs/planted.ts", `export const planted = ${text};`)).not.toContain(
        "no-restricted-syntax",
      );
    }
  });
});
