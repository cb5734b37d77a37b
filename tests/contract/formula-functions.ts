/** The plain functions of Excel that the workbook's formulas call, as Excel's documentation describes them, and our own. */
import { today } from "../../addin/actions/dates.ts";
import { isErrorCode } from "../../addin/workbook/port.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { isCellError, type CellInput } from "../../functions/worksheet/calling/cell.ts";
import { inputFromHost } from "../../functions/worksheet/calling/host-cells.ts";

export type Content = string | number | boolean | null;
export type Grid = readonly (readonly Content[])[];
type Given = readonly (Grid | undefined)[];

export function callFunction(name: string, given: Given): Grid {
  const plain = FUNCTIONS[name];
  if (plain !== undefined) return plain(given);
  const ours = OURS.get(name);
  if (ours === undefined) return [["#NAME?"]];
  callsOfOurs.push({ name, cells: given.reduce((sum, grid) => sum + (grid ?? []).reduce((cells, row) => cells + row.length, 0), 0) });
  return ours.evaluate(given.map(inputOf)).map((row) => row.map((cell) => (isCellError(cell) ? cell.code : cell)));
}

/** Every call of ours since somebody emptied the list, with the cells that were handed over. */
export const callsOfOurs: { readonly name: string; readonly cells: number }[] = [];

const OURS = new Map(catalogue.map((declared) => [`SOAK.${declared.name}`, declared]));

/** As Excel hands cells over, a single one as one row of one, and as our registration takes them. */
function inputOf(grid: Grid | undefined): CellInput {
  return grid === undefined ? undefined : inputFromHost(grid);
}

/** Excel's broadcasting: one cell, row or column goes with every cell of the other; what has no partner is #N/A. */
export function lift(grids: readonly Grid[], answer: (...contents: readonly Content[]) => Content): Grid {
  const rows = Math.max(...grids.map((grid) => grid.length));
  const columns = Math.max(...grids.map((grid) => grid[0]?.length ?? 0));
  const at = (grid: Grid, row: number, column: number): Content => {
    const line = grid.length === 1 ? grid[0] : grid[row];
    const content = line?.length === 1 ? line[0] : line?.[column];
    return content === undefined ? "#N/A" : content;
  };
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (__, column) => answer(...grids.map((grid) => at(grid, row, column)))),
  );
}

export function broadcast(sign: string, left: Grid, right: Grid): Grid {
  return lift([left, right], (one = null, other = null) => operate(sign, one, other));
}

function operate(sign: string, left: Content, right: Content): Content {
  if (isErrorCode(left)) return left;
  if (isErrorCode(right)) return right;
  if (sign === "&") return `${asText(left)}${asText(right)}`;
  const compared = COMPARISONS[sign];
  if (compared !== undefined) return compared(order(left, right));
  const [one, other] = [numberOf(left), numberOf(right)];
  if (one === null || other === null) return "#VALUE!";
  switch (sign) {
    case "+":
      return one + other;
    case "-":
      return one - other;
    case "*":
      return one * other;
    case "/":
      return other === 0 ? "#DIV/0!" : one / other;
    case "^":
      return one ** other;
    default:
      throw new Error(`The in-memory Excel does not know the sign ${sign}`);
  }
}

const COMPARISONS: Readonly<Record<string, (order: number) => boolean>> = {
  "=": (order) => order === 0,
  "<>": (order) => order !== 0,
  "<": (order) => order < 0,
  ">": (order) => order > 0,
  "<=": (order) => order <= 0,
  ">=": (order) => order >= 0,
};

/** Numbers before texts before TRUE and FALSE, whatever the case; a blank is 0, the empty text or FALSE, as the other asks. */
function order(left: Content, right: Content): number {
  const standing = (content: Content, other: Content) =>
    content ?? (typeof other === "string" ? "" : typeof other === "boolean" ? false : 0);
  const [one, other] = [standing(left, right), standing(right, left)].map((content) =>
    typeof content === "string" ? content.toLowerCase() : content,
  ) as [string | number | boolean, string | number | boolean];
  const rank = (content: string | number | boolean) => ["number", "string", "boolean"].indexOf(typeof content);
  if (rank(one) !== rank(other)) return rank(one) - rank(other);
  return one === other ? 0 : one < other ? -1 : 1;
}

function asText(content: Content): string {
  return typeof content === "boolean" ? String(content).toUpperCase() : String(content ?? "");
}

function numberOf(content: Content): number | null {
  if (content === null) return 0;
  if (typeof content === "string") return content.trim() !== "" && Number.isFinite(Number(content)) ? Number(content) : null;
  return Number(content);
}

