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

describe("A page that goes in the midst of a save", () => {
  // A save asks the storage for five things at most: content, list, and up to three places to empty.
  it.each(Array.from({ length: 20 }, (_, place) => ({ save: 1 + Math.floor(place / 4), request: place % 4 })))(
    "leaves the save before it or itself, whole: save $save stopped at its request $request",
    async ({ save, request }) => {
      const tab = openTab();
      for (let number = 1; number < save; number += 1) await tab.type(`save ${number}`);
      let requests = 0;
      const stopping = <Given extends unknown[], Answer>(work: (this: IDBObjectStore, ...given: Given) => Answer) =>
        function (this: IDBObjectStore, ...given: Given): Answer {
          const answer = work.apply(this, given);
          if (requests++ === request) this.transaction.abort();
          return answer;
        };
      Object.assign(IDBObjectStore.prototype, { put: stopping(put), delete: stopping(remove) });
      await tab.type(`save ${save}`);
      Object.assign(IDBObjectStore.prototype, { put, delete: remove });
      const wasStopped = requests > request;
      const left = Array.from({ length: wasStopped ? save - 1 : save }, (_, index) => `save ${index + 1}`).reverse();
      expect(await filesIn(openTab().storage)).toEqual(left.slice(0, 3));
      expect(tab.storage.wouldBeLost).toBe(wasStopped);
      // The next save of the same page goes through.
      await tab.type("after that");
      expect(await filesIn(openTab().storage)).toEqual(["after that", ...left].slice(0, 3));
    },
  );
});
