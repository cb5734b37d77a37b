/** A copy held against the workbook it was taken from, yard by yard. Nothing is written. */
import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import type { Workbook } from "../../workbook/port.ts";
import { grouped } from "../program/grouped.ts";
import { WORKBOOK_ID_SETTING } from "../workbook/workbook-id.ts";
import { LAST_SITE_ID_SETTING, seriesOf, siteIdsAfter } from "../yard/site-ids.ts";
import type { FieldCopy } from "./field-copy.ts";
import { homeRows, type RowsOfSheets } from "./home-rows.ts";
import { differencesOf, type Difference } from "./merge-rows.ts";
import { rowOf, type Fields, type TakenRow } from "./taken-rows.ts";
import { sheetsBroughtBack, sheetsOfTakenProgram, sitesTaken, type TakenSheet } from "./taken-sheets.ts";

/** The workbook as a copy is held against it. */
export interface Home {
  readonly rows: RowsOfSheets;
  readonly id: string | null;
  /** The next IDs of new yards, one after the other. */
  readonly nextSiteIds: (used: readonly string[]) => () => string;
}

export async function readHome(workbook: Workbook): Promise<Home> {
  const [rows, id, given, series] = await Promise.all([
    homeRows(workbook),
    workbook.readSetting(WORKBOOK_ID_SETTING),
    workbook.readSetting(LAST_SITE_ID_SETTING),
    seriesOf(workbook),
  ]);
  return { rows, id, nextSiteIds: (used) => siteIdsAfter([...siteIdsOn(rows), ...used, given ?? ""], series) };
}

/** A yard of the copy, or what belongs to none. */
export interface YardDifferences {
  /** "" for what belongs to the whole program. */
  readonly siteId: string;
  readonly name: string;
  readonly differences: readonly Difference[];
}

/** A Site ID that both sides gave out since, to two yards or to one. */
export interface SharedId {
  readonly siteId: string;
  readonly home: string;
  readonly copy: string;
}

export interface BringBackPlan {
  readonly yards: readonly YardDifferences[];
  readonly sharedIds: readonly SharedId[];
}

/** For each shared ID, whether the copy's is the same yard or another one; what nobody has said is left out. */
export type SharedIdAnswers = ReadonlyMap<string, "same" | "another">;

export function planBringBack(
  home: Home,
  copy: FieldCopy,
  answers: SharedIdAnswers = new Map(),
): BringBackPlan | { readonly sentence: string } {
  if (home.id !== copy.origin.home)
    return {
      sentence: "This copy was taken along from another workbook. Open that one, and bring the copy back there. Nothing was compared.",
    };
  const sharedIds = sharedIdsOf(home, copy);
  const isShared = new Map(sharedIds.map(({ siteId }) => [plainKey(siteId), answers.get(plainKey(siteId)) ?? null]));
  const nextId = home.nextSiteIds(siteIdsOn(copy.now));
  const newIds = new Map([...isShared].flatMap(([siteId, answer]) => (answer === "another" ? [[siteId, nextId()] as const] : [])));
  const theirs = (taken: TakenSheet) =>
    rowsOf(copy.now, taken)
      .filter(({ siteId }) => isShared.get(siteId) !== null)
      .map((row) => renamed(taken, row, newIds));
  const yards = new Set([...rowsIn(copy.base), ...sheetsBroughtBack.flatMap(theirs)].map(({ siteId }) => siteId));
  const undecided = new Set([...isShared].flatMap(([siteId, answer]) => (answer === null ? [siteId] : [])));
  const differences = sheetsBroughtBack.flatMap((taken) => {
    const isIn = ({ siteId }: TakenRow) => yards.has(siteId) && !undecided.has(siteId);
    const ofProgram = sheetsOfTakenProgram.includes(taken);
    return differencesOf(taken, {
      base: copy.base.get(taken) ?? [],
      home: rowsOf(home.rows, taken).filter((row) => ofProgram || isIn(row)),
      copy: theirs(taken),
    });
  });
  const names = namesOf(home, copy, newIds);
  const byYard = grouped(differences, ({ row }) => [row.siteId]);
  return {
    yards: [...byYard]
      .map(([siteId, own]) => ({ siteId: names.get(siteId)?.siteId ?? siteId, name: names.get(siteId)?.name ?? "", differences: own }))
      .sort((one, other) => Number(isAsked(other)) - Number(isAsked(one)) || one.siteId.localeCompare(other.siteId)),
    sharedIds,
  };
}

/** Yards about which a person has to say something come first. */
function isAsked({ differences }: YardDifferences): boolean {
  return differences.some(({ unlessChosen }) => unlessChosen === null);
}

function rowsOf(rows: RowsOfSheets, taken: TakenSheet): readonly TakenRow[] {
  return rows.get(taken)?.rows ?? [];
}

function rowsIn(base: FieldCopy["base"]): readonly TakenRow[] {
  return sheetsBroughtBack.flatMap((taken) => base.get(taken) ?? []);
}

function siteIdsOn(rows: RowsOfSheets): readonly string[] {
  return rowsOf(rows, sitesTaken).map(({ fields }) => String(fields.get("siteId") ?? ""));
}

/** New on both sides, and not the same in name and address. */
function sharedIdsOf(home: Home, copy: FieldCopy): readonly SharedId[] {
  const before = new Set((copy.base.get(sitesTaken) ?? []).map(({ siteId }) => siteId));
  const here = new Map(rowsOf(home.rows, sitesTaken).map((row) => [row.siteId, row]));
  return rowsOf(copy.now, sitesTaken).flatMap((row): readonly SharedId[] => {
    const mine = here.get(row.siteId);
    if (row.siteId === "" || before.has(row.siteId) || mine === undefined || nameIn(mine.fields) === nameIn(row.fields)) return [];
    return [{ siteId: String(row.fields.get("siteId")), home: nameIn(mine.fields), copy: nameIn(row.fields) }];
  });
}

function nameIn(fields: Fields): string {
  return [fields.get("yard"), fields.get("address")].flatMap((part) => (part === undefined ? [] : [String(part).trim()])).join(", ");
}

function renamed(taken: TakenSheet, row: TakenRow, newIds: ReadonlyMap<string, string>): TakenRow {
  const siteId = newIds.get(row.siteId);
  return siteId === undefined ? row : rowOf(taken, row.row, new Map([...row.fields, ["siteId", siteId] as const]));
}

function namesOf(
  home: Home,
  copy: FieldCopy,
  newIds: ReadonlyMap<string, string>,
): ReadonlyMap<string, { readonly siteId: string; readonly name: string }> {
  const rows = [...rowsOf(copy.now, sitesTaken).map((row) => renamed(sitesTaken, row, newIds)), ...rowsOf(home.rows, sitesTaken)];
  return new Map(
    rows.map(({ siteId, fields }) => [
      siteId,
      { siteId: String(fields.get("siteId") ?? ""), name: String(fields.get("yard") ?? fields.get("address") ?? "") },
    ]),
  );
}
