import { describe, expect, test } from "vitest";
import { readRainTable } from "../../../../addin/actions/rain-record/rain-table.ts";
import { NOTHING_CHOSEN, readRainFile, type RainChoices } from "../../../../addin/actions/rain-record/read-rain-file.ts";
import { findings, momentWords, refusalWords, rowsAsDays, stepName, unlikelyWords } from "../../../../taskpane/views/rain/rain-words.ts";
import { localHours } from "../../../addin/actions/rain-record/rain-files.ts";

function said(text: string, chosen: Partial<RainChoices> = {}) {
  const table = readRainTable(text);
  if ("sentence" in table) throw new Error(table.sentence);
  const file = readRainFile(table, { ...NOTHING_CHOSEN, columns: table.guess, ...chosen });
  return { file, sentences: findings(table, file) };
}

describe("What was found in a file, a sentence each", () => {
  test("names traces, codes, words, doubles and gaps with their lines", () => {
    const { sentences } = said(
      "Date,Rain (in)\n2026-05-04,T\n2026-05-05,-9999\n2026-05-06,wet\n2026-05-06,0.2\n2026-05-07,0.3\n2026-05-07,0.4\n2026-05-09,1\nsum,3\n",
      { notMeasured: "blank", noReading: "blank", repeated: "sum" },
    );
    expect(sentences).toEqual([
      "8 lines under the headings.",
      "6 days without a break, from 2026-05-04 to 2026-05-09.",
      "1.9 in of rain in all; the most in one step is 1 in.",
      'Unit: in, as the heading "Rain (in)" says.',
      '1 trace is written as 0 with the note "trace".',
      '1 line with "-9999" for a depth: not measured.',
      '1 line with a depth that cannot be read, taken as not measured: line 4 "wet".',
      '1 line without a date that can be read, left out: line 9 "sum".',
      "1 line says again what another says, and counts once.",
      "1 time stands twice with different depths: 2026-05-07 (0.3, 0.4).",
      "1 day has no line in the file.",
    ]);
  });

  test("says how dates, decimals and hours were read", () => {
    const { sentences } = said("Date;Rain (mm)\n13.05.2026;1,5\n12.05.2026;0\n");
    expect(sentences).toContain("Dates are written with the day first: some have a number over 12 there.");
    expect(sentences).toContain("Depths are written with a decimal comma.");
    expect(sentences).toContain("The lines were not in the order of their times, and were sorted.");
    const offsets = said("Time,Rain (mm)\n2026-05-04T00:00-04:30,1\n2026-05-04T01:00-04:30,2\n").sentences;
    expect(offsets).toContain("Times carry their distance from Greenwich and are kept in standard time, −04:30.");
  });

  test("says that a clock follows summer time, or that it is taken as standard time", () => {
    const hours = localHours("2026-01-01", "2027-01-01", [["2026-03-08 02", "2026-11-01 01"]]);
    const text = ["Time,Rain (mm)", ...hours.map((hour) => `${hour},0.1`)].join("\n");
    expect(said(text).sentences.at(-1)).toBe(
      "The clock follows summer time (1 hour skipped, 1 told twice); readings are kept in standard time, and none is lost.",
    );
    expect(said(text, { clock: "standard" }).sentences.at(-1)).toBe("The clock is taken as standard time all year.");
    expect(said(text).sentences).toContain("That is 876.6 mm of rain a year.");
  });

  test("says what a year of hours would be as days", () => {
    expect(
      rowsAsDays(said("Time,Rain (mm)\n2026-05-04 00:00,1\n2026-05-04 01:00,1\n2026-05-06 23:00,1\n", { noReading: "dry" }).file),
    ).toEqual({ steps: 72, days: 3 });
    expect(rowsAsDays(said("Date,Rain (mm)\n2026-05-04,1\n2026-05-05,1\n").file)).toBeNull();
  });
});

describe("Why a file is not taken", () => {
  test.each([
    [
      "Date,Rain (in)\n13/05/2026,0\n05/14/2026,0\n",
      "Some dates can only be read with the day first and some only with the month first. Write them all as 2026-05-04.",
    ],
    [
      "Time,Rain (in)\n2026-05-04 00:00,1\n2026-05-04 01:00,2\n2026-05-04 02:07,3\n2026-05-04 03:00,3\n2026-05-04 04:00,3\n",
      "1 line does not fall on the record's step of 1 h: line 4. Put their times right, or leave them out.",
    ],
    [
      "Time,Rain (in)\n1950-01-01 00:00,1\n1950-01-01 01:00,2\n1950-01-01 02:00,2\n1990-01-01 00:00,1\n",
      "That would be 350,641 rows, and the sheet takes 263,000. Daily totals would fit.",
    ],
  ])("%j", (text, sentence) => {
    const { refusal } = said(text).file;
    expect(refusal === null ? "" : refusalWords(refusal)).toBe(sentence);
  });
});

test("Doubts name the amount and ask for the unit", () => {
  expect(unlikelyWords({ kind: "looks like mm", yearlyInches: 401.2 })).toBe(
    "401 inches of rain a year is more than almost any town gets. Are these millimeters?",
  );
  expect(unlikelyWords({ kind: "more than ever measured", largest: 80, most: 71.85, unit: "in", within: "day" })).toBe(
    "One reading is 80 in: more than was ever measured in a day anywhere, 71.85 in.",
  );
});

test("Moments and steps are named as a person would", () => {
  expect([momentWords(46_000 * 1440, 1440), momentWords(46_000 * 1440 + 429, 60)]).toEqual(["2025-12-09", "2025-12-09 07:09"]);
  expect([1440, 60, 15].map(stepName)).toEqual(["day", "hour", "step of 15 min"]);
});
