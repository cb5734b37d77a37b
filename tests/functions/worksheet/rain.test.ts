import { describe, expect, test } from "vitest";
import { peakFlow, rainPercentile, stormCurve } from "../../../functions/worksheet/rain.ts";
import { runoffDepth, runoffVolume, yardRunoff } from "../../../functions/worksheet/runoff.ts";
import { soakIn } from "../../../functions/worksheet/soil-water.ts";
import { cellOf, column, notThere, refused } from "./sample-functions.ts";

describe("STORMCURVE", () => {
  test("is type II in steps of 30 minutes where nothing else is said: 49 rows from 0 to 1,440 minutes", () => {
    const table = stormCurve.evaluate([2]);
    expect(table).toHaveLength(49);
    expect(table[0]).toEqual([0, 0, 0]);
    expect(table[24]).toEqual([720, 2 * 0.6632, expect.closeTo(2 * (0.6632 - 0.2833), 12)]);
    expect(table.at(-1)).toEqual([1440, 2, expect.closeTo(2 * (1 - 0.9947), 12)]);
  });

  test("brings 50.8 mm where it brings 2 in", () => {
    const us = stormCurve.evaluate([2, "III", 60, "us"]);
    const metric = stormCurve.evaluate([50.8, "iii", 60, "metric"]);
    for (const [place, [minutes, cumulative]] of us.entries()) {
      expect(metric[place]).toEqual([minutes, expect.closeTo(Number(cumulative) * 25.4, 9), expect.any(Number)]);
    }
  });

  test("takes a step that divides the day evenly, in decimals too", () => {
    expect(stormCurve.evaluate([1, "II", 7.2])).toHaveLength(201);
    expect(cellOf(stormCurve, 1, "II", 7)).toEqual(refused("Step must divide the 1,440 minutes of the storm evenly; 7 does not."));
  });

  test.each([
    { inputs: [1, "IV"], sentence: 'Storm type must be "I", "IA", "II" or "III"; it is "IV".' },
    { inputs: [1, "II", 0.5], sentence: "Step must be 1 or more." },
    { inputs: [1, "II", 2880], sentence: "Step must be 1,440 or less." },
    { inputs: [-1], sentence: "Storm depth must be 0 or more." },
  ])("says: $sentence", ({ inputs, sentence }) => {
    expect(cellOf(stormCurve, ...inputs)).toEqual(refused(sentence));
  });

  test("warns that a step over 15 minutes spreads the heaviest quarter of an hour", () => {
    expect(stormCurve.cautionsFor([1])).toHaveLength(2);
    expect(stormCurve.cautionsFor([1, "II", 15])).toEqual([expect.stringContaining("NOAA Atlas 14")]);
  });
});

describe("RAINPERCENTILE", () => {
  test("takes the 90th percentile of the rains over 0.1 in where nothing else is said, blanks left out", () => {
    expect(cellOf(rainPercentile, column(0.05, 0.6, null, 0.2, 1, "", 0.8, 0.4))).toBeCloseTo(0.92, 12);
  });

  test("filters a metric record at 2.54 mm, so 2.5 mm does not count", () => {
    expect(cellOf(rainPercentile, column(2.5, 5, 10), 0, null, "metric")).toBeCloseTo(5, 12);
    expect(cellOf(rainPercentile, column(2.54, 5, 10), 0, null, "metric")).toBeCloseTo(5, 12);
  });

  test("says so where no rain counts, in the units of the sheet", () => {
    expect(cellOf(rainPercentile, column(0, 0.1))).toEqual(notThere("No rain is deeper than 0.1 in, so none is counted."));
    expect(cellOf(rainPercentile, column(0, 2.5), 90, null, "metric")).toEqual(
      notThere("No rain is deeper than 2.54 mm, so none is counted."),
    );
  });

  test.each([
    { inputs: [column(1, "wet"), 90], sentence: 'Rain 2 must be a number; it is the text "wet".' },
    { inputs: [column(1, -1), 90], sentence: "Rain 2 must be 0 or more." },
  ])("says: $sentence", ({ inputs, sentence }) => {
    expect(cellOf(rainPercentile, ...inputs)).toEqual(refused(sentence));
  });

  test("takes a percentile of 0.9 as it stands, and asks whether 90 was meant", () => {
    expect(rainPercentile.cautionsFor([column(1, 2), 0.9])).toContain("Percent is taken as 0.9%: write a percent as 2, not 0.02.");
  });

  test("warns of a record with fewer than 10 rains above the percentile", () => {
    const record = (rains: number) => column(...Array.from({ length: rains }, (_, place) => 0.2 + place / 100));
    expect(rainPercentile.cautionsFor([record(99)])).toHaveLength(3);
    expect(rainPercentile.cautionsFor([record(100)])).toHaveLength(2);
    expect(rainPercentile.cautionsFor([record(199), 95])).toHaveLength(3);
  });
});

