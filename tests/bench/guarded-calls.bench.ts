/** What lifting, guarding and units cost: yards through SITEDESIGN and years of rain through LONGTERM, beside the bare calculations. */
import { USUAL_OUTLINE } from "../../functions/basin/basin-shape.ts";
import { USUAL_LIMITS } from "../../functions/basin/design-limits.ts";
import { designSite } from "../../functions/basin/site-design.ts";
import type { Garden } from "../../functions/basin/water-balance.ts";
import { longTermBalance } from "../../functions/long-term/long-term-balance.ts";
import { rainRecord } from "../../functions/long-term/rain-record.ts";
import type { CellInput } from "../../functions/worksheet/calling/cell.ts";
import { longTerm } from "../../functions/worksheet/long-term.ts";
import { siteDesign } from "../../functions/worksheet/site-design.ts";
import { inventedHours } from "../functions/long-term/rain-series.ts";
import { atMost, interleaved, median, medianRatio, type BenchRow, type BenchSection, type Contender } from "./measure.ts";

const YARDS = 10_000;
const SITES = 200;
const ROUNDS = 25;
const WARM_UP = 15;

const each = (valueOf: (yard: number) => number): number[] => Array.from({ length: YARDS }, (_, yard) => valueOf(yard));
const columnOf = (values: readonly (number | string)[]): CellInput => values.map((value) => [value]);

const inputs = [
  each((yard) => 300 + (yard % 4000)),
  each((yard) => 0.2 + (yard % 50) * 0.05),
  each((yard) => 2 + (yard % 2)),
  each((yard) => 1 + (yard % 5) * 0.1),
  each((yard) => 20 + (yard % 300)),
  each((yard) => 3 + (yard % 6)),
  each((yard) => yard % 13),
  each((yard) => yard % 5),
  each((yard) => yard % 4),
  each((yard) => 24 + (yard % 3) * 12),
];
const columns = inputs.map(columnOf);
const mixed = columnOf(each((yard) => yard).map((yard) => (yard % 2 === 0 ? "us" : "metric")));

function bare(): readonly unknown[] {
  const designs: unknown[] = [];
  const at = (place: number, yard: number): number => inputs[place]![yard]!;
  for (let yard = 0; yard < YARDS; yard += 1) {
    designs.push(
      designSite({
        contributingSquareFeet: at(0, yard),
        testedInchesPerHour: at(1, yard),
        reductionFactor: at(2, yard),
        stormInches: at(3, yard),
        runoffCubicFeet: at(4, yard),
        pondingInches: at(5, yard),
        mediaInches: at(6, yard),
        mulchInches: at(7, yard),
        sideSlope: at(8, yard),
        drainHours: at(9, yard),
        outline: USUAL_OUTLINE,
        groundSlopePercent: 0,
        limits: USUAL_LIMITS,
      }),
    );
  }
  return designs;
}

/** Between the drain hours and the units. */
const LEFT_OUT = new Array<null>(10).fill(null);

function callByCall(): readonly unknown[] {
  return Array.from({ length: YARDS }, (_, yard) => siteDesign.evaluate(inputs.map((values) => values[yard])));
}

/** The same rain as a host hands it over, an hour a row. */
const hourly = inventedHours(30).inches;
const rain = columnOf(hourly);
const floors = Array.from({ length: SITES }, (_, site) => 50 + site);
const site: Garden = {
  contributingSquareFeet: 1000,
  runoffShare: 0.95,
  floorSquareFeet: 100,
  pondingInches: 6,
  designInchesPerHour: 0.5,
  mediaInches: 12,
  voidShare: 0.25,
  sideSlope: 3,
  evapotranspirationInchesPerDay: 0,
};

/** Takes the cells for numbers without a look at them. */
function bareBalances(floorsSquareFeet: readonly number[]): readonly unknown[] {
  const record = rainRecord(
    (rain as readonly (readonly number[])[]).map(([depth]) => depth!),
    1,
  );
  return floorsSquareFeet.map((floorSquareFeet) => longTermBalance(record, { ...site, floorSquareFeet }));
}

const guardedBalances = (floor: CellInput): unknown => longTerm.evaluate([rain, 1, 1000, 0.95, floor, 6, 0.5, 12, 0.25, 3]);

const calls: readonly (readonly Contender[])[] = [
  [
    { name: `SITEDESIGN for ${YARDS} yards: bare calculation`, run: bare },
    { name: "a call for every yard / bare", run: callByCall },
    { name: "one call for the column / bare", run: () => siteDesign.evaluate(columns) },
    { name: "one call, metric / bare", run: () => siteDesign.evaluate([...columns, ...LEFT_OUT, "metric"]) },
    {
      name: "one call, units by the yard / bare",
      run: () => siteDesign.evaluate([...columns, ...LEFT_OUT, mixed]),
    },
  ],
  [
    { name: "LONGTERM, 30 years of hours, one site: bare balance of the same cells", run: () => bareBalances([100]) },
    { name: "one call / bare", run: () => guardedBalances(100) },
  ],
  [
    { name: `LONGTERM, 30 years of hours, ${SITES} sites: bare balances of the same cells`, run: () => bareBalances(floors) },
    { name: "one call for the column / bare", run: () => guardedBalances(columnOf(floors)) },
  ],
];

const GOALS: Readonly<Record<string, number>> = {
  "a call for every yard / bare": 1.3,
  "one call / bare": 1.3,
  "one call for the column / bare": 1.2,
};

export const guardedCalls: BenchSection = {
  title: "Guarded and lifted calls beside bare arithmetic",
  async measure() {
    const rows: BenchRow[] = [];
    for (const contenders of calls) {
      const times = await interleaved(contenders, ROUNDS, WARM_UP);
      for (const [place, { name }] of contenders.entries()) {
        const row = {
          name,
          value: median(times[place]!),
          unit: "ms",
          ...(place === 0 ? {} : { ratio: medianRatio(times[place]!, times[0]!) }),
        };
        rows.push(name in GOALS ? atMost(row, GOALS[name]!) : row);
      }
    }
    return { rows };
  },
};
