import type { CellValue, Workbook } from "../workbook/workbook.ts";
import { designSheet } from "../records/design.ts";
import { holeTestsSheet } from "../records/hole-tests.ts";
import type { HoleTestRow } from "../records/hole-tests.ts";
import { programSettings, programSheet, settingCell } from "../records/program.ts";
import type { ProgramKey } from "../records/program.ts";
import { rulesSheet } from "../records/rules.ts";
import { firstRow, headingRow, readRecords, wholeRange } from "../records/sheet.ts";
import type { Slip } from "../records/sheet.ts";
import type { UnitSystem } from "../records/site-terms.ts";
import { sitesSheet } from "../records/sites.ts";
import type { SiteRow } from "../records/sites.ts";
import { surfacesSheet } from "../records/surfaces.ts";
import type { SurfaceRow } from "../records/surfaces.ts";
import { visitsSheet } from "../records/visits.ts";
import type { VisitAnswerRow } from "../records/visits.ts";

/** The computed cells of one yard's row on Design, as the workbook shows them. */
export type DesignCells = { readonly [Key in keyof typeof designSheet.columns]: CellValue };

export interface Yard {
  readonly siteId: string;
  readonly units: UnitSystem;
  readonly site: SiteRow;
  readonly surfaces: readonly SurfaceRow[];
  readonly holeTests: readonly HoleTestRow[];
  /** Newest answer to each step, by step id. */
  readonly answers: ReadonlyMap<string, VisitAnswerRow>;
  readonly design: DesignCells;
  /** Cells of this yard that do not hold what their column asks for. */
  readonly slips: readonly Slip[];
}

export interface Program {
  readonly settings: Readonly<Record<ProgramKey, number>>;
  readonly yards: readonly Yard[];
  /** The Rules sheet below its headings, as SOAK.SITECHECK takes it. */
  readonly rules: readonly (readonly CellValue[])[];
  /** Slips that belong to no yard: headings, settings, rows without a site. */
  readonly slips: readonly Slip[];
}

/** Reads the whole program in one call of the port. */
export async function readProgram(workbook: Workbook): Promise<Program> {
  const sheets = [programSheet, sitesSheet, surfacesSheet, holeTestsSheet, visitsSheet, designSheet, rulesSheet] as const;
  const [settingCells = [], siteCells = [], surfaceCells = [], testCells = [], visitCells = [], designCells = [], ruleCells = []] =
    await workbook.read(sheets.map(wholeRange));
  const sites = readRecords(sitesSheet, siteCells);
  const surfaces = readRecords(surfacesSheet, surfaceCells);
  const holeTests = readRecords(holeTestsSheet, testCells);
  const visits = readRecords(visitsSheet, visitCells);
  const settings = readSettings(settingCells);
  const designKeys = Object.keys(designSheet.columns);

  const claimed = new Set<Slip>();
  const yards = sites.rows.flatMap((site): Yard[] => {
    const siteId = site.record.siteId;
    if (siteId === null) return [];
    const ofYard = <R extends { readonly record: { readonly siteId: string | null } }>(rows: readonly R[]) => rows.filter((row) => row.record.siteId === siteId);
    const own = { surfaces: ofYard(surfaces.rows), holeTests: ofYard(holeTests.rows), visits: ofYard(visits.rows) };
    const designRow = designCells[site.row - headingRow(sitesSheet)] ?? [];
    const slips = [
      ...slipsOn(sites.slips, [site]),
      ...slipsOn(surfaces.slips, own.surfaces),
      ...slipsOn(holeTests.slips, own.holeTests),
      ...slipsOn(visits.slips, own.visits),
    ];
    slips.forEach((slip) => claimed.add(slip));
    return [{
      siteId,
      units: site.record.units ?? "us",
      site,
      surfaces: own.surfaces,
      holeTests: own.holeTests,
      answers: new Map(own.visits.flatMap((row) => (row.record.step === null ? [] : [[row.record.step, row]]))),
      design: Object.fromEntries(designKeys.map((key, column) => [key, designRow[column] ?? null])) as DesignCells,
      slips,
    }];
  });

  const everySlip = [...sites.slips, ...surfaces.slips, ...holeTests.slips, ...visits.slips, ...settings.slips];
  return {
    settings: settings.values,
    yards,
    rules: ruleCells.slice(1),
    slips: everySlip.filter((slip) => !claimed.has(slip)),
  };
}

function slipsOn(slips: readonly Slip[], rows: readonly { readonly row: number }[]): Slip[] {
  return slips.filter((slip) => rows.some((row) => row.row === slip.where.row));
}

function readSettings(cells: readonly (readonly CellValue[])[]): { values: Record<ProgramKey, number>; slips: Slip[] } {
  const slips: Slip[] = [];
  const values = Object.fromEntries(
    (Object.keys(programSettings) as ProgramKey[]).map((key) => {
      const where = settingCell(key);
      const cell = cells[where.row - headingRow(programSheet)]?.[where.column] ?? null;
      const checked = programSheet.columns.value.cell.safeParse(cell);
      if (checked.success && checked.data !== null) return [key, checked.data];
      const { setting, value } = programSettings[key];
      const reason = checked.success ? `${setting} is blank.` : (checked.error.issues[0]?.message ?? "");
      slips.push({ where, sentence: `${reason} The pane goes on with ${value}; cells that use it show an error until it is filled in.`.trim() });
      return [key, value];
    }),
  );
  return { values: values as Record<ProgramKey, number>, slips };
}

/** The yard that a selected cell belongs to: its row of Sites or Design, or the Site ID in its row. */
export function yardAt(program: Program, sheet: string, row: number): Yard | undefined {
  if (sheet === sitesSheet.name) return program.yards.find((yard) => yard.site.row === row);
  if (sheet === designSheet.name) {
    const siteRow = row - firstRow(designSheet) + firstRow(sitesSheet);
    return program.yards.find((yard) => yard.site.row === siteRow);
  }
  const holds = (rows: readonly { readonly row: number }[]) => rows.some((held) => held.row === row);
  if (sheet === surfacesSheet.name) return program.yards.find((yard) => holds(yard.surfaces));
  if (sheet === holeTestsSheet.name) return program.yards.find((yard) => holds(yard.holeTests));
  if (sheet === visitsSheet.name) return program.yards.find((yard) => holds([...yard.answers.values()]));
  return undefined;
}
