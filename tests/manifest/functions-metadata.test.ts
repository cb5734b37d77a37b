import { parseTree } from "custom-functions-metadata";
import { describe, expect, test } from "vitest";
import { isCellError, type CellInput } from "../../functions/worksheet/calling/cell.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { functionsMetadata, type ListedParameter } from "../../manifest/functions-metadata.ts";

// Limits of Excel's custom functions: the schema of the unified manifest 1.29, "extensionFunction" and
// "extensionFunctionParameter" (read in transcription, in the package @microsoft/app-manifest).
const LIMITS = { functions: 20_000, id: 64, description: 1024, parameters: 128, parameterName: 64, parameterDescription: 512 };

const { functions, allowErrorForDataTypeAny, enums } = functionsMetadata(catalogue);
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

  // "enum" in the schema of the unified manifest 1.30: an id of 3 to 64 letters, digits, dots and underscores, at most 256 lists.
  test("offers a pick list for every argument that takes one of a few words, each list once", () => {
    expect(enums.length).toBeLessThanOrEqual(256);
    for (const { id, values } of enums) {
      expect(id).toMatch(/^[A-Za-z][A-Za-z0-9._]{2,63}$/);
      for (const { name } of values) expect(name.length).toBeLessThanOrEqual(256);
    }
    expect(new Set(enums.map(({ id }) => id)).size).toBe(enums.length);
    expect(new Set(enums.map(({ values }) => JSON.stringify(values))).size).toBe(enums.length);
    const used = functions.flatMap(({ parameters }) => parameters.flatMap(({ customEnumId }) => customEnumId ?? []));
    expect([...new Set(used)].sort()).toEqual(enums.map(({ id }) => id).sort());
    const taken = catalogue.flatMap(({ parameters }) => parameters.filter(({ choices, isRange }) => choices !== undefined && !isRange));
    expect(used.length).toBe(taken.length);
  });

  test("is answered for every word of its lists, alone and as a column of a range, where the rows answer one by one", () => {
    const overColumns: string[] = [];
    for (const { name, parameters, result, example, evaluate } of catalogue) {
      parameters.forEach(({ key, choices, isRange }, place) => {
        if (choices === undefined || isRange) return;
        const given = (word: CellInput) => evaluate(parameters.map((_, each) => (each === place ? word : example.arguments[each])));
        const alone = choices.map((choice) => given(choice));
        for (const cell of alone.flat(2))
          if (isCellError(cell)) expect(cell.sentence, `${name}: ${key}`).not.toMatch(/must be .+; it is|not in its list/);
        const column = given(choices.map((choice) => [choice]));
        // A function of a whole series, or of a table, asks for a single cell, in words.
        if (result.shape === "table" || column.length !== choices.length) return;
        overColumns.push(name);
        expect(column, `${name}: ${key}`).toEqual(alone.map(([row]) => row));
      });
    }
    expect(overColumns.length).toBeGreaterThan(50);
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
    const lists = enums
      .map(({ id, values }) => {
        const members = values.map(({ stringValue }, place) => `m${place} = ${JSON.stringify(stringValue)}`);
        return `/** @customenum {string} */\nenum ${inTypeName(id)} { ${members.join(", ")} }`;
      })
      .join("\n");
    const source = functions
      .map(({ id, description, parameters }) =>
        [
          "/**",
          ` * ${inOneComment(description)}`,
          ` * @customfunction ${id}`,
          ...parameters.map(({ name, description: what }) => ` * @param ${name} ${inOneComment(what ?? "")}`),
          " */",
          `function ${id.toLowerCase()}(${parameters.map(inTypeScript).join(", ")}): any[][] { return []; }`,
        ].join("\n"),
      )
      .join("\n\n");
    const { functions: toldOf, enums: toldLists, extras } = parseTree(`${lists}\n${source}`, "functions.ts");
    expect(extras.flatMap(({ errors }) => errors)).toEqual([]);
    const comparable = ({ id, name, description, parameters, result }: Told) => ({
      id,
      name,
      description: inOneComment(description ?? ""),
      dimensionality: result?.dimensionality,
      parameters: parameters.map((one) => ({
        name: one.name,
        description: inOneComment(one.description ?? ""),
        // The tool calls what has a pick list a string, which would keep errors out of it.
        type: one.customEnumId === undefined ? one.type : "a pick list",
        list: one.customEnumId === undefined ? null : inTypeName(one.customEnumId),
        dimensionality: one.dimensionality,
        optional: one.optional === true,
      })),
    });
    expect(toldOf.map(comparable)).toEqual(functions.map(comparable));
    const inList = ({ id, type, values }: ToldList) => ({ id: inTypeName(id), type, values: values.map(({ stringValue }) => stringValue) });
    expect((toldLists ?? []).map(inList)).toEqual(enums.map(inList));
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
    readonly customEnumId?: string | undefined;
  }[];
  readonly result?: { readonly dimensionality?: string | undefined } | undefined;
}

interface ToldList {
  readonly id: string;
  readonly type: string;
  readonly values: readonly { readonly stringValue?: string | undefined }[];
}

function inTypeScript({ name, optional, customEnumId }: ListedParameter): string {
  return `${name}${optional === true ? "?" : ""}: ${customEnumId === undefined ? "any" : inTypeName(customEnumId)}[][]`;
}

/** A type's name has no dot. */
function inTypeName(id: string): string {
  return id.replaceAll(".", "_");
}

/** In a comment an @ begins a tag, and the end of a comment its end. */
function inOneComment(words: string): string {
  return words.replaceAll("@", "at").replaceAll("*/", "");
}
