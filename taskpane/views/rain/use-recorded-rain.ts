import { useEffect, useState } from "preact/hooks";
import { RAIN_RECORD_NAME, readRecordedRain, type RecordedRain } from "../../../addin/actions/rain-record/recorded-rain.ts";
import type { Workbook } from "../../../addin/workbook/port.ts";
import { sentenceOfError } from "../../parts/spoken-errors.ts";
import { afterWriting } from "../../parts/while-writing.ts";

export type RainReading = "reading" | RecordedRain | { readonly fault: string };

/** Years of rain are read once, and again only when their sheet has changed: not with every change of the program. */
class RainWatch {
  #present: RainReading = "reading";
  #isStale = true;
  readonly #listeners = new Set<() => void>();

  constructor(private readonly workbook: Workbook) {
    workbook.onCellsChanged((sheets) => {
      if (!sheets.includes(RAIN_RECORD_NAME)) return;
      this.#isStale = true;
      void afterWriting().then(() => {
        if (this.#isStale && this.#listeners.size > 0) return this.#read();
      });
    });
  }

  get present(): RainReading {
    return this.#present;
  }

  listen(listener: () => void): () => void {
    this.#listeners.add(listener);
    if (this.#isStale) void this.#read();
    return () => void this.#listeners.delete(listener);
  }

  async #read(): Promise<void> {
    this.#isStale = false;
    try {
      this.#present = await readRecordedRain(this.workbook);
    } catch (error) {
      this.#present = { fault: sentenceOfError(error) };
    }
    this.#listeners.forEach((listener) => listener());
  }
}

const watches = new WeakMap<Workbook, RainWatch>();

function watchOf(workbook: Workbook): RainWatch {
  const watch = watches.get(workbook) ?? new RainWatch(workbook);
  watches.set(workbook, watch);
  return watch;
}

/** The Rain record of the workbook, kept up to date while the view is shown. */
export function useRecordedRain(workbook: Workbook): RainReading {
  const watch = watchOf(workbook);
  const [present, show] = useState(watch.present);
  useEffect(() => {
    const stop = watch.listen(() => show(watch.present));
    show(watch.present);
    return stop;
  }, [watch]);
  return present;
}
