import { beforeEach, describe, expect, test } from "vitest";
import { InMemoryExcel } from "./in-memory-excel.ts";

/** What a careless adapter might do. Were one of these not caught, the contract tests would prove nothing. */
describe("The in-memory Excel catches", () => {
  let excel: InMemoryExcel;
  beforeEach(() => {
    excel = new InMemoryExcel();
  });

  const firstCell = (context: Excel.RequestContext) => context.workbook.worksheets.getItem("Sheet1").getRangeByIndexes(0, 0, 1, 1);

  test("a property that is read without having been loaded", async () => {
    const careless = Excel.run(async (context) => {
      const cell = firstCell(context);
      await context.sync();
      return cell.values;
    });
    await expect(careless).rejects.toMatchObject({ code: "PropertyNotLoaded" });
  });

  test("a property that was loaded and is read before the round trip", async () => {
    await expect(Excel.run(async (context) => firstCell(context).load("values").values)).rejects.toMatchObject({
      code: "PropertyNotLoaded",
    });
  });

  test("a property of another name than the loaded one", async () => {
    const careless = Excel.run(async (context) => {
      const cell = firstCell(context).load("values");
      await context.sync();
      return cell.formulas;
    });
    await expect(careless).rejects.toMatchObject({ code: "PropertyNotLoaded" });
  });

  test("whether an object is there, asked before the round trip", async () => {
    await expect(Excel.run(async (context) => context.workbook.worksheets.getItemOrNullObject("Sites").isNullObject)).rejects.toMatchObject(
      { code: "PropertyNotLoaded" },
    );
  });

  test("a call on an object that is not there", async () => {
    const careless = Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject("Sites");
      await context.sync();
      sheet.activate();
      await context.sync();
    });
    await expect(careless).rejects.toThrow();
  });

  test("a sheet that is not there", async () => {
    const careless = Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sites").activate();
    });
    await expect(careless).rejects.toMatchObject({ code: "ItemNotFound" });
  });

  test("an array of another size than the range, with nothing written", async () => {
    const careless = Excel.run(async (context) => {
      firstCell(context).values = [[1, 2]];
    });
    await expect(careless).rejects.toMatchObject({ code: "InvalidArgument" });
    expect(excel.book.sheetNamed("Sheet1")?.contentAt(0, 0)).toBeNull();
  });

  test("an object of one batch that is used in another", async () => {
    const [elsewhere] = await Excel.run(async (context) => [firstCell(context)]);
    const careless = Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").freezePanes.freezeAt(elsewhere!);
    });
    await expect(careless).rejects.toMatchObject({ code: "InvalidRequestContext" });
  });

  test("a value of a formatting choice that Excel does not have", async () => {
    const careless = Excel.run(async (context) => {
      firstCell(context).format.verticalAlignment = "Middle" as "Center";
    });
    await expect(careless).rejects.toMatchObject({ code: "InvalidArgument" });
  });

  test("a member that is newer than the requirement sets of the manifests", async () => {
    const careless = Excel.run(async (context) => {
      firstCell(context).getSpillParent();
    });
    await expect(careless).rejects.toMatchObject({ code: "ApiNotFound" });
  });

  test("a part of the object model that it does not know, by its name", async () => {
    const careless = Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").charts.load("items/name");
    });
    await expect(careless).rejects.toThrow("The in-memory Excel does not model Worksheet.Charts.");
  });

  test("a misspelt name among those to load", async () => {
    const careless = Excel.run(async (context) => {
      firstCell(context).load("valeus");
    });
    await expect(careless).rejects.toThrow("Range.Valeus");
  });

  test("a load of everything, which is slow in Excel", async () => {
    const careless = Excel.run(async (context) => {
      firstCell(context).load();
    });
    await expect(careless).rejects.toThrow("name the properties");
  });

  test("a request of more than 5 MB", async () => {
    const careless = Excel.run(async (context) => {
      context.workbook.settings.add("key", "x".repeat(6_000_000));
    });
    await expect(careless).rejects.toMatchObject({ code: "RequestPayloadSizeLimitExceeded" });
  });

  test("text that Excel would take for a formula, a date or a number", async () => {
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").getRangeByIndexes(0, 0, 1, 3).values = [["=1+1", "1/2", "12"]];
    });
    const sheet = excel.book.sheetNamed("Sheet1")!;
    expect(sheet.formulaAt(0, 0)).toBe("=1+1");
    expect([0, 1, 2].map((column) => typeof sheet.contentAt(0, column))).toEqual(["number", "number", "number"]);
  });
});
