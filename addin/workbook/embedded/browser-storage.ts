import { createStore, get, type UseStore } from "idb-keyval";
import type { CellRange } from "../port.ts";

const KEY = "workbook";
const SAVED_ELSEWHERE = "soakbook workbook saved";
const SAVE_AFTER_MILLISECONDS = 800;

/** What the browser keeps between visits. */
export interface KeptWorkbook {
  /** The text of a workbook file. */
  readonly file: string;
  /** The contents that were last saved to a file of the person's own, or null. */
  readonly contentsInFile: string | null;
  /** Where the person was. */
  readonly selection: CellRange | null;
}

export interface SavingState {
  readonly state: "saved" | "saving" | "refused";
  /** Why nothing is kept. */
  readonly sentence?: string;
}

const NOT_KEPT = "Not saved in this browser";

/** The workbook as this browser keeps it, saved by itself a moment after each change. */
export class BrowserStorage {
  readonly #content: () => KeptWorkbook;
  readonly #report: (state: SavingState) => void;
  readonly #otherTabs = new BroadcastChannel(SAVED_ELSEWHERE);
  #store: UseStore | null = null;
  #changedElsewhere = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** `content` is asked for what to keep each time it is saved; `report` hears how that went. */
  constructor(content: () => KeptWorkbook, report: (state: SavingState) => void) {
    this.#content = content;
    this.#report = report;
    this.#otherTabs.addEventListener("message", () => {
      this.#changedElsewhere = true;
    });
  }

  /** What was kept on the last visit; null when there is nothing or when the browser keeps nothing. */
  async load(): Promise<KeptWorkbook | null> {
    try {
      return (await get<KeptWorkbook>(KEY, this.#open())) ?? null;
    } catch (error) {
      this.#report(refusal(error));
      return null;
    }
  }

  /** Something changed: it is saved when no further change follows for a moment. */
  changed(): void {
    this.#report({ state: "saving" });
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.save(), SAVE_AFTER_MILLISECONDS);
  }

  /** Saves what is waiting, at once: the page may be about to go. */
  flush(): void {
    if (this.#timer !== undefined) void this.save();
  }

  async save(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    try {
      // Two tabs with one workbook: what the other saved must not vanish under what this one holds.
      if (this.#changedElsewhere) throw new ChangedElsewhere();
      await this.#open()("readwrite", (records) => put(records, this.#content()));
      this.#otherTabs.postMessage(SAVED_ELSEWHERE);
      if (this.#timer === undefined) this.#report({ state: "saved" });
    } catch (error) {
      this.#report(refusal(error));
    }
  }

  #open(): UseStore {
    return (this.#store ??= createStore("soakbook", "workbooks"));
  }
}

function put(records: IDBObjectStore, content: KeptWorkbook): Promise<void> {
  return new Promise((resolve, reject) => {
    const { transaction } = records;
    transaction.oncomplete = () => {
      resolve();
    };
    transaction.onabort = transaction.onerror = () => {
      reject(transaction.error ?? new DOMException("The browser gave up saving.", "AbortError"));
    };
    records.put(content, KEY);
    // Committed here and now, the text is kept even when the page goes before the answer comes.
    transaction.commit();
  });
}

class ChangedElsewhere extends Error {}

function refusal(error: unknown): SavingState {
  return { state: "refused", sentence: `${NOT_KEPT}: ${reasonFor(error)}` };
}

function reasonFor(error: unknown): string {
  if (error instanceof ChangedElsewhere) return "the workbook was changed in another tab. Save this one to a file, then reload.";
  if (error instanceof DOMException && error.name === "QuotaExceededError") return "its storage is full. Save to a file.";
  return "it does not let pages keep anything. Save to a file.";
}
