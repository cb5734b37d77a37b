import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { WorkbookRefused, type CellValue, type Workbook } from "../../workbook/port.ts";
import { digLock } from "../../checklist/dig-lock.ts";
import { heatReminder, liftingReminder } from "../../checklist/reminders.ts";
import { namesIn } from "../../checklist/stage.ts";
import { digDaysSheet, digItems, type DigDayRow, type DigItem } from "../../records/dig-days.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import { unitOf } from "../../../functions/quantities.ts";
import { isoDate } from "../dates.ts";
import { readProgram, type DesignCells, type Yard } from "../program/read-program.ts";
import { appendRow, appendRows, changesOfRow, writeUnlessChanged, type Conflict } from "../program/write-records.ts";

/** One person on one day. Times are shares of the day, as a spreadsheet keeps them; hours are blank until they leave. */
export interface SignIn {
  readonly who: string;
  readonly arrived: number | null;
  readonly left: number | null;
  readonly hours: number | null;
}

/** A person who would be counted twice on a day, and where they stand already. */
export interface DoubleSignIn {
  readonly who: string;
  /** The yard they signed in at before, or null when the new list itself names them twice. */
  readonly siteId: string | null;
}

type SignedYard = Pick<Yard, "siteId" | "digDays">;

/** Everyone of the list who signed in on that day already, at whichever yard of the program. */
export function doubleSignIns(yards: readonly SignedYard[], date: number, names: readonly string[]): readonly DoubleSignIn[] {
  const before = yards.flatMap(({ siteId, digDays }) =>
    signInsOn(digDays, date).map(({ record }) => ({ siteId, person: samePerson(record.who ?? "") })),
  );
  return names.flatMap((who, place): DoubleSignIn[] => {
    const person = samePerson(who);
    const there = before.find((signed) => signed.person === person);
    if (there !== undefined) return [{ who, siteId: there.siteId }];
    return names.slice(0, place).some((other) => samePerson(other) === person) ? [{ who, siteId: null }] : [];
  });
}

export function doubleSignInSentence({ who, siteId }: DoubleSignIn, date: number): string {
  return siteId === null
    ? `${who} stands in the list twice.`
    : `${who} has signed in on ${isoDate(date)} already, at ${siteId}: hours of one person count once a day.`;
}

/** Adds a row a person. Looks again at who is signed in, because two tablets may be passed around. */
export async function signIn(
  workbook: Workbook,
  yard: Yard,
  date: number,
  people: readonly SignIn[],
  confirmed: boolean,
  by: string,
): Promise<void> {
  if (!confirmed) {
    const { yards } = await readProgram(workbook);
    const twice = doubleSignIns(
      yards,
      date,
      people.map(({ who }) => who),
    );
    if (twice.length > 0)
      throw new WorkbookRefused(`${twice.map((one) => doubleSignInSentence(one, date)).join(" ")} Nobody was signed in.`);
  }
  await appendRows(
    workbook,
    digDaysSheet,
    people.map((person) => ({ ...entryOf(yard, date, "sign-in", by), ...person })),
  );
}

/** Fills in when people left, and their hours with it. Nobody's hours are written over. */
export function signOut(workbook: Workbook, rows: readonly DigDayRow[], left: number): Promise<readonly Conflict[]> {
  const changes = rows.flatMap((row) => {
    const { arrived, hours } = row.record;
    return arrived === null || hours !== null || arrived >= left ? [] : changesOfRow(row, { left, hours: hoursBetween(arrived, left) });
  });
  return writeUnlessChanged(workbook, changes);
}

export interface QuantityEntry {
  readonly item: string;
  readonly quantity: number;
  readonly unit: string;
  readonly note: string;
}

export async function recordQuantity(workbook: Workbook, yard: Yard, date: number, entry: QuantityEntry, by: string): Promise<void> {
  await appendRow(workbook, digDaysSheet, { ...entryOf(yard, date, "quantity", by), ...entry });
}

export interface IncidentEntry {
  readonly who: string;
  /** What happened. */
  readonly note: string;
  /** What was done for the person, and about the cause. */
  readonly done: string;
}

export async function recordIncident(workbook: Workbook, yard: Yard, date: number, entry: IncidentEntry, by: string): Promise<void> {
  await appendRow(workbook, digDaysSheet, { ...entryOf(yard, date, "incident", by), ...entry });
}

function entryOf(yard: Yard, date: number, entry: string, by: string): Record<"siteId" | "date" | "entry" | "by", CellValue> {
  return { siteId: yard.siteId, date, entry, by };
}

