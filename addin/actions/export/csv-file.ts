/** A table as comma-separated text, for any program that reads one. Numbers stay numbers; text can never run as a formula. */
export function csvFile(rows: readonly (readonly (string | number | null)[])[]): string {
  return BYTE_ORDER_MARK + rows.map((row) => row.map(field).join(",") + LINE_END).join("");
}

/** The same for pasting into a spreadsheet: a tab between cells, so that no text may hold one, nor a line break. */
export function pastedTable(rows: readonly (readonly (string | number | null)[])[]): string {
  return rows
    .map((row) =>
      row.map((value) => (typeof value === "string" ? neutralText(value.replace(/[\r\n\t\v\f]+/g, " ")) : field(value))).join("\t"),
    )
    .join("\n");
}

/** Tells a spreadsheet that the text is UTF-8. */
export const BYTE_ORDER_MARK = "\ufeff";

const LINE_END = "\r\n";

function field(value: string | number | null): string {
  if (value === null) return "";
  // Fifteen digits are what a spreadsheet keeps; more would only show how a computer holds 0.1.
  if (typeof value === "number") return String(Number(value.toPrecision(15)));
  const safe = neutralText(value);
  return /[",\r\n;\t]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * An apostrophe before everything that a spreadsheet could take for the start of a formula: = + - @ and their
 * full-width forms at the start of the text and after each line break, tab or semicolon (which separate fields in
 * other countries), spaces before them or not; and before a tab or line break that starts the text. Half characters
 * and the character 0, which no file of text can carry, become the replacement character.
 */
export function neutralText(text: string): string {
  return text.replace(UNWRITABLE, "\ufffd").replace(STARTS_A_FORMULA, "'");
}

const UNWRITABLE = /[\p{Cs}\0]/gu;

// Marks that take no room, such as those of writing direction, count as spaces here.
const STARTS_A_FORMULA =
  /(?<![^\r\n\t;\v\f\u0085\u2028\u2029])(?=(?:(?![\r\n\t;\v\f\u0085\u2028\u2029])[\s\p{Cf}])*[=+\-@\uff1d\uff0b\uff0d\uff20])|(?<![^])(?=[\t\r\n])/gu;
