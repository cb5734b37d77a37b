import { describe, expect, expectTypeOf, it } from "vitest";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { DraftStore, type PlainData } from "../../../taskpane/parts/drafts.ts";

function storage(initial?: string) {
  const items = new Map(initial === undefined ? [] : [["soakbook.drafts", initial]]);
  return { getItem: (key: string) => items.get(key) ?? null, setItem: (key: string, value: string) => void items.set(key, value) };
}

const draft = { value: { area: "12 ft" }, basis: { row: 7 } };

describe("What was typed and not written yet", () => {
  it("is there again after the pane is loaded anew", () => {
    const session = storage();
    new DraftStore(() => session).keep("Y-001/surface/7", draft);
    expect(new DraftStore(() => session).get("Y-001/surface/7")).toEqual(draft);
  });

  // Checked by the type checker: a basis that storage would change does not build.
  it("has the cells of a row for its basis, and never the row itself, which says where it stands by a function", () => {
    expectTypeOf<Yard["site"]["cells"]>().toExtend<PlainData<Yard["site"]["cells"]>>();
    expectTypeOf<Yard["site"]>().not.toExtend<PlainData<Yard["site"]>>();
  });

  it("is gone once it was written or discarded, and stays gone", () => {
    const session = storage();
    const drafts = new DraftStore(() => session);
    drafts.keep("Y-001/surface/7", draft);
    drafts.keep("Y-001/surface/7", undefined);
    expect(drafts.get("Y-001/surface/7")).toBeUndefined();
    expect(new DraftStore(() => session).keys()).toEqual([]);
  });

  it("is kept apart by yard, form and row", () => {
    const drafts = new DraftStore(() => storage());
    drafts.keep("Y-001/surface/7", draft);
    drafts.keep("Y-002/surface/7", { value: "other", basis: undefined });
    expect(drafts.get("Y-001/surface/7")).toEqual(draft);
    expect(drafts.get("Y-001/surface/8")).toBeUndefined();
  });

  it("survives in memory when the browser's storage is blocked", () => {
    const drafts = new DraftStore(() => {
      throw new Error("blocked");
    });
    drafts.keep("new-yard", draft);
    expect(drafts.get("new-yard")).toEqual(draft);
  });

  it.each(["{", "null", "3", '[["a"]]', '[["a",null]]', '[[1,{"value":2}]]', '{"__proto__":{"value":1}}'])(
    "a damaged store %j counts as empty",
    (damaged) => {
      expect(new DraftStore(() => storage(damaged)).keys()).toEqual([]);
    },
  );

  it("tells the form that shows it, and no other, that it changed", () => {
    const drafts = new DraftStore(() => storage());
    const told: string[] = [];
    const stop = drafts.listen("a", () => told.push("a"));
    drafts.listen("b", () => told.push("b"));
    drafts.keep("a", draft);
    stop();
    drafts.keep("a", undefined);
    expect(told).toEqual(["a"]);
  });
});
