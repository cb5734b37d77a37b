import { expect, test } from "vitest";
import { checkWorkbook } from "../../addin/actions/workbook/check-workbook.ts";
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { readProgram } from "../../addin/actions/program/read-program.ts";
import { programState, refuseOldSpreadsheet, setUpWorkbook, sheetNamesOfProgram } from "../../addin/actions/workbook/set-up-workbook.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

const wellBehaved = () => excelWorkbook((error) => expect.fail(String(error)));

test("the program's workbook is set up in Excel in at most fifteen requests, none over 400 kB, and says how far it is", async () => {
  const excel = new InMemoryExcel();
  const shares: number[] = [];
  await setUpWorkbook(wellBehaved(), (share) => Promise.resolve(void shares.push(share)));
  expect(shares.length).toBeGreaterThan(4);
  expect(shares).toEqual(shares.toSorted((one, other) => one - other));
  expect([shares[0], shares.at(-1)]).toEqual([0, 1]);
  expect(excel.largestRequestBytes).toBeLessThan(400_000);
  expect(excel.book.sheets.map((sheet) => sheet.name)).toEqual(["Sheet1", ...sheetNamesOfProgram]);
  expect(excel.roundTrips).toBeLessThanOrEqual(15);
  const formulas = excel.book.sheets.flatMap((sheet) => [...sheet.cells.values()].flatMap((cell) => cell.formula ?? []));
  expect(formulas.some((formula) => formula.includes("SOAK.SITEDESIGN("))).toBe(true);
});

test("an Excel whose formulas fill no cells beside them says so before anything is set up, and keeps nothing of the trial", async () => {
  const excel = new InMemoryExcel();
  const workbook = wellBehaved();
  await expect(refuseOldSpreadsheet(workbook)).resolves.toBeUndefined();
  excel.book.isOld = true;
  await expect(refuseOldSpreadsheet(workbook)).rejects.toThrow(
    "Nothing was set up: in this Excel a formula cannot fill the cells below it (dynamic arrays), and the program's sheets rest on that.",
  );
  expect(excel.book.sheets.map(({ name }) => name)).toEqual(["Sheet1"]);
  excel.book.structureIsProtected = true;
  await expect(refuseOldSpreadsheet(workbook)).rejects.toThrow("This workbook is protected or read-only.");
});

test("a set-up that Excel stops in its midst leaves no sheet behind, and the next one is whole", async () => {
  const excel = new InMemoryExcel();
  const workbook = wellBehaved();
  let told = 0;
  const stopped = setUpWorkbook(workbook, () => {
    told += 1;
    if (told === 3) excel.refuseNext("Timeout", "too long");
    return Promise.resolve();
  });
  await expect(stopped).rejects.toThrow("Excel did not answer in time.");
  expect(excel.book.sheets.map(({ name }) => name)).toEqual(["Sheet1"]);
  expect(await programState(workbook)).toEqual({ state: "absent" });
  await setUpWorkbook(workbook);
  expect(await programState(workbook)).toEqual({ state: "ready" });
});

test("a sheet that somebody else adds under one of the names meanwhile is never taken away again", async () => {
  const excel = new InMemoryExcel();
  excel.afterNextRequest(() => {
    const theirs = excel.book.addSheet("Rules");
    excel.book.write(theirs, { row: 0, column: 0, rows: 1, columns: 1 }, [["theirs"]], "as typed");
  });
  await expect(setUpWorkbook(wellBehaved())).rejects.toThrow("This workbook already has a sheet named");
  expect(excel.book.sheetNamed("Rules")?.contentAt(0, 0)).toBe("theirs");
});

test.each(["Automatic", "Manual"] as const)(
  "formulas that were written while calculation was suspended answer as the %s mode says",
  async (mode) => {
    const excel = new InMemoryExcel();
    excel.book.calculationMode = mode;
    await setUpWorkbook(wellBehaved());
    const [first] = [...excel.book.sheetNamed("What-if")!.cells.values()].filter(({ formula }) => formula?.includes("BASINAREA"));
    expect(first?.content === 0).toBe(mode === "Manual");
  },
);

test("the demo program's formulas answer in Excel: nothing is unknown or in another's way, and nothing is left to repair", async () => {
  const excel = new InMemoryExcel();
  const workbook = wellBehaved();
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
  const shown = excel.book.sheets.flatMap((sheet) => [
    ...[...sheet.cells.values()].map(({ content }) => content),
    ...sheet.spilled.values(),
  ]);
  expect(shown.filter((content) => typeof content === "string" && ["#NAME?", "#SPILL!", "#REF!", "#CALC!"].includes(content))).toEqual([]);
  expect((await checkWorkbook(workbook)).filter(({ repair }) => repair !== undefined)).toEqual([]);
  const { yards } = await readProgram(workbook);
  expect(yards.length).toBeGreaterThan(10);
  expect(yards.filter(({ design }) => design.status === "fits").length).toBeGreaterThan(5);
});
