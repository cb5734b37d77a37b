import { describe, expect, test } from "vitest";
import { draftBasin, type BasinInputs } from "../../../../addin/actions/basin/draft-basin.ts";
import { routeBasin, type RoutedBasin } from "../../../../addin/actions/basin/route-basin.ts";
import { STORM_TYPES } from "../../../../functions/published/scs-24-hour-storms.ts";
import { stormRoute } from "../../../../functions/worksheet/storm-route.ts";
import { pondingPoints, routedFacts, routedSentence, stepPoints } from "../../../../taskpane/views/basin/routing-words.ts";
import { roofInMetric, roofInUs, settings } from "../../../taskpane/views/basin/basin-examples.ts";

function routed(inputs: BasinInputs, type: (typeof STORM_TYPES)[number] = "II"): RoutedBasin {
  const answer = routeBasin(inputs, draftBasin(inputs, settings), type);
  if (answer === null) throw new Error("this basin has no size");
  return answer;
}

const valueOf = (answer: { readonly value: number } | { readonly sentence: string }) => ("value" in answer ? answer.value : Number.NaN);

describe("the storm through a drafted basin", () => {
  test.each(STORM_TYPES)("of type %s is SOAK.STORMROUTE's, row for row, for the usual shape", (type) => {
    const draft = draftBasin(roofInUs, settings);
    const table = stormRoute.evaluate([1, type, 1000, 0.95, valueOf(draft.floorArea), 6, 0.25, 18, 0.25, 3]);
    const { steps } = routed(roofInUs, type);
    expect(steps).toHaveLength(table.length);
    steps.forEach((step, row) => {
      [step.hours, step.inflow, step.stored, step.pondingDepth, step.soaked, step.overflow].forEach((value, column) =>
        expect(value).toBeCloseTo(Number(table[row]?.[column]), 9),
      );
    });
  });

  test("is the same for a metric yard", () => {
    const [us, metric] = [routed(roofInUs), routed({ ...roofInMetric, stormDepth: 25.4 })];
    expect(metric.inflow / us.inflow).toBeCloseTo(0.028316846592, 9);
    expect(metric.peakPonding / us.peakPonding).toBeCloseTo(25.4, 6);
    expect(metric.emptyHours).toBe(us.emptyHours);
  });

  // Balance of the whole storm, by hand: 1 in on 0.95 x 1,000 sq ft and on the rim.
  test("brings 1 in on 950 sq ft and on the rim, and captures all of it in a basin sized for it", () => {
    const draft = draftBasin(roofInUs, settings);
    const answer = routed(roofInUs);
    expect(answer.inflow).toBeCloseTo((950 + valueOf(draft.rimArea)) / 12, 9);
    expect(answer.overflow).toBe(0);
    expect(answer.capturedShare).toBe(1);
    expect(answer.peakPonding).toBeLessThanOrEqual(6);
  });

  // By hand: 520 x 0.95 / 12 = 41.17 cu ft off the roof; good lawn on group C has curve number 74, S 3.5135 in, and sheds
  // (1 - 0.7027)^2 / (1 + 2.8108) = 0.0232 in x 900 / 12 = 1.74 cu ft (TR-55, equation 2-3 and table 2-2a): 42.91 cu ft
  // of the 118.33 cu ft that fall on 1,420 sq ft.
  test("brings what runs off each cover, not 0.95 of all that drains there", () => {
    const surface = (cover: string, area: number) => ({ cells: { siteId: "Y-001", cover, area, share: 1 } }) as never;
    const yard: BasinInputs = {
      ...roofInUs,
      contributingArea: 1420,
      soilGroup: "C",
      surfaces: [surface("roof", 520), surface("good lawn", 900)],
    };
    const draft = draftBasin(yard, settings);
    expect(valueOf(draft.runoff)).toBeCloseTo(42.91, 2);
    expect(routed(yard).runoffShare).toBeCloseTo(42.91 / 118.33, 4);
    expect(routed(yard).inflow).toBeCloseTo(42.91 + valueOf(draft.rimArea) / 12, 2);
    expect(routed(yard).runoffRule).toBe("0.95 of the storm off roof and paving; other ground by curve number, soil group C");
  });

  test("overflows by what neither fits nor soaks in where three times the rain falls than it is sized for", () => {
    const draft = draftBasin(roofInUs, settings);
    const answer = routeBasin(roofInUs, { ...draft, stormDepth: 3 }, "II");
    const soaked = answer?.steps.reduce((sum, step) => sum + step.soaked, 0) ?? 0;
    expect(answer?.overflow).toBeGreaterThan(0);
    expect(answer?.peakPonding).toBeCloseTo(6, 6);
    expect((answer?.overflow ?? 0) + soaked).toBeCloseTo(answer?.inflow ?? 0, 6);
    expect(answer?.capturedShare).toBeCloseTo(1 - (answer?.overflow ?? 0) / (answer?.inflow ?? 1), 12);
  });

  // By hand: 6 in of ponding over 18 in of mix with voids of 0.25 are 10.5 in of water; at 0.25 in/h they are gone in 42 h.
  test("empties no later after its peak than the full basin would drain", () => {
    const answer = routed(roofInUs);
    expect(answer.emptyHours).not.toBeNull();
    expect((answer.emptyHours ?? 0) - 24).toBeLessThanOrEqual(42);
    expect(answer.pondingGoneHours ?? 0).toBeLessThanOrEqual(answer.emptyHours ?? 0);
    const standing = answer.steps.filter(({ hours, pondingDepth }) => hours >= (answer.pondingGoneHours ?? 0) && pondingDepth > 0);
    expect(standing).toEqual([]);
  });

  test("through a rectangle holds what its own shape holds: no overflow of the storm it is sized for", () => {
    const rectangle: BasinInputs = { ...roofInUs, shape: "rectangle", lengthToWidth: 4 };
    expect(routed(rectangle).overflow).toBe(0);
    expect(valueOf(draftBasin(rectangle, settings).floorArea)).toBeLessThan(valueOf(draftBasin(roofInUs, settings).floorArea));
  });

  test("is not followed where the basin has no size", () => {
    const none = { ...roofInUs, testedRate: 0 };
    expect(routeBasin(none, draftBasin(none, settings), "II")).toBeNull();
    expect(
      routeBasin({ ...roofInUs, contributingArea: null }, draftBasin({ ...roofInUs, contributingArea: null }, settings), "II"),
    ).toBeNull();
  });

  test("is followed no longer than 72 h after the rain, and then says that water is left", () => {
    const slow = { ...roofInUs, testedRate: 0.1, stormDepth: 1 };
    const answer = routed(slow);
    expect(answer.emptyHours).toBeNull();
    expect(answer.steps.at(-1)?.hours).toBe(96);
    expect(routedFacts(answer, "us").find(({ label }) => label === "Empty after")?.says).toBe("Not within 72 h of the rain's end");
  });
});

