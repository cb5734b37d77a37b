/**
 * The workbook port on Office.js: Excel on Windows, on Mac and on the web.
 *
 * A verb is one round trip to Excel as long as nothing is wrong; what was wrong is looked up only afterwards.
 * Everything here is in ExcelApi 1.9, which the manifests demand.
 */
import { gather } from "./bursts.ts";
import { asFormula, asRead, asTyped } from "./cells.ts";
import { addSheets } from "./add-sheets.ts";
import { continueLayout } from "./layout.ts";
import { placePicture, pictureNames } from "./pictures.ts";
import { codeOf } from "./refusals.ts";
import { readRequests, writeRequests, type Piece } from "./requests.ts";
import { inExcel, namesIn, rangeIn } from "./run.ts";
import {
  addressOf,
  WorkbookRefused,
  type CellRange,
  type CellValue,
  type Extent,
  type FormulaWrite,
  type StopListening,
  type ValueWrite,
  type Workbook,
} from "../port.ts";

const CALCULATION_POLL_MILLISECONDS = 50;
const CALCULATION_LIMIT_MILLISECONDS = 60_000;
/** From here on Excel calculates once after a write, and not after each of its parts. */
const MANY_FORMULAS = 500;

/** The open workbook. What goes wrong in answer to an event, where nobody waits, goes to `onTrouble`. */
export function excelWorkbook(onTrouble: (error: unknown) => void): Workbook {
  return {
    sheetNames,
    spills,
    addSheets,
    read,
    extents,
    readSheets,
    readFormulas,
    writeValues,
    writeFormulas,
    continueLayout,
    placePicture,
    pictureNames,
    calculated,
    selection,
    select,
    onSelectionChanged: (listener) => onSelectionChanged(listener, onTrouble),
    onCellsChanged: (listener) => onCellsChanged(listener, onTrouble),
    readSetting,
    writeSetting,
  };
}

function sheetNames(): Promise<readonly string[]> {
  return inExcel([], namesIn);
}

async function read(ranges: readonly CellRange[]): Promise<readonly (readonly (readonly CellValue[])[])[]> {
  const answers: CellValue[][][] = ranges.map(() => []);
  for (const pieces of readRequests(ranges)) {
    const values = await readPieces(pieces);
    pieces.forEach((piece, index) => {
      for (const row of values[index] ?? []) answers[piece.of]?.push(row);
    });
  }
  return answers;
}

function readPieces(pieces: readonly Piece<null>[]): Promise<readonly CellValue[][][]> {
  return inExcel(sheetsOf(pieces), async (context) => {
    const cells = pieces.map(({ range }) => rangeIn(context, range).load("values"));
    await context.sync();
    return cells.map((each) => each.values.map((row) => row.map(asRead)));
  });
}

function extents(names: readonly string[]): Promise<readonly Extent[]> {
  return inExcel(names, async (context) => {
    const used = names.map((name) => {
      const cells = context.workbook.worksheets.getItem(name).getUsedRangeOrNullObject(true);
      return cells.load("rowIndex, columnIndex, rowCount, columnCount");
    });
    await context.sync();
    return used.map((cells) =>
      cells.isNullObject
        ? { rows: 0, columns: 0 }
        : { rows: cells.rowIndex + cells.rowCount, columns: cells.columnIndex + cells.columnCount },
    );
  });
}

/** Two round trips, however many sheets: how far each reaches, then what they hold. */
async function readSheets(names: readonly string[]): Promise<readonly (readonly (readonly CellValue[])[])[]> {
  const ranges = (await extents(names)).map((extent, index): CellRange => ({ sheet: names[index] ?? "", row: 0, column: 0, ...extent }));
  const answers = (await read(ranges.filter(({ rows }) => rows > 0)))[Symbol.iterator]();
  return ranges.map(({ rows }) => (rows === 0 ? [] : (answers.next().value ?? [])));
}

function readFormulas(range: CellRange): Promise<readonly (readonly string[])[]> {
  return inExcel([range.sheet], async (context) => {
    const cells = rangeIn(context, range);
    cells.load("formulas, values");
    await context.sync();
    const { formulas, values } = cells;
    return formulas.map((row, rowIndex) => row.map((formula, columnIndex) => asFormula(formula, values[rowIndex]?.[columnIndex])));
  });
}

