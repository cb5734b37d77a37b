import { useEffect, useReducer } from "preact/hooks";

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

/**
 * A draft survives another tab, another yard, a change in the sheet and a reload of the pane. Value and basis must be
 * plain data (JSON). The key names yard, view and row, such as "Y-003/surface/12"; one key, one form.
 */
export function useDraft<Value>(key: string, initial: Value): Draft<Value>;
export function useDraft<Value, Basis>(key: string, initial: Value, basis: Basis): Draft<Value, Basis>;
export function useDraft<Value, Basis>(key: string, initial: Value, basis?: Basis): Draft<Value, Basis | undefined> {
  const [, showAgain] = useReducer((count: number) => count + 1, 0);
  useEffect(() => listen(key, () => showAgain(undefined)), [key]);
  const kept = drafts().get(key) as KeptDraft<Value, Basis | undefined> | undefined;
  return {
    value: kept === undefined ? initial : kept.value,
    basis: kept === undefined ? basis : kept.basis,
    touched: kept !== undefined,
    set: (next) => {
      const present = drafts().get(key) as KeptDraft<Value, Basis | undefined> | undefined;
      const current = present === undefined ? initial : present.value;
      const value = typeof next === "function" ? (next as (current: Value) => Value)(current) : next;
      keep(key, { value, basis: present === undefined ? basis : present.basis });
    },
    clear: () => keep(key, undefined),
  };
}

/** Whether anything of the yard is typed and not written, for the list of yards. */
export function hasDraft(keyPrefix: string): boolean {
  return [...drafts().keys()].some((key) => key.startsWith(keyPrefix));
}

interface KeptDraft<Value, Basis> {
  readonly value: Value;
  readonly basis: Basis;
}

const STORAGE_KEY = "soakbook.drafts";

const listeners = new Map<string, Set<() => void>>();
let kept: Map<string, KeptDraft<unknown, unknown>> | null = null;

function drafts(): Map<string, KeptDraft<unknown, unknown>> {
  kept ??= new Map(stored());
  return kept;
}

function keep(key: string, draft: KeptDraft<unknown, unknown> | undefined): void {
  if (draft === undefined) drafts().delete(key);
  else drafts().set(key, draft);
  store([...drafts()]);
  listeners.get(key)?.forEach((listener) => listener());
}

function listen(key: string, listener: () => void): () => void {
  const ofKey = listeners.get(key) ?? new Set();
  listeners.set(key, ofKey.add(listener));
  return () => ofKey.delete(listener);
}

/** Storage may be blocked, full or damaged: the pane then keeps its drafts in memory alone. */
function stored(): [string, KeptDraft<unknown, unknown>][] {
  try {
    const entries: unknown = JSON.parse(sessionStorage.getItem(STORAGE_KEY) ?? "[]");
    return Array.isArray(entries) ? entries.filter(isEntry) : [];
  } catch {
    return [];
  }
}

function store(entries: readonly (readonly [string, KeptDraft<unknown, unknown>])[]): void {
  try {
    sessionStorage.setItem(STORAGE_KEY, JSON.stringify(entries));
  } catch {
    return;
  }
}

function isEntry(entry: unknown): entry is [string, KeptDraft<unknown, unknown>] {
  return Array.isArray(entry) && typeof entry[0] === "string" && typeof entry[1] === "object" && entry[1] !== null && "value" in entry[1];
}
