import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MATERIALS, materialTons } from "../../../functions/amendment/material-weight.ts";
import { PICKUP_TONS, wholeTruckLoads } from "../../../functions/earthwork/truck-loads.ts";
import { measured } from "../measured.ts";

const loose = measured(0, 60);
const box = measured(0.2, 12);
const limit = measured(0.1, 15);
const material = fc.constantFrom(...MATERIALS);

describe("computed by hand", () => {
  // Common practice, no source: a pickup's bed of 2 cu yd, and a payload of 1,500 lb that wet topsoil fills at half a cu yd.
  test("6 cu yd of wet topsoil take 3 beds of a pickup by volume and 12 by weight", () => {
    expect(wholeTruckLoads(6, 2, undefined, "wet topsoil")).toEqual({ loads: 3, isWeightGoverned: false });
    expect(wholeTruckLoads(6, 2, PICKUP_TONS, "wet topsoil")).toEqual({ loads: 12, isWeightGoverned: true });
  });

  // TM 9-2320-366-10-1, table 2-15 (read): a level box of 5.19 cu yd of dry loose earth weighs 10,510 lb.
  test("a level box of dry earth is one load by volume and by weight", () => {
    expect(wholeTruckLoads(5.19, 5.19, 10_510 / 2000, "dry earth")).toEqual({ loads: 1, isWeightGoverned: false });
    expect(wholeTruckLoads(5.19, 5.19, 10_500 / 2000, "dry earth")).toEqual({ loads: 2, isWeightGoverned: true });
  });

  test("nothing to carry takes no load", () => {
    expect(wholeTruckLoads(0, 2, 1, "gravel")).toEqual({ loads: 0, isWeightGoverned: false });
  });
});

describe("any loads", () => {
  test("carry it all, none over the box and none over the limit", () => {
    fc.assert(
      fc.property(loose, box, limit, material, (cubicYards, boxYards, tons, of) => {
        const { loads } = wholeTruckLoads(cubicYards, boxYards, tons, of);
        expect(loads * boxYards).toBeGreaterThanOrEqual(cubicYards * (1 - 2e-6));
        expect(loads * tons).toBeGreaterThanOrEqual(materialTons(cubicYards, of) * (1 - 2e-6));
      }),
    );
  });

  test("are no more than needed: one less would not do", () => {
    fc.assert(
      fc.property(measured(0.1, 60), box, limit, material, (cubicYards, boxYards, tons, of) => {
        const fewer = wholeTruckLoads(cubicYards, boxYards, tons, of).loads - 1;
        expect(fewer * boxYards < cubicYards || fewer * tons < materialTons(cubicYards, of)).toBe(true);
      }),
    );
  });

  test("are whole, and with a weight limit never fewer than without", () => {
    fc.assert(
      fc.property(loose, box, limit, material, (cubicYards, boxYards, tons, of) => {
        const limited = wholeTruckLoads(cubicYards, boxYards, tons, of);
        const free = wholeTruckLoads(cubicYards, boxYards, undefined, of);
        expect(Number.isInteger(limited.loads)).toBe(true);
        expect(limited.loads).toBeGreaterThanOrEqual(free.loads);
        expect(limited.isWeightGoverned).toBe(limited.loads > free.loads);
      }),
    );
  });
});
