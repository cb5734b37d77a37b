import { beforeEach, describe, expect, test } from "vitest";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { WorkbookRefused, type PictureWrite, type Workbook } from "../../addin/workbook/port.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";
import { addShape } from "./shapes.ts";
import type { Shape } from "./spreadsheet.ts";

/** A white square of one pixel. */
const WHITE_PIXEL = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAsTj2FAAAAABJRU5ErkJggg==";

const picture: PictureWrite = {
  sheet: "Sheet1",
  row: 4,
  column: 2,
  name: "Basin Y-001",
  pngBase64: WHITE_PIXEL,
  widthPixels: 800,
  heightPixels: 600,
  description: "Plan and section of Y-001",
};

let excel: InMemoryExcel;
let workbook: Workbook;

beforeEach(() => {
  excel = new InMemoryExcel();
  workbook = excelWorkbook((error) => {
    throw error;
  });
});

/** What an Excel of 2021 or later says of itself. */
const LATER = [{ name: "ExcelApi", minimumVersion: "1.10" }];

const shapes = (): Shape[] => excel.book.sheetNamed("Sheet1")!.shapes;

describe("A picture in Excel", () => {
  test.each([
    ["1.9", undefined],
    ["1.10", LATER],
  ])("stands at its cell where Excel knows ExcelApi %s", async (_, sets) => {
    excel = new InMemoryExcel(sets);
    excel.book.sheetNamed("Sheet1")!.columnWidths.set(1, 100);
    await workbook.placePicture(picture);
    // Columns of 48 and 100 points and four rows of 15.
    expect(shapes()).toMatchObject([{ left: 148, top: 60 }]);
  });

  test("stands at its cell, in its own proportions, named, and described for who cannot see it", async () => {
    await workbook.placePicture(picture);
    // Two columns of 48 points and four rows of 15; 800 x 600 pixels are 600 x 450 points.
    expect(shapes()).toMatchObject([
      {
        name: "Basin Y-001",
        left: 96,
        top: 60,
        width: 600,
        height: 450,
        altTextDescription: "Plan and section of Y-001",
        lockAspectRatio: true,
        image: WHITE_PIXEL,
      },
    ]);
  });

  test("takes the place of its earlier self, of every copy of that, and of nothing else", async () => {
    const sheet = excel.book.sheetNamed("Sheet1")!;
    addShape(sheet, { type: "GeometricShape", image: null, width: 10, height: 10 }).name = "An arrow";
    await workbook.placePicture(picture);
    await workbook.placePicture({ ...picture, name: "Basin Y-002" });
    addShape(sheet, { type: "Image", image: WHITE_PIXEL, width: 10, height: 10 }).name = "Basin Y-001";
    await workbook.placePicture({ ...picture, row: 0, widthPixels: 400 });
    expect(shapes().map(({ name, top, width }) => ({ name, top, width }))).toEqual([
      { name: "An arrow", top: 0, width: 10 },
      { name: "Basin Y-002", top: 60, width: 600 },
      { name: "Basin Y-001", top: 0, width: 300 },
    ]);
    expect(await workbook.pictureNames("Sheet1")).toEqual(["Basin Y-002", "Basin Y-001"]);
  });

  test("takes two round trips", async () => {
    const before = excel.roundTrips;
    await workbook.placePicture(picture);
    expect(excel.roundTrips - before).toBe(2);
  });

  test("on a protected sheet is refused in words, and the earlier one stays", async () => {
    await workbook.placePicture(picture);
    excel.book.sheetNamed("Sheet1")!.isProtected = true;
    const refused = workbook.placePicture({ ...picture, row: 0 });
    await expect(refused).rejects.toBeInstanceOf(WorkbookRefused);
    await expect(refused).rejects.toThrow('The sheet "Sheet1" is protected.');
    expect(shapes()).toMatchObject([{ top: 60 }]);
  });
});
