/** The open workbook as an .xlsx file: for Excel with the add-in, or as values alone for who has no add-in. */
import type { ICellData, IDataValidationRule, IRange, IWorkbookData, IWorksheetData, Nullable } from "@univerjs/core";
import { writeXlsx, type Cell, type CellStyle, type DataValidation, type WriteSheet } from "hucre/xlsx";
import { largestOf } from "../../../../functions/extremes.ts";
import { absolute, addressOf, isErrorCode, type CellRange, type CellValue } from "../../port.ts";
import { addressIn } from "./areas.ts";
import { givenBackToCell, givenBackToSheet } from "./carried.ts";
import { fileFilter, type GridFilter } from "./filters.ts";
import { inFileSpelling } from "../../file/formula-spelling.ts";
import { FILE_FONT, fileLook } from "./looks.ts";
import { digitsWide, pointsHigh } from "../../file/measures.ts";
import { fileNames, type GridName } from "./names.ts";

/** "with formulas" is the same workbook in Excel; "values only" shows the same and computes nothing. */
export type XlsxKind = "with formulas" | "values only";

/** What a sheet holds, from A1 to its last cell that shows something. */
export interface SheetContents {
  readonly name: string;
  readonly values: readonly (readonly CellValue[])[];
  /** "" where a cell holds none. */
  readonly formulas: readonly (readonly string[])[];
  /** What formulas fill beyond their own cells, each from the cell of its formula on. */
  readonly spills: readonly IRange[];
}

/** As much of the grid's snapshot as the file takes its looks from. */
export type Looks = Pick<IWorkbookData, "sheetOrder" | "sheets" | "styles" | "resources">;

function placeKey(row: number, column: number): string {
  return `${row},${column}`;
}

export function xlsxFile(
  looks: Looks,
  contents: readonly SheetContents[],
  settings: readonly (readonly [string, string])[],
  kind: XlsxKind,
): Promise<Uint8Array> {
  const held = new Map(contents.map((sheet) => [sheet.name, sheet]));
  const dropDowns = resourceOf<readonly IDataValidationRule[]>(looks, "SHEET_DATA_VALIDATION_PLUGIN");
  const drawings = resourceOf<SheetDrawings>(looks, "SHEET_DRAWING_PLUGIN");
  const filters = resourceOf<GridFilter>(looks, "SHEET_FILTER_PLUGIN");
  const names = Object.values(resourceOf<GridName>(looks, "SHEET_DEFINED_NAME_PLUGIN")).flatMap((name) => name ?? []);
  const sheetNames = new Map(looks.sheetOrder.map((id) => [id, looks.sheets[id]?.name ?? ""]));
  const styleOf = stylesOf(looks);
  return writeXlsx({
    sheets: looks.sheetOrder.flatMap((id) => {
      const sheet = looks.sheets[id];
      const content = held.get(sheet?.name ?? "");
      return sheet === undefined || content === undefined
        ? []
        : [new SheetWriter(sheet, content, styleOf, kind).written(dropDowns[id] ?? [], drawings[id], filters[id])];
    }),
    namedRanges: kind === "values only" ? [] : [...fileNames(names, sheetNames)],
    defaultFont: FILE_FONT,
    properties: { creator: "Soakbook", ...(kind === "values only" ? {} : { custom: Object.fromEntries(settings) }) },
  });
}

interface SheetDrawings {
  readonly data: Readonly<Record<string, Drawing>>;
}

interface Drawing {
  readonly source?: string;
  readonly sheetTransform?: { readonly from: { readonly row: number; readonly column: number } };
  readonly transform?: { readonly width?: number; readonly height?: number };
}

function resourceOf<Part>({ resources }: Looks, name: string): Readonly<Record<string, Part | undefined>> {
  const text = resources?.find((resource) => resource.name === name)?.data ?? "";
  return text === "" ? {} : (JSON.parse(text) as Record<string, Part>);
}

/** Each style is made once, so that the writer tells equal ones by looking at them. */
function stylesOf({ styles }: Looks): (cell: ICellData) => CellStyle | undefined {
  const made = new Map<string, CellStyle>();
  return ({ s }) => {
    const style = typeof s === "string" ? styles[s] : s;
    if (!style) return undefined;
    const key = typeof s === "string" ? s : JSON.stringify(s);
    const known = made.get(key) ?? fileLook(style);
    made.set(key, known);
    return known;
  };
}

