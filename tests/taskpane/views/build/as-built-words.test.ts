import { describe, expect, test } from "vitest";
import { compareAsBuilt, recordAsBuilt, type AsBuiltMeasures } from "../../../../addin/actions/build/record-as-built.ts";
import { readProgram, type DesignCells, type Yard } from "../../../../addin/actions/program/read-program.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { designSheet } from "../../../../addin/records/design.ts";
import { asBuiltEntry, blankAsBuilt, readAsBuilt, startingAsBuilt } from "../../../../taskpane/views/build/as-built-draft.ts";
import { asBuiltLines } from "../../../../taskpane/views/build/as-built-words.ts";
import { WorkbookInMemory } from "../../../addin/workbook-in-memory.ts";

const blank = Object.fromEntries(Object.keys(designSheet.columns).map((key) => [key, null])) as unknown as DesignCells;
const nothing: AsBuiltMeasures = {
  shape: "ellipse",
  floorLength: null,
  floorWidth: null,
  pondingDepth: null,
  sideSlope: null,
  mediaDepth: null,
  sillWidth: null,
  lowestBerm: null,
  drainHours: null,
};

function sentences(measured: Partial<AsBuiltMeasures>, design: Partial<DesignCells>, units: "us" | "metric" = "us"): readonly string[] {
  return asBuiltLines(compareAsBuilt({ ...nothing, ...measured }, { ...blank, ...design }, 3, { drainHours: 48 }, units), 24, units).map(
    ({ words }) => words,
  );
}

describe("what was built, in words", () => {
  // Handbook of rain gardens, test G3: a 17 by 7 ft ellipse, 6 in deep with 3 to 1 sides, holds 62.046 cu ft; 62.046 / 70 = 89 %.
  test("water held is told as a share of the design's", () => {
    const lines = sentences(
      { floorLength: 17, floorWidth: 7, pondingDepth: 6, sideSlope: 3 },
      { waterHeld: 70, floorArea: 90, pondingDepth: 6 },
    );
    expect(lines).toEqual([
      "Holds 62 cu ft: 89 % of the 70 cu ft designed.",
      "Sill 6 in above the floor: as designed.",
      "Sides 3 to 1: the 3 to 1 designed, or flatter.",
      // 93.5 - 90 = 3.5 sq ft.
      "Floor 93.5 sq ft: 3.5 sq ft more than the 90 sq ft designed.",
    ]);
  });

  test("half the water says what to do", () => {
    expect(sentences({ floorLength: 17, floorWidth: 7, pondingDepth: 6, sideSlope: 3 }, { waterHeld: 124.1 })[0]).toBe(
      "Holds 62 cu ft: 50 % of the 124.1 cu ft designed. It no longer holds the design storm: raise the sill or widen the floor.",
    );
  });

  test("where the soil mix was not measured nothing is held against a design that counts on it", () => {
    expect(sentences({ floorLength: 17, floorWidth: 7, pondingDepth: 6, sideSlope: 3 }, { waterHeld: 73.7, mediaDepth: 6 })[0]).toBe(
      "Holds 62 cu ft: the soil mix is not measured, so it cannot be held against the 73.7 cu ft designed.",
    );
  });

  test("a low berm is filled, and a little berm will settle", () => {
    expect(sentences({ lowestBerm: -0.75 }, {})).toEqual(["Berm 0.75 in below the sill: water leaves there first. Fill it."]);
    expect(sentences({ lowestBerm: 1 }, {})).toEqual([
      "Berm 1 in above the sill at its lowest: under the 2 in that is usual (common practice): it will settle.",
    ]);
    expect(sentences({ lowestBerm: 60 }, {}, "metric")).toEqual([
      "Berm 60 mm above the sill at its lowest: at least the 51 mm that is usual (common practice).",
    ]);
  });

  test("the flow test is held against the program's hours and told beside the design's", () => {
    expect(sentences({ drainHours: 20 }, {})).toEqual(["Drained in 20 h: within the 48 h that the program allows. Design expects 24 h."]);
    expect(sentences({ drainHours: 50 }, {})[0]).toMatch(
      /^Drained in 50 h: over the 48 h that the program allows: look for smeared or packed soil/,
    );
  });

  test("a sill in the wrong place and sides too steep say so, in the yard's units", () => {
    expect(sentences({ pondingDepth: 120, sideSlope: 2 }, { pondingDepth: 150 }, "metric")).toEqual([
      "Sill 120 mm above the floor: 30 mm less than the 150 mm designed. Set the sill again, or work the design out with this depth.",
      "Sides 2 to 1: steeper than the 3 to 1 designed: such sides slide. Lay them back.",
    ]);
  });

  test("where Design shows an error nothing is held against it, and no NaN is said", () => {
    expect(sentences({ pondingDepth: 6 }, { pondingDepth: "#N/A" })).toEqual([
      "Sill 6 in above the floor: Design shows no number to hold it against.",
    ]);
  });
});

test("the shape is what Sites asks for until the garden was measured, and then what was found", async () => {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await addYard(workbook, { yard: "Lantern House", address: "3 Cooper's Rise", units: "us", soilGroup: "B" });
  const yardNow = async (): Promise<Yard> => {
    const [yard] = (await readProgram(workbook)).yards;
    if (yard === undefined) throw new Error("no yard");
    return yard;
  };
  const yard = await yardNow();
  expect(startingAsBuilt(yard).shape).toBe("ellipse");
  await workbook.writeValues([{ range: yard.site.at("shape"), values: [["rectangle"]] }]);
  expect(startingAsBuilt(await yardNow()).shape).toBe("rectangle");
  await recordAsBuilt(workbook, yard, { ...nothing, shape: "ellipse", floorLength: 17, date: 46193, by: "", note: "" });
  expect(startingAsBuilt(await yardNow()).shape).toBe("ellipse");
});

describe("measurements as typed", () => {
  const typed = { ...blankAsBuilt("ellipse"), floorLength: "17", floorWidth: "7", pondingDepth: "6" };

  test("what was measured is written, what was not stays blank", () => {
    expect(asBuiltEntry(typed, 46193, "Wren")).toEqual({
      date: 46193,
      shape: "ellipse",
      floorLength: 17,
      floorWidth: 7,
      pondingDepth: 6,
      sideSlope: null,
      mediaDepth: null,
      sillWidth: null,
      lowestBerm: null,
      drainHours: null,
      by: "Wren",
      note: "",
    });
  });

  test("words and a width of zero are refused, and nothing is written", () => {
    const wrong = { ...typed, floorLength: "17 ft", floorWidth: "0" };
    expect(readAsBuilt(wrong).faults).toEqual({
      floorLength: 'Floor length must be a number alone, in the unit shown; it is "17 ft".',
      floorWidth: "Floor width must be more than 0.",
    });
    expect(asBuiltEntry(wrong, 46193, "")).toBeNull();
  });

  test("a berm below the sill is a negative number; a form with no measurement is none", () => {
    expect(readAsBuilt({ ...typed, lowestBerm: "-0.5" }).measures.lowestBerm).toBe(-0.5);
    expect(readAsBuilt(blankAsBuilt("ellipse")).faults).toEqual({ nothing: "Measure at least one thing." });
  });
});
