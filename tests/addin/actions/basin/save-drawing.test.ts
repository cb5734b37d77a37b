import { beforeEach, describe, expect, test } from "vitest";
import { readProgram, type Yard } from "../../../../addin/actions/program/read-program.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { hasDrawing, saveDrawing } from "../../../../addin/actions/basin/save-drawing.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

const drawing = { pngBase64: "iVBORw0KGgo=", widthPixels: 720, heightPixels: 900, description: "Plan and section of a basin." };

let workbook: WorkbookInMemory;
let yards: readonly Yard[];

beforeEach(async () => {
  workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await addYard(workbook, { yard: "Lantern House", address: "3 Cooper's Rise", units: "us", soilGroup: null });
  await addYard(workbook, { yard: "=1+1", address: "5 Cooper's Rise", units: "metric", soilGroup: null });
  yards = (await readProgram(workbook)).yards;
});

const yard = (place: number): Yard => {
  const found = yards[place];
  if (found === undefined) throw new Error("no yard");
  return found;
};
const wordsOn = async (row: number) => (await workbook.read([{ sheet: "Drawings", row, column: 0, rows: 1, columns: 4 }]))[0]?.[0];

describe("the first drawing", () => {
  test("makes the sheet Drawings, and stands under the yard's name and its own words", async () => {
    expect(await hasDrawing(workbook, yard(0))).toBe(false);
    await saveDrawing(workbook, yard(0), drawing);
    expect(await wordsOn(3)).toEqual([
      "Y-001",
      "Lantern House",
      expect.stringMatching(/^\d{4}-\d{2}-\d{2}$/),
      "Plan and section of a basin.",
    ]);
    expect(workbook.pictures).toMatchObject([
      { sheet: "Drawings", row: 4, column: 0, name: "Basin Y-001", widthPixels: 720, heightPixels: 900, description: drawing.description },
    ]);
    expect(await hasDrawing(workbook, yard(0))).toBe(true);
    expect(await hasDrawing(workbook, yard(1))).toBe(false);
  });

  test("leaves every sheet that was there as it is", async () => {
    const before = JSON.stringify([...workbook.sheets]);
    await saveDrawing(workbook, yard(0), drawing);
    workbook.sheets.delete("Drawings");
    expect(JSON.stringify([...workbook.sheets])).toBe(before);
  });
});

test("a second yard's drawing stands below the first, its name a text whatever it looks like", async () => {
  await saveDrawing(workbook, yard(0), drawing);
  await saveDrawing(workbook, yard(1), drawing);
  expect((await wordsOn(63))?.slice(0, 2)).toEqual(["Y-002", "=1+1"]);
  expect(workbook.pictures.map(({ name, row }) => [name, row])).toEqual([
    ["Basin Y-001", 4],
    ["Basin Y-002", 64],
  ]);
});

test("a yard's later drawing takes the place of its earlier one", async () => {
  await saveDrawing(workbook, yard(0), drawing);
  await saveDrawing(workbook, yard(1), drawing);
  await saveDrawing(workbook, yard(0), { ...drawing, description: "A larger basin." });
  expect(await wordsOn(3)).toMatchObject(["Y-001", "Lantern House", expect.any(String), "A larger basin."]);
  expect(workbook.pictures.filter(({ name }) => name === "Basin Y-001")).toMatchObject([{ row: 4, description: "A larger basin." }]);
});

test("a drawing taller than its place is made smaller in both directions", async () => {
  await saveDrawing(workbook, yard(0), { ...drawing, heightPixels: 2320 });
  // 58 rows of 20 pixels are 1,160: half of 2,320.
  expect(workbook.pictures).toMatchObject([{ widthPixels: 360, heightPixels: 1160 }]);
});

test("a sheet Drawings that a person made is left alone, and the refusal says what to do", async () => {
  await workbook.addSheets([
    {
      name: "Drawings",
      headingRow: 0,
      columns: [{ heading: "Mine", widthPixels: 90, role: "input" }],
      rows: 5,
      frozenColumns: 0,
      preface: [],
    },
  ]);
  await expect(saveDrawing(workbook, yard(0), drawing)).rejects.toThrow(
    'This workbook has a sheet "Drawings" of its own. Give that sheet another name, then save the drawing again.',
  );
  expect(workbook.pictures).toEqual([]);
  expect(await wordsOn(0)).toEqual(["Mine", null, null, null]);
});
