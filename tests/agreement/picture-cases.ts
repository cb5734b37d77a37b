import type { PictureWrite, SheetLayout } from "../../addin/workbook/port.ts";
import type { AgreementCase } from "./cases.ts";
import { expectEqual, expectRefusal } from "./expectations.ts";

/** What every adapter must do with a picture over a sheet's cells. */
export const pictureCases: readonly AgreementCase[] = [
  {
    title: "a sheet has no pictures until one is placed",
    async run(workbook) {
      await workbook.addSheets([drawings("Drawings")]);
      expectEqual(await workbook.pictureNames("Drawings"), [], "the pictures");
      await workbook.placePicture(picture("Y-001"));
      expectEqual(await workbook.pictureNames("Drawings"), ["Y-001"], "the pictures");
    },
  },
  {
    title: "pictures of several names stand on one sheet, and on no other",
    async run(workbook) {
      await workbook.addSheets([drawings("Drawings"), drawings("Photos")]);
      await workbook.placePicture(picture("Y-001"));
      await workbook.placePicture({ ...picture("__proto__"), row: 60 });
      await workbook.placePicture({ ...picture('Ölmühle, "yard" 2'), row: 2000, column: 40 });
      expectEqual(await workbook.pictureNames("Drawings"), ["Y-001", "__proto__", 'Ölmühle, "yard" 2'], "the pictures");
      expectEqual(await workbook.pictureNames("Photos"), [], "the pictures of the other sheet");
    },
  },
  {
    title: "a picture of a name that is there takes its place",
    async run(workbook) {
      await workbook.addSheets([drawings("Drawings")]);
      await workbook.placePicture(picture("Y-001"));
      await workbook.placePicture({ ...picture("Y-002"), row: 60 });
      await workbook.placePicture({ ...picture("Y-001"), row: 4, widthPixels: 30 });
      expectEqual([...(await workbook.pictureNames("Drawings"))].sort(), ["Y-001", "Y-002"], "the pictures");
    },
  },
  {
    title: "a picture changes no cell under it",
    async run(workbook) {
      await workbook.addSheets([drawings("Drawings")]);
      const cell = { sheet: "Drawings", row: 3, column: 0, rows: 1, columns: 1 };
      await workbook.writeValues([{ range: cell, values: [["under the picture"]] }]);
      await workbook.placePicture(picture("Y-001"));
      expectEqual(await workbook.read([cell]), [[["under the picture"]]], "the cell");
    },
  },
  {
    title: "a picture for a sheet that is not there is refused by the sheet's name",
    async run(workbook) {
      await expectRefusal(workbook.placePicture(picture("Y-001")), "SheetMissing");
      await expectRefusal(workbook.pictureNames("Drawings"), "SheetMissing");
    },
  },
];

/** A white square of one pixel. */
const WHITE_PIXEL = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAsTj2FAAAAABJRU5ErkJggg==";

export function picture(name: string): PictureWrite {
  return {
    sheet: "Drawings",
    row: 3,
    column: 0,
    name,
    pngBase64: WHITE_PIXEL,
    widthPixels: 60,
    heightPixels: 40,
    description: "Plan and section",
  };
}

function drawings(name: string): SheetLayout {
  return {
    name,
    headingRow: 1,
    preface: ["Drawings"],
    rows: 0,
    frozenColumns: 0,
    columns: [{ heading: "Yard", widthPixels: 120, role: "input" }],
  };
}
