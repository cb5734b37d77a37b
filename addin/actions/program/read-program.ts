import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { addressOf, WorkbookRefused, type CellRange, type CellValue, type Extent, type Workbook } from "../../workbook/port.ts";
import { asBuiltSheet, type AsBuiltRow } from "../../records/as-built.ts";
import { changeLogSheet } from "../../records/change-log.ts";
import { designSheet } from "../../records/design.ts";
import { digDaysSheet, type DigDayRow } from "../../records/dig-days.ts";
import { estimateLinesSheet, type EstimateLineRow } from "../../records/estimate-lines.ts";
import { followUpsSheet, type FollowUpRow } from "../../records/follow-ups.ts";
import { holeTestsSheet, type HoleTestRow } from "../../records/hole-tests.ts";
import { plantingSheet, type ClumpRow } from "../../records/planting.ts";
import { plantsSheet, type PlantRow } from "../../records/plants.ts";
import { pricesSheet, type PriceRow } from "../../records/prices.ts";
import { programSheet, type SettingValues } from "../../records/program.ts";
import { rulesSheet } from "../../records/rules.ts";
import { firstRow } from "../../records/place.ts";
import { readRecords, type SheetRecords } from "../../records/read-records.ts";
import { isBlank, type Sheet, type SheetRow, type Slip } from "../../records/sheet.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import { sitesSheet, type SiteRow } from "../../records/sites.ts";
import { surfacesSheet, type SurfaceRow } from "../../records/surfaces.ts";
import { visitsSheet, type VisitAnswerRow } from "../../records/visits.ts";
import { PREPARED_ROWS_SETTING, preparedRows } from "../../records/prepared-rows.ts";
import { grouped } from "./grouped.ts";
import { nearlyFull } from "./nearly-full.ts";
import { uncountedRows, uncountedSites, unmeasuredSurfaces, type UncountedRow } from "./uncounted-rows.ts";
import type { ChecklistDays } from "../../checklist/checklist-version.ts";
import { readChecklistDays } from "./checklist-days.ts";
import { readSettings, type OneCallSettings } from "./read-settings.ts";

/** The computed cells of one yard's row on Design, as the workbook shows them. */
export type DesignCells = { readonly [Key in keyof typeof designSheet.columns]: CellValue };

export interface Yard {
  readonly siteId: string;
  readonly units: UnitSystem;
  readonly site: SiteRow;
  readonly surfaces: readonly SurfaceRow[];
  readonly holeTests: readonly HoleTestRow[];
  /** Every answer given in this yard, the oldest first. */
  readonly visits: readonly VisitAnswerRow[];
  /** Newest answer to each step, by step id. */
  readonly answers: ReadonlyMap<string, VisitAnswerRow>;
  readonly design: DesignCells;
  /** Where the yard's row on Design stands; null while Design shows none. */
  readonly designAt: ((key: keyof typeof designSheet.columns) => CellRange) | null;
  readonly clumps: readonly ClumpRow[];
  readonly estimateLines: readonly EstimateLineRow[];
  readonly digDays: readonly DigDayRow[];
  /** The oldest first: the newest counts. */
  readonly asBuilt: readonly AsBuiltRow[];
  readonly followUps: readonly FollowUpRow[];
  /** Cells of this yard that do not hold what their column asks for. */
  readonly slips: readonly Slip[];
  /** What was typed for this yard, or may have been, and no formula of its basin counts. Stands among its slips too. */
  readonly uncounted: readonly Slip[];
}

export interface Program {
  readonly settings: SettingValues;
  readonly oneCall: OneCallSettings;
  readonly yards: readonly Yard[];
  /** The Rules table below its headings, as SOAK.SITECHECK takes it. */
  readonly rules: readonly (readonly CellValue[])[];
  readonly prices: readonly PriceRow[];
  readonly plants: readonly PlantRow[];
  /** From which day on the steps of later checklists are asked of stages that were finished before. */
  readonly checklist: ChecklistDays;
  /** Rows of no yard that can be told, on sheets that basins are computed from. Stands among the slips too. */
  readonly uncounted: readonly Slip[];
  /** What is said of sheets that near the most rows they may have. */
  readonly nearlyFull: readonly string[];
  /** The cells of each sheet that it was read from, by the sheet's name. */
  readonly cells: ReadonlyMap<string, readonly (readonly CellValue[])[]>;
  /** Slips that belong to no yard: headings, settings, rows without a site, Site IDs that stand twice. */
  readonly slips: readonly Slip[];
}

