/** The workbook's file, read by two readers that are not ours. */
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, it } from "vitest";
import { designSheet } from "../../addin/records/design.ts";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import { recordSheets } from "../../addin/records/program-sheets.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import type { CellValue } from "../../addin/workbook/port.ts";
import { throughLibreOffice } from "../addin/actions/export/libreoffice.ts";
import { savedBytes, type OpenPage } from "./page.ts";
import { button, onProgramPage, openYard, status, unfoldAll } from "./pane.ts";

describe("The workbook's file", () => {
  let opened: OpenPage;
  let names: readonly string[];
  /** What the page shows, sheet by sheet, when the files are saved. */
  let shown: readonly (readonly (readonly CellValue[])[])[];
  const files = new Map<string, { readonly name: string; readonly bytes: Buffer }>();

  onProgramPage((page) => {
    opened = page;
  });

  beforeAll(async () => {
    const { page } = opened;
    await openYard(page, 0, "Basin");
    await unfoldAll(page);
    await button(page, "Save into the workbook").click();
    await status(page).filter({ hasText: "stands on the sheet Drawings" }).waitFor();
    await page.evaluate(() => window.soakbook?.workbook.calculated());
    [names, shown] = await page.evaluate(async () => {
      const { workbook } = window.soakbook ?? {};
      const all = (await workbook?.sheetNames()) ?? [];
      return [all, (await workbook?.readSheets(all)) ?? []] as const;
    });
    for (const [kind, name] of [
      ["With formulas", "Save to file"],
      ["Values only", "Save values only"],
    ] as const) {
      const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name, exact: true }).click()]);
      files.set(kind, { name: download.suggestedFilename(), bytes: await savedBytes(download) });
    }
  });

  const opening = async (bytes: Buffer) => {
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer);
    return workbook;
  };
  const bytesOf = (kind: string) => files.get(kind)?.bytes ?? Buffer.of();

  it("bears the day in its name, and says when it holds values alone", () => {
    expect(files.get("With formulas")?.name).toMatch(/^rain-gardens-\d{4}-\d{2}-\d{2}\.xlsx$/);
    expect(files.get("Values only")?.name).toMatch(/^rain-gardens-\d{4}-\d{2}-\d{2} values\.xlsx$/);
  });

  it("holds every cell of every sheet as the page shows it, with its formula beside it", async () => {
    const workbook = await opening(bytesOf("With formulas"));
    expect(workbook.worksheets.map(({ name }) => name)).toEqual(names);
    let formulas = 0;
    names.forEach((name, at) => {
      shown[at]?.forEach((row, down) => {
        row.forEach((value, across) => {
          const cell = workbook.getWorksheet(name)?.getCell(down + 1, across + 1);
          if (cell?.formula !== undefined) {
            formulas += 1;
            expect(cell.formula, `${name} ${cell.address}`).not.toMatch(/SOAK\./);
            // An error is Excel's to work out again.
            if (isError(value)) return;
          }
          expect(plain(cell), `${name} ${cell?.address}`).toEqual(value);
        });
      });
    });
    // Those of prepared rows too, whose answers are blank: one of ours a hole and one a line.
    expect(formulas).toBeGreaterThan(40);
    const lines = workbook.getWorksheet("Estimate lines");
    expect(lines?.getCell(600, 9).formula).toContain("_xldudf_SOAK_PRICED(");
  });

  it("keeps panes, widths, formats, drop-downs, notes, settings and the drawing", async () => {
    const workbook = await opening(bytesOf("With formulas"));
    const sites = workbook.getWorksheet("Sites");
    const units = cellOf(sitesSheet, firstRow(sitesSheet), "units");
    expect(sites?.views[0]).toMatchObject({ state: "frozen", ySplit: firstRow(sitesSheet) });
    expect(sites?.getColumn(units.column + 1).width).toBeGreaterThan(5);
    expect(sites?.getCell(units.row + 1, units.column + 1).dataValidation).toMatchObject({ type: "list", formulae: ['"us,metric"'] });
    const slope = cellOf(designSheet, firstRow(designSheet), "groundSlopePercent");
    expect(workbook.getWorksheet("Design")?.getCell(slope.row + 1, slope.column + 1).numFmt).not.toBe("General");
    const cover = cellOf(surfacesSheet, firstRow(surfacesSheet), "cover");
    const surfaces = workbook.getWorksheet("Surfaces");
    const [list = ""] = surfaces?.getCell(cover.row + 1, cover.column + 1).dataValidation.formulae ?? [];
    const [, column = "", from, to] = /^\$([A-Z]+)\$(\d+):\$[A-Z]+\$(\d+)$/.exec(String(list)) ?? [];
    expect(surfaces?.getColumn(column).hidden).toBe(true);
    const offered = Array.from(
      { length: Number(to) - Number(from) + 1 },
      (_, down) => surfaces?.getCell(`${column}${Number(from) + down}`).value,
    );
    expect(offered).toEqual(surfacesSheet.columns.cover.choices);
    const noted = recordSheets.flatMap((sheet) =>
      Object.values(sheet.columns).flatMap((each, at) =>
        "note" in each && each.note !== undefined ? [[sheet, at, each.note] as const] : [],
      ),
    );
    expect(noted.length).toBeGreaterThan(10);
    for (const [sheet, at, note] of noted) {
      const comment = workbook.getWorksheet(sheet.name)?.getCell(firstRow(sheet), at + 1).note;
      expect(typeof comment === "string" ? comment : comment?.texts?.map(({ text }) => text).join("")).toBe(note);
    }
    expect(workbook.getWorksheet("Drawings")?.getImages()).toHaveLength(1);
  });

  it("as values alone holds no formula, and LibreOffice shows the same in every cell", async () => {
    const [converted = Buffer.of()] = await throughLibreOffice({ "values.xlsx": bytesOf("Values only") });
    const workbook = await opening(converted);
    names.forEach((name, at) => {
      shown[at]?.forEach((row, down) => {
        row.forEach((value, across) => {
          const cell = workbook.getWorksheet(name)?.getCell(down + 1, across + 1);
          // LibreOffice keeps an error as a formula that gives it.
          expect(cell?.formula, `${name} ${cell?.address}`).toBe(isError(value) ? value : undefined);
          const there = plain(cell);
          // It writes fifteen digits.
          if (typeof value === "number")
            expect(Number(there) / (value || 1), `${name} ${cell?.address}`).toBeCloseTo(value === 0 ? 0 : 1, 14);
          else expect(there, `${name} ${cell?.address}`).toEqual(value);
        });
      });
    });
  });

  it("leaves the workbook in the page as it was", async () => {
    expect(await opened.page.evaluate(async (all) => window.soakbook?.workbook.readSheets(all), names)).toEqual(shown);
  });

  it("opens here again as the same workbook: every cell computed anew, the drawing and the settings with it", async () => {
    const { page } = opened;
    const settings = () => page.evaluate(() => window.soakbook?.workbook.readSetting("soakbook.rows"));
    const before = await settings();
    await page.locator("#pane .pane").evaluate((each) => each.classList.add("of-the-first-workbook"));
    await page.locator("#chosen-file").setInputFiles({
      name: "from-excel.xlsx",
      mimeType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
      buffer: bytesOf("With formulas"),
    });
    await page.getByRole("dialog").getByRole("button", { name: "Open it without saving" }).click();
    await page.locator("#pane .pane:not(.of-the-first-workbook)").waitFor();
    expect(await page.evaluate(() => window.soakbook?.workbook.sheetNames())).toEqual(names);
    expect(await page.evaluate(async (all) => window.soakbook?.workbook.readSheets(all), names)).toEqual(shown);
    expect(await page.evaluate(() => window.soakbook?.workbook.pictureNames("Drawings"))).toEqual(["Basin Y-001"]);
    expect(await settings()).toBe(before);
    expect(opened.faults).toEqual([]);
  });

  it("says in words that a file is no workbook, and leaves the present one as it is", async () => {
    const { page } = opened;
    await page
      .locator("#chosen-file")
      .setInputFiles({ name: "cut.xlsx", mimeType: "", buffer: bytesOf("With formulas").subarray(0, 5000) });
    const dialog = page.getByRole("dialog");
    expect(await dialog.innerText()).toMatch(/"cut\.xlsx" cannot be read as an \.xlsx workbook.*Your present workbook is unchanged\./s);
    await dialog.getByRole("button").first().click();
    expect(await page.evaluate(async (all) => window.soakbook?.workbook.readSheets(all), names)).toEqual(shown);
  });
});

function isError(value: CellValue): boolean {
  return typeof value === "string" && /^#[A-Z/0]+[!?A]$/.test(value);
}

const MILLISECONDS_A_DAY = 86_400_000;

/** A cell as the port reads it: a day is its number, an error its code. */
function plain(cell: ExcelJS.Cell | undefined): CellValue {
  const held = (cell?.formula === undefined ? cell?.value : cell.result) ?? null;
  if (held === "") return null;
  if (held instanceof Date) return (held.getTime() - Date.UTC(1899, 11, 30)) / MILLISECONDS_A_DAY;
  if (typeof held === "object" && held !== null && "error" in held) return String(held.error);
  if (typeof held === "object" && held !== null && "richText" in held) return held.richText.map(({ text }) => text).join("");
  return held as CellValue;
}
