import { expect, test } from "vitest";
import { layOutDocuments } from "../../../../addin/actions/export/document-sheet.ts";
import { freeSheetName } from "../../../../addin/actions/workbook/free-sheet-name.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

const blank = { heading: "", isNumber: false };

test("documents stand below one another on a sheet of their own, tables in columns and long sentences in rows of their own", async () => {
  const workbook = new WorkbookInMemory();
  const sentence = "Have buried utilities marked before any digging. ".repeat(4).trim();
  await layOutDocuments(workbook, "Handout of 2 yards", [
    {
      title: "Handout Y-001",
      subtitle: "2026-05-04",
      blocks: [
        { heading: "Your garden" },
        { paragraph: sentence },
        { facts: [["Floor", "120 sq ft"]] },
        {
          table: {
            caption: "To buy",
            columns: [
              { ...blank, heading: "Item" },
              { ...blank, heading: "Amount" },
            ],
            rows: [["=Compost", "2 cu yd"]],
            totals: 0,
          },
        },
        { list: ["Water it", "Weed it"] },
        { blanks: ["Signed"] },
      ],
    },
    { title: "Handout Y-002", subtitle: "2026-05-05", blocks: [] },
  ]);
  const rows = (await workbook.readSheets(["Handout of 2 yards"]))[0] ?? [];
  const shown = rows.map((row) => row.filter((cell) => cell !== null && cell !== ""));
  expect(shown.slice(0, 2)).toEqual([["Handout Y-001"], ["2026-05-04"]]);
  for (const row of [
    ["Your garden"],
    ["Floor", "120 sq ft"],
    ["To buy"],
    ["Item", "Amount"],
    ["=Compost", "2 cu yd"],
    ["- Water it"],
    ["Handout Y-002"],
  ])
    expect(shown).toContainEqual(row);
  const pieces = shown.flat().filter((cell) => sentence.includes(String(cell)));
  expect(pieces.length).toBeGreaterThan(1);
  expect(pieces.join(" ")).toBe(sentence);
  for (const piece of pieces) expect(String(piece).length).toBeLessThanOrEqual(100);
  expect(await workbook.selection()).toMatchObject({ sheet: "Handout of 2 yards", row: 0 });
});

test("a sheet gets a name that spreadsheets take, and a number where the name is taken", () => {
  expect(freeSheetName("Working of Design!D8: 1/2", [])).toBe("Working of Design!D8- 1-2");
  expect(freeSheetName("Estimate Y-001", ["estimate y-001", "Estimate Y-001 2"])).toBe("Estimate Y-001 3");
  expect(freeSheetName("A".repeat(40), ["A".repeat(31)])).toBe(`${"A".repeat(29)} 2`);
});
