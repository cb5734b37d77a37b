import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DUG_SOILS, handDigHours, VOLUNTEER_FACTOR } from "../../../functions/earthwork/dig-hours.ts";
import { handDigCubicMetersPerHour } from "../../../functions/published/planning-planet-wiki.ts";
import { measured } from "../measured.ts";

const volume = measured(0, 60);
const soil = fc.constantFrom(...DUG_SOILS);
const people = fc.integer({ min: 1, max: 30 });

// Planning Planet wiki, pages 422684 and 422442, pits to 2 sq m and 1.5 m deep (read), printed to 0.01 cu m an hour.
describe("published outputs", () => {
  test.each([
    ["loose", 0.5],
    ["firm", 0.43],
    ["gravel", 0.34],
    ["clay", 0.35],
    ["boulder clay", 0.28],
  ] as const)("one laborer digs a cubic meter of %s soil at %d cu m an hour", (of, cubicMeters) => {
    expect(handDigHours(1 / 0.764554857984, of, 1, false).personHours).toBeCloseTo(1 / cubicMeters, 12);
  });

  test("outputs are printed to 0.01", () => {
    expect(handDigCubicMetersPerHour.printedTo).toBe(0.01);
  });

  // Computed by hand from them: 1.53, 1.78, 2.18 and 2.73 h a cu yd.
  test.each([
    ["loose", 1.53],
    ["firm", 1.78],
    ["clay", 2.18],
    ["boulder clay", 2.73],
  ] as const)("a cubic yard of %s soil takes a laborer %d h", (of, hours) => {
    expect(Math.abs(handDigHours(1, of, 1, false).personHours - hours)).toBeLessThanOrEqual(0.005);
  });

  test("6 cu yd of firm soil take volunteers 16.0 person-hours, 2.7 h for six people", () => {
    const { personHours, clockHours } = handDigHours(6, "firm", 6, true);
    expect(personHours).toBeCloseTo(16, 1);
    expect(clockHours).toBeCloseTo(2.7, 1);
  });

  test("sand is dug as loose soil and loam as firm soil", () => {
    expect(handDigHours(3, "sand", 2, true)).toEqual(handDigHours(3, "loose", 2, true));
    expect(handDigHours(3, "loam", 2, true)).toEqual(handDigHours(3, "firm", 2, true));
  });
});

describe("any dig", () => {
  test("takes the same person-hours however many share it, and clock hours in proportion", () => {
    fc.assert(
      fc.property(volume, soil, people, fc.boolean(), (cubicYards, of, diggers, volunteers) => {
        const { personHours, clockHours } = handDigHours(cubicYards, of, diggers, volunteers);
        expect(personHours).toBe(handDigHours(cubicYards, of, 1, volunteers).personHours);
        expect(clockHours * diggers).toBeCloseTo(personHours, 9);
      }),
      { examples: [[0, "clay", 1, true]] },
    );
  });

  test("takes volunteers half as long again as laborers", () => {
    fc.assert(
      fc.property(volume, soil, (cubicYards, of) => {
        expect(handDigHours(cubicYards, of, 1, true).personHours).toBeCloseTo(
          VOLUNTEER_FACTOR * handDigHours(cubicYards, of, 1, false).personHours,
          9,
        );
      }),
    );
  });

  test("takes longest in boulder clay and shortest in loose soil", () => {
    fc.assert(
      fc.property(measured(0.1, 60), soil, (cubicYards, of) => {
        const { personHours } = handDigHours(cubicYards, of, 1, false);
        expect(personHours).toBeGreaterThanOrEqual(handDigHours(cubicYards, "loose", 1, false).personHours);
        expect(personHours).toBeLessThanOrEqual(handDigHours(cubicYards, "boulder clay", 1, false).personHours);
      }),
    );
  });
});
