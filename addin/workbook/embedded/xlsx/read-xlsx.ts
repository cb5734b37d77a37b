/** An .xlsx file as a workbook of the grid: one of ours, or one that Excel or another spreadsheet saved. */
import { DataValidationErrorStyle, DataValidationRenderMode, generateRandomId, type ICellData, type IStyleData } from "@univerjs/core";
import { readXlsx, type Cell, type CellStyle, type DataValidation, type Sheet, type Workbook } from "hucre/xlsx";
import { largestOf } from "../../../../functions/extremes.ts";
import { addinSettings, messagesWithoutRule, refusalOfParts, type CellMessage } from "../../file/packed-file.ts";
import { isErrorCode } from "../../port.ts";
import { textCell, valueCell } from "../cells.ts";
import { choiceRefusal, ROOM_BELOW_ROWS, ROOM_BESIDE_COLUMNS, SMALLEST_COLUMN_COUNT } from "../layout.ts";
import { readWorkbookFile, WorkbookFileRefused, writeWorkbookFile, type WorkbookSnapshot } from "../workbook-file.ts";
import { areasIn, type Area } from "./areas.ts";
import { carriedByCell, carriedBySheet, leftBehind } from "./carried.ts";
import { gridFilter } from "./filters.ts";
import { fromFileSpelling } from "../../file/formula-spelling.ts";
import { gridLook } from "./looks.ts";
import { pixelsHigh, pixelsWide } from "../../file/measures.ts";
import { gridNames } from "./names.ts";

const MILLISECONDS_A_DAY = 86_400_000;
const DAY_ZERO_MILLISECONDS = Date.UTC(1899, 11, 30);

export interface OpenedFile {
  readonly workbook: WorkbookSnapshot;
  /** What the file has and this page cannot keep, a sentence each. */
  readonly leftBehind: readonly string[];
}

/** The workbook in the file; `settings` is the name that the grid keeps our settings by. Throws WorkbookFileRefused in words. */
export async function readXlsxFile(fileName: string, bytes: Uint8Array, settings: string): Promise<OpenedFile> {
  const file = await opened(fileName, bytes);
  if (file.sheets.length === 0) throw new WorkbookFileRefused(`"${fileName}" holds no sheet.`);
  const id = generateRandomId(6);
  const styles = new Styles();
  const messages = messagesWithoutRule(bytes);
  const sheets = file.sheets.map((sheet) => new SheetReader(sheet, id, styles, messages.get(sheet.name) ?? []).read());
  const bySheet = <Part>(part: (sheet: (typeof sheets)[number]) => Part) =>
    JSON.stringify(Object.fromEntries(sheets.map((sheet) => [sheet.data.id, part(sheet) ?? undefined])));
  const names = gridNames(file.namedRanges ?? [], new Map(sheets.map(({ data }) => [data.name, data.id])));
  const snapshot = {
    id,
    name: "Program",
    styles: styles.named(),
    sheetOrder: sheets.map((sheet) => sheet.data.id),
    sheets: Object.fromEntries(sheets.map(({ data }) => [data.id, data])),
    resources: [
      { name: "SHEET_DATA_VALIDATION_PLUGIN", data: bySheet(({ rules }) => rules) },
      { name: "SHEET_DRAWING_PLUGIN", data: bySheet(({ drawings }) => drawings) },
      { name: "SHEET_FILTER_PLUGIN", data: bySheet(({ filter }) => filter) },
      { name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(names) },
    ],
    custom: { [settings]: [...settingsIn(file, bytes)] },
  };
  // What any file may hold is looked through as one of our own is.
  return { workbook: readWorkbookFile(fileName, writeWorkbookFile(snapshot, new Date())), leftBehind: leftBehind(file.sheets) };
}

/** The page writes them as properties of the document; what Excel's add-in has written since is newer. */
function settingsIn({ properties }: Workbook, bytes: Uint8Array): ReadonlyMap<string, string> {
  const written = Object.entries(properties?.custom ?? {}).filter((entry): entry is [string, string] => typeof entry[1] === "string");
  return new Map([...written, ...addinSettings(bytes)]);
}

async function opened(fileName: string, bytes: Uint8Array): Promise<Workbook> {
  const refusal = refusalOfParts(fileName, bytes);
  if (refusal !== null) throw new WorkbookFileRefused(refusal);
  try {
    return await readXlsx(bytes, { readStyles: true });
  } catch {
    throw new WorkbookFileRefused(`"${fileName}" cannot be read as an .xlsx workbook: it is damaged, cut off or of another kind.`);
  }
}

/** Equal looks are one style of the workbook. */
class Styles {
  readonly #names = new Map<string, string>();
  readonly #known = new Map<CellStyle, string>();

  nameOf(look: CellStyle): string {
    const known = this.#known.get(look);
    if (known !== undefined) return known;
    const style = JSON.stringify(gridLook(look));
    const name = this.#names.get(style) ?? `style ${this.#names.size + 1}`;
    this.#names.set(style, name);
    this.#known.set(look, name);
    return name;
  }

