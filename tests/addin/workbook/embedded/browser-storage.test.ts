/** Saves of the workbook in a storage that throws, is full, or stops at any place of a save. */
import { IDBFactory, IDBKeyRange, IDBObjectStore } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { BrowserStorage, keptWorkbook, type SavingState } from "../../../../addin/workbook/embedded/browser-storage.ts";

/** Tabs of this browser hear each other as BroadcastChannel has it, without a process that stays open for it. */
let listeners: Set<OtherTabs>;
class OtherTabs extends EventTarget {
  constructor() {
    super();
    listeners.add(this);
  }
  postMessage(): void {
    for (const other of listeners) if (other !== this) other.dispatchEvent(new Event("message"));
  }
}

interface Tab {
  readonly storage: BrowserStorage;
  readonly type: (text: string, isDemo?: boolean) => Promise<void>;
  readonly states: SavingState[];
}

function openTab(): Tab {
  const states: SavingState[] = [];
  let present = { file: "", isDemo: false };
  const storage = new BrowserStorage(
    () => ({ ...present, contentsInFile: null, selection: null }),
    (state) => states.push(state),
  );
  return {
    storage,
    states,
    type: async (text, isDemo = false) => {
      present = { file: text, isDemo };
      storage.changed();
      await storage.save();
    },
  };
}

async function latestIn(storage: BrowserStorage): Promise<string | null> {
  const found = await storage.find();
  return found.is === "kept" ? (keptWorkbook(await storage.read(found.latest))?.file ?? "damaged") : null;
}

async function filesIn(storage: BrowserStorage): Promise<readonly (string | undefined)[]> {
  const saves = await storage.saves();
  return Promise.all(saves.map(async (save) => keptWorkbook(await storage.read(save))?.file));
}

const { put, delete: remove, get } = IDBObjectStore.prototype;
let now = 1_790_000_000_000;

beforeEach(() => {
  listeners = new Set();
  vi.stubGlobal("indexedDB", new IDBFactory());
  vi.stubGlobal("IDBKeyRange", IDBKeyRange);
  vi.stubGlobal("BroadcastChannel", OtherTabs);
  vi.spyOn(Date, "now").mockImplementation(() => (now += 1000));
});