class SheetWriter {
  readonly #cells = new Map<string, Partial<Cell>>();
  readonly #validations: DataValidation[] = [];
  /** Lists that are too long for a rule stand in hidden columns, one each. */
  readonly #lists = new Map<string, CellRange>();
  #rows: number;
  #columns: number;

  constructor(
    private readonly sheet: Partial<IWorksheetData>,
    private readonly content: SheetContents,
    private readonly styleOf: (cell: ICellData) => CellStyle | undefined,
    private readonly kind: XlsxKind,
  ) {
    this.#rows = content.values.length;
    this.#columns = largestOf([0, ...content.values.map((row) => row.length)]);
  }

  written(rules: readonly IDataValidationRule[], drawings: SheetDrawings | undefined, filter: GridFilter | undefined): WriteSheet {
    this.#putContents();
    this.#putLooks();
    const filteredOut = new Set(filter?.cachedFilteredOut);
    const rowHeights = (this.sheet.rowData ?? {}) as Readonly<Record<string, { readonly h?: number; readonly hd?: number } | undefined>>;
    const rowsWithLooks = new Set([...Object.keys(rowHeights).map(Number), ...filteredOut]);
    for (const rule of rules) this.#putRule(rule);
    const lists = new Set([...this.#lists.values()].map(({ column }) => column));
    const { name = "", columnData = {}, mergeData = [], freeze, hidden, custom } = this.sheet;
    return {
      name,
      ...givenBackToSheet(custom),
      ...(filter === undefined ? {} : { autoFilter: fileFilter(filter) }),
      rows: Array.from({ length: this.#rows }, () => Array<null>(this.#columns).fill(null)),
      cells: this.#cells,
      columns: Array.from({ length: this.#columns }, (_, column) => {
        const pixels = (columnData as Record<number, { w?: number; hd?: number } | undefined>)[column];
        return {
          ...(pixels?.w === undefined ? {} : { width: digitsWide(pixels.w) }),
          ...(lists.has(column) || pixels?.hd === 1 ? { hidden: true } : {}),
        };
      }),
      rowDefs: new Map(
        [...rowsWithLooks].map((row) => {
          const { h: height, hd } = rowHeights[row] ?? {};
          const isHidden = hd === 1 || filteredOut.has(row);
          return [row, { ...(height === undefined ? {} : { height: pointsHigh(height) }), ...(isHidden ? { hidden: true } : {}) }];
        }),
      ),
      merges: mergeData.map(({ startRow, startColumn, endRow, endColumn }) => ({
        startRow,
        startCol: startColumn,
        endRow,
        endCol: endColumn,
      })),
      ...(freeze === undefined ? {} : { freezePane: { rows: freeze.ySplit, columns: freeze.xSplit } }),
      ...(this.#validations.length === 0 ? {} : { dataValidations: this.#validations }),
      ...(hidden === 1 ? { hidden: true } : {}),
      images: Object.entries(drawings?.data ?? {}).flatMap(([id, drawing]) => imageOf(id, drawing)),
    };
  }

  #putContents(): void {
    const { values, formulas } = this.content;
    const spills = new Map(this.content.spills.map((spill) => [placeKey(spill.startRow, spill.startColumn), spill]));
    values.forEach((row, at) => {
      row.forEach((value, column) => {
        const formula = this.kind === "values only" ? "" : (formulas[at]?.[column] ?? "");
        const own = { startRow: at, startColumn: column, endRow: at, endColumn: column };
        if (formula !== "") this.#put(at, column, formulaCell(formula, value, spills.get(placeKey(at, column)) ?? own));
        else if (value !== null) this.#put(at, column, valueCell(value));
      });
    });
  }

  #putLooks(): void {
    const rows = (this.sheet.cellData ?? {}) as Readonly<Record<string, Readonly<Record<string, Nullable<ICellData>>>>>;
    for (const [row, cells] of Object.entries(rows)) {
      for (const [column, cell] of Object.entries(cells)) {
        if (!cell) continue;
        const style = this.styleOf(cell);
        const note: unknown = cell.custom?.["note"];
        const looks = {
          ...(style === undefined ? {} : { style }),
          ...(typeof note === "string" ? { comment: { author: "Soakbook", text: note } } : {}),
          ...givenBackToCell(cell.custom, this.content.values[Number(row)]?.[Number(column)]),
        };
        if (Object.keys(looks).length > 0) this.#put(Number(row), Number(column), looks);
      }
    }
  }

  #put(row: number, column: number, part: Partial<Cell>): void {
    const key = placeKey(row, column);
    this.#cells.set(key, { ...this.#cells.get(key), ...part });
    this.#rows = Math.max(this.#rows, row + 1);
    this.#columns = Math.max(this.#columns, column + 1);
  }

  #putRule({ type, ranges, formula1, formula2, operator, error, errorStyle, allowBlank }: IDataValidationRule): void {
    const range = ranges.map(addressIn).join(" ");
    const shared = {
      range,
      allowBlank: allowBlank !== false,
      showErrorMessage: true,
      errorStyle: errorStyle === 1 ? "stop" : errorStyle === 2 ? "warning" : "information",
      ...(error === undefined ? {} : { errorMessage: within(MOST_MESSAGE, error) }),
    } as const;
    if (type === "list") this.#validations.push({ type, ...shared, ...this.#listOf(formula1 ?? "[]") });
    else if (KNOWN_RULES.has(type))
      this.#validations.push({
        type: type as DataValidation["type"],
        ...shared,
        ...(operator === undefined ? {} : { operator: operator as NonNullable<DataValidation["operator"]> }),
        ...(formula1 === undefined ? {} : { formula1: formula1.replace(/^=/, "") }),
        ...(formula2 === undefined ? {} : { formula2: formula2.replace(/^=/, "") }),
      });
  }

  /** A file's rule holds up to 255 characters of choices, none with a comma; longer lists stand in cells of their own. */
  #listOf(formula: string): Pick<DataValidation, "values" | "formula1"> {
    if (formula.startsWith("=")) return { formula1: formula.slice(1) };
    const choices = choicesIn(formula);
    if (choices.join(",").length <= MOST_MESSAGE && !choices.some((choice) => choice.includes(","))) return { values: [...choices] };
    const known = this.#lists.get(formula);
    const range = known ?? { sheet: "", row: this.sheet.freeze?.ySplit ?? 0, column: this.#columns + 1, rows: choices.length, columns: 1 };
    if (known === undefined) {
      this.#lists.set(formula, range);
      choices.forEach((choice, down) => {
        this.#put(range.row + down, range.column, valueCell(choice));
      });
    }
    return { formula1: absolute(addressOf(range)).replace(/^.*!/, "") };
  }
}

