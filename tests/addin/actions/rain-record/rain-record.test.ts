import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { beforeEach, describe, expect, test } from "vitest";
import { logWrites } from "../../../../addin/actions/program/change-log.ts";
import { latestChanges } from "../../../../addin/actions/program/read-log.ts";
import { undoChange } from "../../../../addin/actions/program/undo-change.ts";
import { checkWorkbook } from "../../../../addin/actions/workbook/check-workbook.ts";
import { csvRows } from "../../../../addin/actions/rain-record/csv-rows.ts";
import { ROWS_AT_A_TIME, additionTo, writeRainRecord } from "../../../../addin/actions/rain-record/write-rain-record.ts";
import { readRecordedRain } from "../../../../addin/actions/rain-record/recorded-rain.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { cellOf, firstRow } from "../../../../addin/records/place.ts";
import { MOST_READINGS, rainRecordSheet } from "../../../../addin/records/rain-record.ts";
import { readRecords } from "../../../../addin/records/read-records.ts";
import { isCellError } from "../../../../functions/worksheet/calling/cell.ts";
import { longTerm } from "../../../../functions/worksheet/long-term.ts";
import { dailyRainMillimetres } from "../../../functions/rainfall/daily-rain.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { clock, fileOf, seriesOf } from "./rain-files.ts";

let workbook: WorkbookInMemory;
beforeEach(async () => {
  workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
});

async function rows() {
  const [cells = []] = await workbook.readSheets([rainRecordSheet.name]);
  return readRecords(rainRecordSheet, cells);
}

const write = async (text: string, way: "replace" | "add" = "replace") =>
  writeRainRecord(
    workbook,
    seriesOf(text, { notMeasured: "blank", noReading: "blank" }),
    way,
    "Ferry steps",
    await readRecordedRain(workbook),
  );
const days = (from: number, depths: readonly (number | string)[]) =>
  ["Date,Rain (in)", ...depths.map((depth, index) => `2026-05-${String(from + index).padStart(2, "0")},${depth}`)].join("\n");

describe("Seattle's days of 2012 to 2015 (vega-datasets 3.2.1, data/seattle-weather.csv, in mm)", () => {
  const text = readFileSync(new URL("../../../../node_modules/vega-datasets/data/seattle-weather.csv", import.meta.url), "utf8");

  test("are read without a day lost, and their total is that of the file's own numbers", () => {
    const file = fileOf(text, { unit: "mm" });
    expect(file).toMatchObject({ stepsWithoutReading: 0, notMeasured: 0, again: 0, clashes: [], unlikely: [], asks: ["unit"], open: [] });
    expect([file.series?.depths.length, clock(file.series?.beganMinutes ?? 0)]).toEqual([1461, "2012-01-01 00:00"]);
    expect(file.series?.depths).toEqual(dailyRainMillimetres.Seattle);
  });

  test("as inches would be 1,100 in a year, and that is said", () => {
    expect(fileOf(text, { unit: "in" }).unlikely.map(({ kind }) => kind)).toContain("looks like mm");
  });

  test("on the Rain record, LONGTERM answers over its cells as it does over the file's numbers", async () => {
    await writeRainRecord(workbook, seriesOf(text, { unit: "mm" }), "replace", "Seattle", await readRecordedRain(workbook));
    const recorded = await readRecordedRain(workbook);
    expect(recorded).toMatchObject({
      readings: 1461,
      stepMinutes: 1440,
      unit: "mm",
      notMeasured: 0,
      faults: [],
      reference: "'Rain record'!$B$4:$B$1464",
    });
    const [cells = []] = await workbook.read([{ ...cellOf(rainRecordSheet, firstRow(rainRecordSheet), "depth"), rows: 1461 }]);
    const garden = [24, 100, 0.95, 10, 150, 12, 450, 0.25, 3, 0, "metric"] as const;
    const [answer] = longTerm.evaluate([cells, ...garden]);
    expect(answer?.some(isCellError)).toBe(false);
    expect(answer).toEqual(longTerm.evaluate([dailyRainMillimetres.Seattle.map((depth) => [depth]), ...garden])[0]);
  });
});

