import { describe, expect, test } from "vitest";
import { coverCurveNumbers, COVERS, SOIL_GROUPS } from "../../../functions/published/tr-55.ts";
import { tableCurveNumber } from "../../../functions/runoff/curve-number.ts";
import { lotImperviousPercent, tr55Table22 } from "../../published/tr-55-table-2-2.ts";

describe("TR-55, 2nd ed., 1986, tables 2-2a and 2-2c", () => {
  test.each(tr55Table22)("%s has curve numbers %i, %i, %i and %i on soil groups A to D", (cover, ...printed) => {
    expect(SOIL_GROUPS.map((group) => tableCurveNumber(cover, group))).toEqual(printed);
  });

  test("no cover is offered that the tables do not print", () => {
    const printed = new Set<string>(tr55Table22.map(([cover]) => cover));
    expect(COVERS.filter((cover) => !printed.has(cover))).toEqual(["roof", "paving"]);
    expect(coverCurveNumbers.printedTo).toBe(1);
  });

  // Figure 2-3's equation (from memory): the connected impervious part counts 98, the rest good open space.
  const lots = Object.entries(lotImperviousPercent) as [keyof typeof lotImperviousPercent, number][];
  const cells = lots.flatMap(([lot, percent]) => SOIL_GROUPS.map((group) => ({ lot, group, percent })));
  test.each(cells.filter(({ lot, group }) => !(lot === "lot of 1/3 acre" && group === "D")))(
    "a $lot on soil group $group is $percent percent impervious and the rest good lawn",
    ({ lot, group, percent }) => {
      const open = tableCurveNumber("good lawn", group);
      expect(tableCurveNumber(lot, group)).toBe(Math.floor(open + (percent / 100) * (98 - open) + 0.5));
    },
  );

  test("a third-acre lot on soil group D is printed 86, where the equation gives 85.4", () => {
    expect(80 + 0.3 * (98 - 80)).toBeCloseTo(85.4, 10);
    expect(tableCurveNumber("lot of 1/3 acre", "D")).toBe(86);
  });
});

describe("any cover", () => {
  test.each(COVERS)("%s runs off no less on a slower soil, and 30 to 98 is its range", (cover) => {
    const numbers = SOIL_GROUPS.map((group) => tableCurveNumber(cover, group));
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    expect(Math.min(...numbers)).toBeGreaterThanOrEqual(30);
    expect(Math.max(...numbers)).toBeLessThanOrEqual(98);
  });

  test.each(["lawn", "brush", "orchard", "woods"] as const)("%s in better condition runs off no more", (cover) => {
    for (const group of SOIL_GROUPS) {
      expect(tableCurveNumber(`good ${cover}`, group)).toBeLessThan(tableCurveNumber(`fair ${cover}`, group));
      expect(tableCurveNumber(`fair ${cover}`, group)).toBeLessThan(tableCurveNumber(`poor ${cover}`, group));
    }
  });

  test("a roof and paving are the printed roof or paving", () => {
    for (const group of SOIL_GROUPS) {
      expect(tableCurveNumber("roof", group)).toBe(tableCurveNumber("roof or paving", group));
      expect(tableCurveNumber("paving", group)).toBe(tableCurveNumber("roof or paving", group));
    }
  });
});
