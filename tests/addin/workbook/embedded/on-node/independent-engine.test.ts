/**
 * Our functions beside the same quantities as plain spreadsheet formulas, in one sheet. The formulas are computed by
 * Univer 0.25.1's own engine, a general-purpose library that knows nothing of this project; the equations are those of
 * the sources named beside each function in the reference. Depths in inches, lengths in feet, areas in square feet.
 */
import { beforeAll, expect, test } from "vitest";
import { startingSheets } from "../../../../../addin/actions/workbook/set-up-workbook.ts";
import type { CellValue } from "../../../../../addin/workbook/port.ts";
import { dailyRainMillimetres } from "../../../../functions/rainfall/daily-rain.ts";
import type { GridOnNode } from "./entry.ts";
import { onGrid } from "./grid-on-node.ts";

const SHEET = "Program";
const FIRST_COLUMN = 9;
const rain = dailyRainMillimetres.Seattle.slice(0, 400).map((millimetres) => millimetres / 25.4);
const RAIN = `$I$31:$I$${30 + rain.length}`;

/** [what is compared, our formula, the engine's own]. */
const pairs: readonly (readonly [string, string, string])[] = [
  ["runoff depth of 4 in on curve number 80", "SOAK.RUNOFFDEPTH(4,80)", "(4-0.2*(1000/80-10))^2/(4+0.8*(1000/80-10))"],
  ["runoff volume", "SOAK.RUNOFFVOLUME(1000,1.2,0.95)", "1000*1.2/12*0.95"],
  ["drawdown with soil mix", "SOAK.DRAWDOWN(6,0.25,12,0.25)", "(6+0.25*12)/0.25"],
  ["deepest ponding that drains", "SOAK.DEEPESTPONDING(0.13,48)", "0.13*48"],
  ["Porchet's rate of a hole", "SOAK.HOLERATE({0;15;30},{8;7;6.1},8)", "4/(2*0.5)*LN((2*8+4)/(2*6.1+4))"],
  ["geometric mean of rates, halved", "SOAK.DESIGNRATE({0.7;1.5;0.9},2)", "GEOMEAN(0.7,1.5,0.9)/2"],
  ["median of rates, by 3", 'SOAK.DESIGNRATE({0.7;1.5;0.9;2},3,"median")', "MEDIAN(0.7,1.5,0.9,2)/3"],
  ["90th percentile of the rains that count", `SOAK.RAINPERCENTILE(${RAIN},90,0.1)`, `PERCENTILE.INC(IF(${RAIN}>0.1,${RAIN}),0.9)`],
  ["peak flow", "SOAK.PEAKFLOW(1000,6,0.95)", "0.95*6*1000/43200"],
  ["ground slope", "SOAK.GROUNDSLOPE(11,180)", "100*11/180"],
  ["vertical basin area", "SOAK.BASINAREA(1000,0.25,6,1,0.95,18,0.25,6,0,FALSE)", "0.95*1000*1/12/((6+0.25*18+0.25*6)/12)"],
  ["volume of a rectangular basin", 'SOAK.BASINVOLUME(119,6,3,"rectangle",17/7)', "0.5/6*(17*7+4*18.5*8.5+20*10)"],
  ["volume of an elliptical basin", "SOAK.BASINVOLUME(100,6,0)", "100*0.5"],
  ["floor length", "SOAK.BASINSIZE(100)", "2*SQRT(4*100/(PI()*2))"],
  ["mulch", "SOAK.LAYERVOLUME(200,3)", "200*3/324"],
  ["bags", "SOAK.BAGS(1.9,2)", "ROUNDUP(1.9*27/2,0)"],
  ["pile radius", "SOAK.STOCKPILE(10)", "(3*270/(PI()*TAN(RADIANS(37))))^(1/3)"],
  ["full pipe", "SOAK.PIPEFLOW(4,1,0.01)", "1.486/0.01*PI()*(4/12)^2/4*(4/12/4)^(2/3)*SQRT(0.01)"],
  ["spillway width", "SOAK.OVERFLOWWIDTH(0.132,0.2,2.69)", "0.132/(2.69*0.2^1.5)"],
  ["plants in a triangle pattern", "SOAK.PLANTCOUNT(140,1.5)", "ROUNDUP(140/(1.5^2*SIN(RADIANS(60))),0)"],
  ["water in a week", "SOAK.WATERNEED(150)", "150/12*1728/231"],
  ["first day to dig", "SOAK.DIGDATE(46146,3)", "WORKDAY(46146,3)"],
  ["capped cost share", 'SOAK.COSTSHARE("per area",80,41,3000)', "MIN(80*41,3000)"],
];

let workbook: GridOnNode["workbook"];
let answers: readonly (readonly CellValue[])[];

onGrid(
  (on) => (workbook = on.workbook),
  (draft) => draft.addSheets(startingSheets().flatMap(({ layout }) => (layout.name === SHEET ? [layout] : []))),
);

beforeAll(async () => {
  await workbook.writeValues([
    { range: { sheet: SHEET, row: 30, column: 8, rows: rain.length, columns: 1 }, values: rain.map((depth) => [depth]) },
  ]);
  // Three columns apart and a row each, because BASINSIZE and STOCKPILE spill three to the right.
  await workbook.writeFormulas(
    pairs.flatMap(([, ours, theirs], row) => [
      { range: { sheet: SHEET, row: 30 + row, column: FIRST_COLUMN + 4, rows: 1, columns: 1 }, formulas: [[`=${ours}`]] },
      { range: { sheet: SHEET, row: 30 + row, column: FIRST_COLUMN, rows: 1, columns: 1 }, formulas: [[`=${theirs}`]] },
    ]),
  );
  await workbook.calculated();
  [answers = []] = await workbook.read([{ sheet: SHEET, row: 30, column: FIRST_COLUMN, rows: pairs.length, columns: 5 }]);
});

test.each(pairs.map(([what], row) => ({ what, row })))("$what is the same by a plain spreadsheet formula", ({ row }) => {
  const theirs = answers[row]?.[0];
  const ours = answers[row]?.[4];
  expect(theirs).toBeTypeOf("number");
  expect(ours).toBeTypeOf("number");
  expect(Number(ours) / Number(theirs)).toBeCloseTo(1, 9);
});

test("a column of areas against a row of rates is broadcast as the engine broadcasts its own arithmetic", async () => {
  const cell = (row: number, column: number) => ({ sheet: SHEET, row, column, rows: 1, columns: 1 });
  await workbook.writeFormulas([
    { range: cell(60, 9), formulas: [["=SOAK.RUNOFFVOLUME({250;500;1000},{0.5,1,2},0.9)"]] },
    { range: cell(70, 9), formulas: [["={250;500;1000}*{0.5,1,2}/12*0.9"]] },
  ]);
  await workbook.calculated();
  const [ours, theirs] = await workbook.read([60, 70].map((row) => ({ ...cell(row, 9), rows: 3, columns: 3 })));
  expect(ours).toHaveLength(3);
  expect(
    ours
      ?.flat()
      .map(Number)
      .map((value) => value.toFixed(9)),
  ).toEqual(
    theirs
      ?.flat()
      .map(Number)
      .map((value) => value.toFixed(9)),
  );
});