/** Sheets whose rows belong to a yard by the Site ID in them. */
const sheetsOfYards = {
  surfaces: surfacesSheet,
  holeTests: holeTestsSheet,
  visits: visitsSheet,
  clumps: plantingSheet,
  estimateLines: estimateLinesSheet,
  digDays: digDaysSheet,
  asBuilt: asBuiltSheet,
  followUps: followUpsSheet,
} as const;
const sheetsOfProgram = {
  program: programSheet,
  sites: sitesSheet,
  design: designSheet,
  rules: rulesSheet,
  prices: pricesSheet,
  plants: plantsSheet,
} as const;
const sheetsRead = { ...sheetsOfYards, ...sheetsOfProgram };

type SheetsOfYards = typeof sheetsOfYards;
type RowsOfYards = { readonly [Name in keyof SheetsOfYards]: SheetRecords<SheetsOfYards[Name]> };

/** Reads the whole program: its sheets in one call of the port, how long the Change log is, and two settings. */
export async function readProgram(workbook: Workbook): Promise<Program> {
  const names = Object.keys(sheetsRead);
  const [cells, [log], checklist, preparedText] = await Promise.all([
    workbook.readSheets(Object.values(sheetsRead).map(({ name }) => name)),
    // Without its Change log the program still reads.
    workbook.extents([changeLogSheet.name]).catch((): readonly Extent[] => []),
    readChecklistDays(workbook),
    workbook.readSetting(PREPARED_ROWS_SETTING),
  ]);
  const cellsOf = (name: keyof typeof sheetsRead) => cells[names.indexOf(name)] ?? [];
  const ofYards = Object.fromEntries(
    Object.entries(sheetsOfYards).map(([name, sheet]) => [name, readRecords<Sheet>(sheet, cellsOf(name as keyof SheetsOfYards))]),
  ) as unknown as RowsOfYards;
  const sites = readRecords(sitesSheet, cellsOf("sites"));
  const rules = readRecords(rulesSheet, cellsOf("rules"));
  const prices = readRecords(pricesSheet, cellsOf("prices"));
  const plants = readRecords(plantsSheet, cellsOf("plants"));
  const settings = readSettings(cellsOf("program"));
  const design = readDesign(cellsOf("design"));

  const siteIds = sites.rows.flatMap(({ record }) => (record.siteId === null ? [] : [record.siteId]));
  const prepared = preparedRows(preparedText);
  const basinRows = [
    ...uncountedSites(sites, prepared),
    ...uncountedRows(ofYards.surfaces, siteIds, prepared),
    ...unmeasuredSurfaces(ofYards.surfaces),
    ...uncountedRows(ofYards.holeTests, siteIds, prepared),
  ];
  const otherRows = (Object.keys(sheetsOfYards) as (keyof SheetsOfYards)[])
    .filter((name) => name !== "surfaces" && name !== "holeTests")
    .flatMap((name) => uncountedRows<Sheet>(ofYards[name], siteIds, prepared, name === "visits" ? "functions" : "sums"));
  const claimed = new Set<Slip>();
  const rowsOfYard = byYard(ofYards);
  const sitesById = grouped(sites.rows, ({ record }) => [plainKey(record.siteId ?? "")]);
  const slipsAt = new Map([sites, ...Object.values(ofYards)].map(({ slips }) => [slips, grouped(slips, ({ where }) => [where.row])]));
  const slipsOn = ({ slips }: { readonly slips: readonly Slip[] }, own: readonly { readonly row: number }[]) =>
    own.flatMap(({ row }) => slipsAt.get(slips)?.get(row) ?? []);
  const uncountedOf = ofEachYard(basinRows);
  const otherUncountedOf = ofEachYard(otherRows);
  const yards = sites.rows.flatMap((site): Yard[] => {
    const { siteId } = site.record;
    if (siteId === null || sitesById.get(plainKey(siteId))?.[0] !== site) return [];
    const asTheyStand = rowsOfYard(siteId);
    const rows = { ...asTheyStand, visits: oldestFirst(asTheyStand.visits) };
    const uncounted = uncountedOf(siteId);
    const slips = [
      ...uncounted,
      ...otherUncountedOf(siteId),
      ...slipsOn(sites, [site]),
      ...undated(rows.visits),
      ...(Object.keys(sheetsOfYards) as (keyof SheetsOfYards)[]).flatMap((name) => slipsOn(ofYards[name], rows[name])),
    ];
    slips.forEach((slip) => claimed.add(slip));
    return [
      {
        siteId,
        units: site.record.units ?? "us",
        site,
        ...rows,
        answers: new Map(rows.visits.flatMap((row) => (row.record.step === null ? [] : [[row.record.step, row]]))),
        ...design.of(siteId),
        slips,
        uncounted,
      },
    ];
  });
  const spelled = new Set([...basinRows, ...otherRows].map(({ where }) => addressOf(where)));

  const strayRows = sites.place === null ? [] : strays(ofYards, new Set(siteIds.map(plainKey)), spelled);
  const everySlip = [sites, ...Object.values(ofYards), rules, prices, plants, settings, design].flatMap(({ slips }) => slips);
  return {
    settings: settings.values,
    oneCall: settings.oneCall,
    yards,
    rules:
      rules.place === null
        ? []
        : cellsOf("rules")
            .slice(rules.place.firstRow)
            .map((row) => row.slice(rules.place?.columnIndex("rule"))),
    prices: prices.rows,
    plants: plants.rows,
    checklist,
    cells: new Map(Object.values(sheetsRead).map(({ name }, index) => [name, cells[index] ?? []])),
    uncounted: [...basinRows.filter((row) => !claimed.has(row)), ...strayRows.filter(({ where }) => BASIN_SHEETS.includes(where.sheet))],
    nearlyFull: [
      ...[sites, ...Object.values(ofYards)].map(({ place, rows }) =>
        place === null ? null : nearlyFull(place.sheet, (rows.at(-1)?.row ?? place.headingRow) - place.headingRow),
      ),
      nearlyFull(changeLogSheet, (log?.rows ?? 0) - firstRow(changeLogSheet)),
    ].filter((sentence) => sentence !== null),
    slips: [
      ...twiceUsed(sitesById),
      ...strayRows,
      ...[...basinRows, ...otherRows].filter((row) => !claimed.has(row)),
      ...everySlip.filter((slip) => !claimed.has(slip)),
    ],
  };
}

