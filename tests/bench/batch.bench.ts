import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { hasGnuParallel, NO_GNU_PARALLEL } from "../programs.ts";
import { builtBatch, PARCEL_HEADINGS, PARCEL_WORDS, parcels } from "../addin/batch/started-batch.ts";
import { inventedHours } from "../functions/long-term/rain-series.ts";
import { atLeast, atMost, interleaved, median, medianRatio, type BenchRow, type BenchSection } from "./measure.ts";
import { watchedProcess } from "./watched-process.ts";

const FEW_ROWS = 100_000;
const MANY_ROWS = 1_000_000;
const LONG_TERM_SITES = 40_000;
const ROUNDS = 3;

export const batch: BenchSection = {
  title: "The batch: rows from standard input to standard output",
  async measure() {
    const folder = mkdtempSync(join(tmpdir(), "soakbook-bench-"));
    try {
      const script = await builtBatch(folder);
      const rows = [...(await longStreams(script)), ...(await sameRain(script, folder))];
      return {
        rows,
        notes: [
          ...(hasGnuParallel() ? [] : [NO_GNU_PARALLEL]),
          ...(availableParallelism() > 1 ? [] : ["This machine has one core: two workers share it."]),
        ],
      };
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
};

/** A stream ten times as long takes ten times as long and no more memory. */
async function longStreams(script: string): Promise<readonly BenchRow[]> {
  const designed = (workers: number, parcelCount: number) =>
    watchedProcess(
      process.execPath,
      [script, ...PARCEL_WORDS, "--headings", PARCEL_HEADINGS, "--workers", String(workers)],
      parcels(parcelCount),
    );
  const rows: BenchRow[] = [];
  let secondsOfOne: number | undefined;
  for (const workers of [1, 2]) {
    const [few, many] = [await designed(workers, FEW_ROWS), await designed(workers, MANY_ROWS)];
    const name = `SITEDESIGN, ${MANY_ROWS.toLocaleString("en-US")} CSV rows, ${workers === 1 ? "one worker" : "one worker / two"}`;
    rows.push({
      name,
      value: MANY_ROWS / many.seconds,
      unit: "rows a second",
      ...(secondsOfOne === undefined ? {} : { ratio: secondsOfOne / many.seconds }),
    });
    secondsOfOne ??= many.seconds;
    if (few.megabytes === undefined || many.megabytes === undefined) continue;
    const memory = `most memory at once, to that for ${FEW_ROWS.toLocaleString("en-US")} rows`;
    rows.push(atMost({ name: memory, value: many.megabytes, unit: "MB", ratio: many.megabytes / few.megabytes }, 1.5));
  }
  return rows;
}

/** Thirty years of hours for every parcel: one worker, two, and two processes by GNU parallel. */
async function sameRain(script: string, folder: string): Promise<readonly BenchRow[]> {
  const rain = join(folder, "rain.csv");
  writeFileSync(rain, inventedHours(30).inches.join("\n"));
  const same = ["stepHours=1", "runoffShare=0.95", "floorArea=100", "ponding=6", "designRate=0.5"].flatMap((value) => ["--value", value]);
  const words = [script, "LONGTERM", "--headings", "parcel,contributingArea,rate", "--file", `rains=${rain}`, ...same, "--workers"];
  const seconds = (program: string, more: readonly string[]) => async () =>
    (await watchedProcess(program, more, parcels(LONG_TERM_SITES))).seconds;
  const block = `${Math.ceil([...parcels(LONG_TERM_SITES)].join("").length / 2 / 1024) + 1}k`;
  const parallel = ["--will-cite", "--pipe", "-k", "-j2", "--block", block, process.execPath, ...words, "1"];
  const [one = [], two = [], processes = []] = await interleaved(
    [
      { name: "one worker", timesItself: true, run: seconds(process.execPath, [...words, "1"]) },
      { name: "two workers", timesItself: true, run: seconds(process.execPath, [...words, "2"]) },
      ...(hasGnuParallel() ? [{ name: "two processes", timesItself: true, run: seconds("parallel", parallel) } as const] : []),
    ],
    ROUNDS,
    0,
  );
  const name = `LONGTERM, 30 years of hours for ${LONG_TERM_SITES.toLocaleString("en-US")} rows`;
  const row = (what: string, times: readonly number[]): BenchRow => ({
    name: `${name}, ${what}`,
    value: LONG_TERM_SITES / median(times),
    unit: "rows a second",
  });
  return [
    row("one worker", one),
    atLeast({ ...row("one worker / two", two), ratio: medianRatio(one, two) }, 1.8),
    ...(processes.length === 0
      ? []
      : [{ ...row("one worker / two processes by GNU parallel", processes), ratio: medianRatio(one, processes) }]),
  ];
}
