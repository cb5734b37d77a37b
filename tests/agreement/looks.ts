import type { CellRange } from "../../addin/workbook/port.ts";
import type { Spreadsheet } from "../contract/spreadsheet.ts";

/** What a cell looks like and accepts, which the port writes and never reads. */
export interface CellLook {
  readonly format: string | null;
  readonly fill: string | null;
  readonly choices: readonly string[] | null;
}

/** Looks at one cell of the spreadsheet behind an adapter. */
export type LookAt = (cell: CellRange) => CellLook;

export function excelLookAt(book: Spreadsheet): LookAt {
  return ({ sheet: name, row, column }) => {
    const sheet = book.sheetNamed(name);
    const text = (format: string) => (sheet?.formatAt(row, column, format) ?? null) as string | null;
    const rule = sheet?.validationAt(row, column)?.rule as { readonly list?: { readonly source: string } } | undefined;
    return {
      format: text("NumberFormat"),
      fill: text("Fill")?.toLowerCase() ?? null,
      choices: rule?.list === undefined ? null : choicesFrom(book, rule.list.source),
    };
  };
}

/** A list is written in the rule itself, or stands in a column: =Sites!$E$3:$E$7. */
function choicesFrom(book: Spreadsheet, source: string): readonly string[] {
  if (!source.startsWith("=")) return source.split(",");
  const [, quoted, plain, letters = "", first, last] =
    /^=(?:'((?:[^']|'')+)'|([^'!]+))!\$([A-Z]+)\$(\d+):\$[A-Z]+\$(\d+)$/.exec(source) ?? [];
  const sheet = book.sheetNamed(quoted?.replaceAll("''", "'") ?? plain ?? "");
  const column = [...letters].reduce((count, letter) => count * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return Array.from({ length: Number(last) - Number(first) + 1 }, (_, index) =>
    String(sheet?.contentAt(Number(first) - 1 + index, column) ?? ""),
  );
}

/** The looks of an area, a line a column: where cells one under the other look alike, from which row to which, and how. */
export function looksOf(lookAt: LookAt, { sheet, row, column, rows, columns }: CellRange): readonly string[] {
  return Array.from({ length: columns }, (_, across) => {
    const runs: { from: number; to: number; look: string }[] = [];
    for (let down = row; down < row + rows; down += 1) {
      const look = JSON.stringify(lookAt({ sheet, row: down, column: column + across, rows: 1, columns: 1 }));
      const last = runs.at(-1);
      if (last?.look === look) last.to = down;
      else runs.push({ from: down, to: down, look });
    }
    return `column ${column + across}: ${runs.map(({ from, to, look }) => `${from} to ${to} ${look}`).join("; ")}`;
  });
}
