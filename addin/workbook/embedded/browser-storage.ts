import { createStore, type UseStore } from "idb-keyval";
import type { CellRange } from "../port.ts";
import { afterSaving, freeSlot, type Save } from "./saves.ts";

const SAVES = "saves";
const slotKey = (slot: number): string => `save ${slot}`;
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

/** What is kept, and whether it is the invented program or a person's own. */
export interface WorkbookToKeep extends KeptWorkbook {
  readonly isDemo: boolean;
}

/** Nothing kept, something kept, and not to be read are three answers: only the first lets a start begin with something else. */
export type Found =
  | { readonly is: "nothing" }
  | { readonly is: "kept"; readonly latest: Save; readonly earlier: readonly Save[] }
  | { readonly is: "unreadable"; readonly sentence: string };

export interface SavingState {
  readonly state: "unchanged" | "saved" | "saving" | "refused";
  /** Why nothing is kept. */
  readonly sentence?: string;
}

/** What was read from a save, if it is one at all. */
export function keptWorkbook(read: unknown): KeptWorkbook | null {
  const { file, contentsInFile, selection } = (read ?? {}) as Partial<Record<keyof KeptWorkbook, unknown>>;
  if (typeof file !== "string") return null;
  return {
    file,
    contentsInFile: typeof contentsInFile === "string" ? contentsInFile : null,
    selection: isRange(selection) ? selection : null,
  };
}

function isRange(read: unknown): read is CellRange {
  const { sheet, row, column, rows, columns } = (read ?? {}) as Partial<CellRange>;
  const isPlace = [row, column].every((index) => Number.isInteger(index) && Number(index) >= 0);
  return typeof sheet === "string" && isPlace && [rows, columns].every((count) => Number.isInteger(count) && Number(count) >= 1);
}

const NOT_KEPT = "Not saved in this browser";

