import { describe, expect, test } from "vitest";
import { captureCurve, SHARE_AT_END, yearsOfRain } from "../../../../addin/actions/basin/capture-curve.ts";
import { draftBasin, type BasinInputs } from "../../../../addin/actions/basin/draft-basin.ts";
import { readRecordedRain, type RecordedRain } from "../../../../addin/actions/rain-record/recorded-rain.ts";
import { writeRainRecord } from "../../../../addin/actions/rain-record/write-rain-record.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { areaForCapture, longTerm } from "../../../../functions/worksheet/long-term.ts";
import {
  captureFacts,
  captureMarks,
  capturePoints,
  captureRows,
  captureSentence,
  lastArea,
} from "../../../../taskpane/parts/capture/capture-words.ts";
import { dailyRainMillimetres } from "../../../functions/rainfall/daily-rain.ts";
import { roofInMetric, roofInUs, settings } from "../../../taskpane/views/basin/basin-examples.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

const millimetres = dailyRainMillimetres.Seattle;
const inches = millimetres.map((depth) => depth / 25.4);

async function recorded(unit: "in" | "mm", depths: readonly (number | null)[]): Promise<RecordedRain> {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await writeRainRecord(
    workbook,
    { unit, stepMinutes: 1440, beganMinutes: 45_000 * 1440, depths, remarks: new Map() },
    "replace",
    "",
    await readRecordedRain(workbook),
  );
  return readRecordedRain(workbook);
}

const seattle = recorded("mm", millimetres);

async function curveOf(inputs: BasinInputs) {
  const rain = yearsOfRain(await seattle);
  const curve = rain === null ? null : captureCurve(inputs, draftBasin(inputs, settings), rain);
  if (rain === null || curve === null) throw new Error("there is no curve");
  return { rain, curve };
}

const column = (values: readonly number[]) => values.map((value) => [value]);

describe("The capture curve on Seattle's days of 2012 to 2015 (vega-datasets 3.2.1)", () => {
  test("is SOAK.LONGTERM's captured share at every floor, in US units", async () => {
    const { curve } = await curveOf(roofInUs);
    for (const { area, capturedShare, overflowsAYear, longestPondingHours } of [
      ...curve.points.slice(1).filter((_, index) => index % 12 === 0),
      curve.drafted,
    ]) {
      const [answer] = longTerm.evaluate([column(inches), 24, 1000, 0.95, area, 6, 0.25, 18, 0.25, 3]);
      expect(capturedShare).toBeCloseTo(Number(answer?.[1]), 6);
      expect(overflowsAYear).toBeCloseTo(Number(answer?.[2]), 6);
      expect(longestPondingHours).toBeCloseTo(Number(answer?.[4]), 4);
    }
  });

  test("ends where SOAK.AREAFORCAPTURE finds 95 %, and rises all the way from nothing", async () => {
    const { curve } = await curveOf(roofInUs);
    const [[area] = []] = areaForCapture.evaluate([SHARE_AT_END, column(inches), 24, 1000, 0.95, 6, 0.25, 18, 0.25, 3]);
    expect(curve.endsAt).toBe("share wanted");
    expect(curve.points.at(-1)?.area).toBeCloseTo(Number(area), 3);
    expect(curve.points[0]).toMatchObject({ area: 0, capturedShare: 0 });
    curve.points.slice(1).forEach((point, index) => expect(point.capturedShare).toBeGreaterThan(curve.points[index]?.capturedShare ?? 1));
  });

  test("has a knee between its ends, above the straight line that joins them", async () => {
    const { knee, points } = (await curveOf(roofInUs)).curve;
    const end = points.at(-1);
    expect(knee?.area).toBeGreaterThan(0);
    expect(knee?.area).toBeLessThan(end?.area ?? 0);
    expect(knee?.capturedShare).toBeGreaterThan(((end?.capturedShare ?? 0) * (knee?.area ?? 0)) / (end?.area ?? 1));
  });

  test("is the same in a metric yard", async () => {
    const [us, metric] = [(await curveOf(roofInUs)).curve, (await curveOf({ ...roofInMetric, stormDepth: 25.4 })).curve];
    expect(metric.drafted.area / us.drafted.area).toBeCloseTo(0.09290304, 9);
    expect(metric.knee?.capturedShare).toBeCloseTo(us.knee?.capturedShare ?? 0, 6);
    expect(metric.drafted.overflowAYear / us.drafted.overflowAYear).toBeCloseTo(0.028316846592, 6);
  });

  test("ends at a garden as large as what drains to it where 95 % takes more", async () => {
    const rain = yearsOfRain(await seattle);
    const shallow = { ...draftBasin(roofInUs, settings), pondingDepth: { value: 0.1 }, designRate: { value: 0.001 }, mediaDepth: 0 };
    const curve = rain === null ? null : captureCurve(roofInUs, shallow, rain);
    if (curve === null) throw new Error("there is no curve");
    expect(curve.endsAt).toBe("contributing area");
    expect(curve.points.at(-1)?.area).toBeCloseTo(1000, 9);
  });

  test("says in words, marks and rows what it shows, and reaches to a draft beyond its end", async () => {
    const { curve, rain } = await curveOf(roofInUs);
    const facts = captureFacts(curve, rain, "us").map(({ label, says }) => `${label}: ${says}`);
    expect(facts[0]).toMatch(/^Rain record: 4 years, [\d.]+ inches of rain a year, in steps of 24 h$/);
    const metric = await curveOf(roofInMetric);
    expect(captureFacts(metric.curve, metric.rain, "metric")[0]?.says).toMatch(/^4 years, [\d,]+ mm of rain a year, in steps of 24 h$/);
    expect(captureSentence(curve, "us")).toMatch(/^This draft: [\d.]+ sq ft captures [\d.]+ %\. Knee: [\d.]+ sq ft captures [\d.]+ %\.$/);
    expect(captureMarks(curve, curve.drafted).map(({ letter, shape }) => `${letter} ${shape}`)).toEqual([
      "T square",
      "K diamond",
      "D circle",
    ]);
    expect(captureRows(curve, "us")).toHaveLength(10);
    expect(rain).toMatchObject({ isShort: true, hasLongSteps: true });
    expect(captureMarks(curve, null).map(({ letter }) => letter)).toEqual(["K", "D"]);
    expect(lastArea(curve)).toBeGreaterThanOrEqual(1.25 * curve.drafted.area * (1 - 1e-12));
    expect(capturePoints(curve).times.at(-1)).toBe(lastArea(curve));
  });
});

describe("There is no curve", () => {
  test("without a record, over a record with a blank depth, and over one in which it never rained", async () => {
    expect(yearsOfRain(await recorded("in", []))).toBeNull();
    expect(yearsOfRain(await recorded("in", [0.5, null, 1]))).toBeNull();
    expect(yearsOfRain(await recorded("in", [0, 0, 0]))).toBeNull();
  });

  test("for a basin without a size", async () => {
    const rain = yearsOfRain(await seattle);
    const none = { ...roofInUs, testedRate: 0 };
    expect(rain === null ? "no rain" : captureCurve(none, draftBasin(none, settings), rain)).toBeNull();
  });
});

test("A record in inches gives the same curve as the same record in millimetres", async () => {
  const [one, other] = [yearsOfRain(await recorded("in", inches)), yearsOfRain(await seattle)];
  expect(one?.record.totalRainInches).toBeCloseTo(other?.record.totalRainInches ?? 0, 9);
});
