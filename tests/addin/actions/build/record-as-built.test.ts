import { beforeEach, describe, expect, test } from "vitest";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { mulchTopUp, wateringNeed } from "../../../../addin/actions/care/garden-care.ts";
import { readProgram, type DesignCells, type Yard } from "../../../../addin/actions/program/read-program.ts";
import {
  builtBasin,
  compareAsBuilt,
  gardenArea,
  newestAsBuilt,
  recordAsBuilt,
  type AsBuiltMeasures,
} from "../../../../addin/actions/build/record-as-built.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { asBuiltFormulas } from "../../../../addin/records/as-built-formulas.ts";
import { asBuiltSheet } from "../../../../addin/records/as-built.ts";
import { placeAsSetUp } from "../../../../addin/records/place.ts";
import { designSheet } from "../../../../addin/records/design.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

const nothing: AsBuiltMeasures = {
  shape: null,
  floorLength: null,
  floorWidth: null,
  pondingDepth: null,
  sideSlope: null,
  mediaDepth: null,
  sillWidth: null,
  lowestBerm: null,
  drainHours: null,
};
/** Handbook of rain gardens, test G3: an ellipse on 20 by 10 ft at the rim, 6 in deep with 3 to 1 sides, so 17 by 7 ft at the floor. */
const handbookEllipse: AsBuiltMeasures = { ...nothing, shape: "ellipse", floorLength: 17, floorWidth: 7, pondingDepth: 6, sideSlope: 3 };
const blankDesign = Object.fromEntries(Object.keys(designSheet.columns).map((key) => [key, null])) as unknown as DesignCells;
const limits = { drainHours: 48 };

describe("what was built, from its own measurements", () => {
  test("the handbook's ellipse has 93.46 sq ft of floor, 157.08 at the rim, and holds 62.05 cu ft", () => {
    const { floorArea, rimArea, waterHeld } = builtBasin(handbookEllipse, "us");
    expect(floorArea).toBeCloseTo(93.46, 2);
    expect(rimArea).toBeCloseTo(157.08, 2);
    expect(waterHeld).toBeCloseTo(62.05, 2);
  });

  // Handbook of rain gardens, test G2: bottom 17 x 7 = 119 sq ft, top 20 x 10 = 200, 6 in deep: 79.00 cu ft.
  test("the handbook's rectangle holds 79.00 cu ft, whichever side is called its length", () => {
    expect(builtBasin({ ...handbookEllipse, shape: "rectangle" }, "us").waterHeld).toBeCloseTo(79, 2);
    expect(builtBasin({ ...handbookEllipse, shape: "rectangle", floorLength: 7, floorWidth: 17 }, "us").waterHeld).toBeCloseTo(79, 2);
  });

  test("the same garden in meters holds the same water", () => {
    // 17 ft = 5.1816 m, 7 ft = 2.1336 m, 6 in = 152.4 mm; 62.05 cu ft x 0.0283168 = 1.757 m³, 157.08 sq ft x 0.092903 = 14.593 m².
    const metric = builtBasin({ ...handbookEllipse, floorLength: 5.1816, floorWidth: 2.1336, pondingDepth: 152.4 }, "metric");
    expect(metric.waterHeld).toBeCloseTo(1.757, 3);
    expect(metric.rimArea).toBeCloseTo(14.593, 3);
  });

  test("sides that were not measured are taken as upright: 93.46 sq ft by half a foot is 46.73 cu ft", () => {
    expect(builtBasin({ ...handbookEllipse, sideSlope: null }, "us").waterHeld).toBeCloseTo(46.73, 2);
  });

  // A quarter of a soil mix is voids (common practice, no source): 93.46 sq ft x 0.5 ft x 0.25 = 11.68 cu ft, and 62.05 above it.
  test("6 in of soil mix under the floor holds another 11.68 cu ft, in meters the same", () => {
    expect(builtBasin({ ...handbookEllipse, mediaDepth: 6 }, "us").waterHeld).toBeCloseTo(73.73, 2);
    // 73.73 cu ft x 0.0283168 = 2.088 m³.
    expect(
      builtBasin({ ...handbookEllipse, floorLength: 5.1816, floorWidth: 2.1336, pondingDepth: 152.4, mediaDepth: 152.4 }, "metric")
        .waterHeld,
    ).toBeCloseTo(2.088, 3);
  });

  test("what was not measured is not worked out", () => {
    expect(builtBasin(nothing, "us")).toEqual({ floorArea: null, rimArea: null, waterHeld: null });
    expect(builtBasin({ ...handbookEllipse, floorWidth: null }, "us")).toEqual({ floorArea: null, rimArea: null, waterHeld: null });
    expect(builtBasin({ ...handbookEllipse, pondingDepth: null }, "us")).toMatchObject({ rimArea: null, waterHeld: null });
  });
});

