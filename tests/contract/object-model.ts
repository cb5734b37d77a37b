/** The part of Excel's object model that the adapter uses, over the in-memory workbook. */
import { HostError, type HostObject } from "./host-object.ts";
import { autoFilterObject, conditionalFormatsObject, namesObject, pageLayoutObject, type RangeObject } from "./sheet-looks.ts";
import { propertiesObject } from "./document-properties.ts";
import { COLUMN_POINTS, leftOf, shapesObject, topOf } from "./shapes.ts";
import { keyOf, type Area, type Sheet, type Spreadsheet, type Validation } from "./spreadsheet.ts";
import type { Content } from "./formula-functions.ts";

/** Which events somebody asked Excel for. */
export type EventName = "changed" | "calculated" | "activated" | "selected";

export function workbookObject(book: Spreadsheet, wanted: Set<EventName>): HostObject {
  return {
    type: "Workbook",
    properties: {
      Worksheets: { get: () => worksheetsObject(book, wanted) },
      Application: { get: () => applicationObject(book) },
      Settings: { get: () => settingsObject(book) },
      Properties: { get: () => propertiesObject(book) },
      Names: { get: () => namesObject(book) },
    },
    methods: { GetSelectedRanges: () => rangeAreasObject(book) },
  };
}

function worksheetsObject(book: Spreadsheet, wanted: Set<EventName>): HostObject {
  const registering = (event: string, name: EventName) => ({
    [`_Register${event}Event`]: () => void wanted.add(name),
    [`_Unregister${event}Event`]: () => void wanted.delete(name),
  });
  return {
    type: "WorksheetCollection",
    properties: {},
    items: () => book.sheets.map((sheet) => worksheetObject(book, sheet)),
    item: (key) => worksheetObject(book, sheetOrRefusal(book, key)),
    methods: {
      Add: (given: string | null) => {
        const name = given ?? `Sheet${book.sheets.length + 1}`;
        if (book.structureIsProtected) throw new HostError("AccessDenied", "The structure of the workbook is protected.");
        if (book.sheetNamed(name) !== undefined) throw new HostError("ItemAlreadyExists", `There is a sheet ${name} already.`);
        if (name.length > 31 || /[[\]:*?/\\]/.test(name)) throw new HostError("InvalidArgument", `${name} cannot name a sheet.`);
        return worksheetObject(book, book.addSheet(name));
      },
      GetItemOrNullObject: (name: string) => {
        const sheet = book.sheetNamed(name);
        return sheet === undefined ? null : worksheetObject(book, sheet);
      },
      ...registering("DataChanged", "changed"),
      ...registering("Calculated", "calculated"),
      ...registering("Activated", "activated"),
      ...registering("SelectionChanged", "selected"),
    },
  };
}

function sheetOrRefusal(book: Spreadsheet, key: string): Sheet {
  const sheet = book.sheetNamed(key);
  if (sheet === undefined) throw new HostError("ItemNotFound", `There is no sheet ${key}.`);
  return sheet;
}

function worksheetObject(book: Spreadsheet, sheet: Sheet): HostObject {
  return {
    type: "Worksheet",
    id: sheet.id,
    properties: {
      Id: { get: () => sheet.id },
      Name: { get: () => sheet.name },
      Protection: { get: () => ({ type: "WorksheetProtection", properties: { Protected: { get: () => sheet.isProtected } } }) },
      FreezePanes: { get: () => freezePanesObject(sheet) },
      Shapes: { get: () => shapesObject(sheet) },
      AutoFilter: { get: () => autoFilterObject(sheet, (area) => rangeObject(book, sheet, area)) },
      PageLayout: { get: () => pageLayoutObject(sheet) },
      StandardHeight: { get: () => topOf(1) },
    },
    methods: {
      Delete: () => {
        if (book.structureIsProtected) throw new HostError("AccessDenied", "The structure of the workbook is protected.");
        book.removeSheet(sheet);
      },
      Activate: () => {
        if (book.active !== sheet) book.select(sheet, [{ row: 0, column: 0, rows: 1, columns: 1 }]);
      },
      GetRangeByIndexes: (row: number, column: number, rows: number, columns: number) =>
        rangeObject(book, sheet, areaOrRefusal(row, column, rows, columns)),
      GetUsedRangeOrNullObject: (valuesOnly: boolean) => {
        book.settle();
        const used = sheet.usedArea(valuesOnly);
        return used === null ? null : rangeObject(book, sheet, used);
      },
    },
  };
}

