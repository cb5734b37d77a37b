/**
 * What lifting, guarding and units cost: npx tsx tests/bench/guarded-calls.bench.ts
 *
 * 10,000 yards go through SITEDESIGN in one call, beside the same 10,000 through the bare calculation, in one run.
 * The medians' ratio is what counts; it should stay under 3, and 1 would be no cost at all.
 */
import { designSite } from "../../functions/basin/site-design.ts";
import { siteDesign } from "../../functions/worksheet/basin.ts";
import type { CellInput } from "../../functions/worksheet/cell.ts";

const YARDS = 10_000;
const ROUNDS = 60;
const WARM_UP = 15;

const each = (valueOf: (yard: number) => number): number[] => Array.from({ length: YARDS }, (_, yard) => valueOf(yard));
const columnOf = (values: readonly (number | string)[]): CellInput => values.map((value) => [value]);

const contributing = each((yard) => 300 + (yard % 4000));
const tested = each((yard) => 0.2 + (yard % 50) * 0.05);
const factor = each((yard) => 2 + (yard % 2));
const storm = each((yard) => 1 + (yard % 5) * 0.1);
const ponding = each((yard) => 3 + (yard % 6));
const media = each((yard) => yard % 13);
const slope = each((yard) => yard % 4);
const drain = each((yard) => 24 + (yard % 3) * 12);
const columns = [contributing, tested, factor, storm, ponding, media, slope, drain].map(columnOf);
const mixed = columnOf(each((yard) => yard).map((yard) => (yard % 2 === 0 ? "us" : "metric")));

function bare(): unknown[] {
  const designs: unknown[] = [];
  for (let yard = 0; yard < YARDS; yard += 1) {
    const at = (values: readonly number[]): number => values[yard] ?? 0;
    designs.push(designSite(at(contributing), at(tested), at(factor), at(storm), at(ponding), at(media), at(slope), at(drain)));
  }
  return designs;
}

const runs: readonly (readonly [string, () => unknown])[] = [
  ["bare calculation", bare],
  ["one call, us", () => siteDesign.evaluate(columns)],
  ["one call, metric", () => siteDesign.evaluate([...columns, "metric"])],
  ["one call, units by the yard", () => siteDesign.evaluate([...columns, mixed])],
];

const times = runs.map((): number[] => []);
for (let round = 0; round < ROUNDS; round += 1) {
  // Taken in turn, so that whatever else the machine does falls on all alike.
  for (const [place, [, run]] of runs.entries()) {
    const start = performance.now();
    run();
    if (round >= WARM_UP) times[place]?.push(performance.now() - start);
  }
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
const base = median(times[0] ?? []);
for (const [place, [name]] of runs.entries()) {
  const time = median(times[place] ?? []);
  console.log(`${name.padEnd(28)} ${time.toFixed(2).padStart(8)} ms for ${YARDS} yards   ${(time / base).toFixed(2)} x bare`);
}