describe("The Rain record", () => {
  test("is filled row by row with moment, depth, unit, gauge and what is to be said of it", async () => {
    await write(days(4, [0.25, "T", "M", "=1+1", 1.5]));
    const { rows: records, slips } = await rows();
    expect(slips).toEqual([]);
    expect(records.map(({ record: { depth, unit, gauge, note } }) => [depth, unit, gauge, note])).toEqual([
      [0.25, "in", "Ferry steps", null],
      [0, "in", "Ferry steps", "trace"],
      [null, "in", "Ferry steps", "not measured"],
      [null, "in", "Ferry steps", "not measured"],
      [1.5, "in", "Ferry steps", null],
    ]);
    expect(records.map(({ record }) => clock((record.began ?? 0) * 1440))).toEqual([4, 5, 6, 7, 8].map((day) => `2026-05-0${day} 00:00`));
  });

  test("is one change on the log, and an undo brings back the shorter or longer record that stood there before", async () => {
    await write(days(4, [1, 2, 3, 4, 5, "T"]));
    const before = await rows();
    const { workbook: logged, putOnLog } = logWrites(workbook);
    await writeRainRecord(logged, seriesOf(days(20, [9, 8])), "replace", "", await readRecordedRain(logged));
    expect((await rows()).rows.map(({ record }) => [record.depth, record.gauge])).toEqual([
      [9, null],
      [8, null],
    ]);
    await undoChange(workbook, (await putOnLog({ by: "", what: "Rain" })) ?? 0);
    expect((await rows()).rows.map(({ record }) => record)).toEqual(before.rows.map(({ record }) => record));
  });

  test("takes thirty years of days: formats reach them all, the check finds nothing to repair, and the log stays short", async () => {
    const { workbook: logged, putOnLog } = logWrites(workbook);
    const series = {
      unit: "in" as const,
      stepMinutes: 1440,
      beganMinutes: 35_000 * 1440,
      depths: Array.from({ length: 10_957 }, (_, day) => (day % 9) / 100),
      remarks: new Map(),
    };
    await writeRainRecord(logged, series, "replace", "", await readRecordedRain(logged));
    expect(workbook.continued).toEqual([{ sheet: "Rain record", row: 1003, column: 0, rows: 15_000, columns: 5 }]);
    expect((await checkWorkbook(workbook)).filter(({ where }) => where?.sheet === "Rain record")).toEqual([]);
    await putOnLog({ by: "", what: "Rain" });
    const [log = []] = await workbook.readSheets(["Change log"]);
    expect(log.length).toBeLessThan(40);
    expect((await latestChanges(workbook, 1))[0]?.cells).toBeGreaterThanOrEqual(3 * 10_957);
  });

  test("of many rows is written in pieces, and taken back in pieces, that say how far they are; it is one change all the same", async () => {
    const { workbook: logged, putOnLog } = logWrites(workbook);
    const depths = Array.from({ length: 2 * ROWS_AT_A_TIME + 1 }, (_, hour) => (hour % 7) / 100);
    const shares: number[] = [];
    const progress = (share: number) => Promise.resolve(void shares.push(share));
    await writeRainRecord(
      logged,
      { unit: "in", stepMinutes: 60, beganMinutes: 35_000 * 1440, depths, remarks: new Map() },
      "replace",
      "",
      await readRecordedRain(logged),
      progress,
    );
    expect(shares.map((share) => Math.floor(100 * share))).toEqual([0, 33, 66]);
    expect((await readRecordedRain(workbook)).depths).toEqual(depths);
    const change = await putOnLog({ by: "", what: "Rain" });
    expect(await latestChanges(workbook, 2)).toMatchObject([{ change, cells: 3 * depths.length }]);
    const [log = []] = await workbook.readSheets(["Change log"]);
    expect(log.length).toBeLessThan(100);

    shares.length = 0;
    await undoChange(workbook, change ?? 0, progress);
    expect(shares.length).toBeGreaterThan(1);
    expect(shares).toEqual(shares.map((_, piece) => piece / shares.length));
    expect((await readRecordedRain(workbook)).readings).toBe(0);
  });

  test("that somebody changed since it was shown is not written over", async () => {
    await write(days(4, [1, 2]));
    const shown = await readRecordedRain(workbook);
    await workbook.writeValues([{ range: cellOf(rainRecordSheet, firstRow(rainRecordSheet), "note"), values: [["Gauge leaned"]] }]);
    await expect(writeRainRecord(workbook, seriesOf(days(20, [9])), "replace", "", shown)).rejects.toThrow(
      /^The sheet Rain record has changed since it was shown here, so nothing was written/,
    );
    expect((await rows()).rows).toHaveLength(2);
  });

  test("is gone on from by what is newer: a whole file again adds its last days, and days between are blank and said", async () => {
    await write(days(4, [1, 2, 3]));
    const whole = seriesOf(days(4, [1, 2, 3, 4, 5]));
    expect(additionTo(await readRecordedRain(workbook), whole, MOST_READINGS)).toEqual({ newer: 2, between: 0 });
    await writeRainRecord(workbook, whole, "add", "Ferry steps", await readRecordedRain(workbook));
    await writeRainRecord(workbook, seriesOf(days(11, [7])), "add", "Mill", await readRecordedRain(workbook));
    const { rows: records } = await rows();
    expect(records.map(({ record: { depth } }) => depth)).toEqual([1, 2, 3, 4, 5, null, null, 7]);
    expect(records.map(({ record: { note } }) => note).slice(5)).toEqual(["no reading in the file", "no reading in the file", null]);
    expect(records.at(-1)?.record).toMatchObject({ gauge: "Mill", unit: "in" });
    expect((await readRecordedRain(workbook)).faults.map(({ kind, count }) => [kind, count])).toEqual([["blank depth", 2]]);
  });

  test("is not gone on from in another unit, in other steps, at another time of day, nor with nothing newer", async () => {
    await write(days(4, [1, 2, 3]));
    const present = await readRecordedRain(workbook);
    const on = seriesOf(days(7, [1, 2]));
    const why = (change: Partial<typeof on>, most = MOST_READINGS) => additionTo(present, { ...on, ...change }, most);
    expect(why({ unit: "mm" })).toEqual({ why: "unit" });
    expect(why({ stepMinutes: 60 })).toEqual({ why: "step" });
    expect(why({ beganMinutes: on.beganMinutes + 420 })).toEqual({ why: "not in step" });
    expect(why({ beganMinutes: on.beganMinutes - 4 * 1440 })).toEqual({ why: "nothing newer" });
    expect(why({}, 4)).toEqual({ why: "too long" });
  });

  test("names what keeps a formula from reading it: words for depths, blanks, two units, uneven steps, no moment", async () => {
    await write(days(4, [1, 2, 3, 4]));
    const at = (row: number, key: keyof typeof rainRecordSheet.columns) => cellOf(rainRecordSheet, firstRow(rainRecordSheet) + row, key);
    await workbook.writeValues(
      [
        [at(1, "depth"), "wet"],
        [at(2, "depth"), null],
        [at(2, "unit"), "mm"],
        [at(3, "unit"), null],
        [at(3, "began"), "May"],
      ].map(([range, value]) => ({ range: range as ReturnType<typeof at>, values: [[value as string | null]] })),
    );
    const { faults } = await readRecordedRain(workbook);
    expect(faults.map(({ kind, where, count }) => `${kind} row ${where.row + 1} ${count}`)).toEqual([
      "bad moment row 7 1",
      "bad depth row 5 1",
      "blank depth row 6 1",
      "no unit row 7 1",
      "two units row 6 2",
    ]);
  });

  test("with a heading gone is neither read nor written", async () => {
    await workbook.writeValues([{ range: cellOf(rainRecordSheet, firstRow(rainRecordSheet) - 1, "depth"), values: [["Regen"]] }]);
    await expect(readRecordedRain(workbook)).rejects.toThrow('Sheet Rain record has no column "Rain depth"');
  });
});