describe("its key numbers in words", () => {
  const step = { hours: 1, inflow: 10, stored: 8, pondingDepth: 2, soaked: 1, overflow: 1 };
  const answer: RoutedBasin = {
    type: "III",
    runoffShare: 0.95,
    runoffRule: "",
    stormDepth: 1,
    stepHours: 0.25,
    steps: [step],
    inflow: 10,
    overflow: 0.001,
    capturedShare: 0.9999,
    peakPonding: 2,
    peakHours: 12.25,
    pondingGoneHours: 20,
    emptyHours: 31.5,
  };

  test("name depth and hour of the deepest ponding, hours until empty, overflow and captured share", () => {
    expect(routedFacts(answer, "us").map(({ label, says }) => `${label}: ${says}`)).toEqual([
      "Rain and type: 1 in, type III",
      "Water that comes: 10 cu ft",
      "Deepest ponding: 2 in after 12.3 h",
      "No water stands after: 20 h",
      "Empty after: 31.5 h",
      "Overflow: 0 cu ft",
      "Captured: 99.9 %",
    ]);
    expect(routedSentence(answer, "us")).toBe("Deepest ponding 2 in after 12.3 h. Empty after 31.5 h. Overflow 0 cu ft, 99.9 % captured.");
  });

  test("say that nothing ponds where all soaks in as it comes", () => {
    expect(
      routedFacts({ ...answer, peakPonding: 0 }, "metric").filter(({ says }) => says === "None: it soaks in as it comes"),
    ).toHaveLength(2);
  });

  test("the chart has a step from the start of the rain, and ponding from nothing", () => {
    const two = {
      ...answer,
      steps: [
        { ...step, hours: 0.25 },
        { ...step, hours: 0.5, inflow: 4, pondingDepth: 3 },
      ],
    };
    expect(stepPoints(two, "inflow")).toEqual({ times: [0, 0.25, 0.5], values: [10, 10, 4] });
    expect(pondingPoints(two)).toEqual({ times: [0, 0.25, 0.5], values: [0, 2, 3] });
    expect(stepPoints({ ...answer, steps: [] }, "overflow")).toEqual({ times: [], values: [] });
  });
});
