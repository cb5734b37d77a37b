/**
 * How a word that people type is read, everywhere: in functions, records, forms and, by `asWord` of addin/records, in the
 * workbook's own formulas. Spaces before and after do not count, several between words count as one, and a non-breaking
 * space from a web page is a space. No other sign is: what formulas cannot read is not read here either, and is named.
 */
export function plainWords(text: string): string {
  return text.replace(SPACES, " ").replace(/^ | $/g, "");
}

const SPACES = /[ \u00a0]+/g;

/** The form in which words are compared: case does not count. */
export function plainKey(text: string): string {
  return plainWords(text).toLowerCase();
}

/** The one of a list of keys that is meant by what is typed, or undefined. */
export function keyAmong<Key extends string>(keys: readonly Key[], typed: string): Key | undefined {
  const plain = plainKey(typed);
  return keys.find((key) => plainKey(key) === plain);
}
