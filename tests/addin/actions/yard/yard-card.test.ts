import { describe, expect, test } from "vitest";
import { readProgram } from "../../../../addin/actions/program/read-program.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { contactsOf } from "../../../../addin/actions/yard/contact-links.ts";
import { ownCellsOf } from "../../../../addin/actions/yard/own-columns.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { cellOf, firstRow, headingRow } from "../../../../addin/records/place.ts";
import type { Sheet } from "../../../../addin/records/sheet.ts";
import { sitesSheet, type Site } from "../../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../../addin/records/surfaces.ts";
import type { CellValue } from "../../../../addin/workbook/port.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

const NOBODY = { telephone: null, email: null, latitude: null, longitude: null } as unknown as Site;

describe("A household is reached", () => {
  test("by links where what is typed can be one", () => {
    const contacts = contactsOf({
      ...NOBODY,
      telephone: "(555) 010-4477 x12",
      email: " ada@ferry.example",
      latitude: 45.5,
      longitude: -140,
    });
    expect(contacts.map(({ link }) => link)).toEqual(["tel:5550104477", "mailto:ada@ferry.example", "geo:45.5,-140"]);
  });

  test.each([
    ["telephone", "ask next door"],
    ["telephone", "javascript:alert(1)"],
    ["email", "javascript:alert(1)//@x.y"],
    ["email", "a@b.example?bcc=c@d.example"],
    ["email", "a@b.example, c@d.example"],
  ])("by words alone where they cannot: %s %j", (key, words) => {
    expect(contactsOf({ ...NOBODY, [key]: words })).toEqual([{ key, says: words, link: null }]);
  });

  test("at no place while half of it is missing", () => {
    expect(contactsOf({ ...NOBODY, latitude: 45.5 })).toEqual([]);
  });
});

describe("A column of somebody's own", () => {
  async function program() {
    const workbook = new WorkbookInMemory();
    await setUpWorkbook(workbook);
    const siteId = await addYard(workbook, { yard: "Mill", address: "9 Mill Street", units: "us", soilGroup: "B" });
    await workbook.writeValues([{ range: cellOf(surfacesSheet, firstRow(surfacesSheet), "siteId"), values: [[siteId]] }]);
    const put = (sheet: Sheet, column: number, row: number, value: CellValue) =>
      workbook.writeValues([{ range: { sheet: sheet.name, row, column, rows: 1, columns: 1 }, values: [[value]] }]);
    const wide = (sheet: Sheet) => Object.keys(sheet.columns).length;
    return { workbook, put, wide };
  }

  test("is shown with the yard, from Sites and from its other sheets", async () => {
    const { workbook, put, wide } = await program();
    await put(sitesSheet, wide(sitesSheet), headingRow(sitesSheet), "Color of the  door");
    await put(sitesSheet, wide(sitesSheet), firstRow(sitesSheet), "green");
    await put(sitesSheet, wide(sitesSheet) + 1, headingRow(sitesSheet), "Dog");
    await put(surfacesSheet, wide(surfacesSheet) + 2, headingRow(surfacesSheet), "Gutter guard");
    await put(surfacesSheet, wide(surfacesSheet) + 2, firstRow(surfacesSheet), true);
    const read = await readProgram(workbook);
    expect(ownCellsOf(read, read.yards[0]!)).toEqual([
      { sheet: "Sites", heading: "Color of the door", value: "green" },
      { sheet: "Surfaces", heading: "Gutter guard", value: true },
    ]);
  });

  test("between ours moves them and changes nothing that is read of the yard", async () => {
    const { workbook, put } = await program();
    const before = (await readProgram(workbook)).yards[0]!;
    // As a spreadsheet inserts a column: everything from there on moves to the right.
    for (const row of workbook.sheets.get("Sites")!.values) if (row.length > 2) row.splice(2, 0, null);
    await put(sitesSheet, 2, headingRow(sitesSheet), "Crew");
    await put(sitesSheet, 2, firstRow(sitesSheet), "Tuesday");
    const read = await readProgram(workbook);
    expect(read.yards[0]?.site.record).toEqual(before.site.record);
    expect(ownCellsOf(read, read.yards[0]!)).toEqual([{ sheet: "Sites", heading: "Crew", value: "Tuesday" }]);
  });
});
