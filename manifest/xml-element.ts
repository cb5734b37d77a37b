/** One XML element, its children on lines of their own. Text and attributes are escaped here and nowhere else. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly content: string | readonly XmlElement[];
}

export function element(name: string, attributes: Readonly<Record<string, string>> = {}, ...children: readonly XmlElement[]): XmlElement {
  return { name, attributes, content: children };
}

export function textElement(name: string, text: string): XmlElement {
  return { name, attributes: {}, content: text };
}

export function xmlDocument(root: XmlElement): string {
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${lines(root, "").join("\n")}\n`;
}

function lines({ name, attributes, content }: XmlElement, indent: string): readonly string[] {
  const start = [name, ...Object.entries(attributes).map(([key, value]) => `${key}="${escaped(value)}"`)].join(" ");
  if (typeof content === "string") return [`${indent}<${start}>${escaped(content)}</${name}>`];
  if (content.length === 0) return [`${indent}<${start}/>`];
  return [`${indent}<${start}>`, ...content.flatMap((child) => lines(child, `${indent}  `)), `${indent}</${name}>`];
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}
