import { isoDate } from "../dates.ts";
import { estimateOf } from "../estimate/estimate.ts";
import type { Program, Yard } from "../program/read-program.ts";
import { workbookId } from "../workbook/workbook-id.ts";
import { calendarDays, calendarFile, type CalendarChoices } from "./calendar-file.ts";
import { csvFile, pastedTable } from "./csv-file.ts";
import { estimateDocument, handoutDocument, quantityDocument } from "./documents.ts";
import { estimateSheets, estimateTable } from "./estimate-sheets.ts";
import { geoJsonFile, type MapChoices } from "./geojson-file.ts";
import { layOutDocuments } from "./document-sheet.ts";
import { printedPage, type PrintedDocument } from "./printed-page.ts";
import type { Workbook } from "../../workbook/port.ts";
import { spreadsheetFile } from "./spreadsheet-file.ts";
import { tableFiles } from "./table-files.ts";
import { text } from "./text.ts";
import type { LeftOut } from "./yard-points.ts";

export const EXPORTS = ["estimate.xlsx", "estimate.csv", "estimate.html", "quantities.html", "handout.html"] as const;
export type ExportName = (typeof EXPORTS)[number];

export interface ExportedFile {
  readonly fileName: string;
  readonly mediaType: string;
  readonly content: Uint8Array | string;
}

/** One file of these yards, as it leaves the workbook. */
export async function exportFile(name: ExportName, program: Program, yards: readonly Yard[], today: number): Promise<ExportedFile> {
  const estimates = yards.map((yard) => ({ yard, estimate: estimateOf(program, yard, today) }));
  const made = (content: Uint8Array | string, mediaType: string): ExportedFile => ({
    fileName: fileNameOf(name, yards, today),
    mediaType,
    content,
  });
  switch (name) {
    case "estimate.xlsx": {
      const paper = yards.every(({ units }) => units === "metric") ? "a4" : "letter";
      return made(
        await spreadsheetFile(text.estimate.many, estimateSheets(estimates, today), paper),
        "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
      );
    }
    case "estimate.csv":
      return made(csvFile(estimateTable(estimates)), "text/csv;charset=utf-8");
    case "estimate.html":
      return made(printedPage(text.estimate.title, papersOf("estimate", program, yards, today)), HTML);
    case "quantities.html":
      return made(printedPage(text.quantities.title, papersOf("quantities", program, yards, today)), HTML);
    case "handout.html":
      return made(printedPage(text.handout.title, papersOf("handout", program, yards, today)), HTML);
  }
}

export type PaperKind = "estimate" | "quantities" | "handout";

function papersOf(kind: PaperKind, program: Program, yards: readonly Yard[], today: number): readonly PrintedDocument[] {
  return yards.map((yard) => {
    if (kind === "handout") return handoutDocument(program, yard, today);
    const one = { yard, estimate: estimateOf(program, yard, today) };
    return kind === "estimate" ? estimateDocument(one, today) : quantityDocument(program, one, today);
  });
}

/** The same paper on a sheet of the workbook, where a page may neither save nor print. */
export async function layOutPaper(
  workbook: Workbook,
  name: string,
  kind: PaperKind,
  program: Program,
  yards: readonly Yard[],
  today: number,
): Promise<void> {
  await layOutDocuments(workbook, name, papersOf(kind, program, yards, today));
}

/** The estimates of these yards as cells to paste, where a page may not save files. */
export function estimateToPaste(program: Program, yards: readonly Yard[], today: number): string {
  return pastedTable(estimateTable(yards.map((yard) => ({ yard, estimate: estimateOf(program, yard, today) }))));
}

/** Yards on a map; those whose place cannot be believed are left out, and named. */
export function exportMap(
  program: Program,
  yards: readonly Yard[],
  choices: MapChoices,
  today: number,
): ExportedFile & { readonly leftOut: readonly LeftOut[] } {
  const { content, leftOut } = geoJsonFile(program, yards, choices);
  return { fileName: `yards-${isoDate(today)}.geojson`, mediaType: "application/geo+json", content, leftOut };
}

export async function exportCalendar(
  workbook: Workbook,
  yards: readonly Yard[],
  choices: CalendarChoices,
  today: number,
): Promise<ExportedFile & { readonly days: number }> {
  const { id, keep } = await workbookId(workbook);
  await keep();
  const content = calendarFile(yards, choices, { workbook: id, madeAt: new Date() });
  return { fileName: `yards-${isoDate(today)}.ics`, mediaType: "text/calendar;charset=utf-8", content, days: calendarDays(yards) };
}

export async function exportTables(workbook: Workbook, today: number): Promise<ExportedFile & { readonly missing: readonly string[] }> {
  const { content, leftOut } = await tableFiles(workbook);
  return { fileName: `tables-${isoDate(today)}.zip`, mediaType: "application/zip", content, missing: leftOut };
}

const HTML = "text/html;charset=utf-8";

/** "estimate-Y-001-2026-05-04.xlsx", or "estimate-5-yards-2026-05-04.xlsx": nothing that a disk could refuse. */
function fileNameOf(name: ExportName, yards: readonly Yard[], today: number): string {
  const [kind, ending] = name.split(".");
  const [only, ...others] = yards;
  const which =
    only !== undefined && others.length === 0 ? only.siteId.replace(/[^A-Za-z0-9_-]+/g, "-").slice(0, 40) : `${yards.length}-yards`;
  return `${kind}-${which}-${isoDate(today)}.${ending}`;
}
