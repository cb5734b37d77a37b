import { beforeEach, describe, expect, test } from "vitest";
import { draftBasin } from "../../../../addin/actions/basin/draft-basin.ts";
import { readProgram, type Yard } from "../../../../addin/actions/program/read-program.ts";
import { addYard, writeBasin } from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { startingRules } from "../../../../addin/records/rules.ts";
import { basinChecks, drawingCautions, ruleOfThumbWords, worstOf } from "../../../../taskpane/views/basin/basin-checks.ts";
import { basinDimensions } from "../../../../taskpane/views/basin/basin-dimensions.ts";
import {
  differencesFrom,
  groundsOf,
  inputsFor,
  NOTHING_ASSUMED,
  readBasin,
  typedFrom,
} from "../../../../taskpane/views/basin/basin-form.ts";
import { WorkbookInMemory } from "../../../addin/workbook-in-memory.ts";
import { drawn, pencilBasin, roofInMetric, roofInUs, settings } from "./basin-examples.ts";

const rules = startingRules.map(({ rule, comparison, limit, unit, ifNotMet, source }) => [
  rule,
  comparison,
  limit,
  unit,
  ifNotMet,
  source,
  null,
]);

let yard: Yard;

beforeEach(async () => {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await addYard(workbook, { yard: "Lantern House", address: "3 Cooper's Rise", units: "us", soilGroup: null });
  const before = (await readProgram(workbook)).yards[0];
  if (before === undefined) throw new Error("no yard");
  await writeBasin(workbook, before, {
    stormDepth: null,
    pondingDepth: 6,
    mediaDepth: null,
    sideSlope: null,
    mixRecipe: "tight soil",
    shape: "rectangle",
    lengthToWidth: null,
    roomLength: 18,
    roomWidth: null,
  });
  const after = (await readProgram(workbook)).yards[0];
  if (after === undefined) throw new Error("no yard");
  yard = after;
});

/** The yard as it is once Design has computed what the basin rests on. */
function withGrounds(contributingArea: number, testedRate: number): Yard {
  return { ...yard, design: { ...yard.design, contributingArea, testedRate } };
}

describe("the form", () => {
  test("shows the cells of Sites and changes none of them by itself", () => {
    expect(typedFrom(yard)).toEqual({
      stormDepth: "",
      pondingDepth: "6",
      mediaDepth: "",
      sideSlope: "",
      mixRecipe: "tight soil",
      shape: "rectangle",
      lengthToWidth: "",
      roomLength: "18",
      roomWidth: "",
    });
    expect(differencesFrom(yard, readBasin(typedFrom(yard)).entry)).toEqual([]);
  });

  test("names each cell that writing would change", () => {
    const { entry } = readBasin({ ...typedFrom(yard), pondingDepth: "4", mixRecipe: null });
    expect(differencesFrom(yard, entry)).toEqual([
      { field: "pondingDepth", onSheet: 6, here: 4 },
      { field: "mixRecipe", onSheet: "tight soil", here: null },
    ]);
  });

  test("refuses what is impossible, each at its field", () => {
    expect(
      readBasin({
        ...typedFrom(yard),
        stormDepth: "0",
        pondingDepth: "six",
        mediaDepth: "-1",
        sideSlope: "-3",
        lengthToWidth: "0.5",
        roomLength: "0",
        roomWidth: "9 ft",
      }).faults,
    ).toEqual({
      stormDepth: "Storm depth must be more than 0.",
      pondingDepth: 'Ponding depth must be a number; it is the text "six".',
      mediaDepth: "Soil mix depth must be 0 or more.",
      sideSlope: "Side slope must be 0 or more.",
      lengthToWidth: "Length to width must be 1 or more.",
      roomLength: "Room across the slope must be more than 0.",
      roomWidth: 'Room down the slope must be a number alone, in the unit shown; it is "9 ft".',
    });
  });
});

describe("what a basin rests on", () => {
  test("comes from Design where it is there, and then nothing can be assumed", () => {
    const grounds = groundsOf(withGrounds(1000, 0.5), { contributingArea: "5", testedRate: "5" });
    expect(grounds).toEqual({ contributingArea: 1000, testedRate: 0.5, areaMissing: false, rateMissing: false, faults: {} });
  });

  test("may be assumed where it is missing", () => {
    const grounds = groundsOf(yard, { contributingArea: "800", testedRate: "0.6" });
    expect(grounds).toMatchObject({ contributingArea: 800, testedRate: 0.6, areaMissing: true, rateMissing: true });
    expect(draftBasin(inputsFor(yard, readBasin(typedFrom(yard)).entry, grounds), settings).status).toBe("fits");
  });

  test("an error on Design is missing, not a number", () => {
    const broken = { ...yard, design: { ...yard.design, contributingArea: 900, testedRate: "#N/A" } };
    expect(groundsOf(broken, NOTHING_ASSUMED)).toMatchObject({ contributingArea: 900, testedRate: null, rateMissing: true });
  });

  test("an assumed value that is impossible is said and not used", () => {
    const grounds = groundsOf(yard, { contributingArea: "-5", testedRate: "fast" });
    expect(grounds.contributingArea).toBeNull();
    expect(grounds.faults).toEqual({
      contributingArea: "Assumed contributing area must be more than 0.",
      testedRate: 'Assumed tested rate must be a number; it is the text "fast".',
    });
  });
});