/** A function of single cells over ranges; an error in any of them is the answer. */
function cellByCell(given: Given, answer: (...contents: readonly Content[]) => Content): Grid {
  return lift(
    given.map((grid) => grid ?? [[null]]),
    (...contents) => contents.find(isErrorCode) ?? answer(...contents),
  );
}

const single = (content: Content): Grid => [[content]];
const cellsOf = (given: Given): readonly Content[] => given.flatMap((grid) => (grid ?? []).flat());

/** What a function that looks at numbers alone makes of ranges. */
function ofNumbers(given: Given, answer: (numbers: readonly number[]) => number): Grid {
  const cells = cellsOf(given);
  return single(cells.find(isErrorCode) ?? answer(cells.filter((cell) => typeof cell === "number")));
}

const most = (numbers: readonly number[]) => numbers.reduce((one, other) => Math.max(one, other), numbers[0] ?? 0);
const least = (numbers: readonly number[]) => numbers.reduce((one, other) => Math.min(one, other), numbers[0] ?? 0);

/** COUNTIFS and its kin: pairs of a range and a criterion; a range of criteria is answered one by one. */
function matching(pairs: Given, answer: (rows: readonly number[]) => Content): Grid {
  const columns = pairs.filter((_, place) => place % 2 === 0).map((grid) => (grid ?? []).flat());
  const criteria = pairs.filter((_, place) => place % 2 === 1).map((grid) => grid ?? single(null));
  if (columns.some((column) => column.length !== columns[0]?.length)) return single("#VALUE!");
  const height = columns[0]?.length ?? 0;
  const used = 1 + Math.max(...columns.map((column) => column.findLastIndex((content) => content !== null)));
  return lift(criteria, (...asked) => {
    const tests = asked.map(criterion);
    const rows: number[] = [];
    // Below the last cell in use all rows are alike.
    for (let row = 0; row < (tests.every((met) => met(null)) ? height : used); row += 1)
      if (tests.every((met, place) => met(columns[place]?.[row] ?? null))) rows.push(row);
    return answer(rows);
  });
}

function criterion(asked: Content): (content: Content) => boolean {
  if (typeof asked !== "string") return (content) => content === (asked ?? 0);
  const [, sign = "", rest = ""] = /^(<>|<=|>=|=|<|>)?(.*)$/s.exec(asked) ?? [];
  if (rest === "" && sign === "=") return (content) => content === null;
  if (rest === "" && sign === "<>") return (content) => content !== null;
  if (rest === "") return (content) => content === null || content === "";
  const number = numberOf(rest);
  if (sign !== "" && sign !== "=" && sign !== "<>") {
    const met = COMPARISONS[sign] ?? (() => false);
    return (content) =>
      content !== null &&
      !isErrorCode(content) &&
      typeof content === (number === null ? "string" : "number") &&
      met(order(content, number ?? rest));
  }
  const pattern = new RegExp(
    `^${rest
      .replace(/[.+^${}()|[\]\\]/g, "\\$&")
      .replaceAll("*", ".*")
      .replaceAll("?", ".")}$`,
    "is",
  );
  const is = (content: Content) =>
    number !== null
      ? content === number || content === rest
      : typeof content === "string" && !isErrorCode(content) && pattern.test(content);
  return sign === "<>" ? (content) => !is(content) : is;
}

/** SUMIFS, MAXIFS and MINIFS: the first range is what the matching rows are asked for. */
function overMatching([of, ...pairs]: Given, answer: (numbers: readonly number[]) => number): Grid {
  const values = (of ?? []).flat();
  return matching(pairs, (rows) => {
    const found = rows.map((row) => values[row] ?? null);
    return found.find(isErrorCode) ?? answer(found.filter((content) => typeof content === "number"));
  });
}

function placeOf(wanted: Content, column: readonly Content[], fromBelow = false): number {
  const is = (content: Content) => typeof content === typeof (wanted ?? 0) && order(content, wanted ?? 0) === 0;
  return fromBelow ? column.findLastIndex(is) : column.findIndex(is);
}

function index([grid = [[null]], rows = single(0), columns = single(0)]: Given): Grid {
  const isRow = grid.length === 1 && (grid[0]?.length ?? 0) > 1;
  const whole = (asked: Grid) => asked.length === 1 && asked[0]?.length === 1 && asked[0][0] === 0;
  if (whole(rows) && !whole(columns)) return grid.map((line) => [line[Number(columns[0]?.[0]) - 1] ?? "#REF!"]);
  return lift([rows, columns], (row = null, column = null) => {
    if (isErrorCode(row)) return row;
    if (isErrorCode(column)) return column;
    const [down, across] = isRow && Number(column) === 0 ? [1, Number(row)] : [Number(row), Math.max(1, Number(column))];
    const line = grid[down - 1];
    return line === undefined || across > line.length ? "#REF!" : (line[across - 1] ?? null);
  });
}

