import { largestOf } from "../../../functions/extremes.ts";
import type { SheetLayout, Workbook } from "../../workbook/port.ts";
import type { PrintedBlock, PrintedDocument } from "./printed-page.ts";

/**
 * Lays documents out on a sheet of their own, one below the other, for a window that neither prints nor saves files: the
 * spreadsheet prints it, one page wide. All of it is words; nothing of the program reads it.
 */
export async function layOutDocuments(workbook: Workbook, sheet: string, documents: readonly PrintedDocument[]): Promise<void> {
  const [first] = documents;
  if (first === undefined) throw new Error("There is nothing to lay out.");
  const preface = [first.title, first.subtitle].filter((line) => line !== "");
  const below = documents.flatMap((each, place) => [
    ...(place === 0 ? [] : [[], [each.title], [each.subtitle]]),
    ...each.blocks.flatMap((block) => [[], ...rowsOf(block)]),
  ]);
  const columns = largestOf([1, ...below.map(({ length }) => length)]);
  const widths = Array.from({ length: columns }, (_, column) => widthOf(below, column));
  const rows = below.flatMap((cells) => brokenRow(cells, widths));
  await workbook.addSheets([layoutOfPaper(sheet, preface, widths)]);
  await workbook.writeValues([
    {
      range: { sheet, row: preface.length + 1, column: 0, rows: rows.length, columns },
      values: rows.map((row) => Array.from({ length: columns }, (_, column) => row[column] || null)),
    },
  ]);
  await workbook.select({ sheet, row: 0, column: 0, rows: 1, columns: 1 });
}

function rowsOf(block: PrintedBlock): readonly (readonly string[])[] {
  if ("heading" in block) return [[block.heading]];
  if ("paragraph" in block) return [[block.paragraph]];
  if ("facts" in block) return block.facts.map(([label, value]) => [label, value]);
  if ("list" in block) return block.list.map((line) => [`- ${line}`]);
  if ("blanks" in block) return block.blanks.map((label) => [label, "______________________________"]);
  const { caption, columns, rows } = block.table;
  return [...(caption === "" ? [] : [[caption]]), columns.map(({ heading }) => heading), ...rows];
}

const CHARACTER_PIXELS = 7;
const NARROWEST_PIXELS = 64;
const WIDEST_PIXELS = 300;
/** A sentence alone in its row runs over all columns, and over the page's edge if it is longer. */
const PAGE_PIXELS = 700;

/** By the longest words that share their row with others. */
function widthOf(rows: readonly (readonly string[])[], column: number): number {
  const longest = largestOf([0, ...rows.filter(({ length }) => length > 1).map((row) => row[column]?.length ?? 0)]);
  return Math.min(Math.max(longest * CHARACTER_PIXELS, NARROWEST_PIXELS), WIDEST_PIXELS);
}

/** As many rows as its longest cell takes lines. */
function brokenRow(cells: readonly string[], widths: readonly number[]): readonly (readonly string[])[] {
  const whole = Math.max(
    widths.reduce((sum, width) => sum + width, 0),
    PAGE_PIXELS,
  );
  const lines = cells.map((text, column) => linesOf(text, cells.length === 1 ? whole : (widths[column] ?? whole)));
  const height = largestOf([1, ...lines.map(({ length }) => length)]);
  return Array.from({ length: height }, (_, line) => lines.map((own) => own[line] ?? ""));
}

function linesOf(text: string, pixels: number): readonly string[] {
  const most = Math.floor(pixels / CHARACTER_PIXELS);
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > most) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return line === "" ? lines : [...lines, line];
}

function layoutOfPaper(name: string, preface: readonly string[], widths: readonly number[]): SheetLayout {
  return {
    name,
    headingRow: preface.length,
    preface,
    rows: 0,
    frozenColumns: 0,
    columns: widths.map((widthPixels) => ({ heading: "", widthPixels, role: "input" })),
  };
}