function areaOrRefusal(row: number, column: number, rows: number, columns: number): Area {
  const inside = row >= 0 && column >= 0 && rows >= 1 && columns >= 1 && row + rows <= 1_048_576 && column + columns <= 16_384;
  if (!inside) throw new HostError("InvalidArgument", "The range is outside the sheet.");
  return { row, column, rows, columns };
}

function freezePanesObject(sheet: Sheet): HostObject {
  return {
    type: "WorksheetFreezePanes",
    properties: {},
    methods: {
      FreezeAt: (range: RangeObject) => void (sheet.frozen = range.area),
      FreezeRows: (rows: number) => void (sheet.frozen = { row: 0, column: 0, rows, columns: 0 }),
    },
  };
}

function rangeObject(book: Spreadsheet, sheet: Sheet, area: Area): RangeObject {
  const { row, column, rows, columns } = area;
  const change =
    <Value>(apply: (value: Value) => void) =>
    (value: Value) => {
      if (sheet.isProtected) throw new HostError("AccessDenied", "The sheet is protected.");
      apply(value);
    };
  const cells = <Answer>(read: (row: number, column: number) => Answer) => {
    book.settle();
    return Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (__, c) => read(row + r, column + c)));
  };
  const blank = (content: Content) => content ?? "";
  return {
    type: "Range",
    sheet,
    area,
    properties: {
      RowIndex: { get: () => row },
      ColumnIndex: { get: () => column },
      RowCount: { get: () => rows },
      ColumnCount: { get: () => columns },
      Worksheet: { get: () => worksheetObject(book, sheet) },
      Left: { get: () => leftOf(sheet, column) },
      Top: { get: () => topOf(row) },
      Format: { get: () => rangeFormatObject(sheet, area, change) },
      DataValidation: { get: () => dataValidationObject(sheet, area, change) },
      ConditionalFormats: { get: () => conditionalFormatsObject(sheet, area) },
      Values: {
        get: () => cells((r, c) => blank(sheet.contentAt(r, c))),
        set: change((values: Content[][]) => book.write(sheet, area, shaped(area, values), "as typed")),
      },
      Formulas: {
        get: () => cells((r, c) => blank(sheet.formulaAt(r, c))),
        set: change((formulas: Content[][]) => book.write(sheet, area, shaped(area, formulas), "as formulas")),
      },
      NumberFormat: {
        get: () => cells((r, c) => sheet.formatAt(r, c, "NumberFormat") ?? "General"),
        set: change((formats: string[][]) => {
          shaped(area, formats).forEach((line, r) =>
            line.forEach((format, c) => setFormat(sheet, row + r, column + c, "NumberFormat", format)),
          );
        }),
      },
      ColumnHidden: {
        set: change((hidden: boolean) => {
          for (let c = column; c < column + columns; c += 1) {
            if (hidden) sheet.hiddenColumns.add(c);
            else sheet.hiddenColumns.delete(c);
          }
        }),
      },
    },
    methods: {
      Select: () => {
        if (book.active !== sheet) throw new HostError("InvalidOperation", "Only a range of the sheet in front can be selected.");
        book.select(sheet, [area]);
      },
      _ValidateArraySize: (height: number, width: number) => {
        if (height !== rows || width !== columns)
          throw new HostError("InvalidArgument", `The array is not ${rows} by ${columns}, as the range is.`);
      },
      CopyFrom: (source: RangeObject, kind: string) => change(() => copyFormats(sheet, source.area, area, kind))(null),
      GetEntireColumn: () => rangeObject(book, sheet, { row: 0, column, rows: 1_048_576, columns }),
      GetRow: (index: number) => rangeObject(book, sheet, { row: row + index, column, rows: 1, columns }),
      GetBoundingRect: (other: RangeObject) => rangeObject(book, sheet, bounding(area, other.area)),
    },
  };
}

