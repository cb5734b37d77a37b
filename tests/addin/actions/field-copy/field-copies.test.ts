import fc from "fast-check";
import { expect, test } from "vitest";
import type { Difference } from "../../../../addin/actions/field-copy/merge-rows.ts";
import { sheetsOfTakenYards, type TakenSheet } from "../../../../addin/actions/field-copy/taken-sheets.ts";
import { inputKeys } from "../../../../addin/actions/field-copy/taken-rows.ts";
import { holeTestsSheet } from "../../../../addin/records/hole-tests.ts";
import { placeAsSetUp } from "../../../../addin/records/place.ts";
import { readRecords } from "../../../../addin/records/read-records.ts";
import type { CellValue } from "../../../../addin/workbook/port.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { broughtBack, cloned, copyOf, home, put, rowsOf } from "./copies.ts";

/** What somebody does to one sheet. Numbers choose among what is there, whatever it is by then. */
type Edit =
  | { readonly does: "type"; readonly sheet: number; readonly row: number; readonly column: number; readonly word: number }
  | { readonly does: "rename"; readonly sheet: number; readonly row: number; readonly column: number }
  | { readonly does: "add"; readonly sheet: number; readonly yard: number; readonly name: number; readonly word: number }
  | { readonly does: "delete"; readonly sheet: number; readonly row: number }
  | { readonly does: "swap"; readonly sheet: number; readonly row: number }
  | { readonly does: "read"; readonly row: number; readonly minutes: number; readonly depth: number };

const small = fc.nat({ max: 7 });
const edit: fc.Arbitrary<Edit> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ does: fc.constant("type" as const), sheet: small, row: small, column: fc.nat({ max: 40 }), word: small }),
  },
  { weight: 1, arbitrary: fc.record({ does: fc.constant("rename" as const), sheet: small, row: small, column: small }) },
  { weight: 3, arbitrary: fc.record({ does: fc.constant("add" as const), sheet: small, yard: small, name: small, word: small }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant("delete" as const), sheet: small, row: small }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant("swap" as const), sheet: small, row: small }) },
  { weight: 2, arbitrary: fc.record({ does: fc.constant("read" as const), row: small, minutes: small, depth: small }) },
);

async function rowsThere(workbook: WorkbookInMemory, { sheet }: TakenSheet) {
  const [cells = []] = await workbook.readSheets([sheet.name]);
  return readRecords(sheet, cells).rows;
}

const isReading = (key: string) => /^(?:minutes|water)\d/.test(key);

