import { parentPort, Worker, workerData } from "node:worker_threads";
import { computedCsv } from "./csv-stream.ts";
import { computedNdjson } from "./ndjson-stream.ts";
import { functionNamed } from "./options.ts";
import type { StreamRow, StreamWork } from "./stream.ts";

/** Computes batches of rows in this thread. */
export function computerOf(work: StreamWork): (rows: readonly StreamRow[]) => string {
  const fn = functionNamed(work.functionName);
  const computed = work.format === "csv" ? computedCsv : computedNdjson;
  return (rows) => computed(work, fn, rows);
}

interface Awaited {
  readonly resolve: (text: string) => void;
  readonly reject: (error: Error) => void;
}

/** Threads that run this same script. Each answers in the order in which it was asked, so taking turns keeps all in order. */
export class Workers {
  private readonly started: { readonly worker: Worker; readonly awaited: Awaited[] }[] = [];
  private turn = 0;

  constructor(
    private readonly script: URL,
    private readonly work: StreamWork,
    private readonly count: number,
  ) {}

  compute(rows: readonly StreamRow[]): Promise<string> {
    const place = this.turn % this.count;
    this.turn += 1;
    const { worker, awaited } = (this.started[place] ??= this.start());
    return new Promise((resolve, reject) => {
      awaited.push({ resolve, reject });
      worker.postMessage(rows);
    });
  }

  async end(): Promise<void> {
    await Promise.all(this.started.map(({ worker }) => worker.terminate()));
  }

  private start() {
    const awaited: Awaited[] = [];
    const worker = new Worker(this.script, { workerData: this.work });
    worker.on("message", (text: string) => awaited.shift()?.resolve(text));
    worker.on("error", (error) => {
      for (const { reject } of awaited.splice(0)) reject(error);
    });
    return { worker, awaited };
  }
}

/** What a worker does: computes every batch that it is handed. */
export function computeWhatIsHanded(): void {
  const compute = computerOf(workerData as StreamWork);
  parentPort?.on("message", (rows: readonly StreamRow[]) => parentPort?.postMessage(compute(rows)));
}
