import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SOIL_STATES, soilVolumeInState } from "../../../functions/earthwork/soil-state.ts";
import { EARTH_SOILS } from "../../../functions/published/fm-5-434.ts";
import { fm5434Table11 } from "../../published/fm-5-434-table-1-1.ts";
import { measured } from "../measured.ts";

const volume = measured(0, 1000);
const state = fc.constantFrom(...SOIL_STATES);
const soil = fc.constantFrom(...EARTH_SOILS);

describe("US Army, FM 5-434, 15 June 2000, table 1-1", () => {
  // Printed to 0.01; the closeness asked for is half of that, also where two rounded factors are chained.
  test.each(fm5434Table11)("1 cu yd of $soil $from is $factor cu yd $to", ({ soil: kind, from, to, factor }) => {
    expect(Math.abs(soilVolumeInState(1, from, to, kind) - factor)).toBeLessThanOrEqual(0.005 + 1e-9);
  });
});

describe("computed by hand", () => {
  test("6 cu yd of clay in place are 8.58 loose and 5.40 compacted", () => {
    expect(soilVolumeInState(6, "in place", "loose", "clay")).toBeCloseTo(8.58, 2);
    expect(soilVolumeInState(6, "in place", "compacted", "clay")).toBeCloseTo(5.4, 2);
  });

  test("a berm of 1.81 cu yd of compacted loam needs 2.01 in place, and 1.99 left over are 2.49 loose", () => {
    expect(soilVolumeInState(1.81, "compacted", "in place", "loam")).toBeCloseTo(2.01, 2);
    expect(soilVolumeInState(1.99, "in place", "loose", "loam")).toBeCloseTo(2.49, 2);
  });

  // US Navy training manual, table 10-1 (read in an extract): 100 in place, 111 loose, 95 compacted.
  test("100 cu yd of sand in place are 111 loose and 95 compacted", () => {
    expect(soilVolumeInState(100, "in place", "loose", "sand")).toBeCloseTo(111, 10);
    expect(soilVolumeInState(100, "in place", "compacted", "sand")).toBeCloseTo(95, 10);
  });
});

describe("any earth", () => {
  test("is the same there and back again", () => {
    fc.assert(
      fc.property(volume, state, state, soil, (amount, one, other, kind) => {
        const there = soilVolumeInState(amount, one, other, kind);
        expect(soilVolumeInState(there, other, one, kind)).toBeCloseTo(amount, 9);
      }),
    );
  });

  test("is the same by way of a third state", () => {
    fc.assert(
      fc.property(volume, state, state, state, soil, (amount, from, by, to, kind) => {
        const byWay = soilVolumeInState(soilVolumeInState(amount, from, by, kind), by, to, kind);
        expect(byWay).toBeCloseTo(soilVolumeInState(amount, from, to, kind), 9);
      }),
    );
  });

  test("takes more room loose than in place, and more in place than compacted", () => {
    fc.assert(
      fc.property(measured(0.001, 1000), soil, (amount, kind) => {
        expect(soilVolumeInState(amount, "in place", "loose", kind)).toBeGreaterThan(amount);
        expect(soilVolumeInState(amount, "in place", "compacted", kind)).toBeLessThan(amount);
      }),
    );
  });

  test("left as it is keeps its very volume", () => {
    fc.assert(
      fc.property(volume, state, soil, (amount, one, kind) => {
        expect(soilVolumeInState(amount, one, one, kind)).toBe(amount);
      }),
    );
  });
});
