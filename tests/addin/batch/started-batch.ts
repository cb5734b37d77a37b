import { spawn } from "node:child_process";
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";
import { buffer, text } from "node:stream/consumers";
import { pipeline } from "node:stream/promises";
import { batchScript } from "../../../addin/hosting/bundle.ts";

export async function builtBatch(folder: string): Promise<string> {
  const path = join(folder, "soakbook-batch.mjs");
  await writeFile(path, (await batchScript()).text);
  return path;
}

export interface Finished {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** A program with a stream into it, to its end. */
export async function finished(
  program: string,
  words: readonly string[],
  input: Iterable<string> | AsyncIterable<string>,
): Promise<Finished> {
  const child = spawn(program, words);
  const code = new Promise<number | null>((resolve) => child.on("close", resolve));
  const fed = pipeline(Readable.from(input), child.stdin).catch(() => {
    // One that refuses its words ends before it has read everything.
  });
  const [stdout, stderr] = await Promise.all([buffer(child.stdout), text(child.stderr)]);
  await fed;
  return { code: await code, stdout: stdout.toString("utf8"), stderr };
}

/** Invented parcels: a name with a comma in every seventh, a rate that was not measured in every hundredth. */
export function* parcels(count: number): Generator<string> {
  const BLOCK = 1000;
  for (let first = 0; first < count; first += BLOCK) {
    const lines = Array.from({ length: Math.min(BLOCK, count - first) }, (_, offset) => {
      const parcel = first + offset;
      const name = parcel % 7 === 0 ? `"lot ${parcel}, Ferry Street"` : `lot ${parcel}`;
      return `${name},${300 + (parcel % 4000)},${parcel % 100 === 99 ? "" : (0.2 + (parcel % 50) * 0.05).toFixed(2)}\n`;
    });
    yield lines.join("");
  }
}

export const PARCEL_HEADINGS = "parcel,roof,rate";
export const PARCEL_WORDS = ["SITEDESIGN", "--column", "contributingArea=roof", "--column", "testedRate=rate"] as const;
