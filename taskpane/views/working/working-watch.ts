import type { Working } from "../../../addin/actions/working/show-working.ts";
import type { CellRange, Workbook } from "../../../addin/workbook/port.ts";
import { CHANGES_SETTLE_MILLISECONDS } from "../../program-watch.ts";

/** Keeps the working of the selected cell up to date: whoever moves on before it is read is shown the newer one only. */
export class WorkingWatch {
  #cell: CellRange | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #turn = 0;

  constructor(
    private readonly workbook: Workbook,
    private readonly show: (working: Working | null) => void,
  ) {}

  start(): () => void {
    const stopFollowing = this.workbook.onSelectionChanged((selection) => this.#soon(selection));
    const stopListening = this.workbook.onCellsChanged(() => this.#soon(this.#cell));
    this.workbook.selection().then(
      (selection) => {
        if (this.#cell === null && selection !== null) this.#soon(selection);
      },
      // Without a first selection the working waits for the next one.
      () => undefined,
    );
    return () => {
      stopFollowing();
      stopListening();
      clearTimeout(this.#timer);
      this.#turn += 1;
    };
  }

  #soon(cell: CellRange | null): void {
    this.#cell = cell;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#read(), CHANGES_SETTLE_MILLISECONDS);
  }

  async #read(): Promise<void> {
    const cell = this.#cell;
    const turn = (this.#turn += 1);
    const working = cell === null ? null : await this.#workingOf(cell);
    if (turn === this.#turn) this.show(working);
  }

  async #workingOf(cell: CellRange): Promise<Working | null> {
    try {
      // The whole catalogue with its documentation comes along, so it is fetched when it is first needed.
      const { showWorking } = await import("../../../addin/actions/working/show-working.ts");
      return await showWorking(this.workbook, cell);
    } catch {
      // A sheet that went away or a cell being edited: there is nothing to offer until the next change.
      return null;
    }
  }
}
