/** Markup that is safe to put into a page as it is. */
export class Html {
  constructor(readonly text: string) {}
}

const ENTITIES: ReadonlyMap<string, string> = new Map([
  ["&", "&amp;"],
  ["<", "&lt;"],
  [">", "&gt;"],
  ['"', "&quot;"],
  ["'", "&#39;"],
]);

/** Markup around values; a value that is text stays text, whatever characters it holds. */
export function html(parts: TemplateStringsArray, ...values: readonly (string | Html)[]): Html {
  return new Html(String.raw({ raw: parts }, ...values.map((value) => (value instanceof Html ? value.text : escaped(value)))));
}

export function list(items: readonly Html[]): Html {
  return new Html(items.map(({ text }) => text).join("\n"));
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => ENTITIES.get(character) ?? "");
}
