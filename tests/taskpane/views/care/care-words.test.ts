import { describe, expect, test } from "vitest";
import type { DueFollowUp } from "../../../../addin/actions/care/due-follow-ups.ts";
import type { DesignCells } from "../../../../addin/actions/program/read-program.ts";
import { designSheet } from "../../../../addin/records/design.ts";
import { programSettings, type SettingValues } from "../../../../addin/records/program.ts";
import { dueWords, mulchSentence, wateringSentence } from "../../../../taskpane/views/care/care-words.ts";

const blank = Object.fromEntries(Object.keys(designSheet.columns).map((key) => [key, null])) as unknown as DesignCells;
const settings = Object.fromEntries(Object.entries(programSettings).map(([key, { value }]) => [key, value])) as unknown as SettingValues;
const garden = (rimArea: number | string | null, units: "us" | "metric" = "us") => ({ asBuilt: [], units, design: { ...blank, rimArea } });

describe("the watering sentence for the homeowner", () => {
  // 162 sq ft x 1 in / 12 x 7.4805 gal = 101 gal.
  test("an inch a week on 162 sq ft is about 101 gallons, until the plants are established", () => {
    expect(wateringSentence(garden(162))).toBe(
      "Water the garden with about 101 gallons a week (1 in over 162 sq ft, the garden as designed), less that week's rain, until the plants are established: through the first season (common practice).",
    );
  });

  // 15 m² x 25.4 mm = 381 L.
  test("a metric yard is told liters", () => {
    expect(wateringSentence(garden(15, "metric"))).toMatch(/^Water the garden with about 381 liters a week \(25 mm over 15 m²/);
  });

  test("a garden that is not measured and not designed gets no number", () => {
    expect(wateringSentence(garden("#N/A"))).toBe("How much water it takes is worked out once the garden is measured or designed.");
  });
});

describe("the mulch check", () => {
  // 162 sq ft x (3 - 2) in / 324 = 0.5 cu yd.
  test("2 in where the program wants 3 is half a cubic yard short on 162 sq ft", () => {
    expect(mulchSentence(garden(162), 2, settings)).toBe("Bring 0.5 cu yd to make it 3 in over 162 sq ft, clear of the stems.");
  });

  test("3 and 4 in are enough, more than 4 is too deep", () => {
    expect(mulchSentence(garden(162), 3, settings)).toBe("Deep enough: the program wants 3 in.");
    expect(mulchSentence(garden(162), 4, settings)).toBe("Deep enough: the program wants 3 in.");
    expect(mulchSentence(garden(162), 4.1, settings)).toBe(
      "Over 4 in keeps rain and air from the soil (common practice): spread it thinner.",
    );
  });

  test("a metric yard is told millimeters and cubic meters", () => {
    // 10 m² x (76.2 - 50) mm = 0.262 m³.
    expect(mulchSentence(garden(10, "metric"), 50, settings)).toBe("Bring 0.26 m³ to make it 76 mm over 10 m², clear of the stems.");
  });

  test("without an area no volume is made up", () => {
    expect(mulchSentence(garden(null), 1, settings)).toBe("The garden has no area yet, so the mulch to bring is not known.");
  });
});

test.each<[state: DueFollowUp["state"], inDays: number | null, words: string]>([
  ["overdue", -1, "2026-06-16, overdue by a day"],
  ["overdue", -3, "2026-06-16, overdue by 3 days"],
  ["today", 0, "2026-06-16, due today"],
  ["soon", 1, "2026-06-16, due tomorrow"],
  ["later", 40, "2026-06-16, due in 40 days"],
  ["no day", null, "no day set"],
])("a look that is %s (%s days) says so: %s", (state, inDays, words) => {
  const record = { due: inDays === null ? null : 46189 };
  expect(dueWords({ siteId: "Y-001", row: { record } as DueFollowUp["row"], state, inDays })).toBe(words);
});
