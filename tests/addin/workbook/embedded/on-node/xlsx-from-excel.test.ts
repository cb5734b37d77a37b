/** A file in Excel's own spelling in the grid: it computes, and what the grid cannot show goes out again as it came. */
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, test } from "vitest";
import { fillDemoProgram } from "../../../../../addin/actions/demo/demo-program.ts";
import { copyFile, readCopyFile } from "../../../../../addin/actions/field-copy/copy-file.ts";
import { planBringBack, readHome } from "../../../../../addin/actions/field-copy/plan-bring-back.ts";
import { setUpWorkbook } from "../../../../../addin/actions/workbook/set-up-workbook.ts";
import { designSheet } from "../../../../../addin/records/design.ts";
import type { WorkbookSnapshot } from "../../../../../addin/workbook/embedded/workbook-file.ts";
import { fileByExcel, partsByExcel } from "../../file-by-excel.ts";
import { zipped } from "../../zipped.ts";
import { freshModule, type GridModule } from "./grid-on-node.ts";

const SHEET = "Our yards";
const ALL = { sheet: SHEET, row: 0, column: 0, rows: 5, columns: 5 };

let module: GridModule;

beforeAll(async () => {
  module = freshModule("grid");
});

async function openedInGrid(bytes: Uint8Array) {
  const on = module.startGrid();
  const { workbook } = await module.readXlsxFile("by-excel.xlsx", bytes, module.SETTINGS);
  on.grid.open(workbook);
  await on.workbook.calculated();
  return on;
}

type Grid = Awaited<ReturnType<typeof openedInGrid>>;

const saved = (on: Grid) => module.xlsxFile(on.grid.snapshot(), module.contentsOf(on.grid), on.workbook.settingsNow(), "with formulas");