/** What a day came to. */
export interface DigDayTotals {
  readonly date: number;
  /** Each person once, however often they signed in. */
  readonly people: number;
  readonly hours: number;
  /** Signed in, and no hours yet: not counted above. */
  readonly withoutHours: readonly string[];
  readonly incidents: number;
}

/** A line a day, oldest first. Entries without a date belong to no day. */
export function digDayTotals(rows: readonly DigDayRow[]): readonly DigDayTotals[] {
  const dates = [...new Set(rows.flatMap(({ record }) => (record.date === null ? [] : [record.date])))].sort((one, other) => one - other);
  return dates.map((date) => {
    const signIns = signInsOn(rows, date).map(({ record }) => record);
    return {
      date,
      people: new Set(signIns.map(({ who }) => samePerson(who ?? ""))).size,
      hours: signIns.reduce((sum, { hours }) => sum + (hours ?? 0), 0),
      withoutHours: signIns.flatMap(({ who, hours }) => (hours === null ? [who ?? ""] : [])),
      incidents: rows.filter(({ record }) => record.date === date && record.entry === "incident").length,
    };
  });
}

export function signInsOn(rows: readonly DigDayRow[], date: number): readonly DigDayRow[] {
  return rows.filter(({ record }) => record.entry === "sign-in" && record.date === date);
}

/** What was really moved of one thing, beside the design. */
export interface MovedQuantity {
  readonly item: string;
  readonly unit: string;
  readonly quantity: number;
  /** In the same unit; null where the design does not say, or says it in another unit. */
  readonly designed: number | null;
}

/** One line an item and unit, in the order of the list; what was typed in the sheet in other words comes last. */
export function quantitiesMoved(rows: readonly DigDayRow[], design: DesignCells, units: UnitSystem): readonly MovedQuantity[] {
  const sums = new Map<string, MovedQuantity>();
  for (const { record } of rows) {
    if (record.entry !== "quantity" || record.quantity === null) continue;
    const known = digItems.find((one) => plainKey(one.item) === plainKey(record.item ?? ""));
    const item = known?.item ?? record.item ?? "";
    const unit = record.unit ?? "";
    const isItsUnit = known !== undefined && plainKey(unit) === plainKey(itemUnit(known, units));
    const key = JSON.stringify([item, unit].map(plainKey));
    const earlier = sums.get(key);
    const quantity = (earlier?.quantity ?? 0) + record.quantity;
    sums.set(key, { item, unit: earlier?.unit ?? unit, quantity, designed: isItsUnit ? designedQuantity(known, design) : null });
  }
  const place = ({ item }: MovedQuantity) => {
    const index = digItems.findIndex((one) => one.item === item);
    return index === -1 ? digItems.length : index;
  };
  return [...sums.values()].sort((one, other) => place(one) - place(other));
}

/** What is dug, hauled or placed, each with the unit it is written in and what the design asks for. */
export function itemsToMove({ units, design }: Pick<Yard, "units" | "design">): readonly Omit<MovedQuantity, "quantity">[] {
  return digItems.map((known) => ({ item: known.item, unit: itemUnit(known, units), designed: designedQuantity(known, design) }));
}

/** People to mind on the day, before the soil. */
export const digDayReminders = [heatReminder, liftingReminder];

/** Why the ground may not be opened on that day; none where it may. */
export function digRefusals({ visits }: Pick<Yard, "visits">, date: number): readonly { readonly id: string; readonly sentence: string }[] {
  return digLock(visits, date);
}

/** The people in a list as typed, each once. */
export function peopleIn(list: string): readonly string[] {
  return namesIn(list);
}

function designedQuantity({ designed }: DigItem, design: DesignCells): number | null {
  const cell = designed === null ? null : design[designed];
  return typeof cell === "number" ? cell : null;
}

function itemUnit({ measure }: DigItem, units: UnitSystem): string {
  return measure === "plants" ? "plants" : unitOf(measure, units);
}

export const HOURS_A_DAY = 24;

/** To the minute: a spreadsheet keeps a time as a share of the day, which no number holds exactly. */
export function hoursBetween(arrived: number, left: number): number {
  const minutes = Math.round((left - arrived) * HOURS_A_DAY * 60);
  return minutes / 60;
}

/** Two spellings of one name: spaces and capitals make no other person. */
function samePerson(name: string): string {
  return plainKey(name.normalize("NFKC"));
}
