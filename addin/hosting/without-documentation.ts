import { readFile } from "node:fs/promises";
import type { Plugin } from "esbuild";
import ts from "typescript";

/** Parts of a worksheet function's declaration that people read and a cell never needs. */
const DOCUMENTATION: ReadonlySet<string> = new Set(["summary", "sources", "cautions", "example", "equation", "working"]);
/** Where a published value stands in print. */
const PLACE_IN_PRINT = "from";
/** What stands in an object that a function makes, or in a class, says by this tag that only people's readers of the catalogue ask for it. */
const DOCUMENTATION_TAG = "documentation";

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
  const { transformed } = ts.transform(file, [
    (context) => (module) => ts.visitEachChild(module, (statement) => atTop(statement, context), context),
  ]);
  return ts.createPrinter().printFile(transformed[0] ?? file);
}

function atTop(node: ts.Node, context: ts.TransformationContext): ts.Node {
  if (ts.isFunctionLike(node) || ts.isClassLike(node)) return withoutTagged(node, context);
  if (ts.isObjectLiteralExpression(node)) return ts.visitEachChild(withoutProperties(node), (child) => atTop(child, context), context);
  const visited = ts.visitEachChild(node, (child) => atTop(child, context), context);
  if (
    ts.isVariableDeclaration(visited) &&
    ts.isIdentifier(visited.name) &&
    visited.initializer !== undefined &&
    mayDoMore(visited.initializer)
  ) {
    const { factory } = context;
    const later = factory.createArrowFunction(
      undefined,
      undefined,
      [],
      undefined,
      undefined,
      factory.createParenthesizedExpression(visited.initializer),
    );
    const computed = free(factory.createCallExpression(factory.createParenthesizedExpression(later), undefined, []));
    return factory.updateVariableDeclaration(visited, visited.name, undefined, undefined, computed);
  }
  if (ts.isPropertyAccessExpression(visited) && isCall(visited.expression)) {
    // The mark speaks for the whole chain it stands before, so an inner link gets brackets of its own.
    const { factory } = context;
    return factory.updatePropertyAccessExpression(visited, factory.createParenthesizedExpression(visited.expression), visited.name);
  }
  return isCall(visited) ? free(visited) : visited;
}

function free<Node extends ts.Node>(call: Node): Node {
  return ts.addSyntheticLeadingComment(call, ts.SyntaxKind.MultiLineCommentTrivia, " @__PURE__ ");
}

/** Spreading, filling in words and reading a property could run anything, for all that the bundler knows. */
function mayDoMore(node: ts.Node): boolean {
  if (ts.isFunctionLike(node) || ts.isClassLike(node)) return false;
  return (
    ts.isSpreadElement(node) ||
    ts.isTemplateExpression(node) ||
    ts.isPropertyAccessExpression(node) ||
    ts.forEachChild(node, mayDoMore) === true
  );
}

function withoutTagged(node: ts.Node, context: ts.TransformationContext): ts.Node {
  return ts.visitEachChild(withoutTaggedMembers(node), (child) => withoutTagged(child, context), context);
}

function withoutTaggedMembers(node: ts.Node): ts.Node {
  const isKept = (member: ts.Node): boolean => !isTagged(member);
  if (ts.isObjectLiteralExpression(node)) return ts.factory.updateObjectLiteralExpression(node, node.properties.filter(isKept));
  if (!ts.isClassDeclaration(node)) return node;
  const { modifiers, name, typeParameters, heritageClauses, members } = node;
  return ts.factory.updateClassDeclaration(node, modifiers, name, typeParameters, heritageClauses, members.filter(isKept));
}

function isTagged(node: ts.Node): boolean {
  return ts.getJSDocTags(node).some(({ tagName }) => tagName.text === DOCUMENTATION_TAG);
}

function isCall(node: ts.Node): boolean {
  return ts.isCallExpression(node) || ts.isNewExpression(node);
}

function withoutProperties(literal: ts.ObjectLiteralExpression): ts.ObjectLiteralExpression {
  const cut = isDeclaration(literal) ? DOCUMENTATION : isPublishedValue(literal) ? new Set([PLACE_IN_PRINT]) : null;
  if (cut === null) return literal;
  return ts.factory.updateObjectLiteralExpression(
    literal,
    literal.properties.filter((property) => !cut.has(nameOf(property))),
  );
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