describe("checks", () => {
  const draftOn = (inputs: typeof roofInUs, groundSlopePercent: number | null) => draftBasin({ ...inputs, groundSlopePercent }, settings);
  const verdicts = (inputs: typeof roofInUs, slope: number | null) =>
    Object.fromEntries(basinChecks(draftOn(inputs, slope), Number(inputs.testedRate), rules).map(({ name, verdict }) => [name, verdict]));

  test("6 in at a design rate of 0.25 in/h drains in 24 h and passes", () => {
    expect(verdicts({ ...roofInUs, mediaDepth: 0 }, 6)).toEqual({
      "Size and soil": "pass",
      Drawdown: "pass",
      "Ponding depth": "pass",
      "Tested infiltration rate": "pass",
      "Ground slope": "pass",
    });
  });

  test("the same basin in metric units gets the same verdicts", () => {
    expect(verdicts(roofInMetric, 6)).toEqual(verdicts(roofInUs, 6));
  });

  test("6 in at a design rate of 0.05 in/h stops: it would stand for 120 h", () => {
    const slow = { ...roofInUs, mediaDepth: 0, testedRate: 0.1 };
    const size = basinChecks(draftOn(slow, null), 0.1, rules)[0];
    expect(size).toMatchObject({ verdict: "stop" });
    expect(size?.words).toMatch(/^Drains too slowly: 6 in needs 120 h and 48 h is the limit\./);
    expect(verdicts(slow, null)).toMatchObject({ Drawdown: "stop", "Tested infiltration rate": "refer", "Ground slope": "not measured" });
  });

  test("the drawdown limit is on standing water: soil mix that drains later does not break it", () => {
    // 8 in at 0.17 in/h is gone after 47 h; 12 in of mix with a quarter voids would take 18 h more.
    const withMix = { ...roofInUs, testedRate: 0.34, pondingDepth: 8, mediaDepth: 12 };
    expect(verdicts(withMix, 3)).toMatchObject({ "Size and soil": "pass", Drawdown: "pass" });
    const drawdown = basinChecks(draftOn(withMix, 3), 0.34, rules).find(({ name }) => name === "Drawdown");
    expect(drawdown?.words).toBe("The ponding is gone 47.1 h after it stood full");
  });

  test("the worst check decides, and one that is not measured keeps the whole from passing", () => {
    const check = (verdict: "pass" | "refer" | "stop" | "not measured") => ({ name: verdict, words: "", verdict });
    expect(worstOf([check("pass"), check("refer"), check("stop")])).toBe("stop");
    expect(worstOf([check("pass"), check("not measured")])).toBe("not measured");
    expect(worstOf([check("pass")])).toBe("pass");
  });

  test("without area and rate nothing passes", () => {
    const none = { ...roofInUs, contributingArea: null, testedRate: null };
    const checks = basinChecks(draftOn(none, null), null, rules);
    expect(checks.map(({ verdict }) => verdict)).not.toContain("pass");
  });

  test("a floor that would lie on placed earth is cautioned", () => {
    const words = (slope: number) => draftOn({ ...roofInUs, mediaDepth: 0 }, slope).earthwork?.cautions.join(" ");
    expect(words(20)).toContain("Part of the floor would stand on fill");
    expect(words(2)).not.toContain("Part of the floor would stand on fill");
  });

  test("ground as steep as a berm's outside is cautioned", () => {
    expect(drawingCautions({ ...pencilBasin, groundFall: 0.34 })).toEqual([
      "The ground is as steep as the outside of a berm: no berm can stand here. Choose another place.",
    ]);
    expect(drawingCautions(pencilBasin)).toEqual([]);
  });
});

describe("beside the rule of thumb", () => {
  test("shallow ponding needs more room than 10 %, and the words say why", () => {
    // 1,000 sq ft x 0.95 x 1 in over 4 in less 1 in of rain on it: 317 sq ft against 100.
    expect(ruleOfThumbWords(draftBasin({ ...roofInUs, pondingDepth: 4, mediaDepth: 0, sideSlope: 0 }, settings), "us")).toMatch(
      /^More than the rule of thumb.*1 in.*4 in/,
    );
  });

  test("deep ponding and soil mix need less", () => {
    expect(ruleOfThumbWords(draftBasin({ ...roofInUs, testedRate: 4, pondingDepth: 12, mediaDepth: 24 }, settings), "us")).toMatch(
      /^Less than the rule of thumb.*and the soil mix/,
    );
  });

  test("no size, no comparison", () => {
    expect(ruleOfThumbWords(draftBasin({ ...roofInUs, testedRate: null }, settings), "us")).toBeNull();
  });
});

describe("the drawing's dimensions", () => {
  test("depths in inches are drawn in feet, with the mulch of the program", () => {
    expect(drawn(roofInUs)).toMatchObject({ pondingDepth: 0.5, mixDepth: 1.5, mulchDepth: 0.25, bermCrestWidth: 1, groundFall: 0.06 });
  });

  test("the berm's outside is 3 to 1, or as flat as the sides where those are flatter", () => {
    expect(drawn({ ...roofInUs, sideSlope: 2 }).bermOuterSlope).toBe(3);
    expect(drawn({ ...roofInUs, sideSlope: 4 }).bermOuterSlope).toBe(4);
  });

  test("a basin without a size is not drawn", () => {
    expect(basinDimensions(draftBasin({ ...roofInUs, testedRate: 0 }, settings), 3)).toBeNull();
  });
});