/** Excel refuses an array that is not as tall and wide as the range. */
function shaped<Value>(area: Area, values: readonly (readonly Value[])[]): readonly (readonly Value[])[] {
  if (values.length !== area.rows || values.some((line) => line.length !== area.columns)) {
    throw new HostError("InvalidArgument", `The array is not ${area.rows} by ${area.columns}, as the range is.`);
  }
  return values;
}

function bounding(one: Area, other: Area): Area {
  const row = Math.min(one.row, other.row);
  const column = Math.min(one.column, other.column);
  const end = (area: Area) => ({ row: area.row + area.rows, column: area.column + area.columns });
  return {
    row,
    column,
    rows: Math.max(end(one).row, end(other).row) - row,
    columns: Math.max(end(one).column, end(other).column) - column,
  };
}

type Change = <Value>(apply: (value: Value) => void) => (value: Value) => void;

function rangeFormatObject(sheet: Sheet, area: Area, change: Change): HostObject {
  const format = (name: string, allowed?: readonly unknown[]) => ({
    get: () => sheet.formatAt(area.row, area.column, name) ?? null,
    set: change((value: unknown) => {
      if (allowed !== undefined && !allowed.includes(value)) throw new HostError("InvalidArgument", `${String(value)} is no ${name}.`);
      for (let row = area.row; row < area.row + area.rows; row += 1)
        for (let column = area.column; column < area.column + area.columns; column += 1) setFormat(sheet, row, column, name, value);
    }),
  });
  return {
    type: "RangeFormat",
    properties: {
      WrapText: format("WrapText", [true, false]),
      VerticalAlignment: format("VerticalAlignment", ["Top", "Center", "Bottom", "Justify", "Distributed"]),
      ColumnWidth: {
        get: () => sheet.columnWidths.get(area.column) ?? COLUMN_POINTS,
        set: change((points: number) => {
          for (let column = area.column; column < area.column + area.columns; column += 1) sheet.columnWidths.set(column, points);
        }),
      },
      Font: {
        get: () => ({
          type: "RangeFont",
          properties: { Bold: format("Bold", [true, false]), Color: format("Color"), Size: format("Size") },
        }),
      },
      Fill: { get: () => ({ type: "RangeFill", properties: { Color: format("Fill") } }) },
    },
  };
}

function setFormat(sheet: Sheet, row: number, column: number, name: string, value: unknown): void {
  const key = keyOf(row, column);
  const formats = sheet.formats.get(key) ?? new Map<string, unknown>();
  sheet.formats.set(key, formats.set(name, value));
}

/** Excel repeats what is copied over a range that is a whole number of times as large. */
function copyFormats(sheet: Sheet, from: Area, to: Area, kind: string): void {
  if (kind !== "Formats") throw new HostError("InvalidArgument", `The in-memory Excel copies formats alone, not ${kind}.`);
  if (to.rows % from.rows !== 0 || to.columns % from.columns !== 0)
    throw new HostError("InvalidArgument", "The range to copy to is no multiple of the range to copy.");
  const covers = ({ area }: { readonly area: Area }) =>
    area.row <= from.row &&
    area.row + area.rows >= from.row + from.rows &&
    area.column >= to.column &&
    area.column < to.column + to.columns;
  for (const rule of sheet.colorRules.filter(covers))
    rule.area = bounding(rule.area, { ...to, column: rule.area.column, columns: rule.area.columns });
  for (let row = 0; row < to.rows; row += 1) {
    for (let column = 0; column < to.columns; column += 1) {
      const formats = sheet.formats.get(keyOf(from.row + (row % from.rows), from.column + (column % from.columns)));
      if (formats === undefined) sheet.formats.delete(keyOf(to.row + row, to.column + column));
      else sheet.formats.set(keyOf(to.row + row, to.column + column), new Map(formats));
    }
  }
}

