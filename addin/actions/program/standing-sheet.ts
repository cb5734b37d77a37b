/** Stage, next step and days waiting of every yard as cells of a sheet, and whether they still say what the records say. */
import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { findPlace, placeAsSetUp, type Place } from "../../records/place.ts";
import { isBlank, layoutOf, type KeyOf } from "../../records/sheet.ts";
import { standingSheet, STANDING_WORDS } from "../../records/standing.ts";
import { addressOf, WorkbookRefused, type CellValue, type FormulaWrite, type ValueWrite, type Workbook } from "../../workbook/port.ts";
import { yardStanding } from "../visits/stage-standing.ts";
import type { Program, Yard } from "./read-program.ts";

type Key = KeyOf<typeof standingSheet>;
type Row = Readonly<Record<Exclude<Key, "daysWaiting">, CellValue>>;

/** The sheet as it is in the workbook; null where nobody asked for it yet. */
export interface WrittenStanding {
  readonly place: Place<typeof standingSheet>;
  /** By the yard's ID as IDs are compared. */
  readonly rows: ReadonlyMap<string, { readonly row: number; readonly cells: readonly CellValue[] }>;
  readonly endRow: number;
}

/** Refused in words where the sheet has lost a heading. */
export async function readStanding(workbook: Workbook): Promise<WrittenStanding | null> {
  if (!(await workbook.sheetNames()).includes(standingSheet.name)) return null;
  const [cells = []] = await workbook.readSheets([standingSheet.name]);
  const found = findPlace(standingSheet, cells);
  if (!("place" in found)) throw new WorkbookRefused(LOST_HEADING);
  const { place } = found;
  const idAt = place.columnIndex("siteId");
  const rows = cells.flatMap((line, row) => (row < place.firstRow || isBlank(line[idAt] ?? null) ? [] : [{ row, cells: line }]));
  return {
    place,
    rows: new Map(rows.map((each) => [plainKey(String(each.cells[idAt] ?? "")), each])),
    endRow: (rows.at(-1)?.row ?? place.headingRow) + 1,
  };
}

const LOST_HEADING = `Sheet ${standingSheet.name} has lost a heading. Delete the sheet, and write it anew.`;

/** The yards of which the sheet says something else than the records do. */
export function movedOn(written: WrittenStanding, program: Program, today: number, minutes?: number): readonly string[] {
  return [
    ...program.yards
      .map((yard) => rowOf(program, yard, today, minutes))
      .filter((row) => differing(written, row).length > 0)
      .map(({ siteId }) => String(siteId)),
    ...goneFrom(written, program).map(({ cells }) => String(cells[written.place.columnIndex("siteId")] ?? "")),
  ];
}

/** Writes what has moved on, each yard in the row that it has, wherever people have sorted it to; new yards go below. */
export async function writeStanding(workbook: Workbook, program: Program, today: number, minutes?: number): Promise<void> {
  if ((await readStanding(workbook)) === null) {
    const layout = layoutOf({ ...standingSheet, rows: Math.max(standingSheet.rows, program.yards.length) });
    await workbook.addSheets([{ ...layout, isFiltered: true }]);
  }
  const written = (await readStanding(workbook)) ?? { place: placeAsSetUp(standingSheet), rows: new Map(), endRow: 0 };
  const { place } = written;
  let next = written.endRow;
  const values: ValueWrite[] = [];
  const formulas: FormulaWrite[] = [];
  for (const yard of program.yards) {
    const row = rowOf(program, yard, today, minutes);
    const at = written.rows.get(plainKey(yard.siteId))?.row ?? next++;
    for (const key of differing(written, row)) values.push({ range: place.cell(at, key), values: [[row[key]]] });
    if (written.rows.has(plainKey(yard.siteId))) continue;
    const since = addressOf(place.cell(at, "since")).replace(/^.*!/, "");
    formulas.push({ range: place.cell(at, "daysWaiting"), formulas: [[`=IF(${since}="","",TODAY()-${since})`]] });
  }
  for (const { row } of goneFrom(written, program)) {
    values.push({ range: place.cell(row, "stage"), values: [[NOT_ON_SITES]] });
    for (const key of ["state", "nextStep", "since"] as const) values.push({ range: place.cell(row, key), values: [[null]] });
  }
  if (values.length > 0) await workbook.writeValues(values);
  if (formulas.length > 0) await workbook.writeFormulas(formulas);
}

const NOT_ON_SITES = "no longer on Sites";

/** Rows of yards that have gone from Sites, and do not say so yet. */
function goneFrom({ place, rows }: WrittenStanding, { yards }: Program) {
  const there = new Set(yards.map(({ siteId }) => plainKey(siteId)));
  return [...rows].flatMap(([siteId, row]) => (there.has(siteId) || row.cells[place.columnIndex("stage")] === NOT_ON_SITES ? [] : [row]));
}

function differing({ place, rows }: WrittenStanding, row: Row): readonly (keyof Row)[] {
  const cells = rows.get(plainKey(String(row.siteId)))?.cells;
  return (Object.keys(row) as (keyof Row)[]).filter((key) => {
    const held = cells?.[place.columnIndex(key)] ?? null;
    return !(held === row[key] || (isBlank(held) && isBlank(row[key])));
  });
}

function rowOf(program: Program, yard: Yard, today: number, minutes?: number): Row {
  const { current, next } = yardStanding(program, yard, today, minutes);
  const { record } = yard.site;
  return {
    siteId: yard.siteId,
    yard: record.yard ?? record.address,
    stage: current.stage.name,
    state: STANDING_WORDS[next?.kind ?? "done"],
    nextStep: next?.sentence ?? null,
    since: newestDay(yard, today),
    funder: record.funder,
    watershed: record.watershed,
  };
}

/** A day that is still to come has kept nobody waiting. */
function newestDay({ visits, holeTests, digDays, asBuilt, followUps }: Yard, today: number): number | null {
  const days = [
    ...[...visits, ...holeTests, ...digDays, ...asBuilt].map(({ record }) => record.date),
    ...followUps.map(({ record }) => record.done),
  ];
  return days.reduce<number | null>((newest, day) => {
    const whole = day === null ? null : Math.floor(day);
    return whole === null || whole > today || (newest !== null && newest >= whole) ? newest : whole;
  }, null);
}
