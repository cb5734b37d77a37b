import { spawn, spawnSync, type ChildProcessWithoutNullStreams } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import type { WaterGrid } from "../../functions/long-term/water-grid.ts";
import type { SteppedBalance, SteppedRain } from "../functions/long-term/step-loop.ts";

/** Compiles the balance with the system's C compiler; undefined where there is none. */
export function compiledBalance(folder: string): string | undefined {
  const program = join(folder, "water-balance");
  const source = fileURLToPath(new URL("water-balance.c", import.meta.url));
  const { error, status, stderr } = spawnSync("cc", ["-O2", "-ffp-contract=off", "-o", program, source], { encoding: "utf8" });
  if (error !== undefined) return undefined;
  if (status !== 0) throw new Error(`cc refuses water-balance.c: ${stderr}`);
  return program;
}

export function writeInput(path: string, { rainInches, runoffInches }: SteppedRain, grids: readonly WaterGrid[]): void {
  const sites = grids.flatMap(({ media, capacity, draw, runoffPerInch, directPerInch }) => [
    media,
    capacity,
    draw,
    runoffPerInch,
    directPerInch,
  ]);
  const parts = [Int32Array.of(rainInches.length, grids.length), rainInches, runoffInches, Float64Array.from(sites)];
  writeFileSync(path, Buffer.concat(parts.map(({ buffer, byteOffset, byteLength }) => Buffer.from(buffer, byteOffset, byteLength))));
}

/** The compiled balance, started and waiting with its input read. */
export class RunningBalance {
  private readonly process: ChildProcessWithoutNullStreams;
  private readonly lines: AsyncIterator<string>;

  constructor(program: string, input: string) {
    this.process = spawn(program, [input]);
    this.lines = createInterface({ input: this.process.stdout })[Symbol.asyncIterator]();
  }

  /** Milliseconds that all sites took, by its own clock. */
  async run(): Promise<number> {
    return Number(await this.answer("r")) / 1e6;
  }

  async balances(): Promise<readonly SteppedBalance[]> {
    const bytes = Buffer.from(await this.answer("o"), "hex");
    const numbers = Array.from({ length: bytes.length / 8 }, (_, place) => bytes.readDoubleBE(8 * place));
    return Array.from({ length: numbers.length / 7 }, (_, site) => {
      const [runoff = NaN, direct = NaN, drawn = NaN, overflow = NaN, stored = NaN, overflows = NaN, longest = NaN] = numbers.slice(
        7 * site,
        7 * site + 7,
      );
      return { runoff, direct, drawn, overflow, stored, overflows, longest };
    });
  }

  end(): void {
    this.process.stdin.end();
  }

  private async answer(letter: string): Promise<string> {
    this.process.stdin.write(letter);
    const { value, done } = await this.lines.next();
    if (done === true) throw new Error("The compiled water balance ended before it answered.");
    return String(value);
  }
}
