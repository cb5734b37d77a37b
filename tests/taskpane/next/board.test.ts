import { describe, expect, it } from "vitest";
import { fillDemoProgram } from "../../../addin/actions/demo-program.ts";
import { readProgram } from "../../../addin/actions/read-program.ts";
import { setUpWorkbook } from "../../../addin/actions/set-up-workbook.ts";
import type { Notice } from "../../../addin/actions/what-is-next.ts";
import { boardOf, tabOf } from "../../../taskpane/next/board.ts";
import { HostInMemory } from "../host-in-memory.ts";

const workbook = new HostInMemory();
await setUpWorkbook(workbook);
await fillDemoProgram(workbook);
const [first, second] = (await readProgram(workbook)).yards;

const notices: readonly Notice[] = [
  { kind: "ticket", urgency: "stop", sentence: "Ticket ran out.", yard: second ?? null, stage: "ticket", place: "visits" },
  { kind: "step", urgency: "next", sentence: "Measure the foundation.", yard: first ?? null, stage: "screening", place: "visits" },
  { kind: "re-test", urgency: "next", sentence: "Test again.", yard: first ?? null, stage: "test-visit", place: "hole tests" },
  { kind: "price", urgency: "next", sentence: "Prices are old.", yard: null, stage: null, place: null },
];

const said = (...asked: Parameters<typeof boardOf>) => boardOf(...asked).map((group) => [group.urgency, group.notices.map(({ sentence }) => sentence)]);

describe("The board of what is next", () => {
  it("groups its lines by urgency, the most urgent first", () => {
    expect(said(notices, null, "")).toEqual([
      ["stop", ["Ticket ran out."]],
      ["next", ["Measure the foundation.", "Test again.", "Prices are old."]],
    ]);
  });

  it("shows one kind alone when asked", () => {
    expect(said(notices, "ticket", "")).toEqual([["stop", ["Ticket ran out."]]]);
    expect(said(notices, "override", "")).toEqual([]);
  });

  it("shows the yards that match, and then nothing of the whole program", () => {
    expect(said(notices, null, "y-001")).toEqual([["next", ["Measure the foundation.", "Test again."]]]);
    expect(said(notices, "price", "y-001")).toEqual([]);
  });

  it("a line opens its yard where the thing is done", () => {
    expect(notices.map(tabOf)).toEqual(["visits", "visits", "hole-test", "yard"]);
  });
});
