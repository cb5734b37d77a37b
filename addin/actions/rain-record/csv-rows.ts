import { largestOf } from "../../../functions/extremes.ts";

/** One line of a CSV text, with the number it has in the text. */
export interface CsvRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface CsvRows {
  readonly separator: Separator;
  readonly rows: readonly CsvRow[];
}

export type Separator = (typeof SEPARATORS)[number];

/** In the order in which they are believed: a comma may stand inside a number, the others do not. */
const SEPARATORS = [";", "\t", "|", ","] as const;

/** The rows of a CSV text (RFC 4180, with any of four separators), blank lines left out; a sentence where it is none. */
export function csvRows(text: string): CsvRows | { readonly sentence: string } {
  const plain = text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;
  if (plain.trim() === "") return { sentence: "There is nothing in it." };
  const separator = separatorOf(plain);
  if (separator === null) return { sentence: "No line has two columns: put a comma, a semicolon or a tab between the date and the depth." };
  const rows = plain.includes('"') ? quotedRows(plain, separator) : plainRows(plain, separator);
  return "sentence" in rows ? rows : { separator, rows };
}

const BYTE_ORDER_MARK = "\uFEFF";
const LINE_END = /\r\n|\r|\n/;
const LINES_LOOKED_AT = 50;

/** The separator that stands equally often in most lines, outside quotes. */
function separatorOf(text: string): Separator | null {
  const lines = text
    .slice(0, 20_000)
    .replace(/"[^"]*"/g, "cell")
    .split(LINE_END)
    .filter((line) => line.trim() !== "")
    .slice(0, LINES_LOOKED_AT);
  const scores = SEPARATORS.map((separator) => {
    const counts = lines.map((line) => line.split(separator).length - 1);
    const usual = counts[Math.floor(counts.length / 2)] ?? 0;
    return usual === 0 ? 0 : counts.filter((count) => count === usual).length;
  });
  const best = largestOf(scores);
  return best === 0 ? null : (SEPARATORS[scores.indexOf(best)] ?? null);
}

function plainRows(text: string, separator: Separator): readonly CsvRow[] {
  return text
    .split(LINE_END)
    .flatMap((line, index): CsvRow[] =>
      line.trim() === "" ? [] : [{ line: index + 1, cells: line.split(separator).map((cell) => cell.trim()) }],
    );
}

/** A quote inside quotes is written twice; line ends and separators inside quotes belong to the cell. */
function quotedRows(text: string, separator: Separator): readonly CsvRow[] | { readonly sentence: string } {
  const rows: CsvRow[] = [];
  const piece = new RegExp(
    `(?:\\s*"((?:[^"]|"")*)"[^${separator}\\r\\n]*|([^${separator}\\r\\n]*))(${separator === "|" ? "\\|" : separator}|\\r\\n|\\r|\\n|$)`,
    "y",
  );
  let cells: string[] = [];
  let line = 1;
  let lineOfRow = 1;
  for (let match = piece.exec(text); match !== null; match = piece.exec(text)) {
    const [whole, quoted, bare = "", end = ""] = match;
    if (quoted === undefined && bare.trimStart().startsWith('"'))
      return { sentence: `A quote that opens in line ${line} is never closed.` };
    cells.push((quoted?.replaceAll('""', '"') ?? bare).trim());
    line += whole.match(/\r\n|\r|\n/g)?.length ?? 0;
    if (end === separator) continue;
    if (cells.some((cell) => cell !== "")) rows.push({ line: lineOfRow, cells });
    cells = [];
    lineOfRow = line;
    if (piece.lastIndex >= text.length) break;
  }
  return rows;
}
