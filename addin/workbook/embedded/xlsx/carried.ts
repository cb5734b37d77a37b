/**
 * What a file may have and the grid cannot show. It stays with its sheet or its cell, and goes out again as it came in;
 * what the file cannot be given back is named when it is opened.
 */
import type { Cell, Sheet, WriteSheet } from "hucre/xlsx";
import type { CellValue } from "../../port.ts";

/** The keys stand in saved workbooks: they are only ever added to. */
const OF_A_SHEET = [
  "conditionalRules",
  "pageSetup",
  "headerFooter",
  "rowBreaks",
  "colBreaks",
  "sparklines",
  "outlineProperties",
  "protection",
] as const satisfies readonly (keyof Sheet & keyof WriteSheet)[];

type CarriedBySheet = Partial<Pick<Sheet & WriteSheet, (typeof OF_A_SHEET)[number]>>;

export function carriedBySheet(sheet: Sheet): { readonly custom?: { readonly inFile: CarriedBySheet } } {
  const inFile = Object.fromEntries(OF_A_SHEET.flatMap((key) => (isNothing(sheet[key]) ? [] : [[key, sheet[key]]]))) as CarriedBySheet;
  return Object.keys(inFile).length === 0 ? {} : { custom: { inFile } };
}

export function givenBackToSheet(custom: unknown): CarriedBySheet {
  const { inFile = {} } = (custom ?? {}) as { readonly inFile?: CarriedBySheet };
  return Object.fromEntries(OF_A_SHEET.flatMap((key) => (isNothing(inFile[key]) ? [] : [[key, inFile[key]]]))) as CarriedBySheet;
}

/** A link and a text of several looks, which the grid shows as plain words. */
export function carriedByCell({ hyperlink, richText }: Cell): Readonly<Record<string, unknown>> {
  return { ...(hyperlink === undefined ? {} : { link: hyperlink }), ...(richText === undefined ? {} : { runs: richText }) };
}

/** The looks of a text belong to its words: where those were typed over, they are gone. */
export function givenBackToCell(custom: unknown, shown: CellValue | undefined): Partial<Cell> {
  const { link, runs } = (custom ?? {}) as { readonly link?: Cell["hyperlink"]; readonly runs?: Cell["richText"] };
  const isSameText = runs !== undefined && runs.map(({ text }) => text).join("") === shown;
  return {
    ...(link === undefined ? {} : { hyperlink: link }),
    ...(isSameText ? { richText: runs, type: "richText" as const } : {}),
  };
}

const LOST = [
  ["charts", "a chart", "charts"],
  ["pivotTables", "a pivot table", "pivot tables"],
  ["slicers", "a slicer", "slicers"],
  ["timelines", "a timeline", "timelines"],
  ["textBoxes", "a text box", "text boxes"],
  ["threadedComments", "a thread of comments", "threads of comments"],
] as const satisfies readonly (readonly [keyof Sheet, string, string])[];

/** In words, sheet by sheet, what a saved workbook will no longer have. */
export function leftBehind(sheets: readonly Sheet[]): readonly string[] {
  return sheets.flatMap((sheet) => {
    const lost = LOST.flatMap(([key, one, many]) => {
      const count = sheet[key]?.length ?? 0;
      return count === 0 ? [] : [count === 1 ? one : `${count} ${many}`];
    });
    return [
      ...(lost.length === 0 ? [] : [`Sheet "${sheet.name}" has ${lost.join(", ")}, which this page cannot keep.`]),
      ...((sheet.tables?.length ?? 0) === 0 ? [] : [`The tables of sheet "${sheet.name}" become plain cells here.`]),
    ];
  });
}

function isNothing(part: unknown): boolean {
  return part === undefined || part === null || (Array.isArray(part) && part.length === 0);
}
