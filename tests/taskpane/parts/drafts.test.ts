import { describe, expect, expectTypeOf, it } from "vitest";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { WORKBOOK_ID_SETTING, workbookId } from "../../../addin/actions/workbook/workbook-id.ts";
import { HostInMemory } from "../host-in-memory.ts";
import { DraftStore, type PlainData } from "../../../taskpane/parts/drafts.ts";

const WORKBOOK = "a1b2";

function storage(initial?: string) {
  const items = new Map(initial === undefined ? [] : [[`soakbook.drafts/${WORKBOOK}`, initial]]);
  return { getItem: (key: string) => items.get(key) ?? null, setItem: (key: string, value: string) => void items.set(key, value) };
}

function draftsOf(session: () => Pick<Storage, "getItem" | "setItem">, workbook: string | null = WORKBOOK): DraftStore {
  const drafts = new DraftStore(session);
  drafts.belongTo(workbook);
  return drafts;
}

const draft = { value: { area: "12 ft" }, basis: { row: 7 } };

describe("What was typed and not written yet", () => {
  it("is there again after the pane is loaded anew", () => {
    const session = storage();
    draftsOf(() => session).keep("Y-001/surface/7", draft);
    expect(draftsOf(() => session).get("Y-001/surface/7")).toEqual(draft);
  });

  // Checked by the type checker: a basis that storage would change does not build.
  it("has the cells of a row for its basis, and never the row itself, which says where it stands by a function", () => {
    expectTypeOf<Yard["site"]["cells"]>().toExtend<PlainData<Yard["site"]["cells"]>>();
    expectTypeOf<Yard["site"]>().not.toExtend<PlainData<Yard["site"]>>();
  });

  it("is gone once it was written or discarded, and stays gone", () => {
    const session = storage();
    const drafts = draftsOf(() => session);
    drafts.keep("Y-001/surface/7", draft);
    drafts.keep("Y-001/surface/7", undefined);
    expect(drafts.get("Y-001/surface/7")).toBeUndefined();
    expect(draftsOf(() => session).keys()).toEqual([]);
  });

  it("is kept apart by yard, form and row", () => {
    const drafts = draftsOf(() => storage());
    drafts.keep("Y-001/surface/7", draft);
    drafts.keep("Y-002/surface/7", { value: "other", basis: undefined });
    expect(drafts.get("Y-001/surface/7")).toEqual(draft);
    expect(drafts.get("Y-001/surface/8")).toBeUndefined();
  });

  it("survives in memory when the browser's storage is blocked", () => {
    const drafts = draftsOf(() => {
      throw new Error("blocked");
    });
    drafts.keep("new-yard", draft);
    expect(drafts.get("new-yard")).toEqual(draft);
  });

  it.each(["{", "null", "3", '[["a"]]', '[["a",null]]', '[[1,{"value":2}]]', '{"__proto__":{"value":1}}'])(
    "a damaged store %j counts as empty",
    (damaged) => {
      expect(draftsOf(() => storage(damaged)).keys()).toEqual([]);
    },
  );

  it("tells the form that shows it, and no other, that it changed", () => {
    const drafts = draftsOf(() => storage());
    const told: string[] = [];
    const stop = drafts.listen("a", () => told.push("a"));
    drafts.listen("b", () => told.push("b"));
    drafts.keep("a", draft);
    stop();
    drafts.keep("a", undefined);
    expect(told).toEqual(["a"]);
  });

  it("belongs to its workbook: the yard of the same name in another shows none of it, and has its own", () => {
    const session = storage();
    const drafts = draftsOf(() => session);
    const shown: unknown[] = [];
    drafts.listen("Y-001/surface/7", () => shown.push(drafts.get("Y-001/surface/7")));
    drafts.keep("Y-001/surface/7", draft);
    drafts.belongTo("c3d4");
    expect(drafts.keys()).toEqual([]);
    drafts.keep("Y-001/surface/7", { value: "other", basis: undefined });
    drafts.belongTo(WORKBOOK);
    expect(drafts.get("Y-001/surface/7")).toEqual(draft);
    expect(shown).toEqual([draft, undefined, { value: "other", basis: undefined }, draft]);
  });

  it("of a workbook without an id is in memory alone", () => {
    const session = storage();
    const drafts = draftsOf(() => session, null);
    drafts.keep("Y-001/surface/7", draft);
    expect(drafts.get("Y-001/surface/7")).toEqual(draft);
    expect(draftsOf(() => session, null).keys()).toEqual([]);
  });
});

describe("What a workbook is told from another by", () => {
  it("is written with the first draft, and not by opening", async () => {
    const workbook = new HostInMemory();
    const { id, keep } = await workbookId(workbook);
    expect(await workbook.readSetting(WORKBOOK_ID_SETTING)).toBeNull();
    const drafts = new DraftStore(() => storage());
    let writes = 0;
    drafts.belongTo(id, () => {
      writes += 1;
      void keep();
    });
    drafts.keep("new-yard", undefined);
    expect(writes).toBe(0);
    drafts.keep("new-yard", draft);
    drafts.keep("new-yard", { value: "more", basis: undefined });
    expect(writes).toBe(1);
    expect(await workbook.readSetting(WORKBOOK_ID_SETTING)).toBe(id);
    expect((await workbookId(workbook)).id).toBe(id);
  });

  it("is never the same in two workbooks", async () => {
    const ids = await Promise.all(Array.from({ length: 50 }, async () => (await workbookId(new HostInMemory())).id));
    expect(new Set(ids).size).toBe(50);
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{32}$/);
  });
});
