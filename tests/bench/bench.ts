/**
 * Measures Soakbook: npm run bench, or npm run bench -- growth for the sections whose names are given.
 *
 * Contenders take turns within each round and ratios are medians over the rounds of one run, because a machine is never
 * quite the same twice. The table goes to the terminal, the same numbers to .bench/results.json.
 */
import { mkdir, writeFile } from "node:fs/promises";
import { availableParallelism, cpus, loadavg } from "node:os";
import { fileURLToPath } from "node:url";
import { batch } from "./batch.bench.ts";
import { formulaEngine } from "./formula-engine.bench.ts";
import { growth } from "./growth.bench.ts";
import { guardedCalls } from "./guarded-calls.bench.ts";
import { libreOffice } from "./libreoffice.bench.ts";
import { manySites } from "./many-sites.bench.ts";
import type { BenchRow, BenchSection } from "./measure.ts";
import { opening } from "./opening.bench.ts";
import { timeTrial } from "./time-trial.bench.ts";
import { waterBalance } from "./water-balance.bench.ts";

const sections: Readonly<Record<string, BenchSection>> = {
  "water-balance": waterBalance,
  "guarded-calls": guardedCalls,
  growth,
  "formula-engine": formulaEngine,
  libreoffice: libreOffice,
  batch,
  "many-sites": manySites,
  opening,
  "time-trial": timeTrial,
};

const RESULTS = new URL("../../.bench/results.json", import.meta.url);

function line({ name, value, unit, ratio, goal, isMet }: BenchRow): string {
  const size = `${Number(value.toPrecision(4)).toLocaleString("en-US")} ${unit}`;
  const beside = ratio === undefined ? "" : `${ratio.toFixed(2)} x`;
  return `  ${name.padEnd(NAME_WIDTH)}${size.padStart(SIZE_WIDTH)}${beside.padStart(RATIO_WIDTH)}${goal === undefined ? "" : `   ${goal}: ${isMet === true ? "met" : "not met"}`}`;
}

const [NAME_WIDTH, SIZE_WIDTH, RATIO_WIDTH] = [96, 34, 12];

const named = process.argv.slice(2);
const unknown = named.filter((name) => !(name in sections));
if (unknown.length > 0) {
  console.error(`There is no section ${unknown.join(", ")}: the bench has ${Object.keys(sections).join(", ")}.`);
  process.exitCode = 1;
} else {
  const machine = {
    processor: cpus()[0]?.model ?? "unknown",
    cores: availableParallelism(),
    node: process.version,
    loadBefore: loadavg()[0],
  };
  console.log(`${machine.processor}, ${machine.cores} cores, Node ${machine.node}, load ${machine.loadBefore?.toFixed(1)}`);
  const results: Record<string, unknown> = {};
  for (const [name, { title, measure }] of Object.entries(sections)) {
    if (named.length > 0 && !named.includes(name)) continue;
    console.log(`\n${title}`);
    const { rows, notes = [] } = await measure();
    for (const row of rows) console.log(line(row));
    for (const note of notes) console.log(`  ${note}`);
    results[name] = { title, rows, notes };
  }
  await mkdir(new URL(".", RESULTS), { recursive: true });
  await writeFile(RESULTS, `${JSON.stringify({ machine: { ...machine, loadAfter: loadavg()[0] }, sections: results }, null, 2)}\n`);
  console.log(`\nAlso in ${fileURLToPath(RESULTS)}`);
}
