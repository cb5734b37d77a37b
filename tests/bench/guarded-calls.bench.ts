/** What lifting, guarding and units cost: 10,000 yards through SITEDESIGN, beside the same 10,000 through the bare calculation. */
import { designSite } from "../../functions/basin/site-design.ts";
import { siteDesign } from "../../functions/worksheet/basin.ts";
import type { CellInput } from "../../functions/worksheet/cell.ts";
import { atMost, interleaved, median, medianRatio, type BenchRow, type BenchSection, type Contender } from "./measure.ts";

const YARDS = 10_000;
const ROUNDS = 45;
const WARM_UP = 15;

const each = (valueOf: (yard: number) => number): number[] => Array.from({ length: YARDS }, (_, yard) => valueOf(yard));
const columnOf = (values: readonly (number | string)[]): CellInput => values.map((value) => [value]);

const inputs = [
  each((yard) => 300 + (yard % 4000)), each((yard) => 0.2 + (yard % 50) * 0.05), each((yard) => 2 + (yard % 2)), each((yard) => 1 + (yard % 5) * 0.1),
  each((yard) => 3 + (yard % 6)), each((yard) => yard % 13), each((yard) => yard % 4), each((yard) => 24 + (yard % 3) * 12),
];
const columns = inputs.map(columnOf);
const mixed = columnOf(each((yard) => yard).map((yard) => (yard % 2 === 0 ? "us" : "metric")));

function bare(): readonly unknown[] {
  const designs: unknown[] = [];
  const at = (place: number, yard: number): number => inputs[place]![yard]!;
  for (let yard = 0; yard < YARDS; yard += 1) {
    designs.push(designSite(at(0, yard), at(1, yard), at(2, yard), at(3, yard), at(4, yard), at(5, yard), at(6, yard), at(7, yard)));
  }
  return designs;
}

function callByCall(): readonly unknown[] {
  return Array.from({ length: YARDS }, (_, yard) => siteDesign.evaluate(inputs.map((values) => values[yard])));
}

export const guardedCalls: BenchSection = {
  title: `Guarded and lifted calls: SITEDESIGN for ${YARDS} yards`,
  async measure() {
    const contenders: readonly Contender[] = [
      { name: "bare calculation", run: bare },
      { name: "a call for every yard / bare", run: callByCall },
      { name: "one call for the column / bare", run: () => siteDesign.evaluate(columns) },
      { name: "one call, metric / bare", run: () => siteDesign.evaluate([...columns, "metric"]) },
      { name: "one call, units by the yard / bare", run: () => siteDesign.evaluate([...columns, mixed]) },
    ];
    const times = await interleaved(contenders, ROUNDS, WARM_UP);
    const base = times[0] ?? [];
    const [first, byCall, lifted, ...rest] = contenders.map(({ name }, place): BenchRow => {
      const taken = times[place] ?? [];
      return { name, value: median(taken), unit: "ms", ...(place === 0 ? {} : { ratio: medianRatio(taken, base) }) };
    });
    return { rows: [first!, atMost(byCall!, 1.3), atMost(lifted!, 1.2), ...rest] };
  },
};
