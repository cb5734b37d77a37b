/** Adds sheets in a few requests of bounded size, all of them or none. */
import { layOut } from "./layout.ts";
import { inExcel, rangeIn, sameSheet } from "./run.ts";
import { SheetExists, type SheetLayout } from "../port.ts";

/** Excel takes an array of formats for the prepared rows of a column: this many of their cells to a request. */
const CELLS_PER_REQUEST = 8000;

export async function addSheets(layouts: readonly SheetLayout[], progress = nobodyWaits): Promise<void> {
  await refuseTaken(layouts);
  let added: readonly SheetLayout[] = [];
  let asked: readonly SheetLayout[] = [];
  try {
    for (const group of groupsOf(layouts)) {
      await progress(added.length / layouts.length);
      asked = group;
      await addGroup(group);
      added = [...added, ...group];
      asked = [];
    }
  } catch (error) {
    // Excel may have added some of a request that it did not finish. Where somebody else took one of its names meanwhile,
    // nobody can tell whose sheet is whose: those stay.
    await remove(error instanceof SheetExists ? added : [...added, ...asked]);
    throw error;
  }
  await progress(1);
}

function nobodyWaits(_share: number): Promise<void> {
  return Promise.resolve();
}

function groupsOf(layouts: readonly SheetLayout[]): readonly (readonly SheetLayout[])[] {
  const groups: SheetLayout[][] = [];
  let cells = Number.POSITIVE_INFINITY;
  for (const layout of layouts) {
    const own = layout.rows * layout.columns.filter(({ numberFormat }) => numberFormat !== undefined).length;
    cells += own;
    if (cells > CELLS_PER_REQUEST) {
      groups.push([layout]);
      cells = own;
    } else groups.at(-1)?.push(layout);
  }
  return groups;
}

function refuseTaken(layouts: readonly SheetLayout[]): Promise<void> {
  const names = layouts.map(({ name }) => name);
  return inExcel(names, async (context) => {
    const present = names.map((name) => context.workbook.worksheets.getItemOrNullObject(name));
    await context.sync();
    const taken = names.find(
      (name, index) => present[index]?.isNullObject === false || names.slice(0, index).some((before) => sameSheet(before, name)),
    );
    if (taken !== undefined) throw new SheetExists(taken);
  });
}

function addGroup(layouts: readonly SheetLayout[]): Promise<void> {
  const named = layouts.flatMap((layout) => layout.names ?? []);
  return inExcel(
    layouts.map(({ name }) => name),
    async (context) => {
      const earlier = named.map(({ name }) => context.workbook.names.getItemOrNullObject(name));
      if (earlier.length > 0) await context.sync();
      context.workbook.application.suspendScreenUpdatingUntilNextSync();
      for (const layout of layouts) layOut(context.workbook.worksheets.add(layout.name), layout);
      // A name whose sheet was deleted is still there, and leads nowhere.
      for (const name of earlier) if (!name.isNullObject) name.delete();
      for (const { name, cell } of named) context.workbook.names.add(name, rangeIn(context, cell));
    },
  );
}

/** What stood before is there again. Where Excel does not even do that, what went wrong first is what is told. */
async function remove(layouts: readonly SheetLayout[]): Promise<void> {
  try {
    await inExcel([], async (context) => {
      const there = layouts.map(({ name }) => context.workbook.worksheets.getItemOrNullObject(name));
      await context.sync();
      for (const sheet of there) if (!sheet.isNullObject) sheet.delete();
    });
  } catch {
    // Said by the caller.
  }
}