describe("PEAKFLOW", () => {
  // The most rain measured in an hour anywhere is 305 mm (World Meteorological Organization, from memory).
  test("asks about an intensity that no storm has, and about storms that look like another unit", () => {
    const asked = "No hour anywhere brought more than 12 in/h: look at the unit, and for how many minutes it holds.";
    expect(peakFlow.cautionsFor([1000, 12, 0.95])).toEqual([]);
    expect(peakFlow.cautionsFor([1000, 25, 0.95])).toEqual([asked]);
    expect(soakIn.cautionsFor([1, "loam", 0.3, 25])).toContain(asked);
    expect(runoffVolume.cautionsFor([1000, 1])).toEqual([]);
    expect(runoffVolume.cautionsFor([1000, 0])).toEqual([]);
    expect(runoffVolume.cautionsFor([100, 1, null, "metric"])).toEqual([
      "A storm of 1 mm hardly runs off: look at its unit, an inch is 25.4 mm.",
    ]);
    expect(runoffVolume.cautionsFor([1000, 0.1])).toEqual(["A storm of 0.1 in hardly runs off: look at its unit, an inch is 25.4 mm."]);
    expect(runoffVolume.cautionsFor([1000, 25])).toEqual([
      "Few places ever had 25 in of rain in a day: look at its unit, an inch is 25.4 mm.",
    ]);
    expect(runoffDepth.cautionsFor([400, 80, null, "metric"])).toEqual([
      "Few places ever had 400 mm of rain in a day: look at its unit, an inch is 25.4 mm.",
    ]);
    expect(stormCurve.cautionsFor([25])).toContainEqual(expect.stringContaining("Few places"));
    expect(yardRunoff.cautionsFor([25, "roof", 1000, "B"])).toEqual([expect.stringContaining("Few places")]);
  });

  test("peaks at 0.1319 cfs, or 3.736 L/s, off 1,000 sq ft of roof under 6 in/h", () => {
    expect(cellOf(peakFlow, 1000, 6, 0.95)).toBeCloseTo(0.1319, 4);
    expect(cellOf(peakFlow, 92.90304, 152.4, 0.95, "metric")).toBeCloseTo(((0.95 * 6 * 1000) / 43_200) * 28.316846592, 9);
  });

  test("takes coefficients of 0 to 1", () => {
    expect(cellOf(peakFlow, 1000, 6, 95)).toEqual(refused("Peak coefficient must be 1 or less."));
    expect(cellOf(peakFlow, 1000, 6)).toEqual(notThere("Peak coefficient is missing."));
  });

  test("warns outside the method: over 200 acres, and a coefficient that no table prints", () => {
    expect(peakFlow.cautionsFor([8_712_000, 1, 0.95])).toEqual([]);
    expect(peakFlow.cautionsFor([8_712_001, 1, 0.05])).toEqual([expect.stringContaining("200 acres")]);
    expect(peakFlow.cautionsFor([1000, 1, 0.96])).toEqual([expect.stringContaining("0.05 to 0.95")]);
    expect(peakFlow.cautionsFor([1000, 1, 0.04])).toHaveLength(1);
  });
});
