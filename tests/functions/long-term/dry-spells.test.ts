import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Garden } from "../../../functions/basin/water-balance.ts";
import { longTermBalance } from "../../../functions/long-term/long-term-balance.ts";
import { rainRecord, type RainRecord } from "../../../functions/long-term/rain-record.ts";
import { waterGrid } from "../../../functions/long-term/water-grid.ts";
import { garden } from "../basin/garden.ts";
import { fiveSeries, seededNumbers } from "./rain-series.ts";
import { randomGarden } from "./random-garden.ts";
import { steppedBalance, steppedRain, type SteppedRain } from "./step-loop.ts";

const SITES = 10_000;
const INITIAL_LOSSES = [0, 0.05, 0.3];

/** What differs, bit for bit, between the balance that leaps and the one that takes every step; and whether that one conserves water. */
function differences(record: RainRecord, stepped: SteppedRain, one: Garden): readonly string[] {
  const grid = waterGrid(record, one);
  const plain = steppedBalance(stepped, grid);
  const leapt = longTermBalance(record, one);
  const pairs = {
    runoff: [leapt.runoffCubicFeet, plain.runoff * grid.unitCubicFeet],
    direct: [leapt.directCubicFeet, plain.direct * grid.unitCubicFeet],
    soaked: [leapt.soakedCubicFeet, plain.drawn * grid.unitCubicFeet * grid.soakedShare],
    overflow: [leapt.overflowCubicFeet, plain.overflow * grid.unitCubicFeet],
    stored: [leapt.storedCubicFeet, plain.stored * grid.unitCubicFeet],
    overflows: [leapt.overflows, plain.overflows],
    ponding: [leapt.longestPondingHours, plain.longest * record.stepHours],
    conserved: [plain.runoff + plain.direct, plain.drawn + plain.overflow + plain.stored],
  };
  return Object.entries(pairs).flatMap(([name, [ours, theirs]]) => (Object.is(ours, theirs) ? [] : [`${name}: ${ours} is not ${theirs}`]));
}

describe("a leap over a dry spell ends on the same bits as its steps taken one by one", () => {
  test.each(fiveSeries)(`on ${SITES} random sites under $name, and their water is conserved to the last bit`, ({ inches, stepHours }) => {
    const prepared = INITIAL_LOSSES.map((loss) => [rainRecord(inches, stepHours, loss), steppedRain(inches, stepHours, loss)] as const);
    const next = seededNumbers(10_000);
    for (let site = 0; site < SITES; site += 1) {
      const [record, stepped] = prepared[site % prepared.length]!;
      const one = randomGarden(next);
      const found = differences(record, stepped, one);
      if (found.length > 0) expect.fail(`Site ${site}, ${JSON.stringify(one)}: ${found.join("; ")}`);
    }
  });

  test("on any garden under any rain, of a step from a minute to a month, with any initial loss", () => {
    const rain = fc.array(
      fc.oneof(
        fc.constant([0]),
        fc.integer({ min: 1, max: 400 }).map((dry) => new Array<number>(dry).fill(0)),
        fc.array(fc.double({ min: 0, max: 3, noNaN: true })),
      ),
      { maxLength: 20 },
    );
    fc.assert(
      fc.property(
        rain,
        fc.constantFrom(1 / 60, 0.25, 1, 5, 6, 24, 730.5),
        fc.double({ min: 0, max: 1, noNaN: true }),
        garden,
        (parts, stepHours, loss, one) => {
          const inches = parts.flat();
          expect(differences(rainRecord(inches, stepHours, loss), steppedRain(inches, stepHours, loss), one)).toEqual([]);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test("where the spell ends just as the pond or the media runs dry", () => {
    const one: Garden = {
      contributingSquareFeet: 0,
      runoffShare: 0,
      floorSquareFeet: 12,
      pondingInches: 12,
      designInchesPerHour: 0.25,
      mediaInches: 4,
      voidShare: 0.25,
      sideSlope: 0,
      evapotranspirationInchesPerDay: 0,
    };
    // 2 in: 1 in of it fills the voids, 1 in ponds and takes 4 h to drain; then the media takes 4 h.
    for (const dry of [1, 3, 4, 5, 7, 8, 9]) {
      const inches = [2.25, ...new Array<number>(dry).fill(0), 1.5, 0];
      const record = rainRecord(inches, 1);
      expect(differences(record, steppedRain(inches, 1, 0), one)).toEqual([]);
    }
    expect(longTermBalance(rainRecord([2.25, 0, 0, 0, 0, 0], 1), one).longestPondingHours).toBe(4.5);
  });
});
