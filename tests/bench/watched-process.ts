import { spawn } from "node:child_process";
import { once } from "node:events";
import { readdirSync, readFileSync } from "node:fs";
import { Readable } from "node:stream";
import { text } from "node:stream/consumers";
import { pipeline } from "node:stream/promises";

export interface WatchedProcess {
  readonly seconds: number;
  /** The most memory that it, or a process that it started, held at once; undefined where the system does not tell. */
  readonly megabytes: number | undefined;
}

const WATCH_MILLISECONDS = 20;

/** Runs a program to its end with a stream into it; what it prints is read and dropped. */
export async function watchedProcess(program: string, words: readonly string[], input: Iterable<string> = []): Promise<WatchedProcess> {
  const start = performance.now();
  const child = spawn(program, words);
  let kilobytes = 0;
  const watch = setInterval(() => {
    kilobytes = Math.max(kilobytes, mostKilobytes(String(child.pid)));
  }, WATCH_MILLISECONDS);
  child.stdout.resume();
  const ended = once(child, "close");
  const [complaints] = await Promise.all([text(child.stderr), pipeline(Readable.from(input), child.stdin)]);
  const [code] = (await ended) as [number];
  clearInterval(watch);
  if (code !== 0) throw new Error(`${program} ended with ${code}: ${complaints}`);
  return { seconds: (performance.now() - start) / 1000, megabytes: kilobytes === 0 ? undefined : kilobytes / 1024 };
}

/** As Linux tells it, of a process and all under it. */
function mostKilobytes(process: string): number {
  const own = Number(/VmHWM:\s*(\d+)/.exec(linesOf(`/proc/${process}/status`))?.[1] ?? 0);
  const children = threadsOf(process).flatMap((thread) => linesOf(`/proc/${process}/task/${thread}/children`).split(" "));
  return Math.max(own, ...children.filter((child) => child !== "").map(mostKilobytes));
}

function threadsOf(process: string): readonly string[] {
  try {
    return readdirSync(`/proc/${process}/task`);
  } catch {
    return [];
  }
}

/** None where a process has ended while it was looked at. */
function linesOf(path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return "";
  }
}
