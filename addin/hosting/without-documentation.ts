import { readFile } from "node:fs/promises";
import type { Plugin } from "esbuild";
import ts from "typescript";

/** Parts of a worksheet function's declaration that people read and a cell never needs. */
const DOCUMENTATION: ReadonlySet<string> = new Set(["summary", "sources", "cautions", "example", "equation", "working"]);
/** Where a published value stands in print. */
const PLACE_IN_PRINT = "from";

/**
 * Leaves the documentation of the worksheet functions out of a bundle. The pane, the reference and functions.json
 * take it from the full declarations; dist/functions.js must answer the first cell at once and stay small.
 */
export const withoutDocumentation: Plugin = {
  name: "without-documentation",
  setup(build) {
    build.onLoad({ filter: /[\\/]functions[\\/].+\.ts$/ }, async ({ path }) => ({
      contents: withoutDocumentationOf(await readFile(path, "utf8")),
      loader: "ts",
    }));
  },
};

/** The same module with documentation cut, and what is computed at its top marked as free to leave out when unused. */
export function withoutDocumentationOf(source: string): string {
  const file = ts.createSourceFile("module.ts", source, ts.ScriptTarget.Latest, true);
  const { transformed } = ts.transform(file, [(context) => (module) => ts.visitEachChild(module, (statement) => atTop(statement, context), context)]);
  return ts.createPrinter().printFile(transformed[0] ?? file);
}

function atTop(node: ts.Node, context: ts.TransformationContext): ts.Node {
  if (ts.isFunctionLike(node) || ts.isClassLike(node)) return node;
  if (ts.isObjectLiteralExpression(node)) return ts.visitEachChild(withoutProperties(node), (child) => atTop(child, context), context);
  const visited = ts.visitEachChild(node, (child) => atTop(child, context), context);
  if (ts.isPropertyAccessExpression(visited) && isCall(visited.expression)) {
    // The mark speaks for the whole chain it stands before, so an inner link gets brackets of its own.
    const { factory } = context;
    return factory.updatePropertyAccessExpression(visited, factory.createParenthesizedExpression(visited.expression), visited.name);
  }
  return isCall(visited) ? ts.addSyntheticLeadingComment(visited, ts.SyntaxKind.MultiLineCommentTrivia, " @__PURE__ ") : visited;
}

function isCall(node: ts.Node): boolean {
  return ts.isCallExpression(node) || ts.isNewExpression(node);
}

function withoutProperties(literal: ts.ObjectLiteralExpression): ts.ObjectLiteralExpression {
  const cut = isDeclaration(literal) ? DOCUMENTATION : isPublishedValue(literal) ? new Set([PLACE_IN_PRINT]) : null;
  if (cut === null) return literal;
  return ts.factory.updateObjectLiteralExpression(literal, literal.properties.filter((property) => !cut.has(nameOf(property))));
}

function isDeclaration({ parent }: ts.ObjectLiteralExpression): boolean {
  return ts.isCallExpression(parent) && ts.isIdentifier(parent.expression) && parent.expression.text === "worksheetFunction";
}

function isPublishedValue({ properties }: ts.ObjectLiteralExpression): boolean {
  const names = properties.map(nameOf);
  return names.includes("values") && names.includes(PLACE_IN_PRINT);
}

function nameOf({ name }: ts.ObjectLiteralElementLike): string {
  return name !== undefined && ts.isIdentifier(name) ? name.text : "";
}
