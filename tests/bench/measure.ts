/** One line of the bench: what was timed, and beside what. */
export interface BenchRow {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** Median, over the rounds of one run, of this time to the base's time in the same round. */
  readonly ratio?: number;
  readonly goal?: string;
  readonly isMet?: boolean;
}

export interface BenchSection {
  readonly title: string;
  /** Rows, and sentences about what could not be measured. */
  measure(): Promise<{ readonly rows: readonly BenchRow[]; readonly notes?: readonly string[] }>;
}

/** Something to time: it does its work, or tells by itself how many milliseconds its work took. */
export interface Contender {
  readonly name: string;
  run(): unknown;
  readonly timesItself?: true;
}

/** Milliseconds of each contender in each round. They take turns, so that whatever else the machine does falls on all alike. */
export async function interleaved(
  contenders: readonly Contender[],
  rounds: number,
  warmUp: number,
): Promise<readonly (readonly number[])[]> {
  const times = contenders.map((): number[] => []);
  for (let round = 0; round < warmUp + rounds; round += 1) {
    for (const [place, contender] of contenders.entries()) {
      const start = performance.now();
      const answer = await contender.run();
      const took = contender.timesItself === true ? Number(answer) : performance.now() - start;
      if (round >= warmUp) times[place]!.push(took);
    }
  }
  return times;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Of each round, then the median: a slow moment of the machine spoils one round and not the answer. */
export function medianRatio(times: readonly number[], base: readonly number[]): number {
  return median(times.map((time, round) => time / base[round]!));
}

/** How a time grows with a size: p in time = c x size^p, by least squares on the logarithms. */
export function growthExponent(sizes: readonly number[], times: readonly number[]): number {
  const [xs, ys] = [sizes.map(Math.log), times.map(Math.log)];
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [meanX, meanY] = [mean(xs), mean(ys)];
  const along = xs.reduce((sum, x, place) => sum + (x - meanX) * (ys[place]! - meanY), 0);
  return along / xs.reduce((sum, x) => sum + (x - meanX) ** 2, 0);
}

/** A ratio that should stay under, or reach, its goal. */
export function atMost(row: BenchRow, most: number): BenchRow {
  const measured = row.ratio ?? row.value;
  return { ...row, goal: `at most ${most}`, isMet: measured <= most };
}

export function atLeast(row: BenchRow, least: number): BenchRow {
  const measured = row.ratio ?? row.value;
  return { ...row, goal: `at least ${least}`, isMet: measured >= least };
}
