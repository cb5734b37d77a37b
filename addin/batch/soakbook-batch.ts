/** Any worksheet function over a stream of rows, from standard input to standard output: dist/soakbook-batch.mjs --help says how. */
import { once } from "node:events";
import { writeSync } from "node:fs";
import { argv, stderr, stdin, stdout } from "node:process";
import { isMainThread } from "node:worker_threads";
import { openCsv } from "./csv-stream.ts";
import { openNdjson } from "./ndjson-stream.ts";
import { optionsFrom, type BatchOptions } from "./options.ts";
import { Refusal } from "./refusal.ts";
import { computedStream, ROWS_AT_ONCE, type StreamRow } from "./stream.ts";
import { computerOf, computeWhatIsHanded, Workers } from "./workers.ts";

/** Of a worker: one batch that it computes and one that waits for it. */
const BATCHES_FOR_EACH = 2;

if (isMainThread) await answerCommand();
else computeWhatIsHanded();

async function answerCommand(): Promise<void> {
  stdout.on("error", endAfter);
  try {
    const options = optionsFrom(argv.slice(2));
    if ("print" in options) stdout.write(options.print);
    else await answerStream(options);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

/** Whoever reads may stop early, as `head` does: then there is nobody left to compute for. Anything else is a loss, and says so. */
function endAfter(error: NodeJS.ErrnoException): never {
  if (error.code === "EPIPE") process.exit(0);
  const reason = error.code === "ENOSPC" ? "the disk is full" : error.message;
  writeSync(stderr.fd, `The output could not be written: ${reason}. What was written before is not the whole of it.\n`);
  process.exit(1);
}

async function answerStream(options: BatchOptions): Promise<void> {
  const stream = options.format === "csv" ? await openCsv(stdin, options) : openNdjson(stdin, options);
  const { work } = stream;
  const compute = computerOf(work);
  const workers = new Workers(new URL(import.meta.url), work, options.workers);
  // A batch that is not full is the last: it is computed here, so a short stream starts no thread.
  const computeByWorkers = (rows: readonly StreamRow[]) => (rows.length < ROWS_AT_ONCE ? compute(rows) : workers.compute(rows));
  const texts =
    options.workers === 1
      ? computedStream(stream, compute, 1)
      : computedStream(stream, computeByWorkers, BATCHES_FOR_EACH * options.workers);
  try {
    for await (const text of texts) if (text !== "" && !stdout.write(text)) await once(stdout, "drain");
  } finally {
    await workers.end();
  }
}