describe("A file in Excel's own spelling", () => {
  let first: Grid;
  let bytes: Uint8Array;
  let file: ExcelJS.Worksheet;
  let names: ExcelJS.DefinedNames;

  beforeAll(async () => {
    first = await openedInGrid(fileByExcel());
    bytes = await saved(first);
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(bytes.buffer.slice(0) as ArrayBuffer);
    file = workbook.getWorksheet(SHEET)!;
    names = workbook.definedNames;
  });

  // The values are those that the file itself gives for Excel's; DRAWDOWN(6, 0.5) is 6 / 0.5.
  test("shows in the grid what it shows in Excel", async () => {
    expect((await first.workbook.readSheets([SHEET]))[0]).toEqual([
      ["Yard", "Area", "Tenth", "Sorted", "=1+1"],
      ["Alder", 520, 52, "Alder", 46_146],
      ["Birch", 1180, 118, "Birch", null],
      ["Alder", 40, 4, null, null],
      ["two parts", 532, true, "#N/A", null],
    ]);
  });

  test("has its filter: the row that is out is out, and no more hidden than that", () => {
    const sheet = first.grid.workbook().getSheetByName(SHEET)!;
    expect([1, 2, 3].map((row) => sheet.getSheet().getRowFiltered(row))).toEqual([false, true, false]);
    expect(sheet.getSheet().getRowRawVisible(2)).toBe(true);
    expect(file.autoFilter).toBe("A1:C4");
    expect([2, 3, 4].map((row) => file.getRow(row).hidden)).toEqual([false, true, false]);
  });

  test("keeps the settings that the add-in wrote in Excel, and none of another's", async () => {
    expect(await first.workbook.readSetting("soakbook.rows")).toBe("Sites\t400");
    expect(first.workbook.settingsNow().map(([key]) => key)).toEqual(["soakbook.rows"]);
  });

  test("goes out again with its conditional formats, link, looks of a text, name, drop-down, message and page", () => {
    const [conditional] = (file as unknown as { conditionalFormattings: { ref: string; rules: ExcelJS.CellIsRuleType[] }[] })
      .conditionalFormattings;
    expect(conditional?.ref).toBe("B2:B4");
    expect(conditional?.rules[0]).toMatchObject({ type: "cellIs", operator: "greaterThan", formulae: ["500"] });
    expect(conditional?.rules[0]?.style?.font?.color?.argb).toMatch(/9C0006$/);
    expect(file.getCell("A5").hyperlink).toBe("https://gardens.example/");
    expect(JSON.stringify(file.getCell("A5").value)).toContain('"bold":true');
    // This reader knows names of cells alone; that of a rate is computed with below.
    expect(names.getNames("'Our yards'!B3")).toEqual(["Areas"]);
    expect(file.getCell("A3").dataValidation).toMatchObject({ type: "list", formulae: ['"Alder,Birch"'] });
    expect(JSON.stringify(file.getCell("B1").note)).toContain("As seen from above.");
    expect(file.pageSetup.orientation).toBe("landscape");
    expect(file.getCell("C2").formula).toBe("B2*Rate");
    expect(file.getCell("B5").formula).toContain("_xldudf_SOAK_DRAWDOWN(");
  });

  test("is the same workbook when it comes back from a second saving", async () => {
    const second = await openedInGrid(bytes);
    expect(await second.workbook.readSheets([SHEET])).toEqual(await first.workbook.readSheets([SHEET]));
    expect(await second.workbook.readFormulas(ALL)).toEqual(await first.workbook.readFormulas(ALL));
    expect(plain(second.grid.snapshot())).toEqual(plain(first.grid.snapshot()));
    expect(second.workbook.settingsNow()).toEqual(first.workbook.settingsNow());
  });

  test("a text that was typed over has lost its looks and kept its link", async () => {
    const on = await openedInGrid(bytes);
    await on.workbook.writeValues([{ range: { sheet: SHEET, row: 4, column: 0, rows: 1, columns: 1 }, values: [["typed"]] }]);
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load((await saved(on)).buffer.slice(0) as ArrayBuffer);
    expect(workbook.getWorksheet(SHEET)?.getCell("A5").value).toEqual({ text: "typed", hyperlink: "https://gardens.example/" });
  });

  test("with what the page cannot keep says so, sheet by sheet", async () => {
    const drawing = '<drawing r:id="rId2"/></worksheet>';
    const relations = partsByExcel["xl/worksheets/_rels/sheet1.xml.rels"] ?? "";
    const chart = 'xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart"';
    const types = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    const withChart = zipped({
      ...partsByExcel,
      "xl/worksheets/sheet1.xml": (partsByExcel["xl/worksheets/sheet1.xml"] ?? "").replace("</worksheet>", drawing),
      "xl/worksheets/_rels/sheet1.xml.rels": relations.replace(
        "</Relationships>",
        `<Relationship Id="rId2" Type="${types}/drawing" Target="../drawings/drawing1.xml"/></Relationships>`,
      ),
      "xl/drawings/drawing1.xml": `<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"><xdr:twoCellAnchor><xdr:from><xdr:col>6</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>1</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>9</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>9</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to><xdr:graphicFrame><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="Chart 1"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><a:graphic><a:graphicData uri="http://schemas.openxmlformats.org/drawingml/2006/chart"><c:chart ${chart} xmlns:r="${types}" r:id="rId1"/></a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor></xdr:wsDr>`,
      "xl/drawings/_rels/drawing1.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${types}/chart" Target="../charts/chart1.xml"/></Relationships>`,
      "xl/charts/chart1.xml": `<c:chartSpace ${chart}><c:chart><c:plotArea><c:barChart><c:barDir val="col"/></c:barChart></c:plotArea></c:chart></c:chartSpace>`,
    });
    const { leftBehind } = await module.readXlsxFile("chart.xlsx", withChart, module.SETTINGS);
    expect(leftBehind).toEqual(['Sheet "Our yards" has a chart, which this page cannot keep.']);
    expect((await module.readXlsxFile("none.xlsx", fileByExcel(), module.SETTINGS)).leftBehind).toEqual([]);
  });
});

/** Cells, looks and rules by the order of sheets: their ids are made anew each time, and formulas are read apart. */
function plain(snapshot: unknown) {
  const { sheetOrder, sheets, styles, resources } = JSON.parse(JSON.stringify(snapshot)) as WorkbookSnapshot;
  return {
    sheets: sheetOrder.map((id) => {
      const { id: _, cellData, ...sheet } = sheets[id]!;
      const cells = Object.entries(cellData ?? {}).map(([row, line]) => [
        row,
        Object.entries(line).map(([column, { s, v, t, custom }]) => [column, styles?.[String(s)], v, t, custom]),
      ]);
      return { ...sheet, cells };
    }),
    resources: resources?.map(({ name, data }) => [
      name,
      data.replaceAll(/"(uid|sheetId|unitId|id|localSheetId)":"[^"]*",?/g, "").replace(/^\{"[^"]*"/, ""),
    ]),
  };
}

test("A copy for the field computes in the page as its yards do at home, and comes back from there without a difference", async () => {
  const home = module.startGrid();
  await home.open(async (draft) => {
    await setUpWorkbook(draft);
    await fillDemoProgram(draft);
  });
  const copy = await openedInGrid(await copyFile(home.workbook, ["Y-001", "Y-003"]));
  const designs = async (on: Grid) => {
    const [cells = []] = await on.workbook.readSheets([designSheet.name]);
    return cells.filter(([siteId]) => siteId === "Y-001" || siteId === "Y-003");
  };
  const design = await designs(home);
  expect(design.length).toBe(2);
  expect(design[0]?.filter((cell) => typeof cell === "number").length).toBeGreaterThan(10);
  expect(await designs(copy)).toEqual(design);
  const back = await readCopyFile("back.xlsx", await saved(copy));
  if ("sentence" in back) throw new Error(back.sentence);
  expect(back.left).toEqual([]);
  expect(planBringBack(await readHome(home.workbook), back)).toEqual({ yards: [], sharedIds: [] });
});
