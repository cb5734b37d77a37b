import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { hasGnuParallel, HOW_TO_INSTALL } from "../addin/batch/gnu-parallel.ts";
import { builtBatch, PARCEL_HEADINGS, PARCEL_WORDS, parcels } from "../addin/batch/started-batch.ts";
import { inventedHours } from "../functions/long-term/rain-series.ts";
import { atLeast, atMost, interleaved, median, medianRatio, type BenchRow, type BenchSection } from "./measure.ts";

const FEW_ROWS = 100_000;
const MANY_ROWS = 1_000_000;
const LONG_TERM_SITES = 4000;
const ROUNDS = 3;
const WATCH_MILLISECONDS = 20;

export const batch: BenchSection = {
  title: "The batch: rows from standard input to standard output",
  async measure() {
    const folder = mkdtempSync(join(tmpdir(), "soakbook-bench-"));
    try {
      const script = await builtBatch(folder);
      const words = [script, ...PARCEL_WORDS, "--headings", PARCEL_HEADINGS];
      const few = await watched(process.execPath, words, parcels(FEW_ROWS));
      const many = await watched(process.execPath, words, parcels(MANY_ROWS));
      const rows: BenchRow[] = [{ name: `SITEDESIGN, ${MANY_ROWS.toLocaleString("en-US")} CSV rows, one process`, value: MANY_ROWS / many.seconds, unit: "rows a second" }];
      if (few.megabytes !== undefined && many.megabytes !== undefined) {
        const memory = { name: `most memory at once, to that for ${FEW_ROWS.toLocaleString("en-US")} rows`, value: many.megabytes, unit: "MB", ratio: many.megabytes / few.megabytes };
        rows.push(atMost(memory, 1.5));
      }
      if (!hasGnuParallel()) return { rows, notes: [HOW_TO_INSTALL] };
      return { rows: [...rows, ...(await twoProcesses(script, folder))] };
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
};

/** Thirty years of hours for every parcel, in one process and in two by GNU parallel. */
async function twoProcesses(script: string, folder: string): Promise<readonly BenchRow[]> {
  const rain = join(folder, "rain.csv");
  writeFileSync(rain, inventedHours(30).inches.join("\n"));
  const same = ["stepHours=1", "runoffShare=0.95", "floorArea=100", "ponding=6", "designRate=0.5"].flatMap((value) => ["--value", value]);
  const words = [script, "LONGTERM", "--headings", "parcel,contributingArea,rate", "--file", `rains=${rain}`, ...same];
  const seconds = (program: string, more: readonly string[]) => async () => (await watched(program, more, parcels(LONG_TERM_SITES))).seconds;
  const block = `${Math.ceil([...parcels(LONG_TERM_SITES)].join("").length / 2 / 1024) + 1}k`;
  const [one = [], two = []] = await interleaved(
    [
      { name: "one", timesItself: true, run: seconds(process.execPath, words) },
      { name: "two", timesItself: true, run: seconds("parallel", ["--will-cite", "--pipe", "-k", "-j2", "--block", block, process.execPath, ...words]) },
    ],
    ROUNDS,
    0,
  );
  const name = `LONGTERM, 30 years of hours for ${LONG_TERM_SITES.toLocaleString("en-US")} rows`;
  return [
    { name: `${name}, one process`, value: LONG_TERM_SITES / median(one), unit: "rows a second" },
    atLeast({ name: `${name}, one process / two by GNU parallel`, value: LONG_TERM_SITES / median(two), unit: "rows a second", ratio: medianRatio(one, two) }, 1.8),
  ];
}

/** Runs a program to its end with a stream into it; how long it took, and where Linux tells, the most memory it held at once. */
async function watched(program: string, words: readonly string[], input: Iterable<string>): Promise<{ readonly seconds: number; readonly megabytes: number | undefined }> {
  const start = performance.now();
  const child = spawn(program, words, { stdio: ["pipe", "pipe", "inherit"] });
  let kilobytes: number | undefined;
  const status = `/proc/${child.pid}/status`;
  const watch = setInterval(() => {
    if (existsSync(status)) kilobytes = Number(/VmHWM:\s*(\d+)/.exec(readFileSync(status, "utf8"))?.[1] ?? kilobytes);
  }, WATCH_MILLISECONDS);
  child.stdout.resume();
  const ended = once(child, "close");
  await pipeline(Readable.from(input), child.stdin);
  const [code] = (await ended) as [number];
  clearInterval(watch);
  if (code !== 0) throw new Error(`${program} ended with ${code}.`);
  return { seconds: (performance.now() - start) / 1000, megabytes: kilobytes === undefined ? undefined : kilobytes / 1024 };
}