  named(): Record<string, IStyleData> {
    return Object.fromEntries([...this.#names].map(([style, name]) => [name, JSON.parse(style) as IStyleData]));
  }
}

class SheetReader {
  readonly #id = generateRandomId();
  readonly #cells = new Map<number, Map<number, ICellData>>();
  /** Columns in which long lists of choices stood: the grid keeps those in its rules. */
  readonly #listColumns = new Set<number>();

  constructor(
    private readonly sheet: Sheet,
    private readonly workbookId: string,
    private readonly styles: Styles,
    private readonly messages: readonly CellMessage[],
  ) {}

  read() {
    this.sheet.rows.forEach((row, at) => {
      row.forEach((value, column) => {
        if (value !== null && this.sheet.cells?.get(`${at},${column}`)?.formula === undefined)
          this.#put(at, column, shownAs(value, "string"));
      });
    });
    for (const [key, cell] of this.sheet.cells ?? []) {
      const [row = 0, column = 0] = key.split(",").map(Number);
      const { style, comment } = cell;
      const custom = { ...(comment === undefined ? {} : { note: comment.text }), ...carriedByCell(cell) };
      this.#put(row, column, {
        ...contentOf(cell),
        ...(style === undefined ? {} : { s: this.styles.nameOf(style) }),
        ...(Object.keys(custom).length === 0 ? {} : { custom }),
      });
    }
    // What an array formula has filled is its answer, not something typed.
    for (const [key, { formulaRef, formulaType }] of this.sheet.cells ?? []) {
      if (formulaType !== "array" || formulaRef === undefined) continue;
      for (const area of areasIn(formulaRef)) this.#forgetAnswers(area, key);
    }
    const rules = this.#rules();
    for (const { range, text } of this.messages) this.#note(areasIn(range.split(" ")[0] ?? "")[0], text);
    const rows = [...this.#cells].filter(([, cells]) => cells.size > 0);
    const columns = largestOf(rows.map(([, cells]) => largestOf([...cells.keys()]))) + 1;
    const { name, columns: widths = [], rowDefs = new Map(), merges = [], freezePane, hidden, veryHidden } = this.sheet;
    const hiddenRows = [...rowDefs].flatMap(([row, { hidden: isHidden }]) => (isHidden === true ? [row] : []));
    const filter = gridFilter(this.sheet.autoFilter, hiddenRows);
    const filteredOut = new Set(filter?.cachedFilteredOut);
    const [frozenRows, frozenColumns] = [freezePane?.rows ?? 0, freezePane?.columns ?? 0];
    const data = {
      id: this.#id,
      name,
      rowCount: largestOf([0, ...this.#cells.keys()]) + 1 + ROOM_BELOW_ROWS,
      columnCount: Math.max(columns + ROOM_BESIDE_COLUMNS, SMALLEST_COLUMN_COUNT),
      cellData: Object.fromEntries(rows.map(([row, cells]) => [row, Object.fromEntries(cells)])),
      columnData: Object.fromEntries(
        widths.flatMap(({ width, hidden: isHidden }, at) =>
          this.#listColumns.has(at) || (width === undefined && isHidden !== true)
            ? []
            : [[at, { ...(width === undefined ? {} : { w: pixelsWide(width) }), ...(isHidden === true ? { hd: 1 } : {}) }]],
        ),
      ),
      rowData: Object.fromEntries(
        [...rowDefs].map(([row, { height, hidden: isHidden }]) => [
          row,
          {
            ...(height === undefined ? {} : { h: pixelsHigh(height), ia: 0 }),
            ...(isHidden === true && !filteredOut.has(row) ? { hd: 1 } : {}),
          },
        ]),
      ),
      mergeData: merges.map(({ startRow, startCol, endRow, endCol }) => ({
        startRow,
        startColumn: startCol,
        endRow,
        endColumn: endCol,
      })),
      freeze: {
        xSplit: frozenColumns,
        ySplit: frozenRows,
        startColumn: frozenColumns > 0 ? frozenColumns : -1,
        startRow: frozenRows > 0 ? frozenRows : -1,
      },
      ...(hidden === true || veryHidden === true ? { hidden: 1 } : {}),
      ...carriedBySheet(this.sheet),
    };
    return { data, rules, filter, drawings: this.#drawings() };
  }

  #put(row: number, column: number, part: ICellData): void {
    const cells = this.#cells.get(row) ?? new Map<number, ICellData>();
    this.#cells.set(row, cells.set(column, { ...cells.get(column), ...part }));
  }

  #forgetAnswers({ startRow, startColumn, endRow, endColumn }: Area, formulaAt: string): void {
    for (let row = startRow; row <= endRow; row += 1)
      for (let column = startColumn; column <= endColumn; column += 1) {
        const cells = this.#cells.get(row);
        const cell = cells?.get(column);
        if (cell === undefined || `${row},${column}` === formulaAt) continue;
        const { v: _, t: __, p: ___, ...rest } = cell;
        cells?.set(column, rest);
      }
  }

  #rules() {
    return (this.sheet.dataValidations ?? []).flatMap((rule) => {
      const ranges = rule.range.split(" ").flatMap(areasIn);
      if (rule.inputMessage !== undefined) this.#note(ranges[0], rule.inputMessage);
      const formulas = rule.type === "list" ? { formula1: this.#choices(rule) } : formulasOf(rule);
      // A rule that allows anything carries a note alone.
      if (formulas.formula1 === undefined) return [];
      const words = rule.errorMessage ?? choiceRefusal("The entry", rule.values ?? []);
      return [
        {
          uid: generateRandomId(),
          type: rule.type,
          ranges: ranges.map((range) => ({ ...range, unitId: this.workbookId, sheetId: this.#id })),
          ...formulas,
          ...(rule.operator === undefined ? {} : { operator: rule.operator }),
          allowBlank: rule.allowBlank !== false,
          errorStyle: DataValidationErrorStyle.STOP,
          showErrorMessage: true,
          error: words,
          ...(rule.type === "list" ? { showDropDown: true, renderMode: DataValidationRenderMode.ARROW } : {}),
        },
      ];
    });
  }

  #note(area: Area | undefined, note: string): void {
    if (area === undefined) return;
    const cell = this.#cells.get(area.startRow)?.get(area.startColumn);
    if (cell?.custom?.["note"] === undefined) this.#put(area.startRow, area.startColumn, { custom: { ...cell?.custom, note } });
  }

  /** Choices as the grid keeps them. Those of a hidden column are the rule's own, and the column is not ours to keep. */
  #choices({ values, formula1 = "" }: DataValidation): string | undefined {
    if (values !== undefined) return JSON.stringify(values);
    const [area] = /^\$?[A-Z]+\$?\d+:\$?[A-Z]+\$?\d+$/.test(formula1) ? areasIn(formula1.replaceAll("$", "")) : [];
    const isOwn = area !== undefined && area.startColumn === area.endColumn && this.sheet.columns?.[area.startColumn]?.hidden === true;
    if (!isOwn) return formula1 === "" ? undefined : `=${formula1}`;
    this.#listColumns.add(area.startColumn);
    const choices: string[] = [];
    for (let row = area.startRow; row <= area.endRow; row += 1) {
      const value = this.sheet.rows[row]?.[area.startColumn];
      if (value !== null && value !== undefined) choices.push(String(value));
      this.#cells.get(row)?.delete(area.startColumn);
    }
    return JSON.stringify(choices);
  }

  #drawings() {
    const data = Object.fromEntries(
      (this.sheet.images ?? []).map(({ data: bytes, type, anchor, width = 0, height = 0, title }, at) => {
        const drawingId = title ?? `picture ${at + 1}`;
        const from = { row: anchor.from.row, column: anchor.from.col, rowOffset: 0, columnOffset: 0 };
        const to = { row: anchor.to?.row ?? from.row, column: anchor.to?.col ?? from.column, rowOffset: 0, columnOffset: 0 };
        return [
          drawingId,
          {
            unitId: this.workbookId,
            subUnitId: this.#id,
            drawingId,
            drawingType: 0,
            imageSourceType: "BASE64",
            source: `data:image/${type};base64,${inBase64(bytes)}`,
            transform: { left: 0, top: 0, width, height, angle: 0 },
            sheetTransform: { from, to, angle: 0 },
            axisAlignSheetTransform: { from, to, angle: 0 },
            anchorType: "1",
          },
        ];
      }),
    );
    return { data, order: Object.keys(data) };
  }
}

function contentOf({ value, type, formula, formulaType, formulaSharedIndex }: Cell): ICellData {
  if (formula === undefined) return shownAs(value, type);
  // The grid works the answer out itself.
  const shared = formulaType === "shared" && formulaSharedIndex !== undefined ? { si: `shared ${formulaSharedIndex}` } : {};
  return { ...shared, ...(formula === "" ? {} : { f: `=${fromFileSpelling(formula)}` }) };
}

function shownAs(value: Cell["value"], type: Cell["type"]): ICellData {
  if (value === null) return {};
  if (value instanceof Date) return withoutNothing(valueCell((value.getTime() - DAY_ZERO_MILLISECONDS) / MILLISECONDS_A_DAY));
  // An error that somebody typed or a formula gave is shown as it is; a text that only reads like one stays a text.
  if (typeof value === "string" && isErrorCode(value) && type === "error") return { v: value };
  return typeof value === "string" ? textCell(value) : withoutNothing(valueCell(value));
}

function withoutNothing(cell: ICellData): ICellData {
  return Object.fromEntries(Object.entries(cell).filter(([, part]) => part !== null));
}

function formulasOf({ formula1, formula2 }: DataValidation): { readonly formula1?: string; readonly formula2?: string } {
  return { ...(formula1 === undefined ? {} : { formula1 }), ...(formula2 === undefined ? {} : { formula2 }) };
}

function inBase64(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
