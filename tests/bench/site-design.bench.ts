/**
 * SITEDESIGN over 10,000 yards in one call, beside a bare loop: the same cells in, the same arithmetic, rows of ten out.
 *
 *   npx tsx tests/bench/site-design.bench.ts
 *
 * The two take turns and are measured in processor time, so that whatever else the machine does falls on neither;
 * the medians are compared. The aim is under 3.
 */
import { designSite } from "../../functions/basin/site-design.ts";
import { siteDesign } from "../../functions/worksheet/basin.ts";

const YARDS = 10_000;
const WARM_UP = 50;
const ROUNDS = 101;

const columnOf = <Value>(valueOf: (yard: number) => Value): Value[][] => Array.from({ length: YARDS }, (_, yard) => [valueOf(yard)]);

const contributing = columnOf((yard) => 300 + (yard % 1700));
const tested = columnOf((yard) => 0.3 + (yard % 37) / 10);
const storm = columnOf((yard) => 0.75 + (yard % 4) / 4);
const ponding = columnOf((yard) => (yard % 3 === 0 ? null : 4 + (yard % 5)));
const media = columnOf((yard) => (yard % 2) * 12);

const first = <Value>(column: readonly (readonly Value[])[], yard: number, otherwise: Value): Value => column[yard]?.[0] ?? otherwise;

function bareRows(): readonly (readonly unknown[])[] {
  return contributing.map((cells, yard) => {
    const { designInchesPerHour, pondingInches, runoffCubicFeet, ruleSquareFeet, verdict, basin } = designSite(
      cells[0] ?? 0, first(tested, yard, 0), 2, first(storm, yard, 1), ponding[yard]?.[0] ?? undefined, first(media, yard, 0), 3, 48,
    );
    return [
      designInchesPerHour, pondingInches, basin?.floorSquareFeet, basin?.rimSquareFeet, runoffCubicFeet, basin?.heldCubicFeet,
      basin?.drawdownHours, ruleSquareFeet, basin?.digCubicYards, verdict,
    ];
  });
}

const guardedRows = () => siteDesign.evaluate([contributing, tested, 2, storm, ponding, media, 3, 48]);

function milliseconds(work: () => readonly unknown[]): number {
  const start = process.cpuUsage();
  const rows = work();
  const { user, system } = process.cpuUsage(start);
  if (rows.length !== YARDS) throw new Error(`Expected ${YARDS} rows, got ${rows.length}.`);
  return (user + system) / 1000;
}

function median(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[times.length >> 1] ?? Number.NaN;
}

const times = Array.from({ length: WARM_UP + ROUNDS }, () => ({ bare: milliseconds(bareRows), guarded: milliseconds(guardedRows) })).slice(WARM_UP);
const bare = median(times.map((round) => round.bare));
const guarded = median(times.map((round) => round.guarded));
console.log(`SITEDESIGN, ${YARDS} yards in one call:  ${guarded.toFixed(2)} ms`);
console.log(`bare loop over the same cells:       ${bare.toFixed(2)} ms`);
console.log(`ratio of the medians of ${ROUNDS} rounds:    ${(guarded / bare).toFixed(2)} (the aim is under 3)`);