function lookUp([wanted, from = [], answers = [], otherwise, , search]: Given): Grid {
  const column = from.flat();
  const found = answers.flat();
  const fromBelow = search?.[0]?.[0] === -1;
  return cellByCellOf(wanted, (content) => {
    const place = placeOf(content, column, fromBelow);
    return place === -1 ? (otherwise?.[0]?.[0] ?? "#N/A") : (found[place] ?? null);
  });
}

function cellByCellOf(grid: Grid | undefined, answer: (content: Content) => Content): Grid {
  return (grid ?? single(null)).map((row) => row.map((content) => (isErrorCode(content) ? content : answer(content))));
}

function filter([grid = [], include = [], otherwise]: Given): Grid {
  const error = include.flat().find(isErrorCode);
  if (error !== undefined) return single(error);
  const kept = grid.filter((_, row) => Boolean(include[include.length === 1 ? 0 : row]?.[0]));
  return kept.length > 0 ? kept : (otherwise ?? single("#CALC!"));
}

function unique([grid = []]: Given): Grid {
  const same = (one: readonly Content[], other: readonly Content[]) =>
    one.every((content, column) => order(content, other[column] ?? null) === 0);
  return grid.filter((row, place) => grid.findIndex((earlier) => same(earlier, row)) === place);
}

function product([left = [], right = []]: Given): Grid {
  const cells = [left, right].flatMap((grid) => grid.flat());
  const error = cells.find(isErrorCode);
  if (error !== undefined) return single(error);
  if (cells.some((cell) => typeof cell !== "number") || left[0]?.length !== right.length) return single("#VALUE!");
  return left.map((row) =>
    (right[0] ?? []).map((_, column) => row.reduce<number>((sum, value, place) => sum + Number(value) * Number(right[place]?.[column]), 0)),
  );
}

/** Day 1 is January 1, 1900, and there is a February 29 of that year that never was. */
const serialOf = (year: number, month: number, day: number) => {
  const days = Math.round(Date.UTC(year < 1900 ? year + 1900 : year, month - 1, day) / 86_400_000) + 25_569;
  return days < 61 ? days - 1 : days;
};
const yearOf = (serial: number) => new Date((serial - 25_569 + (serial < 60 ? 1 : 0)) * 86_400_000).getUTCFullYear();

/** Units of CONVERT, in meters to a power. The international inch and foot: NIST SP 811, appendix B. */
const UNITS: ReadonlyMap<string, { readonly power: number; readonly meters: number }> = new Map([
  ["m", { power: 1, meters: 1 }],
  ["mm", { power: 1, meters: 0.001 }],
  ["in", { power: 1, meters: 0.0254 }],
  ["ft", { power: 1, meters: 0.3048 }],
  ["m^2", { power: 2, meters: 1 }],
  ["ft^2", { power: 2, meters: 0.3048 ** 2 }],
  ["m^3", { power: 3, meters: 1 }],
  ["ft^3", { power: 3, meters: 0.3048 ** 3 }],
]);

/** As ERROR.TYPE numbers them, from 1 on. */
const ERROR_TYPES = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#GETTING_DATA", "#SPILL!"];