/** What a basin is computed from. */
const BASIN_SHEETS: readonly string[] = [surfacesSheet.name, holeTestsSheet.name];

type RowsOfYard = { readonly [Name in keyof SheetsOfYards]: readonly SheetRow<SheetsOfYards[Name]>[] };

/** The rows of each yard, by its ID. An ID in other letters is the same yard's, as it is to every formula. */
function byYard(ofYards: RowsOfYards): (siteId: string) => RowsOfYard {
  const sheets = Object.entries(ofYards).map(([name, { rows }]) => {
    const named = (rows as readonly SheetRow<SheetsOfYards["visits"]>[]).filter(({ record }) => record.siteId !== null);
    return [name, grouped(named, ({ record }) => [plainKey(record.siteId ?? "")])] as const;
  });
  return (siteId) => Object.fromEntries(sheets.map(([name, rows]) => [name, rows.get(plainKey(siteId)) ?? []])) as unknown as RowsOfYard;
}

/** By day, and within a day as the rows stand, so that sorting the sheet changes no answer in force. Without a day: the oldest. */
function oldestFirst(visits: readonly VisitAnswerRow[]): readonly VisitAnswerRow[] {
  const day = ({ record }: VisitAnswerRow) => Math.floor(record.date ?? 0);
  return visits.toSorted((one, other) => day(one) - day(other) || one.row - other.row);
}

/** Answers without a day among others to the same step: which of them is the newest, only a person knows. */
function undated(visits: readonly VisitAnswerRow[]): Slip[] {
  return visits.flatMap((row): Slip[] => {
    const { step } = row.record;
    if (step === null || !isBlank(row.cells.date) || !visits.some((other) => other !== row && other.record.step === step)) return [];
    return [
      {
        where: row.at("date"),
        sentence: "Date is blank: the answer counts as older than any to the same step that has a day. Write the day of the visit.",
      },
    ];
  });
}

