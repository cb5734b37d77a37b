/** A start that did not come to its end is known at the next one. */
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { lastStartWasCutShort, startBegins } from "../../../addin/window/start-mark.ts";

let page: EventTarget;
let locks: Set<string>;

beforeEach(() => {
  const kept = new Map<string, string>();
  locks = new Set();
  page = new EventTarget();
  vi.stubGlobal("window", page);
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => kept.set(key, text),
    removeItem: (key: string) => kept.delete(key),
  });
  vi.stubGlobal("navigator", {
    locks: {
      query: () => Promise.resolve({ held: [...locks].map((name) => ({ name })) }),
      request: (name: string, work: () => Promise<void>) => {
        locks.add(name);
        return work().then(() => locks.delete(name));
      },
    },
  });
});

afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

it("the first start follows no unfinished one", async () => {
  expect(await lastStartWasCutShort()).toBe(false);
});

it("a start that finished is not held against the next", async () => {
  startBegins().isFinished();
  expect(await lastStartWasCutShort()).toBe(false);
});

it("a start whose page crashed was cut short", async () => {
  startBegins();
  locks.clear();
  expect(await lastStartWasCutShort()).toBe(true);
});

it("a start that still goes on in another tab was not cut short", async () => {
  startBegins();
  expect(await lastStartWasCutShort()).toBe(false);
});

it("a start that was left at once was a change of mind, and one left after a long wait was cut short", async () => {
  vi.spyOn(performance, "now").mockReturnValue(2000);
  startBegins();
  page.dispatchEvent(new Event("pagehide"));
  expect(await lastStartWasCutShort()).toBe(false);
  vi.spyOn(performance, "now").mockReturnValue(25_000);
  startBegins();
  page.dispatchEvent(new Event("pagehide"));
  locks.clear();
  expect(await lastStartWasCutShort()).toBe(true);
});

it("a browser without storage or locks starts all the same", async () => {
  vi.stubGlobal("localStorage", undefined);
  vi.stubGlobal("navigator", {});
  expect(await lastStartWasCutShort()).toBe(false);
  startBegins().isFinished();
});
