import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, it } from "vitest";
import { withPlainFields } from "../../../addin/hosting/plain-fields.ts";

const engine = createRequire(import.meta.url)
  .resolve("@univerjs/engine-formula")
  .replace(/lib[\\/].*$/, "lib/es/index.js");

it("a field that is set by a call is set by an assignment, whatever its value is made of", () => {
  expect(withPlainFields('constructor() { _defineProperty(this, "_values", [f(1, ")")]); }')).toBe(
    'constructor() { (this._values = [f(1, ")")]); }',
  );
});

it("a field with the name of an accessor stays as it is, because an assignment would call the accessor", () => {
  const source = 'class Row {\n  get row() {}\n}\nclass Cell {\n  constructor() { _defineProperty(this, "row", 1); }\n}';
  expect(withPlainFields(source)).toBe(source);
});

it("the values that the formula engine makes for every cell are among those changed", () => {
  const changed = withPlainFields(readFileSync(engine, "utf8"));
  const made = ["_values", "_customData", "pattern"].filter((field) => changed.includes(`(this.${field} =`));
  expect(made).toEqual(["_values", "_customData", "pattern"]);
});
