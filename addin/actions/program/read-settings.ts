import { keyAmong, plainKey, plainWords } from "../../../functions/worksheet/calling/typed-words.ts";
import type { CellRange, CellValue } from "../../workbook/port.ts";
import type { Place } from "../../records/place.ts";
import { readRecords } from "../../records/read-records.ts";
import type { SheetRow, Slip } from "../../records/sheet.ts";
import { OUTSIDE_THE_US, PROGRAM_PLACES, type ProgramPlace } from "../../records/one-call-rules/rules.ts";
import {
  placeSetting,
  programSettings,
  programSheet,
  settingCell,
  type ProgramKey,
  type ProgramSetting,
  type SettingValues,
} from "../../records/program.ts";

export interface Settings {
  readonly values: SettingValues;
  /** Where each setting's value stands; those that are nowhere are left out. */
  readonly cells: ReadonlyMap<ProgramKey, CellRange>;
  readonly place: Place<typeof programSheet> | null;
  readonly oneCall: OneCallSettings;
  readonly slips: readonly Slip[];
}

/** What the program says of its one-call center. */
export interface OneCallSettings {
  /** Null where nobody has chosen, or what is typed is in no list. */
  readonly place: ProgramPlace | null;
  /** Where it is chosen; null where the row is gone. */
  readonly placeAt: CellRange | null;
  /** Days that the center keeps; none where none is known. */
  readonly holidays: readonly number[];
}

/** Reads the settings of sheet Program, each found by its name. What is blank or gone goes on with its first value, and says so. */
export function readSettings(values: readonly (readonly CellValue[])[]): Settings {
  const read = readRecords(programSheet, values);
  const slips: Slip[] = read.slips.filter(({ where }) => read.place === null || where.column !== read.place.columnIndex("value"));
  const cells = new Map<ProgramKey, CellRange>();
  const numbers = (Object.keys(programSettings) as ProgramKey[]).map((key): [ProgramKey, number | null] => {
    const { setting, value }: ProgramSetting = programSettings[key];
    const row = read.rows.find(({ record }) => record.setting !== null && plainKey(record.setting) === plainKey(setting));
    const where = row?.at("value");
    if (where !== undefined) cells.set(key, where);
    const number = row?.record.value ?? null;
    const isFaulty = read.slips.some((slip) => slip.where.row === where?.row && slip.where.column === where.column);
    if (number !== null || (value === null && !isFaulty)) return [key, number];
    if (read.place !== null)
      slips.push({
        where: where ?? settingCell(key),
        sentence: `${reason(setting, row?.cells.value, read.slips, where)} The pane goes on ${value === null ? "without it" : `with ${value}`}; cells that use it show an error until it is filled in.`,
      });
    return [key, value];
  });
  const oneCall = oneCallOf(read.rows);
  return {
    values: Object.fromEntries(numbers) as SettingValues,
    cells,
    place: read.place,
    oneCall: oneCall.settings,
    slips: [...slips, ...(read.place === null ? [] : oneCall.slips)],
  };
}

function oneCallOf(rows: readonly SheetRow<typeof programSheet>[]): {
  readonly settings: OneCallSettings;
  readonly slips: readonly Slip[];
} {
  const row = rows.find(({ record }) => record.setting !== null && plainKey(record.setting) === plainKey(placeSetting.setting));
  const typed = plainWords(String(row?.cells.value ?? ""));
  const place = keyAmong(PROGRAM_PLACES, typed) ?? null;
  const settings = {
    place,
    placeAt: row?.at("value") ?? null,
    holidays: rows.flatMap(({ record }) => (record.holiday === null ? [] : [record.holiday])),
  };
  if (row === undefined || typed === "" || place !== null) return { settings, slips: [] };
  const sentence = `${placeSetting.setting} "${typed.slice(0, 40)}" is in no list: choose a state, the District of Columbia or "${OUTSIDE_THE_US}". Until then no ticket's date is counted.`;
  return { settings, slips: [{ where: row.at("value"), sentence }] };
}

function reason(setting: string, cell: CellValue | undefined, slips: readonly Slip[], where: CellRange | undefined): string {
  if (where === undefined) return `Sheet Program has no row "${setting}".`;
  const fault = slips.find((slip) => slip.where.row === where.row && slip.where.column === where.column);
  return fault !== undefined && cell !== null ? fault.sentence : `${setting} is blank.`;
}
