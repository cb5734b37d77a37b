import { describe, expect, test } from "vitest";
import packageJson from "../../package.json" with { type: "json" };
import { addinDescription, describeAddin } from "../../manifest/addin-description.ts";

describe("the add-in's description", () => {
  test("bears the version of the package", () => {
    expect(addinDescription.version).toBe(packageJson.version);
  });

  test("gives the two manifests different ids, so that Excel does not take one for the other", () => {
    expect(addinDescription.xmlId).not.toBe(addinDescription.jsonId);
  });

  test.each([
    ["an id that is not a GUID", "xmlId", { xmlId: "soakbook" }],
    ["a version of four parts", "version", { version: "1.0.0.0" }],
    ["a version under 1.0, in words", "Microsoft's validator refuses a manifest under 1.0", { version: "0.9.9" }],
    ["a name longer than 30 characters", "name", { name: "S".repeat(31) }],
    ["a summary longer than 80 characters", "summary", { summary: "S".repeat(81) }],
    ["a namespace with a dot, which Excel stores as an underscore", "namespace", { namespace: "SOAK.BOOK" }],
    ["an empty list of requirement sets", "requirementSets", { requirementSets: [] }],
    ["a field nobody knows", "colour", { colour: "#2E6F6B" }],
  ])("refuses %s", (_what, field, wrong) => {
    expect(() => describeAddin({ ...addinDescription, ...wrong })).toThrow(field);
  });
});
