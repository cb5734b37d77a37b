import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isPrintedMaterial, MATERIALS, materialTons, usualPoundsPerCubicYard } from "../../../functions/amendment/material-weight.ts";
import { printedDensities } from "../../../functions/published/tm-9-2320-366-10-1.ts";
import { tm9Table215 } from "../../published/tm-9-2320-366-10-1-table-2-15.ts";
import { measured } from "../measured.ts";

const volume = measured(0, 100);
const material = fc.constantFrom(...MATERIALS);

describe("US Army, TM 9-2320-366-10-1, table 2-15", () => {
  test.each(tm9Table215)("$printedAs weighs $poundsPerCubicYard lb a cu yd", ({ material: of, poundsPerCubicFoot, poundsPerCubicYard }) => {
    expect(2000 * materialTons(1, of)).toBeCloseTo(poundsPerCubicYard, 6);
    expect(2000 * materialTons(1 / 27, of)).toBeCloseTo(poundsPerCubicFoot, 9);
  });

  // The metric column is the table's own conversion, up to 1 kg from the exact one.
  test.each(tm9Table215)("$printedAs weighs $kilogramsPerCubicMeter kg a cu m", ({ material: of, kilogramsPerCubicMeter }) => {
    const kilograms = materialTons(1 / 0.764554857984, of) * 907.18474;
    expect(Math.abs(kilograms - kilogramsPerCubicMeter)).toBeLessThanOrEqual(1);
  });

  test("a level box of 5.19 cu yd of dry earth weighs 10,510 lb", () => {
    expect(Math.abs(2000 * materialTons(5.19, "dry earth") - 10_510)).toBeLessThanOrEqual(0.5);
  });

  test("10 cu yd of dry loose earth weigh 20,250 lb, 10.1 tons", () => {
    expect(2000 * materialTons(10, "dry earth")).toBeCloseTo(20_250, 6);
    expect(materialTons(10, "dry earth")).toBeCloseTo(10.1, 1);
  });

  test("every printed material is offered, and no other counts as printed", () => {
    expect(MATERIALS.filter(isPrintedMaterial)).toEqual(tm9Table215.map(({ material: of }) => of));
    expect(printedDensities.printedTo).toBe(1);
  });
});

// Common practice, no source.
describe("usual weights", () => {
  test.each([
    ["compost", 800, 1000],
    ["mulch", 400, 800],
    ["wet topsoil", 2700, 3000],
  ] as const)("%s is counted at the heavy end of %d to %d lb a cu yd", (of, light, heavy) => {
    expect(2000 * materialTons(1, of)).toBeCloseTo(heavy, 9);
    expect(usualPoundsPerCubicYard[of]).toBeGreaterThan(light);
    expect(isPrintedMaterial(of)).toBe(false);
  });
});

describe("any material", () => {
  test("weighs in proportion to its volume", () => {
    fc.assert(
      fc.property(volume, volume, material, (one, other, of) => {
        expect(materialTons(one + other, of)).toBeCloseTo(materialTons(one, of) + materialTons(other, of), 6);
      }),
      { examples: [[0, 0, "gravel"]] },
    );
  });

  test("weighs between the lightest mulch and two and a half times water", () => {
    fc.assert(
      fc.property(material, (of) => {
        const poundsPerCubicFoot = 2000 * materialTons(1 / 27, of);
        expect(poundsPerCubicFoot).toBeGreaterThan(400 / 27);
        expect(poundsPerCubicFoot).toBeLessThan(2.5 * 62.4);
      }),
    );
  });

  test("weighs more wet than dry", () => {
    fc.assert(
      fc.property(measured(0.1, 100), (cubicYards) => {
        expect(materialTons(cubicYards, "moist earth")).toBeGreaterThan(materialTons(cubicYards, "dry earth"));
        expect(materialTons(cubicYards, "wet gravel and sand")).toBeGreaterThan(materialTons(cubicYards, "dry gravel and sand"));
      }),
    );
  });
});