/** The workbook as this browser keeps it, saved by itself a moment after each change; its last saves are kept beside it. */
export class BrowserStorage {
  readonly #content: () => WorkbookToKeep;
  readonly #report: (state: SavingState) => void;
  readonly #otherTabs = new BroadcastChannel(SAVED_ELSEWHERE);
  /** Saves of one sitting bear one number, so that the last of the sitting before can be told from them. */
  readonly #sitting = Date.now();
  #store: UseStore | null = null;
  /** Every save that is kept, the latest first; null until that has been read. */
  #saves: readonly Save[] | null = null;
  #changedElsewhere = false;
  #heldBack: string | null = null;
  #isUnsaved = false;
  #lastWasRefused = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** `content` is asked for what to keep each time it is saved; `report` hears how that went. */
  constructor(content: () => WorkbookToKeep, report: (state: SavingState) => void) {
    this.#content = content;
    this.#report = report;
    this.#otherTabs.addEventListener("message", () => {
      this.#changedElsewhere = true;
    });
  }

  /** What is kept from earlier visits. */
  async find(): Promise<Found> {
    try {
      const [latest, ...earlier] = await this.saves();
      return latest === undefined ? { is: "nothing" } : { is: "kept", latest, earlier };
    } catch (error) {
      return { is: "unreadable", sentence: reasonUnread(error) };
    }
  }

  /** Every save that is kept, the latest first. Rejects when the storage cannot be read. */
  async saves(): Promise<readonly Save[]> {
    let kept: unknown;
    try {
      kept = await this.#get(SAVES);
    } catch (error) {
      // A connection that failed once is not asked again.
      this.#store = null;
      throw error;
    }
    if (kept !== undefined && !isListOfSaves(kept)) throw new DOMException("The list of saves is damaged.", "DataError");
    return (this.#saves = kept ?? []);
  }

  /** One of the saves, whatever stands there: a damaged one too. Rejects when the storage cannot be read. */
  async read(save: Save): Promise<unknown> {
    return this.#get(slotKey(save.slot));
  }

  /** Nothing is saved from now on, and the sentence says why, until `goOnSaving`. */
  holdBack(sentence: string): void {
    this.#heldBack = `${NOT_KEPT}: ${sentence}`;
    this.#report({ state: "refused", sentence: this.#heldBack });
  }

  get isHeldBack(): boolean {
    return this.#heldBack !== null;
  }

  /** A person put another workbook in place knowingly: it is kept from here on, beside what was kept before. */
  goOnSaving(): void {
    this.#heldBack = null;
  }

  /** Whether something changed that the browser does not keep, and will not keep by itself when the page goes. */
  get wouldBeLost(): boolean {
    return this.#isUnsaved && (this.#heldBack !== null || this.#changedElsewhere || this.#lastWasRefused);
  }

  get isWaiting(): boolean {
    return this.#timer !== undefined;
  }

  /** Something changed: it is saved when no further change follows for a moment. */
  changed(): void {
    this.#isUnsaved = true;
    if (this.#heldBack !== null) return;
    this.#report({ state: "saving" });
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.save(), SAVE_AFTER_MILLISECONDS);
  }

  /** Saves what is waiting, at once: the page may be about to go. */
  flush(): void {
    if (this.isWaiting) void this.save();
  }

  async save(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#isUnsaved = true;
    if (this.#heldBack !== null) {
      this.#report({ state: "refused", sentence: this.#heldBack });
      return;
    }
    try {
      // Two tabs with one workbook: what the other saved must not vanish under what this one holds.
      if (this.#changedElsewhere) throw new ChangedElsewhere();
      // Right away where that can be, since the page may be going; the list is read first where it has not been.
      await (this.#saves === null ? this.saves().then((saves) => this.#keep(saves)) : this.#keep(this.#saves));
      this.#otherTabs.postMessage(SAVED_ELSEWHERE);
      this.#lastWasRefused = false;
      if (this.#timer !== undefined) return;
      this.#isUnsaved = false;
      this.#report({ state: "saved" });
    } catch (error) {
      this.#lastWasRefused = true;
      this.#report({ state: "refused", sentence: `${NOT_KEPT}: ${reasonUnsaved(error)}` });
    }
  }

  async #keep(before: readonly Save[]): Promise<void> {
    const { isDemo, ...content } = this.#content();
    const save: Save = { slot: freeSlot(before), savedAt: Date.now(), sitting: this.#sitting, isDemo };
    const { kept, dropped } = afterSaving(before, save);
    // Known before it is done: a save that follows at once must not take the same place.
    this.#saves = kept;
    try {
      await this.#write((records) => {
        records.put(content, slotKey(save.slot));
        records.put(kept, SAVES);
        for (const { slot } of dropped) records.delete(slotKey(slot));
      });
    } catch (error) {
      this.#saves = before;
      if (!isFull(error) || before.length < 2) throw error;
      await this.#keepOnlyLatest(before);
      return this.#keep(this.#saves);
    }
  }

  /** Makes room: of a person's own and of the demo the latest stays. */
  async #keepOnlyLatest(before: readonly Save[]): Promise<void> {
    const kept = before.filter((save, index) => before.findIndex(({ isDemo }) => isDemo === save.isDemo) === index);
    await this.#write((records) => {
      records.put(kept, SAVES);
      for (const { slot } of before.filter((save) => !kept.includes(save))) records.delete(slotKey(slot));
    });
    this.#saves = kept;
  }

  #write(work: (records: IDBObjectStore) => void): Promise<void> {
    return this.#open()("readwrite", (records) => committed(records, work));
  }

  #get(key: string): Promise<unknown> {
    return this.#open()(
      "readonly",
      (records) =>
        new Promise((resolve, reject) => {
          const request: IDBRequest<unknown> = records.get(key);
          request.onsuccess = () => {
            resolve(request.result);
          };
          request.onerror = () => {
            reject(request.error ?? new DOMException("The browser gave no answer.", "UnknownError"));
          };
        }),
    );
  }

  #open(): UseStore {
    return (this.#store ??= createStore("soakbook", "workbooks"));
  }
}

/** All of the work or nothing of it, wherever the page goes meanwhile. */
function committed(records: IDBObjectStore, work: (records: IDBObjectStore) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const { transaction } = records;
    transaction.oncomplete = () => {
      resolve();
    };
    transaction.onabort = transaction.onerror = () => {
      reject(transaction.error ?? new DOMException("The browser gave up saving.", "AbortError"));
    };
    try {
      work(records);
    } catch (error) {
      transaction.abort();
      throw error;
    }
    // Committed here and now, the text is kept even when the page goes before the answer comes.
    transaction.commit();
  });
}

function isListOfSaves(kept: unknown): kept is readonly Save[] {
  return (
    Array.isArray(kept) &&
    kept.every((save: unknown) => {
      const { slot, savedAt } = (save ?? {}) as Partial<Save>;
      return Number.isInteger(slot) && Number.isFinite(savedAt);
    })
  );
}

class ChangedElsewhere extends Error {}

function isFull(error: unknown): boolean {
  return error instanceof DOMException && error.name === "QuotaExceededError";
}

function reasonUnsaved(error: unknown): string {
  if (error instanceof ChangedElsewhere) return "the workbook was changed in another tab. Save this one to a file, then reload.";
  if (isFull(error)) return "its storage is full. Save to a file.";
  return "it does not let pages keep anything. Save to a file.";
}

function reasonUnread(error: unknown): string {
  const { name } = error instanceof Error ? error : { name: "an unknown fault" };
  return `The browser's storage did not answer (${name}).`;
}
