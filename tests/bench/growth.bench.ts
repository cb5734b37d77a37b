import type { Garden } from "../../functions/basin/water-balance.ts";
import { longTermBalance } from "../../functions/long-term/long-term-balance.ts";
import { rainRecord, type RainRecord } from "../../functions/long-term/rain-record.ts";
import { siteDesign } from "../../functions/worksheet/site-design.ts";
import type { CellInput } from "../../functions/worksheet/calling/cell.ts";
import { areaForCapture, longTerm } from "../../functions/worksheet/long-term.ts";
import { randomGarden } from "../functions/long-term/random-garden.ts";
import { inventedHours, seededNumbers } from "../functions/long-term/rain-series.ts";
import { atMost, growthExponent, interleaved, median, type BenchRow, type BenchSection } from "./measure.ts";

const ROUNDS = 15;
const WARM_UP = 4;

interface Growth {
  readonly name: string;
  readonly sizes: readonly number[];
  readonly most?: number;
  readonly workOf: (size: number) => () => unknown;
}

const column = (length: number, valueOf: (row: number) => number): CellInput => Array.from({ length }, (_, row) => [valueOf(row)]);

function gardens(count: number): readonly Garden[] {
  const next = seededNumbers(3);
  return Array.from({ length: count }, () => randomGarden(next));
}

function balances(record: RainRecord, sites: readonly Garden[]): () => unknown {
  return () => sites.map((garden) => longTermBalance(record, garden));
}

const fiveYears = inventedHours(5);
const typedRain: CellInput = fiveYears.inches.map((depth) => [depth]);

const growths: readonly Growth[] = [
  {
    name: "with sites: long-term balance, 5 years of hours",
    sizes: [125, 250, 500, 1000],
    most: 1.05,
    workOf: (sites) => balances(rainRecord(fiveYears.inches, 1), gardens(sites)),
  },
  {
    name: "with years: long-term balance of 50 sites",
    sizes: [10, 20, 40, 80],
    most: 1.05,
    workOf: (years) => balances(rainRecord(inventedHours(years).inches, 1), gardens(50)),
  },
  {
    name: "with the rows of a what-if column: LONGTERM, 5 years of hours",
    sizes: [50, 100, 200, 400],
    workOf: (rows) => () => longTerm.evaluate([typedRain, 1, 1000, 0.95, column(rows, (row) => 50 + row), 6, 0.5, 12, 0.25, 3]),
  },
  {
    name: "with the rows of a what-if column: AREAFORCAPTURE, 5 years of hours",
    sizes: [10, 20, 40, 80],
    workOf: (rows) => () => areaForCapture.evaluate([0.9, typedRain, 1, column(rows, (row) => 500 + 20 * row), 0.95, 6, 0.5, 12, 0.25, 3]),
  },
  {
    name: "with yards: SITEDESIGN in one call",
    sizes: [2500, 5000, 10_000, 20_000],
    workOf(yards) {
      const inputs = [column(yards, (yard) => 300 + (yard % 4000)), column(yards, (yard) => 0.2 + (yard % 50) * 0.05)];
      return () => siteDesign.evaluate(inputs);
    },
  },
];

export const growth: BenchSection = {
  title: "Growth: p in time = c x size^p",
  async measure() {
    const rows: BenchRow[] = [];
    for (const { name, sizes, most, workOf } of growths) {
      const times = await interleaved(
        sizes.map((size) => ({ name: String(size), run: workOf(size) })),
        ROUNDS,
        WARM_UP,
      );
      const medians = times.map(median);
      const exponent = {
        name: `${name}, ${sizes[0]} to ${sizes.at(-1)}`,
        value: growthExponent(sizes, medians),
        unit: `exponent (${medians.at(-1)?.toFixed(1)} ms at ${sizes.at(-1)})`,
      };
      rows.push(most === undefined ? exponent : atMost(exponent, most));
    }
    return { rows };
  },
};
