import { parseTree } from "custom-functions-metadata";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { functionsMetadata } from "../../manifest/functions-metadata.ts";

// Limits of Excel's custom functions: the schema of the unified manifest 1.29, "extensionFunction" and
// "extensionFunctionParameter" (read in transcription, in the package @microsoft/app-manifest).
const LIMITS = { functions: 20_000, id: 64, description: 1024, parameters: 128, parameterName: 64, parameterDescription: 512 };

const { functions, allowErrorForDataTypeAny } = functionsMetadata(catalogue);
const everyFunction = functions.map((listed) => [listed.name, listed] as const);

describe("functions.json", () => {
  test("lists the catalogue in its order", () => {
    expect(functions.map(({ id }) => id)).toEqual(catalogue.map(({ name }) => name));
    expect(functions.length).toBeLessThanOrEqual(LIMITS.functions);
  });

  test("lets errors in arguments reach the functions, so that each stays in its own row", () => {
    expect(allowErrorForDataTypeAny).toBe(true);
  });

  test.each(everyFunction)("%s has an id and a name that Excel takes, one and the same", (_, { id, name, description }) => {
    expect(id).toBe(name);
    expect(id).toMatch(/^[a-zA-Z][a-zA-Z0-9._]*$/);
    expect(id.length).toBeGreaterThanOrEqual(3);
    expect(id.length).toBeLessThanOrEqual(LIMITS.id);
    expect(description.length).toBeGreaterThan(0);
    expect(description.length).toBeLessThanOrEqual(LIMITS.description);
  });

  test.each(everyFunction)("%s takes and gives ranges of anything", (_, { parameters, result }) => {
    expect(result).toEqual({ dimensionality: "matrix" });
    expect(parameters.length).toBeLessThanOrEqual(LIMITS.parameters);
    for (const { name, description, type, dimensionality } of parameters) {
      expect([type, dimensionality]).toEqual(["any", "matrix"]);
      expect(name.length).toBeLessThanOrEqual(LIMITS.parameterName);
      expect(description?.length).toBeGreaterThan(0);
      expect(description?.length).toBeLessThanOrEqual(LIMITS.parameterDescription);
    }
  });

  test("holds nothing that JSON cannot", () => {
    const metadata = functionsMetadata(catalogue);
    expect(JSON.parse(JSON.stringify(metadata))).toEqual(metadata);
  });

  test("points each function at its place in the help page, when there is one", () => {
    const [first] = functionsMetadata(catalogue, (name) => `https://example.org/help.html#${name}`).functions;
    expect(first?.helpUrl).toBe(`https://example.org/help.html#${catalogue[0]?.name}`);
    expect(functions[0]).not.toHaveProperty("helpUrl");
  });

  // custom-functions-metadata is the tool that writes functions.json from commented TypeScript. Told of our functions in
  // the form that it reads, it must write what we write.
  test("says of every function what Microsoft's own tool says of it", () => {
    const source = functions
      .map(({ id, description, parameters }) =>
        [
          "/**",
          ` * ${inOneComment(description)}`,
          ` * @customfunction ${id}`,
          ...parameters.map(({ name, description: what }) => ` * @param ${name} ${inOneComment(what ?? "")}`),
          " */",
          `function ${id.toLowerCase()}(${parameters.map(({ name, optional }) => `${name}${optional === true ? "?" : ""}: any[][]`).join(", ")}): any[][] { return []; }`,
        ].join("\n"),
      )
      .join("\n\n");
    const { functions: toldOf, extras } = parseTree(source, "functions.ts");
    expect(extras.flatMap(({ errors }) => errors)).toEqual([]);
    const comparable = ({ id, name, description, parameters, result }: Told) => ({
      id,
      name,
      description: inOneComment(description ?? ""),
      dimensionality: result?.dimensionality,
      parameters: parameters.map((one) => ({
        name: one.name,
        description: inOneComment(one.description ?? ""),
        type: one.type,
        dimensionality: one.dimensionality,
        optional: one.optional === true,
      })),
    });
    expect(toldOf.map(comparable)).toEqual(functions.map(comparable));
  });
});

interface Told {
  readonly id: string;
  readonly name: string;
  readonly description?: string | undefined;
  readonly parameters: readonly {
    readonly name: string;
    readonly description?: string | undefined;
    readonly type?: string | undefined;
    readonly dimensionality?: string;
    readonly optional?: boolean;
  }[];
  readonly result?: { readonly dimensionality?: string | undefined } | undefined;
}

/** In a comment an @ begins a tag, and the end of a comment its end. */
function inOneComment(words: string): string {
  return words.replaceAll("@", "at").replaceAll("*/", "");
}