function dataValidationObject(sheet: Sheet, area: Area, change: Change): HostObject {
  const at = (): Validation => {
    const there = sheet.validations.find((each) => JSON.stringify(each.area) === JSON.stringify(area));
    if (there !== undefined) return there;
    const made: Validation = { area };
    sheet.validations.push(made);
    return made;
  };
  const texts = ({ title, message }: { title: string; message: string }) => {
    if (title.length > 32 || message.length > 255)
      throw new HostError("InvalidArgument", "A title has at most 32 characters and a message 255.");
  };
  return {
    type: "DataValidation",
    properties: {
      Type: {
        get: () => {
          const rule = sheet.validationAt(area.row, area.column)?.rule;
          return rule === undefined ? "None" : "list" in (rule as object) ? "List" : "Custom";
        },
      },
      Rule: {
        get: () => sheet.validationAt(area.row, area.column)?.rule ?? {},
        set: change((rule: { list?: { source: string }; custom?: { formula: string } }) => {
          if (rule.custom !== undefined && /SOAK\./i.test(rule.custom.formula))
            throw new HostError("InvalidArgument", "A rule calls no custom function.");
          const source = rule.list?.source ?? "";
          if ((rule.custom === undefined && source === "") || (!source.startsWith("=") && source.length > 255))
            throw new HostError("InvalidArgument", "A list has 1 to 255 characters, or is a range.");
          at().rule = rule;
        }),
      },
      Prompt: {
        set: change((prompt: { title: string; message: string }) => {
          texts(prompt);
          at().prompt = prompt;
        }),
      },
      ErrorAlert: {
        get: () => sheet.validationAt(area.row, area.column)?.errorAlert ?? {},
        set: change((alert: { title: string; message: string }) => {
          texts(alert);
          at().errorAlert = alert;
        }),
      },
    },
  };
}

function rangeAreasObject(book: Spreadsheet): HostObject {
  const { active, selected } = book;
  if (selected.length === 0) throw new HostError("InvalidSelection", "No cells are selected.");
  const ranges = selected.map((area) => rangeObject(book, active, area));
  return {
    type: "RangeAreas",
    properties: {
      Areas: {
        get: () => ({
          type: "RangeCollection",
          properties: {},
          items: () => ranges,
          methods: {
            GetItemAt: (index: number) => {
              const range = ranges[index];
              if (range === undefined) throw new HostError("InvalidArgument", `There is no area ${index}.`);
              return range;
            },
          },
        }),
      },
    },
  };
}

function applicationObject(book: Spreadsheet): HostObject {
  return {
    type: "Application",
    properties: { CalculationMode: { get: () => book.calculationMode }, CalculationState: { get: () => book.calculationState } },
    methods: {
      SuspendApiCalculationUntilNextSync: () => {
        book.settle();
        book.isSuspended = true;
      },
      SuspendScreenUpdatingUntilNextSync: () => undefined,
      Calculate: (kind: string) => {
        if (!["Recalculate", "Full", "FullRebuild"].includes(kind))
          throw new HostError("InvalidArgument", `${kind} is no kind of calculation.`);
        book.calculate();
      },
    },
  };
}

function settingsObject(book: Spreadsheet): HostObject {
  const setting = (key: string): HostObject => ({
    type: "Setting",
    id: key,
    properties: { Key: { get: () => key }, Value: { get: () => book.settings.get(key) } },
  });
  return {
    type: "SettingCollection",
    properties: {},
    items: () => [...book.settings.keys()].map(setting),
    methods: {
      Add: (key: string, value: unknown) => {
        book.settings.set(key, value);
        return setting(key);
      },
      GetItemOrNullObject: (key: string) => (book.settings.has(key) ? setting(key) : null),
    },
  };
}
