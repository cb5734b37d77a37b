/** Yards go along in a file, are worked on in another program, and come back beside what was typed at home meanwhile. */
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, it } from "vitest";
import { today } from "../../addin/actions/dates.ts";
import { placeAsSetUp } from "../../addin/records/place.ts";
import { readRecords } from "../../addin/records/read-records.ts";
import type { Sheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { standingSheet } from "../../addin/records/standing.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import { visitsSheet } from "../../addin/records/visits.ts";
import { fieldCopyText } from "../../taskpane/views/field-copy/text.ts";
import { workbookText } from "../../taskpane/views/workbook/text.ts";
import { nextText } from "../../taskpane/views/next/text.ts";
import { openFilesText } from "../../taskpane/views/open-files/text.ts";
import { text } from "../../taskpane/text.ts";
import { savedBytes, type OpenPage } from "./page.ts";
import { button, onExcelPage, openTab, pane, status } from "./pane.ts";
import { expectUsable } from "./usable.ts";

const { taking, bringing } = fieldCopyText;

describe("A copy for the field", () => {
  let opened: OpenPage;
  let copy: ExcelJS.Workbook;

  onExcelPage((page) => {
    opened = page;
  });

  const cellsOf = async (sheet: Sheet) =>
    (await opened.page.evaluate(async (name) => (await window.soakbook?.workbook.readSheets([name])) ?? [], sheet.name))[0] ?? [];
  const rowsOf = async <S extends Sheet>(sheet: S) => readRecords(sheet, await cellsOf(sheet)).rows;
  /** The cell of a column in the first row of the copy's sheet that belongs to the yard. */
  const cellIn = (sheet: Sheet, siteId: string, heading: string) => {
    const worksheet = copy.getWorksheet(sheet.name);
    const headings = sheet.preface.length + 1;
    let found: ExcelJS.Cell | undefined;
    worksheet?.getRow(headings).eachCell((cell, column) => {
      if (cell.value !== heading) return;
      worksheet.eachRow((row, at) => {
        if (at > headings && row.getCell(1).value === siteId) found ??= row.getCell(column);
      });
    });
    if (found === undefined) throw new Error(`The copy has no ${heading} of ${siteId}.`);
    return found;
  };

  beforeAll(async () => {
    const { page } = opened;
    const leave = button(page, /All yards/);
    if (await leave.isVisible()) await leave.click();
    await openTab(page, text.programTabs.workbook);
  });

  it("hands the chosen yards over in a file that another program reads, with no other yard in it", async () => {
    const { page } = opened;
    await button(page, fieldCopyText.take).click();
    const yards = pane(page).getByRole("group", { name: taking.which });
    await yards.getByRole("checkbox", { name: /^Y-001 / }).check();
    await yards.getByRole("checkbox", { name: /^Y-002 / }).check();
    const [download] = await Promise.all([page.waitForEvent("download"), button(page, taking.button(2)).click()]);
    copy = new ExcelJS.Workbook();
    await copy.xlsx.load((await savedBytes(download)) as never);
    const ids = (copy.getWorksheet("Sites")?.getColumn(1).values ?? []).filter((value) => /^Y-/.test(String(value)));
    expect(ids).toEqual(["Y-001", "Y-002"]);
    expect(copy.getWorksheet("Taken along")?.state).toBe("hidden");
    await expectUsable(page);
  });

  it("shows what differs with both values, and writes nothing while a question is open", async () => {
    const { page } = opened;
    const [roof] = (await rowsOf(surfacesSheet)).filter(({ record: { siteId } }) => siteId === "Y-001");
    if (roof === undefined) throw new Error("The demo has no surface of Y-001.");
    await page.evaluate((where) => window.soakbook?.workbook.writeValues([{ range: where, values: [[1111]] }]), roof.at("area"));
    cellIn(surfacesSheet, "Y-001", surfacesSheet.columns.area.heading).value = 2222;
    cellIn(sitesSheet, "Y-002", sitesSheet.columns.notes.heading).value = "=1+1 is on the gate";
    const visits = copy.getWorksheet(visitsSheet.name);
    visits?.spliceRows(visitsSheet.preface.length + 2, 0, [
      "Y-002",
      46_200,
      "ticket",
      "field note",
      "said at the door",
      null,
      "seen",
      "Rowan",
    ]);
    await button(page, fieldCopyText.bring).click();
    await page.locator("#pane input[type=file]").setInputFiles({
      name: "field.xlsx",
      mimeType: "",
      buffer: Buffer.from(await copy.xlsx.writeBuffer()),
    });
    const first = pane(page).getByRole("region", { name: /^Y-001 / });
    await first.getByText("1111").waitFor();
    expect(await first.innerText()).toContain("2222");
    expect(await button(page, bringing.button(2)).getAttribute("aria-disabled")).toBe("true");
    await expectUsable(page);
  });

  it("brings back what was chosen as one change, which one undo takes back whole", async () => {
    const { page } = opened;
    const before = await cellsOf(visitsSheet);
    const first = pane(page).getByRole("region", { name: /^Y-001 / });
    await first.locator(".segment", { hasText: bringing.choices["cell differs"].copy }).click();
    const second = pane(page).getByRole("region", { name: /^Y-002 / });
    await second.locator("summary").click();
    expect(await second.innerText()).toContain("said at the door");
    await button(page, bringing.button(2)).click();
    await status(page)
      .filter({ hasText: bringing.done(2) })
      .waitFor();
    const [roof] = (await rowsOf(surfacesSheet)).filter(({ record: { siteId } }) => siteId === "Y-001");
    expect(roof?.record.area).toBe(2222);
    expect((await rowsOf(sitesSheet)).find(({ record: { siteId } }) => siteId === "Y-002")?.record.notes).toBe("=1+1 is on the gate");
    expect((await rowsOf(visitsSheet)).at(-1)?.record).toMatchObject({ siteId: "Y-002", answer: "said at the door", by: "Rowan" });
    await pane(page).getByText(bringing.same).waitFor();
    await pane(page).locator(".status-line").getByRole("button", { name: text.status.undo }).click();
    await expect.poll(() => cellsOf(visitsSheet)).toEqual(before);
    expect((await rowsOf(surfacesSheet)).find(({ record: { siteId } }) => siteId === "Y-001")?.record.area).toBe(1111);
  });

  it("says in words what is no copy, and caused no error on the page", async () => {
    const { page } = opened;
    copy.removeWorksheet(copy.getWorksheet("Taken along")?.id ?? 0);
    await page
      .locator("#pane input[type=file]")
      .setInputFiles({ name: "other.xlsx", mimeType: "", buffer: Buffer.from(await copy.xlsx.writeBuffer()) });
    await pane(page).getByText('"other.xlsx" was not made by "Take yards along"').waitFor();
    expect(opened.faults).toEqual([]);
  });

  it("hands a map over without persons in it, and names the yards that are not on it", async () => {
    const { page } = opened;
    const files = pane(page).getByRole("region", { name: openFilesText.title });
    await files.locator("summary").click();
    const [first] = await rowsOf(sitesSheet);
    await page.evaluate(
      ([latitude, longitude]) =>
        window.soakbook?.workbook.writeValues([
          { range: latitude, values: [[40.1]] },
          { range: longitude, values: [[-88.2]] },
        ]),
      [first!.at("latitude"), first!.at("longitude")] as const,
    );
    await page.waitForFunction(async (at) => (await window.soakbook?.workbook.read([at]))?.[0]?.[0]?.[0] === 40.1, first!.at("latitude"));
    const made = async (name: string) => {
      const [download] = await Promise.all([page.waitForEvent("download"), files.getByRole("button", { name }).click()]);
      return savedBytes(download);
    };
    await expect
      .poll(async () => (JSON.parse((await made(openFilesText.map)).toString()) as { features: unknown[] }).features.length)
      .toBe(1);
    await files.getByText(/^Y-002: it has no coordinates\.$/).waitFor();
    expect((await made(openFilesText.calendar)).toString()).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect((await made(openFilesText.tables)).subarray(0, 2).toString()).toBe("PK");
    await expectUsable(page);
    expect(opened.faults).toEqual([]);
  });

  it("takes a yard that is typed meanwhile into the files too, until a person chooses", async () => {
    const { page } = opened;
    const files = pane(page).getByRole("region", { name: openFilesText.title });
    const rows = await rowsOf(sitesSheet);
    const below = { ...rows.at(-1)!.at("siteId"), row: rows.at(-1)!.row + 1 };
    const type = (siteId: string | null) =>
      page.evaluate(([range, cell]) => window.soakbook?.workbook.writeValues([{ range, values: [[cell]] }]), [below, siteId] as const);
    await files.getByText(text.chooseYards.chosen(rows.length), { exact: true }).waitFor();
    await type("Y-900");
    await files.getByText(text.chooseYards.chosen(rows.length + 1), { exact: true }).waitFor();
    await type(null);
    await files.getByText(text.chooseYards.chosen(rows.length), { exact: true }).waitFor();
  });

  it("lays out where every yard stands on a sheet with the days that it waits, and says when the records have moved on", async () => {
    const { page } = opened;
    await openTab(page, text.programTabs.next);
    await button(page, nextText.standing.lay).click();
    await pane(page).getByText(nextText.standing.upToDate).waitFor();
    const rows = (await cellsOf(standingSheet)).slice(standingSheet.preface.length + 1);
    expect(rows.length).toBe((await rowsOf(sitesSheet)).length);
    const waits = Object.keys(standingSheet.columns).indexOf("daysWaiting");
    expect(rows.filter((row) => typeof row[waits] === "number").length).toBeGreaterThan(10);
    const visit = (await rowsOf(visitsSheet)).findLast(({ record: { siteId } }) => siteId === "Y-001")!;
    await page.evaluate(([where, day]) => window.soakbook?.workbook.writeValues([{ range: where, values: [[day]] }]), [
      visit.at("date"),
      today(),
    ] as const);
    await pane(page).getByText(nextText.standing.old(1)).waitFor();
    await button(page, nextText.standing.anew).click();
    await pane(page).getByText(nextText.standing.upToDate).waitFor();
    expect(opened.faults).toEqual([]);
  });

  it("says in one line that a sheet of an earlier version lacks columns, and leads to the repair", async () => {
    const { page } = opened;
    const [owner, email] = ["owner", "email"].map((key) => placeAsSetUp(sitesSheet).cell(sitesSheet.preface.length, key as "owner"));
    await page.evaluate(
      (cells) => window.soakbook?.workbook.writeValues(cells.map((range) => ({ range, values: [[null]] }))),
      [owner!, email!],
    );
    await openTab(page, text.programTabs.yards);
    const slips = pane(page).getByRole("region", { name: text.sheetSlips });
    await slips.getByText('Sheet Sites has no columns "Owner", "E-mail"').waitFor();
    expect(await slips.getByText("Sheet Sites has no").count()).toBe(1);
    await slips.getByRole("button", { name: text.seeRepair }).click();
    await button(page, workbookText.check.repair(2)).click();
    await openTab(page, text.programTabs.yards);
    await pane(page)
      .getByRole("button", { name: /^Y-001/ })
      .waitFor();
    expect(opened.faults).toEqual([]);
  });
});