async function writeValues(writes: readonly ValueWrite[]): Promise<void> {
  const sheets = sheetsOf(writes);
  for (const pieces of writeRequests(writes.map(({ range, values }) => ({ range, rows: values.map((row) => row.map(asTyped)) })))) {
    await inExcel(sheets, async (context) => {
      for (const { cells, rows } of cellsToWrite(context, sheets, pieces)) cells.values = rows;
    });
  }
}

async function writeFormulas(writes: readonly FormulaWrite[]): Promise<void> {
  for (const { range, formulas } of writes) {
    if (formulas.flat().some((formula) => !formula.startsWith("=")))
      throw new Error(`A formula for ${addressOf(range)} does not start with "=".`);
  }
  const sheets = sheetsOf(writes);
  const areMany = writes.reduce((count, { range }) => count + range.rows * range.columns, 0) > MANY_FORMULAS;
  for (const pieces of writeRequests(writes.map(({ range, formulas }) => ({ range, rows: formulas })))) {
    await inExcel(sheets, async (context) => {
      if (areMany) context.workbook.application.suspendApiCalculationUntilNextSync();
      for (const { cells, rows } of cellsToWrite(context, sheets, pieces)) cells.formulas = rows;
    });
  }
  if (areMany) await calculateWhereAutomatic();
}

/** What was suspended is not made up for by itself. A person who calculates by hand goes on doing so. */
function calculateWhereAutomatic(): Promise<void> {
  return inExcel([], async (context) => {
    const application = context.workbook.application.load("calculationMode");
    await context.sync();
    if (application.calculationMode !== "Manual") application.calculate("Recalculate");
  });
}

/** On a sheet of its own, so that nothing stands in the way. An Excel without dynamic arrays answers one cell, or #NAME?. */
function spills(): Promise<boolean> {
  return inExcel([], async (context) => {
    const sheet = context.workbook.worksheets.add();
    await context.sync();
    try {
      const cells = sheet.getRangeByIndexes(0, 0, TRIAL.length, 1);
      sheet.getRangeByIndexes(0, 0, 1, 1).formulas = [[`=SEQUENCE(${TRIAL.length})`]];
      cells.load("values");
      await context.sync();
      return JSON.stringify(cells.values.flat()) === JSON.stringify(TRIAL);
    } finally {
      sheet.delete();
      await context.sync();
    }
  });
}

const TRIAL: readonly number[] = [1, 2, 3];

/** Excel stops at the first sheet that is not there; with every sheet asked for first, that is before anything is written. */
function cellsToWrite<Value>(
  context: Excel.RequestContext,
  sheets: readonly string[],
  pieces: readonly Piece<readonly (readonly Value[])[]>[],
) {
  for (const sheet of sheets) context.workbook.worksheets.getItem(sheet);
  return pieces.map(({ range, rows }) => ({ cells: rangeIn(context, range), rows: rows.map((row) => [...row]) }));
}

/** In manual mode this calculates once, as the F9 key does, and leaves the mode as the person set it. */
async function calculated(): Promise<void> {
  let state = await calculationState();
  if (state.manual) {
    await inExcel([], async (context) => context.workbook.application.calculate("Recalculate"));
    state = await calculationState();
  }
  for (let waited = 0; !state.done; waited += CALCULATION_POLL_MILLISECONDS) {
    if (waited >= CALCULATION_LIMIT_MILLISECONDS)
      throw new WorkbookRefused("Excel is still calculating. Wait until it has finished, then try again.");
    await new Promise((resolve) => setTimeout(resolve, CALCULATION_POLL_MILLISECONDS));
    state = await calculationState();
  }
}

function calculationState(): Promise<{ readonly manual: boolean; readonly done: boolean }> {
  return inExcel([], async (context) => {
    const application = context.workbook.application;
    application.load("calculationMode, calculationState");
    await context.sync();
    return { manual: application.calculationMode === "Manual", done: application.calculationState === "Done" };
  });
}