describe("beside the design", () => {
  const design: DesignCells = { ...blankDesign, floorArea: 95, pondingDepth: 6, waterHeld: 62.05, drawdownHours: 24 };
  const compare = (measured: Partial<AsBuiltMeasures>) => compareAsBuilt({ ...handbookEllipse, ...measured }, design, 3, limits, "us");

  test.each([
    [6, "pass"],
    [6.5, "pass"],
    [5.5, "pass"],
    [6.51, "watch"],
    [7, "watch"],
    [5, "watch"],
    [7.01, "fail"],
    [4.99, "fail"],
  ])("a sill %d in above the floor, 6 in designed: %s", (pondingDepth, finding) => {
    expect(compare({ pondingDepth }).pondingDepth).toEqual({ built: pondingDepth, designed: 6, finding });
  });

  test("a design that counts on soil mix is not held against a garden whose mix was not measured", () => {
    const withMix: DesignCells = { ...design, mediaDepth: 6, waterHeld: 73.73 };
    expect(compareAsBuilt(handbookEllipse, withMix, 3, limits, "us").waterHeld?.finding).toBeNull();
    expect(compareAsBuilt({ ...handbookEllipse, mediaDepth: 6 }, withMix, 3, limits, "us").waterHeld?.finding).toBe("pass");
    // Nothing placed: 62.05 / 73.73 = 84 %.
    expect(compareAsBuilt({ ...handbookEllipse, mediaDepth: 0 }, withMix, 3, limits, "us").waterHeld?.finding).toBe("watch");
  });

  test("a sill 12.7 mm off is within half an inch, 12.8 mm is not", () => {
    const metric = (pondingDepth: number) =>
      compareAsBuilt({ ...nothing, pondingDepth }, { ...blankDesign, pondingDepth: 150 }, 3, limits, "metric").pondingDepth?.finding;
    expect([metric(162.7), metric(162.8), metric(175.4), metric(175.5)]).toEqual(["pass", "watch", "watch", "fail"]);
  });

  test.each([
    [-0.1, "fail"],
    [0, "watch"],
    [1.9, "watch"],
    [2, "pass"],
  ])("a berm %d in above the sill at its lowest: %s", (lowestBerm, finding) => {
    expect(compare({ lowestBerm }).lowestBerm?.finding).toBe(finding);
  });

  test.each([
    [48, "pass"],
    [48.1, "fail"],
  ])("a flow test that drained in %d h, 48 allowed: %s", (drainHours, finding) => {
    expect(compare({ drainHours }).drainHours).toEqual({ built: drainHours, designed: 48, finding });
  });

  test.each([
    [3, "pass"],
    [3.5, "pass"],
    [2.9, "watch"],
  ])("sides of %d to 1, 3 designed: %s", (sideSlope, finding) => {
    expect(compare({ sideSlope }).sideSlope?.finding).toBe(finding);
  });

  // 46.73 cu ft with upright sides: 95 % of 49.189, 80 % of 58.41.
  test.each([
    [49.1, "pass"],
    [49.3, "watch"],
    [58.3, "watch"],
    [58.5, "fail"],
  ])("46.73 cu ft held of %d designed: %s", (waterHeld, finding) => {
    const { waterHeld: held } = compareAsBuilt({ ...handbookEllipse, sideSlope: 0 }, { ...design, waterHeld }, 3, limits, "us");
    expect(held?.finding).toBe(finding);
  });

  test("where Design shows no number nothing is judged, and what was not measured is not there", () => {
    const compared = compareAsBuilt({ ...nothing, pondingDepth: 6 }, { ...blankDesign, pondingDepth: "#N/A" }, 3, limits, "us");
    expect(compared.pondingDepth).toEqual({ built: 6, designed: null, finding: null });
    expect([compared.waterHeld, compared.lowestBerm, compared.drainHours, compared.floorArea]).toEqual([null, null, null, null]);
  });
});