const KNOWN_RULES: ReadonlySet<string> = new Set(["whole", "decimal", "date", "time", "textLength", "custom"]);
const MOST_MESSAGE = 255;

function choicesIn(formula: string): readonly string[] {
  return formula.startsWith("[") ? (JSON.parse(formula) as readonly string[]) : formula.split(",");
}

function within(limit: number, text: string): string {
  return text.length <= limit ? text : `${text.slice(0, limit - 1)}…`;
}

function valueCell(value: Exclude<CellValue, null>): Partial<Cell> {
  if (typeof value !== "string") return { value, type: typeof value === "number" ? "number" : "boolean" };
  return isErrorCode(value) ? { value, type: "error" } : { value, type: "string" };
}

/**
 * Ours, and every formula that has spilled, is written as a dynamic array: otherwise Excel would take one cell of each
 * range by itself. An error is left for the spreadsheet to work out: the writer would keep it as a text.
 */
function formulaCell(formula: string, value: CellValue, filled: IRange): Partial<Cell> {
  const isDynamic = filled.endRow > filled.startRow || filled.endColumn > filled.startColumn || /SOAK\./i.test(formula);
  return {
    type: "formula",
    formula: inFileSpelling(formula),
    ...(isErrorCode(value) ? {} : { formulaResult: value ?? "" }),
    ...(isDynamic ? { formulaType: "array", formulaDynamic: true, formulaRef: addressIn(filled) } : {}),
  };
}

function imageOf(id: string, { source = "", sheetTransform, transform }: Drawing): NonNullable<WriteSheet["images"]> {
  const [, type, base64] = /^data:image\/(png|jpeg|gif|webp);base64,(.+)$/.exec(source) ?? [];
  const from = sheetTransform?.from;
  if (type === undefined || base64 === undefined || from === undefined) return [];
  return [
    {
      data: Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)),
      type: type as "png",
      anchor: { from: { row: from.row, col: from.column } },
      ...(transform?.width === undefined ? {} : { width: transform.width }),
      ...(transform?.height === undefined ? {} : { height: transform.height }),
      title: id,
    },
  ];
}
