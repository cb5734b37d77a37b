import { readProgram, type Program } from "../addin/actions/program/read-program.ts";
import { programState, sheetNamesOfProgram, type ProgramState } from "../addin/actions/workbook/set-up-workbook.ts";
import { keepDeleted } from "../addin/actions/workbook/deleted-sheets.ts";
import type { Workbook } from "../addin/workbook/port.ts";
import { isSheetMissing, sentenceOfError } from "./parts/spoken-errors.ts";
import { afterWriting } from "./parts/while-writing.ts";

export type Reading =
  | { readonly state: "first" }
  | Exclude<ProgramState, { readonly state: "ready" }>
  | { readonly state: "failed"; readonly sentence: string }
  | { readonly state: "ready"; readonly program: Program };

/**
 * Keeps one reading of the program up to date. Never two reads at once: changes that arrive while one is running
 * lead to one more read, however many they are.
 */
export class ProgramWatch {
  #running: Promise<void> | null = null;
  #next: Promise<void> | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #ready = false;
  /** The last reading, for what a sheet held that is deleted before the next. */
  #last: Program | null = null;

  constructor(
    private readonly workbook: Workbook,
    private readonly show: (reading: Reading) => void,
  ) {}

  start(): () => void {
    const stopListening = this.workbook.onCellsChanged((sheets) => {
      if (!this.#ready || sheets.some((sheet) => sheetNamesOfProgram.includes(sheet))) this.#soon();
    });
    void this.readAgain();
    return () => {
      stopListening();
      clearTimeout(this.#timer);
    };
  }

  /** Resolves when a read that began after this call has been shown. */
  readAgain(): Promise<void> {
    if (this.#running === null) {
      this.#running = this.#read().finally(() => {
        this.#running = null;
      });
      return this.#running;
    }
    this.#next ??= this.#running.then(() => {
      this.#next = null;
      return this.readAgain();
    });
    return this.#next;
  }

  #soon(): void {
    this.#timer ??= setTimeout(() => {
      this.#timer = undefined;
      void afterWriting().then(() => this.readAgain());
    }, CHANGES_SETTLE_MILLISECONDS);
  }

  async #read(): Promise<void> {
    const reading = await this.#reading();
    this.#ready = reading.state === "ready";
    if (reading.state === "incomplete") await this.#keep(reading.missing);
    if (reading.state === "ready") this.#last = reading.program;
    this.show(reading);
  }

  /** No spreadsheet undoes the deletion of a sheet: what was last read of it is kept, to be brought back. */
  async #keep(missing: readonly string[]): Promise<void> {
    const last = this.#last;
    this.#last = null;
    if (last === null) return;
    try {
      await keepDeleted(this.workbook, last.cells, missing);
    } catch {
      // A workbook that cannot be written to is told so by whoever brings the sheet back.
    }
  }

  /** What the workbook is gets looked at first, and again whenever the program cannot be read: between the two, one call is enough. */
  async #reading(): Promise<Reading> {
    try {
      if (this.#ready) return { state: "ready", program: await readProgram(this.workbook) };
    } catch (error) {
      if (!isSheetMissing(error)) return { state: "failed", sentence: sentenceOfError(error) };
    }
    try {
      const present = await programState(this.workbook);
      return present.state === "ready" ? { state: "ready", program: await readProgram(this.workbook) } : present;
    } catch (error) {
      return { state: "failed", sentence: sentenceOfError(error) };
    }
  }
}

/** Long enough for one edit and what it recalculates to arrive together, short enough to feel immediate. */
export const CHANGES_SETTLE_MILLISECONDS = 120;
