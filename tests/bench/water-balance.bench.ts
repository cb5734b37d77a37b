import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Garden } from "../../functions/basin/water-balance.ts";
import { longTermBalance } from "../../functions/long-term/long-term-balance.ts";
import { rainRecord } from "../../functions/long-term/rain-record.ts";
import { waterGrid } from "../../functions/long-term/water-grid.ts";
import { randomGarden } from "../functions/long-term/random-garden.ts";
import { fiveSeries, inventedHours, seededNumbers, type RainSeries } from "../functions/long-term/rain-series.ts";
import { steppedBalance, steppedRain } from "../functions/long-term/step-loop.ts";
import { compiledBalance, RunningBalance, writeInput } from "./c-balance.ts";
import { atLeast, atMost, interleaved, median, medianRatio, type BenchRow, type BenchSection, type Contender } from "./measure.ts";

const YEARS = 30;
const SITES = 20;
const ROUNDS = 25;
const WARM_UP = 5;
const COLD_STARTS = 7;

export const waterBalance: BenchSection = {
  title: `Water balance of ${SITES} sites beside C -O2`,
  async measure() {
    const folder = mkdtempSync(join(tmpdir(), "soakbook-bench-"));
    try {
      const program = compiledBalance(folder);
      const measured = [inventedHours(YEARS), ...fiveSeries.slice(0, 2)];
      const notes = [
        ...(program === undefined ? ["There is no C compiler (cc) here: the balance is not held beside C."] : []),
        ...measured.map(mostToSave),
      ];
      const rows: BenchRow[] = [];
      for (const series of measured) rows.push(...(await rowsFor(series, program, join(folder, "input"))));
      if (program !== undefined) rows.push(...(await coldRows(program, join(folder, "input"))));
      return { rows, notes };
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
};

/** Wet steps are taken one by one all the same. */
function mostToSave({ name, inches }: RainSeries): string {
  const wet = inches.filter((depth) => depth > 0).length;
  return `${name}: ${wet} of ${inches.length} steps are wet, so leaps that cost nothing would be ${(inches.length / wet).toFixed(1)} x as fast as every step.`;
}

function gardens(): readonly Garden[] {
  const next = seededNumbers(1);
  return Array.from({ length: SITES }, () => randomGarden(next));
}

async function rowsFor(series: RainSeries, program: string | undefined, input: string): Promise<readonly BenchRow[]> {
  const sites = gardens();
  const record = rainRecord(series.inches, series.stepHours);
  const stepped = steppedRain(series.inches, series.stepHours, 0);
  const grids = sites.map((garden) => waterGrid(record, garden));
  writeInput(input, stepped, grids);
  // Short records are gone through several times, so that a round lasts long enough for the clock.
  const repeats = Math.ceil((YEARS * 8766) / series.inches.length);
  const repeated = (work: () => unknown) => (): void => {
    for (let time = 0; time < repeats; time += 1) work();
  };
  const loops = [
    { name: "every step, JavaScript", run: repeated(() => grids.map((grid) => steppedBalance(stepped, grid))) },
    { name: "leaps over dry spells", run: repeated(() => sites.map((garden) => longTermBalance(record, garden))) },
  ];
  if (program === undefined) {
    const [plain = [], leaps = []] = await interleaved(loops, ROUNDS, WARM_UP);
    return [
      rowOf(series, "every step, JavaScript", plain, repeats),
      atLeast(rowOf(series, "every step / leaps", plain, repeats, leaps), 4),
    ];
  }
  const [one, other] = [new RunningBalance(program, input), new RunningBalance(program, input)];
  try {
    await one.run();
    differ(
      await one.balances(),
      grids.map((grid) => steppedBalance(stepped, grid)),
      series.name,
    );
    const inC = (name: string, running: RunningBalance): Contender => ({
      name,
      timesItself: true,
      run: () => repeatedly(running, repeats),
    });
    const [base = [], again = [], plain = [], leaps = []] = await interleaved(
      [inC("C", one), inC("C again", other), ...loops],
      ROUNDS,
      WARM_UP,
    );
    return [
      rowOf(series, "every step, C -O2, warm", base, repeats),
      rowOf(series, "C against itself (the machine's noise)", again, repeats, base),
      atMost(rowOf(series, "every step, JavaScript / C", plain, repeats, base), 1.1),
      rowOf(series, "leaps over dry spells / C", leaps, repeats, base),
      atLeast(rowOf(series, "every step / leaps", plain, repeats, leaps), 4),
    ];
  } finally {
    one.end();
    other.end();
  }
}

async function repeatedly(running: RunningBalance, times: number): Promise<number> {
  let milliseconds = 0;
  for (let time = 0; time < times; time += 1) milliseconds += await running.run();
  return milliseconds;
}

/** The comparison is worth something only while both compute the same. */
function differ(fromC: readonly object[], ours: readonly object[], name: string): void {
  const values = (balances: readonly object[]): readonly unknown[] => balances.flatMap((balance) => Object.values(balance) as unknown[]);
  const [theirs, mine] = [values(fromC), values(ours)];
  if (mine.length !== theirs.length || mine.some((value, place) => !Object.is(value, theirs[place])))
    throw new Error(`C and JavaScript differ on ${name}.`);
}

function rowOf(series: RainSeries, name: string, times: readonly number[], repeats: number, base?: readonly number[]): BenchRow {
  const value = median(times) / repeats / SITES;
  return { name: `${series.name}: ${name}`, value, unit: "ms a site", ...(base === undefined ? {} : { ratio: medianRatio(times, base) }) };
}

/** The first balances of a fresh process: no caches filled, nothing compiled to machine code yet in JavaScript. */
async function coldRows(program: string, input: string): Promise<readonly BenchRow[]> {
  const series = inventedHours(YEARS);
  const record = rainRecord(series.inches, series.stepHours);
  writeInput(
    input,
    steppedRain(series.inches, series.stepHours, 0),
    gardens()
      .slice(0, 1)
      .map((garden) => waterGrid(record, garden)),
  );
  const inC = async (): Promise<number> => {
    const running = new RunningBalance(program, input);
    const took = await running.run();
    running.end();
    return took;
  };
  const script = fileURLToPath(new URL("cold-balance.ts", import.meta.url));
  const inJavaScript = (loop: string) => (): number =>
    Number(execFileSync(process.execPath, ["--import", "tsx", script, loop], { encoding: "utf8" }));
  const contenders: readonly Contender[] = [
    { name: "C", timesItself: true, run: inC },
    { name: "every step", timesItself: true, run: inJavaScript("steps") },
    { name: "leaps", timesItself: true, run: inJavaScript("leaps") },
  ];
  const [base = [], plain = [], leaps = []] = await interleaved(contenders, COLD_STARTS, 0);
  const row = (name: string, times: readonly number[]): BenchRow => ({
    name: `${series.name}, first site of a fresh process: ${name}`,
    value: median(times),
    unit: "ms a site",
    ratio: medianRatio(times, base),
  });
  return [row("every step, C -O2, cold", base), row("every step, JavaScript / C", plain), row("leaps over dry spells / C", leaps)];
}
