import type { AddinDescription } from "./addin-description.ts";

/**
 * shortcuts.json: the keys of commands, for Excel that reads the add-in only manifest. Excel asks the person where two
 * add-ins, or an add-in and Excel itself, want the same keys.
 */
export function shortcuts({ commands }: AddinDescription) {
  const withKeys = commands.flatMap(({ id, label, keys }) => (keys === undefined ? [] : [{ id, label, keys }]));
  return {
    actions: withKeys.map(({ id, label }) => ({ id, type: "ExecuteFunction", name: label })),
    shortcuts: withKeys.map(({ id, keys }) => ({ action: id, key: { default: keys } })),
  };
}
