import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { fillDemoProgram } from "../../../../addin/actions/demo/demo-program.ts";
import { readProgram } from "../../../../addin/actions/program/read-program.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { URGENCIES, whatIsNext, type Notice } from "../../../../addin/actions/program/what-is-next.ts";
import { boardOf, tabOf } from "../../../../taskpane/views/next/board.ts";
import { HostInMemory } from "../../host-in-memory.ts";

const workbook = new HostInMemory();
await setUpWorkbook(workbook);
await fillDemoProgram(workbook);
const program = await readProgram(workbook);
const [first, second] = program.yards;

const notices: readonly Notice[] = [
  { kind: "ticket", urgency: "stop", sentence: "Ticket ran out.", yard: second ?? null, stage: "ticket", place: "visits" },
  { kind: "step", urgency: "next", sentence: "Measure the foundation.", yard: first ?? null, stage: "screening", place: "visits" },
  { kind: "re-test", urgency: "next", sentence: "Test again.", yard: first ?? null, stage: "test-visit", place: "hole tests" },
  { kind: "step", urgency: "next", sentence: "Plant it.", yard: second ?? null, stage: "planting", place: "visits" },
  { kind: "price", urgency: "next", sentence: "Prices are old.", yard: null, stage: null, place: null },
];

const said = (...asked: Parameters<typeof boardOf>) =>
  boardOf(...asked).map(({ urgency, yards }) => [
    urgency,
    yards.map((each) => [each.yard?.siteId ?? "program", ...each.notices.map(({ sentence }) => sentence)]),
  ]);

describe("The board of what is next", () => {
  it("names a yard once, under its most urgent line, with all its lines in that order", () => {
    expect(said(notices, null, "")).toEqual([
      ["stop", [["Y-002", "Ticket ran out.", "Plant it."]]],
      [
        "next",
        [
          ["Y-001", "Measure the foundation.", "Test again."],
          ["program", "Prices are old."],
        ],
      ],
    ]);
  });

  it("of the demo names every yard that has something to do once, the most urgent first", () => {
    const all = whatIsNext(program, dayNumber(2026, 6, 1));
    const groups = boardOf(all, null, "");
    const ids = groups.flatMap(({ yards }) => yards.map(({ yard }) => yard?.siteId));
    expect(ids.length).toBeGreaterThan(10);
    expect(new Set(ids).size).toBe(ids.length);
    expect(groups.flatMap(({ yards }) => yards.flatMap((each) => each.notices))).toHaveLength(all.length);
    const places = groups.map(({ urgency }) => URGENCIES.indexOf(urgency));
    expect(places).toEqual([...new Set(places)].toSorted((one, other) => one - other));
  });

  it("a yard goes to the urgency of what is asked for alone", () => {
    expect(said(notices, "step", "y-002")).toEqual([["next", [["Y-002", "Plant it."]]]]);
  });

  it("shows one kind alone when asked", () => {
    expect(said(notices, "ticket", "")).toEqual([["stop", [["Y-002", "Ticket ran out."]]]]);
    expect(said(notices, "override", "")).toEqual([]);
  });

  it("shows the yards that match, and then nothing of the whole program", () => {
    expect(said(notices, null, "y-001")).toEqual([["next", [["Y-001", "Measure the foundation.", "Test again."]]]]);
    expect(said(notices, "price", "y-001")).toEqual([]);
  });

  it("a line opens its yard where the thing is done", () => {
    expect(notices.map(tabOf)).toEqual(["visits", "visits", "hole-test", "visits", "yard"]);
  });
});