describe("A file longer than a sheet takes", () => {
  const years = (count: number) =>
    ["When,Rain (mm)", "1990-01-01 00:00,1", "1990-01-01 01:00,2", "1990-01-01 02:00,2", `${1990 + count}-01-01 00:00,1`].join("\n");

  test("of thirty years of hours is taken, of forty refused, and daily totals are offered instead", () => {
    expect(fileOf(years(30), { noReading: "dry" }).series?.depths.length).toBeGreaterThan(262_000);
    const refused = fileOf(years(40), { noReading: "dry" });
    expect(refused).toMatchObject({ series: null, refusal: { kind: "too long", most: MOST_READINGS, daysWouldFit: true } });
    expect(fileOf(years(40), { noReading: "dry", kept: "daily totals" }).series?.depths.length).toBe(14_610);
  });
});

// csv-parse is not ours: it reads RFC 4180.
test("any table of cells is read as csv-parse reads it, whatever stands in quotes", () => {
  const cell = fc.oneof(fc.string({ maxLength: 8 }), fc.constantFrom('a "quoted" word', "two\nlines", "a;b", "=1+1", "3,5"));
  const quoted = (value: string) => `"${value.replaceAll('"', '""')}"`;
  fc.assert(
    fc.property(
      fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 6 }),
      fc.constantFrom(",", ";", "\t"),
      (table, separator) => {
        const text = table.map((row) => row.map(quoted).join(separator)).join("\r\n");
        const read = csvRows(text);
        const expected = (parse(text, { delimiter: separator, trim: false }) as string[][])
          .map((row) => row.map((value) => value.trim()))
          .filter((row) => row.some((value) => value !== ""));
        expect("sentence" in read ? read : read.rows.map(({ cells }) => cells)).toEqual(expected);
      },
    ),
  );
});