const FUNCTIONS: Readonly<Record<string, (given: Given) => Grid>> = {
  AND: (given) => single(cellsOf(given).find(isErrorCode) ?? cellsOf(given).every(Boolean)),
  OR: (given) => single(cellsOf(given).find(isErrorCode) ?? cellsOf(given).some(Boolean)),
  CONVERT: (given) =>
    cellByCell(given, (value = null, from = null, to = null) => {
      const [one, other] = [UNITS.get(String(from)), UNITS.get(String(to))];
      const number = numberOf(value);
      if (number === null) return "#VALUE!";
      return one === undefined || other === undefined || one.power !== other.power ? "#N/A" : (number * one.meters) / other.meters;
    }),
  COUNT: (given) => single(cellsOf(given).filter((cell) => typeof cell === "number").length),
  COUNTIFS: (given) => matching(given, (rows) => rows.length),
  DATE: (given) => cellByCell(given, (year = 0, month = 0, day = 0) => serialOf(Number(year), Number(month), Number(day))),
  "ERROR.TYPE": ([value]) =>
    (value ?? single(null)).map((row) => row.map((content) => (isErrorCode(content) ? ERROR_TYPES.indexOf(content) + 1 : "#N/A"))),
  FILTER: filter,
  IFERROR: ([value, instead]) =>
    lift([value ?? single(0), instead ?? single(0)], (content = null, other = null) => (isErrorCode(content) ? other : content)),
  IFNA: ([value, instead]) =>
    lift([value ?? single(0), instead ?? single(0)], (content = null, other = null) => (content === "#N/A" ? other : content)),
  INDEX: index,
  ISERROR: ([value]) => (value ?? single(null)).map((row) => row.map(isErrorCode)),
  ISNUMBER: ([value]) => (value ?? single(null)).map((row) => row.map((content) => typeof content === "number")),
  N: ([value]) => cellByCellOf(value, (content) => (typeof content === "string" ? 0 : Number(content))),
  LOWER: (given) => cellByCell(given, (content = null) => asText(content).toLowerCase()),
  MATCH: ([wanted, column]) =>
    cellByCellOf(wanted, (content) => {
      const place = placeOf(content, (column ?? []).flat());
      return place === -1 ? "#N/A" : place + 1;
    }),
  MAX: (given) => ofNumbers(given, most),
  MAXIFS: (given) => overMatching(given, most),
  MIN: (given) => ofNumbers(given, least),
  MINIFS: (given) => overMatching(given, least),
  MMULT: product,
  NA: () => single("#N/A"),
  PI: () => single(Math.PI),
  ROUND: (given) =>
    cellByCell(given, (value = null, digits = null) => {
      const [number, power] = [numberOf(value), 10 ** Number(digits)];
      return number === null ? "#VALUE!" : (Math.sign(number) * Math.round(Math.abs(number) * power)) / power;
    }),
  TODAY: () => [[today()]],
  ROWS: ([grid = []]) => {
    const error = grid.length === 1 && grid[0]?.length === 1 ? grid[0][0] : undefined;
    return single(error !== undefined && isErrorCode(error) ? error : grid.length);
  },
  SEARCH: (given) =>
    cellByCell(given, (wanted = null, within = null) => {
      const place = asText(within).toLowerCase().indexOf(asText(wanted).toLowerCase());
      return place === -1 ? "#VALUE!" : place + 1;
    }),
  SEQUENCE: ([rows, , start]) => {
    const [count, first] = [rows?.[0]?.[0] ?? 1, start?.[0]?.[0] ?? 1];
    if (isErrorCode(count) || isErrorCode(first)) return single(isErrorCode(count) ? count : first);
    return Number(count) < 1 ? single("#CALC!") : Array.from({ length: Number(count) }, (_, place) => [Number(first) + place]);
  },
  SORT: ([grid]) =>
    (grid ?? []).toSorted(([one = null], [other = null]) =>
      isErrorCode(one) || isErrorCode(other) ? Number(isErrorCode(one)) - Number(isErrorCode(other)) : order(one, other),
    ),
  SUBSTITUTE: (given) =>
    cellByCell(given, (content = null, from = null, to = null) => asText(content).replaceAll(asText(from), asText(to))),
  SUM: (given) => ofNumbers(given, (numbers) => numbers.reduce((sum, number) => sum + number, 0)),
  SUMIFS: (given) => overMatching(given, (numbers) => numbers.reduce((sum, number) => sum + number, 0)),
  SUMPRODUCT: (given) =>
    ofNumbers(
      [
        lift(
          given.map((grid) => grid ?? []),
          (...contents) =>
            contents.find(isErrorCode) ?? contents.reduce<number>((all, content) => all * (typeof content === "number" ? content : 0), 1),
        ),
      ],
      (numbers) => numbers.reduce((sum, number) => sum + number, 0),
    ),
  TEXTJOIN: ([between, skip, ...texts]) => {
    const cells = cellsOf(texts);
    return single(
      cells.find(isErrorCode) ??
        cells
          .map(asText)
          .filter((text) => text !== "" || !skip?.[0]?.[0])
          .join(asText(between?.[0]?.[0] ?? null)),
    );
  },
  TRANSPOSE: ([grid]) => (grid?.[0] ?? []).map((_, column) => (grid ?? []).map((row) => row[column] ?? null)),
  TRIM: (given) => cellByCell(given, (content = null) => asText(content).replace(/ +/g, " ").replace(/^ | $/g, "")),
  UNICHAR: (given) => cellByCell(given, (code = null) => String.fromCodePoint(Number(code))),
  UNIQUE: unique,
  VALUE: (given) => cellByCell(given, (content = null) => numberOf(content) ?? "#VALUE!"),
  VLOOKUP: ([wanted, table, column]) =>
    lookUp([wanted, table?.map(([first = null]) => [first]), table?.map((row) => [row[Number(column?.[0]?.[0]) - 1] ?? null])]),
  XLOOKUP: lookUp,
  YEAR: (given) =>
    cellByCell(given, (serial = null) => {
      const number = numberOf(serial);
      return number === null ? "#VALUE!" : number < 0 ? "#NUM!" : yearOf(number);
    }),
};