afterEach(() => {
  Object.assign(IDBObjectStore.prototype, { put, delete: remove, get });
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe("What the browser keeps", () => {
  it("is nothing before the first save, and afterwards the last three, the latest first", async () => {
    const tab = openTab();
    expect(await tab.storage.find()).toEqual({ is: "nothing" });
    for (const text of ["one", "two", "three", "four"]) await tab.type(text);
    expect(await filesIn(openTab().storage)).toEqual(["four", "three", "two"]);
    expect(tab.states.at(-1)).toEqual({ state: "saved" });
  });

  it("has the last save of the sitting before beside them, however often this sitting saves", async () => {
    const before = openTab();
    for (const text of ["old one", "old two"]) await before.type(text);
    listeners.clear();
    const tab = openTab();
    await tab.storage.find();
    for (const text of ["one", "two", "three", "four", "five"]) await tab.type(text);
    expect(await filesIn(tab.storage)).toEqual(["five", "four", "three", "old two"]);
  });

  it("loses no save of a person's own to looking at the demo", async () => {
    const tab = openTab();
    for (const text of ["mine one", "mine two", "mine three"]) await tab.type(text);
    for (const text of ["demo one", "demo two", "demo three", "demo four", "demo five"]) await tab.type(text, true);
    expect(await filesIn(tab.storage)).toEqual(["demo five", "demo four", "demo three", "mine three", "mine two", "mine one"]);
  });

  it("is not saved again by a second tab that merely opens, so the first one goes on saving", async () => {
    const first = openTab();
    await first.type("mine");
    const second = openTab();
    expect(await latestIn(second.storage)).toBe("mine");
    second.storage.flush();
    await first.type("mine, and more");
    expect(first.states.at(-1)).toEqual({ state: "saved" });
    expect(await latestIn(first.storage)).toBe("mine, and more");
  });

  it("is not overwritten by a tab that has missed what another saved, which asks before it closes", async () => {
    const [first, second] = [openTab(), openTab()];
    await first.type("from the first");
    await second.type("from the second");
    expect(second.states.at(-1)?.sentence).toContain("changed in another tab");
    expect(second.storage.wouldBeLost).toBe(true);
    expect(first.storage.wouldBeLost).toBe(false);
    expect(await latestIn(first.storage)).toBe("from the first");
  });
});

describe("A storage that cannot be read", () => {
  it.each<[string, () => void]>([
    [
      "throws when asked",
      () =>
        void (IDBObjectStore.prototype.get = () => {
          throw new DOMException("", "UnknownError");
        }),
    ],
    [
      "cannot be opened",
      () =>
        vi.stubGlobal("indexedDB", {
          open: () => {
            throw new DOMException("", "SecurityError");
          },
        }),
    ],
    ["is not there at all", () => vi.stubGlobal("indexedDB", undefined)],
  ])("is told apart from one that holds nothing when it %s, and is left as it is", async (_how, breakIt) => {
    await openTab().type("mine");
    const whole = indexedDB;
    breakIt();
    const tab = openTab();
    expect(await tab.storage.find()).toMatchObject({ is: "unreadable" });
    // Even somebody who went on without being asked would overwrite nothing.
    await tab.type("the demo", true);
    expect(tab.states.at(-1)?.state).toBe("refused");
    Object.assign(IDBObjectStore.prototype, { get });
    vi.stubGlobal("indexedDB", whole);
    expect(await filesIn(openTab().storage)).toEqual(["mine"]);
    // Tried again, the same tab reads it.
    expect(await latestIn(tab.storage)).toBe("mine");
  });

  it("keeps a list of saves that it cannot make sense of", async () => {
    await openTab().type("mine");
    Object.assign(IDBObjectStore.prototype, {
      get(this: IDBObjectStore, key: string) {
        return get.call(this, key === "saves" ? "no such list" : key);
      },
      put(this: IDBObjectStore, value: unknown, key: string) {
        return put.call(this, key === "saves" ? [{ slot: "first" }] : value, key);
      },
    });
    listeners.clear();
    await openTab().type("written over the list");
    Object.assign(IDBObjectStore.prototype, { get });
    const tab = openTab();
    expect(await tab.storage.find()).toMatchObject({ is: "unreadable" });
    await tab.type("more");
    expect(tab.states.at(-1)?.state).toBe("refused");
  });

  it("says so while nothing is saved, and asks before it closes once something changed", async () => {
    const tab = openTab();
    tab.storage.holdBack("what it keeps could not be read.");
    expect(tab.storage.wouldBeLost).toBe(false);
    await tab.type("typed meanwhile");
    expect(tab.states.at(-1)).toEqual({ state: "refused", sentence: "Not saved in this browser: what it keeps could not be read." });
    expect(tab.storage.wouldBeLost).toBe(true);
    expect(await tab.storage.find()).toEqual({ is: "nothing" });
    tab.storage.goOnSaving();
    await tab.storage.save();
    expect(await latestIn(tab.storage)).toBe("typed meanwhile");
    expect(tab.storage.wouldBeLost).toBe(false);
  });
});

describe("A storage that is full", () => {
  const full = (isFull: () => boolean): void => {
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given: Parameters<typeof put>) {
      if (isFull()) throw new DOMException("", "QuotaExceededError");
      return put.apply(this, given);
    };
  };

  it("gives up earlier saves for the latest, and never the other way round", async () => {
    const tab = openTab();
    for (const text of ["one", "two", "three"]) await tab.type(text);
    let refusals = 1;
    full(() => refusals-- > 0);
    await tab.type("four");
    expect(tab.states.at(-1)).toEqual({ state: "saved" });
    expect(await filesIn(tab.storage)).toEqual(["four", "three"]);
  });

  it("keeps what was saved last, says that it is full, and asks before it closes until a save goes through", async () => {
    const tab = openTab();
    await tab.type("one");
    let isFull = true;
    full(() => isFull);
    await tab.type("two");
    expect(tab.states.at(-1)?.sentence).toContain("its storage is full. Save to a file.");
    expect(tab.storage.wouldBeLost).toBe(true);
    tab.storage.changed();
    expect(tab.storage.wouldBeLost).toBe(true);
    expect(await latestIn(openTab().storage)).toBe("one");
    isFull = false;
    await tab.storage.save();
    expect(tab.storage.wouldBeLost).toBe(false);
    expect(await latestIn(openTab().storage)).toBe("two");
  });
});

/** What a page has saved before, and the save it is in the midst of when it goes. */
interface Interrupted {
  readonly save: string;
  /** What the storage is asked for in that save, one thing after the other. */
  readonly requests: number;
  readonly saved: readonly string[];
  /** Saved by an earlier visit instead of by this page. */
  readonly before?: readonly string[];
  readonly isFull?: true;
  /** What is kept once the page has gone, by the request it went at; without it, what was kept before. */
  readonly left?: (request: number) => readonly string[];
}

const INTERRUPTED: readonly Interrupted[] = [
  { save: "the first of all", saved: [], requests: 3 },
  { save: "the second", saved: ["one"], requests: 2 },
  { save: "the third", saved: ["one", "two"], requests: 2 },
  { save: "the fourth, which pushes one out", saved: ["one", "two", "three"], requests: 3 },
  { save: "one of the demo", saved: ["one", "two", "demo one", "demo two", "demo three"], requests: 3 },
  { save: "the first of a new visit", before: ["one", "two", "three"], saved: [], requests: 4 },
  { save: "a later one of a new visit", before: ["one", "two", "three"], saved: ["four", "five", "six"], requests: 3 },
  {
    save: "one that makes room first, in a full storage",
    saved: ["one", "two", "three"],
    isFull: true,
    requests: 5,
    left: (request) => (request < 3 ? ["three", "two", "one"] : ["three"]),
  },
];

describe("A page that goes in the midst of a save", () => {
  const isDemo = (text: string): boolean => text.startsWith("demo");

  /** Saves with the page going at a request; the answer is how many requests the save came to. */
  async function goneAt(request: number, { saved, before = [], isFull }: Interrupted, text: string): Promise<number> {
    const earlier = openTab();
    for (const one of before) await earlier.type(one);
    listeners.clear();
    const tab = openTab();
    for (const one of saved) await tab.type(one, isDemo(one));
    let refusals = isFull ? 1 : 0;
    let requests = 0;
    const stopping = <Given extends unknown[], Answer>(work: (this: IDBObjectStore, ...given: Given) => Answer) =>
      function (this: IDBObjectStore, ...given: Given): Answer {
        if (refusals-- > 0) throw new DOMException("", "QuotaExceededError");
        const answer = work.apply(this, given);
        // What has not been committed when a page goes is taken back by the browser.
        if (requests++ === request) this.transaction.abort();
        return answer;
      };
    Object.assign(IDBObjectStore.prototype, { put: stopping(put), delete: stopping(remove), get: stopping(get) });
    await tab.type(text, isDemo(text));
    Object.assign(IDBObjectStore.prototype, { put, delete: remove, get });
    expect(tab.storage.wouldBeLost).toBe(requests > request);
    return requests;
  }

  const textOf = ({ save }: Interrupted): string => (save.includes("demo") ? "demo at last" : "at last");
  const latestFirst = ({ saved, before = [] }: Interrupted): readonly string[] => [...before, ...saved].reverse();

  it.each(INTERRUPTED.flatMap((one) => Array.from({ length: one.requests }, (_, request) => ({ ...one, request }))))(
    "leaves what was saved before, whole: $save, at its request $request",
    async ({ request, ...one }) => {
      expect(await goneAt(request, one, textOf(one))).toBe(request + 1);
      const expected = one.left?.(request) ?? keptOf(latestFirst(one), one);
      expect(await filesIn(openTab().storage)).toEqual(expected);
      // The next visit saves again, and what was saved last is still there beside it.
      listeners.clear();
      await openTab().type("the next visit");
      expect((await filesIn(openTab().storage)).slice(0, 2)).toEqual(["the next visit", expected[0]].filter((file) => file !== undefined));
    },
  );

  it.each(INTERRUPTED)("has no other place where it could go: $save", async (one) => {
    expect(await goneAt(one.requests, one, textOf(one))).toBe(one.requests);
    expect((await filesIn(openTab().storage))[0]).toBe(textOf(one));
  });

  /** Of the person's own and of the demo the last three, and the last of the visit before. */
  function keptOf(files: readonly string[], { before = [] }: Interrupted): readonly string[] {
    const lastBefore = before.at(-1);
    const places = (demo: boolean) => files.filter((file) => isDemo(file) === demo).slice(0, 3);
    const kept = new Set([...places(false), ...places(true), ...(lastBefore === undefined ? [] : [lastBefore])]);
    return files.filter((file) => kept.has(file));
  }
});
