import { createStore, get, update } from "idb-keyval";

const KEY = "workbook";
const SAVE_AFTER_MILLISECONDS = 800;

/** What the browser keeps between visits. */
export interface KeptWorkbook {
  /** The text of a workbook file. */
  readonly file: string;
  /** The contents that were last saved to a file of the person's own, or null. */
  readonly contentsInFile: string | null;
  /** Changes with each save, so that one tab notices that another has saved. */
  readonly revision: number;
}

export type SavingState =
  | { readonly state: "saved" }
  | { readonly state: "saving" }
  /** The sentence says why nothing is kept. */
  | { readonly state: "refused"; readonly sentence: string };

const NOT_KEPT = "Not saved in this browser";

/** The workbook as this browser keeps it, saved by itself a moment after each change. */
export class BrowserStorage {
  readonly #store = once(() => createStore("soakbook", "workbooks"));
  readonly #content: () => Omit<KeptWorkbook, "revision">;
  readonly #report: (state: SavingState) => void;
  #revision = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #saving: Promise<void> = Promise.resolve();

  /** `content` is asked for what to keep each time it is saved; `report` hears how that went. */
  constructor(content: () => Omit<KeptWorkbook, "revision">, report: (state: SavingState) => void) {
    this.#content = content;
    this.#report = report;
  }

  /** What was kept on the last visit; null when there is nothing or when the browser keeps nothing. */
  async load(): Promise<KeptWorkbook | null> {
    try {
      const kept = (await get<KeptWorkbook>(KEY, this.#store())) ?? null;
      this.#revision = kept?.revision ?? 0;
      return kept;
    } catch (error) {
      this.#report({ state: "refused", sentence: sentenceFor(error) });
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

  save(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#saving = this.#saving.then(() => this.#saveNow());
    return this.#saving;
  }

  async #saveNow(): Promise<void> {
    try {
      const content = this.#content();
      const seen = this.#revision;
      const next = seen + 1;
      await update<KeptWorkbook>(
        KEY,
        (kept) => {
          if (kept && kept.revision !== seen) throw new ChangedElsewhere();
          return { ...content, revision: next };
        },
        this.#store(),
      );
      this.#revision = next;
      if (this.#timer === undefined) this.#report({ state: "saved" });
    } catch (error) {
      this.#report({ state: "refused", sentence: sentenceFor(error) });
    }
  }
}

class ChangedElsewhere extends Error {}

function sentenceFor(error: unknown): string {
  if (error instanceof ChangedElsewhere) {
    return `${NOT_KEPT}: the workbook was changed in another tab. Save this one to a file, then reload.`;
  }
  if (error instanceof DOMException && error.name === "QuotaExceededError") {
    return `${NOT_KEPT}: its storage is full. Save to a file.`;
  }
  return `${NOT_KEPT}: it does not let pages keep anything. Save to a file.`;
}

function once<Made>(make: () => Made): () => Made {
  let made: Made | undefined;
  return () => (made ??= make());
}
