import type { ArgumentSource } from "./computed-rows.ts";

/** A row as it came: the cells of a CSV row, or of JSON its one line. */
export type StreamRow = readonly string[];

/** What rows are computed by, the same for all: plain data, so that a worker can be handed it. */
export interface StreamWork {
  readonly functionName: string;
  readonly format: "csv" | "ndjson";
  /** Over the columns of CSV; of JSON, the names under which the arguments stand. */
  readonly headings: readonly string[];
  readonly sources: readonly ArgumentSource[];
}

export interface OpenStream {
  /** What comes out before the first row. */
  readonly head: string;
  readonly batches: AsyncIterable<readonly StreamRow[]>;
  readonly work: StreamWork;
}

/** Rows that go through one call. */
export const ROWS_AT_ONCE = 500;

export async function* inBatches(rows: AsyncIterable<StreamRow>): AsyncGenerator<readonly StreamRow[]> {
  let batch: StreamRow[] = [];
  let fault: unknown;
  try {
    for await (const row of rows) {
      batch.push(row);
      if (batch.length === ROWS_AT_ONCE) {
        yield batch;
        batch = [];
      }
    }
  } catch (error) {
    fault = error;
  }
  if (batch.length > 0) yield batch;
  if (fault !== undefined) throw fault;
}

/** Computes up to so many batches at once, and gives their texts in the order in which they came. */
export async function* computedStream(
  { head, batches }: OpenStream,
  compute: (rows: readonly StreamRow[]) => string | Promise<string>,
  atOnce: number,
): AsyncGenerator<string> {
  yield head;
  const begun: (string | Promise<string>)[] = [];
  let fault: unknown;
  try {
    for await (const batch of batches) {
      begun.push(compute(batch));
      if (begun.length === atOnce) yield (await begun.shift()) ?? "";
    }
  } catch (error) {
    fault = error;
  }
  // What was read before a fault in the stream comes out all the same.
  for (const text of begun) yield await text;
  if (fault !== undefined) throw fault;
}
