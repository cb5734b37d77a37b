import { readFile } from "node:fs/promises";
import type { Plugin } from "esbuild";

/** A field of a class as the grid's formula engine was compiled: `_defineProperty(this, "_values", [])`. */
const DEFINED_FIELD = /_defineProperty\(this, "([A-Za-z_$][\w$]*)",/g;

const ACCESSOR = /^\s*(?:static )?(?:get|set) ([A-Za-z_$][\w$]*)\(/gm;

/**
 * Sets the fields of the grid's formula engine by plain assignment. The engine makes an object for every cell that a
 * formula looks at, and defining each field by a call takes a third of all its time. An assignment would call an
 * accessor of the same name, so fields with the name of any accessor stay as they are.
 */
export const plainFields: Plugin = {
  name: "plain-fields",
  setup(build) {
    build.onLoad({ filter: /[\\/]@univerjs[\\/]engine-formula[\\/]lib[\\/]es[\\/]index\.js$/ }, async ({ path }) => ({
      contents: withPlainFields(await readFile(path, "utf8")),
      loader: "js",
    }));
  },
};

/** The brackets of the call go around the assignment. */
export function withPlainFields(source: string): string {
  const accessors = new Set([...source.matchAll(ACCESSOR)].map(([, name]) => name));
  return source.replace(DEFINED_FIELD, (call, name: string) => (accessors.has(name) ? call : `(this.${name} =`));
}
