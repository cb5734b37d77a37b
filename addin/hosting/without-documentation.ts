import { readFile } from "node:fs/promises";
import type { Plugin } from "esbuild";
import ts from "typescript";

/** Parts of a declaration that people read and a cell never needs. */
const DOCUMENTATION: ReadonlySet<string> = new Set(["summary", "sources", "cautions", "example"]);

/**
 * Leaves the documentation of every worksheet function out of a bundle. The pane, the reference and functions.json
 * take it from the full declarations; dist/functions.js must answer the first cell at once and stay small.
 */
export const withoutDocumentation: Plugin = {
  name: "without-documentation",
  setup(build) {
    build.onLoad({ filter: /[\\/]functions[\\/]worksheet[\\/][^\\/]+\.ts$/ }, async ({ path }) => ({
      contents: withoutDocumentationOf(await readFile(path, "utf8"), path),
      loader: "ts",
    }));
  },
};

export function withoutDocumentationOf(source: string, path: string): string {
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true);
  const cuts: { from: number; to: number }[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && node.expression.getText(file) === "worksheetFunction") {
      const [declaration] = node.arguments;
      if (declaration !== undefined && ts.isObjectLiteralExpression(declaration)) {
        for (const property of declaration.properties) {
          if (property.name !== undefined && DOCUMENTATION.has(property.name.getText(file))) cuts.push(cutOf(property));
        }
      }
    }
    ts.forEachChild(node, visit);
  };
  const cutOf = (property: ts.ObjectLiteralElementLike) => {
    const end = property.getEnd();
    return { from: property.getStart(file), to: source[end] === "," ? end + 1 : end };
  };
  visit(file);
  // From the end backwards, so that earlier positions stay true.
  return cuts.sort((one, other) => other.from - one.from).reduce((text, { from, to }) => text.slice(0, from) + text.slice(to), source);
}