/** `who` keeps what one person names apart from what others name: only added rows may bear one name in several copies. */
async function carryOut(workbook: WorkbookInMemory, who: string, count: number, each: Edit): Promise<void> {
  const taken =
    each.does === "read"
      ? sheetsOfTakenYards.find(({ sheet }) => sheet.name === holeTestsSheet.name)
      : sheetsOfTakenYards[each.sheet % sheetsOfTakenYards.length];
  if (taken === undefined) return;
  const { sheet, knownBy, rowsAre } = taken;
  const rows = await rowsThere(workbook, taken);
  const row = rows[("row" in each ? each.row : 0) % Math.max(1, rows.length)];
  const set = (values: Readonly<Record<string, CellValue>>, at = row) =>
    at === undefined
      ? Promise.resolve()
      : workbook.writeValues(Object.entries(values).map(([key, value]) => ({ range: at.at(key as never), values: [[value]] })));
  switch (each.does) {
    case "type": {
      const free = inputKeys(sheet).filter((key) => !(knownBy as readonly string[]).includes(key) && !isReading(key));
      return set({ [free[each.column % free.length] ?? ""]: each.word === 0 ? null : `word ${each.word}` });
    }
    case "rename": {
      const names = knownBy.slice(1);
      return set({ [names[each.column % Math.max(1, names.length)] ?? "siteId"]: `${who} ${count}` });
    }
    case "add": {
      const name = `added ${each.name % 3}`;
      const own = rowsAre === "one" ? `Y${who}-${count}` : `Y-00${1 + (each.yard % 2)}`;
      const free = inputKeys(sheet).find((key) => !(knownBy as readonly string[]).includes(key)) ?? "siteId";
      const names = Object.fromEntries(knownBy.slice(1).map((key) => [key, name]));
      return put(workbook, sheet, [{ ...names, siteId: own, [free]: `word ${each.word}` } as never]);
    }
    case "delete":
      return set(Object.fromEntries(inputKeys(sheet).map((key) => [key, null])));
    case "swap": {
      const other = rows[(each.row + 1) % Math.max(1, rows.length)];
      if (row === undefined || other === undefined) return;
      const keys = inputKeys(sheet);
      const [one, two] = [row, other].map(({ cells }) =>
        Object.fromEntries(keys.map((key) => [key, (cells as Record<string, CellValue>)[key] ?? null])),
      );
      await set(two ?? {}, row);
      return set(one ?? {}, other);
    }
    case "read": {
      const place = placeAsSetUp(holeTestsSheet);
      const free = [2, 3, 4].find((reading) => (row?.cells as Record<string, CellValue> | undefined)?.[`minutes${reading + 1}`] == null);
      if (row === undefined || free === undefined) return;
      // Each person reads at minutes of their own, or at those that others may read at too.
      const minutes = 40 + 10 * (each.minutes % 3);
      const there = [1, 2, 3, 4, 5].some((reading) => (row.cells as Record<string, CellValue>)[`minutes${reading}`] === minutes);
      if (there) return;
      return workbook.writeValues([
        { range: { ...place.cell(row.row, `minutes${free + 1}` as "minutes3") }, values: [[minutes]] },
        { range: { ...place.cell(row.row, `water${free + 1}` as "water3") }, values: [[each.depth]] },
      ]);
    }
  }
}

/** A person who answers every question the same way, whichever side it comes from. */
function chosen({ kind, field, home: [here], copy: [there] }: Difference) {
  if (kind === "rows differ") return "both" as const;
  if (kind === "deleted here") return "copy" as const;
  if (kind === "deleted in the copy") return "home" as const;
  if (kind !== "cell differs" || field === null) return null;
  return String(here?.get(field) ?? "") < String(there?.get(field) ?? "") ? ("copy" as const) : ("home" as const);
}

const ORDERS = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
];

test("three copies come to the same workbook in whatever order they are brought back, and twice the same changes nothing", async () => {
  const start = await home();
  const copies = [
    await copyOf(start, ["Y-001", "Y-002"]),
    await copyOf(start, ["Y-001", "Y-002"]),
    await copyOf(start, ["y-001", "Y-002"]),
  ];
  await fc.assert(
    fc.asyncProperty(
      fc.array(edit, { maxLength: 6 }),
      fc.array(fc.array(edit, { minLength: 2, maxLength: 9 }), { minLength: 3, maxLength: 3 }),
      async (atHome, inCopies) => {
        const mine = cloned(start);
        for (const [count, each] of atHome.entries()) if (each.does !== "swap") await carryOut(mine, "h", count, each);
        const theirs = copies.map(cloned);
        for (const [copy, edits] of inCopies.entries())
          for (const [count, each] of edits.entries()) {
            const workbook = theirs[copy];
            if (workbook !== undefined) await carryOut(workbook, "abc"[copy] ?? "", count, each);
          }
        const ends: (readonly string[])[] = [];
        for (const order of ORDERS) {
          const workbook = cloned(mine);
          for (const copy of order) {
            const back = theirs[copy];
            if (back === undefined) continue;
            await broughtBack(workbook, back, chosen);
          }
          ends.push(await rowsOf(workbook));
          await broughtBack(workbook, theirs[order[0] ?? 0] ?? workbook, chosen);
          ends.push(await rowsOf(workbook));
        }
        for (const end of ends) expect(end).toEqual(ends[0]);
      },
    ),
    { numRuns: 5 },
  );
});