describe("on the As-built sheet", () => {
  let workbook: WorkbookInMemory;
  const yard = async (): Promise<Yard> => {
    const found = (await readProgram(workbook)).yards[0];
    if (found === undefined) throw new Error("no yard");
    return found;
  };
  const measured = { ...handbookEllipse, sillWidth: 2, lowestBerm: 3, drainHours: 20, by: "Crew two", note: "" };

  beforeEach(async () => {
    workbook = new WorkbookInMemory();
    await setUpWorkbook(workbook);
    await addYard(workbook, { yard: "Lantern House", address: "3 Cooper's Rise", units: "us", soilGroup: "B" });
  });

  test("the newest day counts, and of two on one day the lower row", async () => {
    expect(newestAsBuilt((await yard()).asBuilt)).toBeNull();
    for (const [day, pondingDepth] of [
      [20, 5],
      [12, 4],
      [20, 6],
    ] as const) {
      await recordAsBuilt(workbook, await yard(), { ...measured, date: dayNumber(2026, 6, day), pondingDepth });
    }
    expect(newestAsBuilt((await yard()).asBuilt)?.record.pondingDepth).toBe(6);
  });

  // 157.08 sq ft of garden (the handbook's rim) by 1 in is 13.09 cu ft, 97.9 gal at 7.4805 gal each.
  test("water for a week comes from the rim as built, and from the design before that", async () => {
    const before = { ...(await yard()), design: { ...blankDesign, rimArea: 200 } };
    expect(gardenArea(before)).toEqual({ area: 200, from: "design" });
    // 200 sq ft x 1 in / 12 x 7.4805 = 124.7 gal.
    expect(wateringNeed(before)?.amount).toBeCloseTo(124.7, 1);
    await recordAsBuilt(workbook, await yard(), { ...measured, date: dayNumber(2026, 6, 20) });
    const after = { ...(await yard()), design: { ...blankDesign, rimArea: 200 } };
    expect(gardenArea(after)?.from).toBe("as-built");
    expect(wateringNeed(after)?.amount).toBeCloseTo(97.9, 1);
    expect(wateringNeed({ ...(await yard()), asBuilt: [], design: { ...blankDesign, rimArea: "#N/A" } })).toBeNull();
  });

  test("a metric garden of 14.593 m² takes 370.7 L a week", async () => {
    // 14.593 m² x 25.4 mm = 370.7 L.
    expect(wateringNeed({ asBuilt: [], units: "metric", design: { ...blankDesign, rimArea: 14.593 } })?.amount).toBeCloseTo(370.7, 1);
  });

  test("mulch is topped up to the program's 3 in: 1 in missing on 162 sq ft is half a cubic yard", () => {
    const garden = { asBuilt: [], units: "us" as const, design: { ...blankDesign, rimArea: 162 } };
    // 162 sq ft x 1 in / 324 = 0.5 cu yd.
    expect(mulchTopUp(garden, 2, { mulchDepthInches: 3 })).toBeCloseTo(0.5, 10);
    expect(mulchTopUp(garden, 3, { mulchDepthInches: 3 })).toBe(0);
    expect(mulchTopUp(garden, 5, { mulchDepthInches: 3 })).toBe(0);
    // 10 m² x (76.2 - 50) mm = 0.262 m³.
    expect(mulchTopUp({ ...garden, units: "metric", design: { ...blankDesign, rimArea: 10 } }, 50, { mulchDepthInches: 3 })).toBeCloseTo(
      0.262,
      6,
    );
  });

  test("units, floor area and water held are worked out in the row itself, in the columns that hold no input", () => {
    const place = placeAsSetUp(asBuiltSheet);
    const formulas = asBuiltFormulas(place, placeAsSetUp(designSheet));
    expect(formulas.map(({ range }) => range.column)).toEqual(
      (["units", "floorArea", "waterHeld"] as const).map((key) => place.columnIndex(key)),
    );
    expect(formulas.every(({ range }) => range.rows === asBuiltSheet.rows && range.row === place.firstRow)).toBe(true);
    expect(formulas[2]?.formulas[9]?.[0]).toContain(`SOAK.BASINVOLUME(${place.ownCell(place.firstRow + 9, "floorArea")},`);
  });
});
