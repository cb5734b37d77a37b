/** Small declared functions that the tests of the worksheet edge call, and short ways to write cells. */
import { computedByHand } from "../../../functions/published/source.ts";
import {
  area,
  choice,
  count,
  depth,
  earthVolume,
  flag,
  hours,
  length,
  number,
  percent,
  rangeOf,
  rate,
  share,
  tableRange,
  text,
  units,
  waterVolume,
  type Argument,
} from "../../../functions/worksheet/calling/arguments.ts";
import { invalid, missing, type Cell, type CellError, type CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { rowOf, tableOf } from "../../../functions/worksheet/calling/results.ts";
import { worksheetFunction, type WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";

const sources = [computedByHand("A sample for the tests")];
const example = { arguments: [], result: 0, from: computedByHand("A sample for the tests") };
export const about = { summary: "A sample.", sources, example };

/** A column of cells, as a host hands it over. */
export const column = (...cells: readonly Cell[]): CellInput => cells.map((cell) => [cell]);
export const row = (...cells: readonly Cell[]): CellInput => [cells];

/** The one cell that a call answers with. */
export function cellOf(declared: WorksheetFunction, ...inputs: readonly CellInput[]): Cell {
  const [[cell = null] = []] = declared.evaluate(inputs);
  return cell;
}

/** Says what a cell that cannot be shown says, or fails. */
export function sentenceOf(cell: Cell): string {
  return (cell as CellError).sentence;
}

export const divisionByZero: CellError = { code: "#DIV/0!", sentence: "" };
export const refused = invalid;
export const notThere = missing;

/** Volume of water of a depth over an area. */
export const pondedVolume = worksheetFunction({
  ...about,
  name: "PONDEDVOLUME",
  arguments: [area("area", "Basin area"), depth("depth", "Ponding depth").optional(6), units],
  result: waterVolume("Water held"),
  cautions: [
    { when: ({ depth }) => depth > 12, says: "Ponding over 12 in drowns most plants." },
    { when: ({ area }) => area > 1000, says: (inputs, speaker) => `${speaker.area(inputs.area)} is more than a yard usually has.` },
  ],
  calculate: ({ area: squareFeet, depth: inches }) => squareFeet * (inches / 12),
});

/** Without a dimension, so without units. */
export const product = worksheetFunction({
  ...about,
  name: "PRODUCT",
  arguments: [number("first", "First"), number("second", "Second")],
  result: number("Product"),
  calculate: ({ first, second }) => first * second,
});

/** Takes one argument of the kind at hand and shows what the calculation received. */
export function echoOf<Value>(argument: Argument<string, Value>): WorksheetFunction {
  return worksheetFunction({
    ...about,
    name: "ECHO",
    arguments: [argument, units],
    result: text("Echo"),
    calculate: (inputs) => JSON.stringify(Object.values(inputs)[0]) ?? "left out",
  });
}

/** A row for each row: hours from full to empty, and words. */
export const drainRow = worksheetFunction({
  ...about,
  name: "DRAINROW",
  arguments: [
    depth("ponding", "Ponding depth").moreThan(0),
    rate("rate", "Design rate").moreThan(0),
    hours("limit", "Drain hours").optional(48),
    units,
  ],
  result: rowOf([hours("Drawdown"), depth("Deepest that drains"), text("Status")]),
  calculate: ({ ponding, rate: inchesPerHour, limit }, speaker) => {
    const deepest = inchesPerHour * limit;
    if (ponding > 10 * deepest) return invalid(`${speaker.depth(ponding)} would stand for weeks.`);
    const status = ponding <= deepest ? "fits" : missing(`Up to ${speaker.depth(deepest, "down")} would drain.`);
    return [ponding / inchesPerHour, deepest, status];
  },
});

/** A table from a whole series: how far each reading fell from the one before. */
export const dropTable = worksheetFunction({
  ...about,
  name: "DROPTABLE",
  arguments: [rangeOf(depth("depths", "Water depth")), hours("step", "Step").moreThan(0), units],
  result: tableOf([depth("Drop"), flag("Falls")]),
  calculate: ({ depths }, speaker) =>
    depths.length < 2
      ? invalid(`One reading of ${speaker.depth(depths[0] ?? 0)} is no series.`)
      : depths.slice(1).map((after, place) => [(depths[place] ?? 0) - after, after < (depths[place] ?? 0)] as const),
});

/** One value from a whole series, lifted over its other arguments. */
export const meanRate = worksheetFunction({
  ...about,
  name: "MEANRATE",
  arguments: [rangeOf(rate("rates", "Tested rate")), number("factor", "Reduction factor").atLeast(1).optional(2), units],
  result: rate("Design rate"),
  calculate: ({ rates, factor }) => rates.reduce((sum, one) => sum + one, 0) / rates.length / factor,
});

/** Every kind of argument at once, for chance to try. */
export const everyKind = worksheetFunction({
  ...about,
  name: "EVERYKIND",
  arguments: [
    depth("depth", "Depth"),
    length("length", "Length").optional(1),
    share("share", "Share").optional(0.5),
    percent("percent", "Percent").optional(10),
    count("count", "Count").optional(1),
    choice("soil", "Soil", ["sand", "loam", "clay"]).optional("loam"),
    flag("near", "Near the house").optional(false),
    text("note", "Note").optional(""),
    rangeOf(earthVolume("loads", "Load")).keepingBlanks().optional([]),
    tableRange("rules", "Rules table").optional([]),
    units,
  ],
  result: rowOf([depth("Depth"), length("Length"), earthVolume("Loads"), text("Note")]),
  calculate: ({ depth: inches, length: feet, share: part, percent: percentage, count: people, soil, near, note, loads, rules }) => [
    inches * part,
    feet * feet * percentage,
    loads.reduce<number>((sum, one) => sum + (one ?? 0), people),
    `${soil} ${near} ${note} ${rules.length}`,
  ],
});
