import { useEffect, useReducer, useState } from "preact/hooks";
import { workbookId } from "../../addin/actions/workbook/workbook-id.ts";
import type { Workbook } from "../../addin/workbook/port.ts";

/** What a person typed and has not written yet, and what the workbook held when they began. */
export interface Draft<Value, Basis = undefined> {
  /** As typed, or the initial value while nothing was typed: that one follows the workbook. */
  readonly value: Value;
  /** The basis of the first keystroke: hand it to the write, so that a cell changed since is found out. */
  readonly basis: Basis;
  readonly touched: boolean;
  readonly set: (next: Value | ((current: Value) => Value)) => void;
  /** Call when the draft was written or the person discarded it. */
  readonly clear: () => void;
}

/** What comes back from storage as it went in: a row of a sheet does not, because it holds a function. */
export type PlainData<Data> = Data extends (...given: never[]) => unknown
  ? never
  : Data extends object
    ? { readonly [Key in keyof Data]: PlainData<Data[Key]> }
    : Data;

/**
 * A draft survives another tab, another yard, a change in the sheet and a reload of the pane. Value and basis are
 * plain data. The key names yard, view and row, such as "Y-003/surface/12"; one key, one form.
 */
export function useDraft<Value>(key: string, initial: Value & PlainData<Value>): Draft<Value>;
export function useDraft<Value, Basis>(
  key: string,
  initial: Value & PlainData<Value>,
  basis: Basis & PlainData<Basis>,
): Draft<Value, Basis>;
export function useDraft<Value, Basis>(key: string, initial: Value, basis?: Basis): Draft<Value, Basis | undefined> {
  const [, showAgain] = useReducer((count: number) => count + 1, 0);
  useEffect(() => drafts.listen(key, () => showAgain(undefined)), [key]);
  const present = () => drafts.get(key) as { readonly value: Value; readonly basis: Basis | undefined } | undefined;
  const kept = present();
  return {
    value: kept === undefined ? initial : kept.value,
    basis: kept === undefined ? basis : kept.basis,
    touched: kept !== undefined,
    set: (next) => {
      const before = present() ?? { value: initial, basis };
      const value = typeof next === "function" ? (next as (current: Value) => Value)(before.value) : next;
      drafts.keep(key, { value, basis: before.basis });
    },
    clear: () => drafts.keep(key, undefined),
  };
}

/** Whether the drafts of this workbook are there to be shown: until then no form may be. */
export function useDraftsOf(workbook: Workbook): boolean {
  const [opened, open] = useState<Workbook | null>(null);
  useEffect(() => {
    void openDrafts(workbook).then(() => open(workbook));
  }, [workbook]);
  return opened === workbook;
}

/** Lays aside the drafts of the workbook before, and brings those of this one. */
async function openDrafts(workbook: Workbook): Promise<void> {
  try {
    const { id, keep } = await workbookId(workbook);
    // A workbook that takes no setting is still open: then its drafts do not outlive the pane.
    drafts.belongTo(id, () => void keep().catch(() => undefined));
  } catch {
    drafts.belongTo(null);
  }
}

/** Whether anything under the prefix is typed and not written, for the list of yards. */
export function hasDraft(keyPrefix: string): boolean {
  return drafts.keys().some((key) => key.startsWith(keyPrefix));
}

/** For the moment another workbook takes this one's place: what was typed belongs to yards that are gone. */
export function forgetDrafts(): void {
  drafts.keys().forEach((key) => drafts.keep(key, undefined));
}

function nothingToDo(): void {
  return;
}

interface KeptDraft {
  readonly value: unknown;
  readonly basis: unknown;
}

/** The drafts of one workbook by key, in memory and in storage. Storage may be blocked, full or damaged: memory then has to do. */
export class DraftStore {
  readonly #listeners = new Map<string, Set<() => void>>();
  #kept: Map<string, KeptDraft> | null = null;
  #workbook: string | null = null;
  #onFirst: () => void = nothingToDo;

  /** A function, because reaching for a blocked storage throws. */
  constructor(private readonly storage: () => Pick<Storage, "getItem" | "setItem">) {}

  /** Of a workbook without an id the drafts are in memory alone. `onFirst` is called when the first of them is kept. */
  belongTo(workbook: string | null, onFirst: () => void = nothingToDo): void {
    this.#workbook = workbook;
    this.#onFirst = onFirst;
    this.#kept = null;
    for (const listeners of this.#listeners.values()) for (const listener of listeners) listener();
  }

  get(key: string): KeptDraft | undefined {
    return this.#all().get(key);
  }

  keys(): readonly string[] {
    return [...this.#all().keys()];
  }

  keep(key: string, draft: KeptDraft | undefined): void {
    if (draft === undefined) this.#all().delete(key);
    else {
      this.#all().set(key, draft);
      this.#onFirst();
      this.#onFirst = nothingToDo;
    }
    this.#store();
    this.#listeners.get(key)?.forEach((listener) => listener());
  }

  listen(key: string, listener: () => void): () => void {
    const ofKey = this.#listeners.get(key) ?? new Set();
    this.#listeners.set(key, ofKey.add(listener));
    return () => ofKey.delete(listener);
  }

  #all(): Map<string, KeptDraft> {
    this.#kept ??= new Map(this.#stored());
    return this.#kept;
  }

  #stored(): readonly (readonly [string, KeptDraft])[] {
    if (this.#workbook === null) return [];
    try {
      const entries: unknown = JSON.parse(this.storage().getItem(`${STORAGE_KEY}/${this.#workbook}`) ?? "[]");
      return Array.isArray(entries) ? entries.filter(isEntry) : [];
    } catch {
      return [];
    }
  }

  #store(): void {
    if (this.#workbook === null) return;
    try {
      this.storage().setItem(`${STORAGE_KEY}/${this.#workbook}`, JSON.stringify([...this.#all()]));
    } catch {
      return;
    }
  }
}

const STORAGE_KEY = "soakbook.drafts";

const drafts = new DraftStore(() => sessionStorage);

function isEntry(entry: unknown): entry is [string, KeptDraft] {
  return Array.isArray(entry) && typeof entry[0] === "string" && typeof entry[1] === "object" && entry[1] !== null && "value" in entry[1];
}
