import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { balanceStep, basinStore, stepInflow, type BasinStore } from "../../../functions/basin/water-balance.ts";
import { garden, roofGarden, slicedPond } from "./garden.ts";

const volume = fc.double({ min: 0, max: 500, noNaN: true });
const hours = fc.double({ min: 0.01, max: 24, noNaN: true });

/**
 * One step in the order of common practice, pond and media apart: fill the media, pond the rest, let the media drain
 * and refill from the pond, spill what stands above the crest.
 */
function stepByCompartments(store: BasinStore, stored: number, inflow: number, length: number) {
  let media = Math.min(stored, store.mediaCubicFeet);
  let pond = stored - media;
  const taken = Math.min(inflow, store.mediaCubicFeet - media);
  media += taken;
  pond += inflow - taken;
  let toDraw = store.drawCubicFeetPerHour * length;
  let drawn = 0;
  while (toDraw > 0 && media > 0) {
    const out = Math.min(toDraw, media);
    media -= out;
    toDraw -= out;
    drawn += out;
    const refill = Math.min(pond, store.mediaCubicFeet - media);
    media += refill;
    pond -= refill;
  }
  if (store.mediaCubicFeet === 0) {
    drawn = Math.min(toDraw, pond);
    pond -= drawn;
  }
  const overflow = Math.max(pond - (store.capacityCubicFeet - store.mediaCubicFeet), 0);
  return { stored: media + pond - overflow, drawn, overflow };
}

describe("a basin as its water sees it, computed by hand", () => {
  test("100 sq ft under 6 in over 24 in of media with voids of 0.25 hold 50 cu ft in the media and 50 above", () => {
    expect(basinStore(roofGarden)).toEqual({
      mediaCubicFeet: 50,
      capacityCubicFeet: 100,
      rimSquareFeet: 100,
      drawCubicFeetPerHour: expect.closeTo(4.16667, 5),
      soakedShare: 1,
    });
  });

  test("an inch of rain brings 79.17 cu ft off 1,000 sq ft at 0.95, and 8.33 on the 100 sq ft of basin", () => {
    const inflow = stepInflow(basinStore(roofGarden), roofGarden, 1);
    expect(inflow.runoffCubicFeet).toBeCloseTo(79.1667, 4);
    expect(inflow.directCubicFeet).toBeCloseTo(8.3333, 4);
  });

  test("evapotranspiration of 0.24 in a day adds 0.01 in/h to soaking of 0.03 in/h and is a quarter of what leaves", () => {
    const store = basinStore({ ...roofGarden, designInchesPerHour: 0.03, evapotranspirationInchesPerDay: 0.24 });
    expect(store.drawCubicFeetPerHour).toBeCloseTo((0.04 * 100) / 12, 12);
    expect(store.soakedShare).toBeCloseTo(0.75, 12);
    expect(basinStore({ ...roofGarden, designInchesPerHour: 0 }).soakedShare).toBe(1);
  });

  test("its sloped pond and rim are those of an ellipse 2 to 1 cut into thin slices", () => {
    fc.assert(
      fc.property(garden, (one) => {
        const store = basinStore(one);
        const { areaSquareFeet, cubicFeet } = slicedPond(one, one.pondingInches);
        expect(store.rimSquareFeet / areaSquareFeet).toBeCloseTo(1, 9);
        expect(Math.abs(store.capacityCubicFeet - store.mediaCubicFeet - cubicFeet)).toBeLessThanOrEqual(1e-6 * (cubicFeet + 1));
      }),
      { numRuns: 50 },
    );
  });
});

describe("any step", () => {
  test("conserves water to the last digit or nearly, and leaves no more than fits and no less than nothing", () => {
    fc.assert(
      fc.property(garden, volume, volume, hours, (one, before, inflow, length) => {
        const store = basinStore(one);
        const stored = Math.min(before, store.capacityCubicFeet);
        const step = balanceStep(store, stored, inflow, length);
        const out = step.storedCubicFeet + step.drawnCubicFeet + step.overflowCubicFeet;
        expect(Math.abs(stored + inflow - out)).toBeLessThanOrEqual(1e-12 * (stored + inflow));
        expect(step.storedCubicFeet).toBeGreaterThanOrEqual(0);
        expect(step.storedCubicFeet).toBeLessThanOrEqual(store.capacityCubicFeet);
        expect(step.drawnCubicFeet).toBeGreaterThanOrEqual(0);
        expect(step.overflowCubicFeet).toBeGreaterThanOrEqual(0);
      }),
      { examples: [[roofGarden, 0, 0, 1]] },
    );
  });

  test("ends as the media and the pond do when they are followed apart, in the order of common practice", () => {
    fc.assert(
      fc.property(garden, volume, volume, hours, (one, before, inflow, length) => {
        const store = basinStore(one);
        const stored = Math.min(before, store.capacityCubicFeet);
        const step = balanceStep(store, stored, inflow, length);
        const apart = stepByCompartments(store, stored, inflow, length);
        expect(step.storedCubicFeet).toBeCloseTo(apart.stored, 8);
        expect(step.drawnCubicFeet).toBeCloseTo(apart.drawn, 8);
        expect(step.overflowCubicFeet).toBeCloseTo(apart.overflow, 8);
      }),
    );
  });

  test("ends the same when it is taken in many short ones, because its inflow is steady", () => {
    fc.assert(
      fc.property(garden, volume, volume, hours, fc.integer({ min: 2, max: 50 }), (one, before, inflow, length, parts) => {
        const store = basinStore(one);
        const start = Math.min(before, store.capacityCubicFeet);
        const whole = balanceStep(store, start, inflow, length);
        let [stored, drawn, overflow] = [start, 0, 0];
        for (let part = 0; part < parts; part += 1) {
          const step = balanceStep(store, stored, inflow / parts, length / parts);
          stored = step.storedCubicFeet;
          drawn += step.drawnCubicFeet;
          overflow += step.overflowCubicFeet;
        }
        expect(stored).toBeCloseTo(whole.storedCubicFeet, 8);
        expect(drawn).toBeCloseTo(whole.drawnCubicFeet, 8);
        expect(overflow).toBeCloseTo(whole.overflowCubicFeet, 8);
      }),
    );
  });

  test("with nothing flowing in draws the basin down at its rate until it is empty", () => {
    fc.assert(
      fc.property(garden, volume, hours, (one, before, length) => {
        const store = basinStore(one);
        const stored = Math.min(before, store.capacityCubicFeet);
        const step = balanceStep(store, stored, 0, length);
        expect(step.overflowCubicFeet).toBe(0);
        expect(step.storedCubicFeet).toBeCloseTo(Math.max(stored - store.drawCubicFeetPerHour * length, 0), 9);
      }),
    );
  });
});
