import { describe, expect, it } from "vitest";
import { readProgram, type Yard } from "../../../../addin/actions/program/read-program.ts";
import { yardStanding, type YardStanding } from "../../../../addin/actions/visits/stage-standing.ts";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { fillDemoProgram } from "../../../../addin/actions/demo/demo-program.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { nextSteps } from "../../../../taskpane/views/yard/next-steps.ts";
import { yardsMatching } from "../../../../taskpane/parts/yards-matching.ts";
import { HostInMemory } from "../../host-in-memory.ts";

const workbook = new HostInMemory();
await setUpWorkbook(workbook);
await fillDemoProgram(workbook);
const program = await readProgram(workbook);
const demoYard = program.yards[0]!;

const TODAY = dayNumber(2026, 5, 4);

/** A yard that is measured, tested and fits, but for what a test changes. */
function yard(changed: Partial<Yard["design"]> = {}, others: Partial<Yard> = {}): Yard {
  return { ...demoYard, ...others, design: { ...demoYard.design, testedRate: 1.2, floorArea: 90, status: "fits", ...changed } };
}

type Verdicts = Readonly<Record<string, "pass" | "refer" | "stop" | "not measured">>;

/** The yard's standing as if every screening step passed and the ticket were in force, but for what a test changes. */
function standing(of: Yard, verdicts: Verdicts = {}, ticket: "in force" | "missing" = "in force"): YardStanding {
  const real = yardStanding(program, of, TODAY);
  const stages = real.stages.map((stage) => ({
    ...stage,
    steps: stage.steps.map((each) => ({ ...each, verdict: verdicts[each.step.id] ?? ("pass" as const) })),
    gate: ticket === "missing" ? stage.gate : { ...stage.gate, refusals: [], open: true },
  }));
  return { ...real, stages, next: null };
}

const said = (steps: ReturnType<typeof nextSteps>) => steps.map(({ sentence }) => sentence);

describe("What to do next in a yard", () => {
  it("nothing is left when the screening passes and the basin fits", () => {
    expect(nextSteps(standing(yard()), false)).toEqual([]);
  });

  it("a place that is ruled out comes before everything else", () => {
    const steps = nextSteps(
      standing(yard({ testedRate: "" }, { surfaces: [], holeTests: [] }), { foundation: "stop", well: "not measured" }),
      false,
    );
    expect(steps[0]).toMatchObject({
      kind: "stop",
      tab: "visits",
      sentence: "Screening says stop: Foundation. Find another place, or settle this first. Do not dig.",
    });
  });

  it("nobody is sent to dig a test hole before the lines are marked", () => {
    const steps = said(nextSteps(standing(yard({ testedRate: "" }, { holeTests: [], visits: [] }), {}, "missing"), false));
    expect(steps).toEqual([
      "Have the lines marked before anything is dug, the test hole included. There is no one-call ticket. Call before anything is dug, the test hole included, and write its number down.",
      "Dig and time a test hole.",
    ]);
  });

  it("a yard without surfaces asks for them", () => {
    expect(said(nextSteps(standing(yard({}, { surfaces: [] })), false))).toEqual([
      "Measure the surfaces that drain here and add them below.",
    ]);
  });

  it("steps that are not measured are counted, and referrals are named", () => {
    expect(said(nextSteps(standing(yard(), { well: "not measured" }), false))).toEqual(["One screening step is not measured."]);
    expect(said(nextSteps(standing(yard(), { well: "not measured", lead: "not measured", trees: "refer" }), false))).toEqual([
      "2 screening steps are not measured.",
      "Refer before going on: Trees.",
    ]);
  });

  it("a basin that does not fit is said with its reason", () => {
    const status = "Drains too slowly: 6 in needs 62 h and 48 h is the limit. Up to 4.6 in would drain.";
    expect(nextSteps(standing(yard({ status })), false)).toEqual([
      { kind: "todo", tab: "basin", sentence: `The basin does not fit. ${status}` },
    ]);
  });

  it("past the test, the next thing of the stage is said too", () => {
    const next = { stage: "agreement", kind: "todo", place: "visits", sentence: "Owner's agreement: Signed on." } as const;
    expect(nextSteps({ ...standing(yard()), next }, false)).toEqual([
      { kind: "todo", tab: "visits", sentence: "Owner's agreement: Signed on." },
    ]);
  });

  it("cells that must be put right are pointed to", () => {
    expect(said(nextSteps(standing(yard({ testedRate: "#VALUE!", status: "#VALUE!" })), true))).toEqual([
      'Put the cells right that are listed under "Why a number is not there".',
    ]);
  });
});

describe("Finding a yard", () => {
  const ids = (search: string) => yardsMatching(program, search).map(({ siteId }) => siteId);

  it("goes by number, name or address, whatever the case", () => {
    expect(ids("y-002")).toEqual(["Y-002"]);
    expect(ids("QUARRY")).toEqual(["Y-005"]);
    expect(ids("osier bank")).toEqual(["Y-003", "Y-004"]);
  });

  it("needs every word, in any order", () => {
    expect(ids("bank 19")).toEqual(["Y-004"]);
    expect(ids("bank quarry")).toEqual([]);
  });

  it("shows every yard while nothing is typed", () => {
    expect(ids("  ")).toHaveLength(program.yards.length);
  });
});