/** Site IDs on other sheets that no row of Sites bears: one slip an ID, at the first of its rows. */
function strays(ofYards: RowsOfYards, siteIds: ReadonlySet<string>, toldAlready: ReadonlySet<string>): Slip[] {
  const rows = Object.values(ofYards).flatMap((records) => records.rows as readonly SheetRow<SheetsOfYards["visits"]>[]);
  const unknown = rows.flatMap((row) =>
    row.record.siteId === null || siteIds.has(plainKey(row.record.siteId)) || toldAlready.has(addressOf(row.at("siteId")))
      ? []
      : [{ siteId: row.record.siteId, where: row.at("siteId") }],
  );
  return [...grouped(unknown, ({ siteId }) => [plainKey(siteId)]).values()].flatMap(([first, ...more]): Slip[] => {
    if (first === undefined) return [];
    const others = more.length === 0 ? "" : ` and ${more.length} more ${more.length === 1 ? "row" : "rows"}`;
    return [
      {
        where: first.where,
        sentence: `Site ID "${first.siteId.slice(0, 40)}" stands here${others}, and no row of Sites has it. Put the yard back on Sites, or mend the ID.`,
      },
    ];
  });
}

/** The first row that bears a Site ID is the yard. */
function twiceUsed(sitesById: ReadonlyMap<string, readonly SiteRow[]>): Slip[] {
  return [...sitesById.values()].flatMap(([, ...lower]) =>
    lower.flatMap((row): Slip[] => {
      const { siteId } = row.record;
      if (siteId === null) return [];
      return [
        {
          where: row.at("siteId"),
          sentence: `Site ID "${siteId.slice(0, 40)}" stands on Sites twice. The upper row is the yard; give the lower one an ID of its own, because records are kept by Site ID.`,
        },
      ];
    }),
  );
}

/** Each yard's own of rows that may belong to several. */
function ofEachYard(rows: readonly UncountedRow[]): (siteId: string) => readonly UncountedRow[] {
  const byId = grouped(rows, ({ siteIds }) => new Set(siteIds.map(plainKey)));
  return (siteId) => byId.get(plainKey(siteId)) ?? [];
}

/** Design by Site ID: its rows are where its own formulas put them. */
function readDesign(cells: readonly (readonly CellValue[])[]) {
  const { place, slips } = readRecords(designSheet, cells);
  const keys = Object.keys(designSheet.columns) as (keyof DesignCells)[];
  const below = place === null ? [] : cells.map((row, index) => ({ row, index })).slice(place.firstRow);
  // An ID of digits is a number in its cell.
  const rows = grouped(below, ({ row }) => [plainKey(String(row[place?.columnIndex("siteId") ?? -1] ?? ""))]);
  const rowOf = (siteId: string) => rows.get(plainKey(siteId))?.[0]?.index ?? -1;
  return {
    slips,
    of: (siteId: string): Pick<Yard, "design" | "designAt"> => {
      const row = rowOf(siteId);
      const values = Object.fromEntries(keys.map((key) => [key, cells[row]?.[place?.columnIndex(key) ?? -1] ?? null])) as DesignCells;
      return { design: values, designAt: place === null || row < 0 ? null : (key) => place.cell(row, key) };
    },
  };
}

/** A yard as the workbook holds it at this moment, for whoever must not write what somebody else has written since. */
export async function yardNow(workbook: Workbook, siteId: string): Promise<Yard> {
  const yard = (await readProgram(workbook)).yards.find((candidate) => candidate.siteId === siteId);
  if (yard === undefined) throw new WorkbookRefused(`${siteId} is no longer on ${sitesSheet.name}. Nothing was written.`);
  return yard;
}

/** The yard that a selected cell belongs to: the one whose row it is, on whichever sheet. */
export function yardAt(program: Program, sheet: string, row: number): Yard | undefined {
  const isIn = (where: CellRange) => where.sheet === sheet && where.row === row;
  return program.yards.find((yard) => {
    if (isIn(yard.site.at("siteId")) || (yard.designAt !== null && isIn(yard.designAt("siteId")))) return true;
    return (Object.keys(sheetsOfYards) as (keyof SheetsOfYards)[]).some(
      (name) => sheetsOfYards[name].name === sheet && yard[name].some((held) => held.row === row),
    );
  });
}