/** Of several areas selected together, the first. */
async function selection(): Promise<CellRange | null> {
  try {
    return await inExcel([], async (context) => {
      const area = context.workbook.getSelectedRanges().areas.getItemAt(0);
      area.load("rowIndex, columnIndex, rowCount, columnCount, worksheet/name");
      await context.sync();
      return { sheet: area.worksheet.name, row: area.rowIndex, column: area.columnIndex, rows: area.rowCount, columns: area.columnCount };
    });
  } catch (error) {
    // A chart or a picture is selected.
    if (codeOf(error) === "InvalidSelection") return null;
    throw error;
  }
}

function select(range: CellRange): Promise<void> {
  return inExcel([range.sheet], async (context) => {
    context.workbook.worksheets.getItem(range.sheet).activate();
    rangeIn(context, range).select();
  });
}

/** What was never written here may stand where a file that another spreadsheet wrote has it: among the document's properties. */
function readSetting(key: string): Promise<string | null> {
  return inExcel([], async (context) => {
    const setting = context.workbook.settings.getItemOrNullObject(key);
    setting.load("value");
    const property = context.workbook.properties.custom.getItemOrNullObject(key);
    property.load("value");
    await context.sync();
    if (!setting.isNullObject) return String(setting.value);
    return property.isNullObject ? null : String(property.value);
  });
}

function writeSetting(key: string, text: string): Promise<void> {
  return inExcel([], async (context) => {
    context.workbook.settings.add(key, text);
  });
}

function onSelectionChanged(listener: (selection: CellRange) => void, onTrouble: (error: unknown) => void): StopListening {
  const burst = gather(async () => {
    const selected = await selection();
    return () => {
      if (selected !== null) listener(selected);
    };
  }, onTrouble);
  // Going to another sheet changes what is selected, without a selection event.
  const stop = listen((sheets) => [sheets.onSelectionChanged.add(burst.signal), sheets.onActivated.add(burst.signal)], onTrouble);
  return () => {
    burst.stop();
    stop();
  };
}

function onCellsChanged(listener: (sheets: readonly string[]) => void, onTrouble: (error: unknown) => void): StopListening {
  const changed = new Set<string>();
  const burst = gather(async () => {
    const ids = [...changed];
    const names = await namesOf(ids);
    // Forgotten only now: had Excel not answered, the next change would bring these along.
    for (const id of ids) changed.delete(id);
    return () => {
      if (names.length > 0) listener(names);
    };
  }, onTrouble);
  const note = async ({ worksheetId }: { readonly worksheetId: string }) => {
    changed.add(worksheetId);
    await burst.signal();
  };
  const stop = listen((sheets) => [sheets.onChanged.add(note), sheets.onCalculated.add(note)], onTrouble);
  return () => {
    burst.stop();
    stop();
  };
}

function namesOf(ids: readonly string[]): Promise<readonly string[]> {
  return inExcel([], async (context) => {
    const sheets = context.workbook.worksheets;
    sheets.load("items/id, items/name");
    await context.sync();
    return sheets.items.filter((sheet) => ids.includes(sheet.id)).map((sheet) => sheet.name);
  });
}

type Registered = readonly OfficeExtension.EventHandlerResult<unknown>[];

function listen(register: (sheets: Excel.WorksheetCollection) => Registered, onTrouble: (error: unknown) => void): StopListening {
  const registered = inExcel([], async (context) => {
    const handlers = register(context.workbook.worksheets);
    await context.sync();
    return handlers;
  });
  registered.catch(onTrouble);
  return () => {
    registered.then(removeAll, () => undefined).catch(onTrouble);
  };
}

/** Excel takes a handler away only in the context that added it. */
async function removeAll(handlers: Registered): Promise<void> {
  const [first] = handlers;
  if (first === undefined) return;
  await Excel.run(first.context, async (context) => {
    for (const handler of handlers) handler.remove();
    await context.sync();
  });
}

function sheetsOf(pieces: readonly { readonly range: CellRange }[]): readonly string[] {
  return [...new Set(pieces.map((piece) => piece.range.sheet))];
}
