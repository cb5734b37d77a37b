import ExcelJS from "exceljs";
import type { Garden } from "../../functions/basin/water-balance.ts";

/** Of the sheet Result: a name in A, and in B the garden as typed, what follows from it, and what the hours come to. */
const RESULT: readonly (readonly [name: string, cell: keyof Garden | ((lastRow: number) => string)])[] = [
  ["Contributing area, sq ft", "contributingSquareFeet"],
  ["Runoff share", "runoffShare"],
  ["Floor area, sq ft", "floorSquareFeet"],
  ["Ponding depth, in", "pondingInches"],
  ["Design rate, in/h", "designInchesPerHour"],
  ["Soil mix depth, in", "mediaInches"],
  ["Void share", "voidShare"],
  ["Side slope", "sideSlope"],
  ["Evapotranspiration, in/day", "evapotranspirationInchesPerDay"],
  ["Width of the floor, ft (an ellipse twice as long)", () => "SQRT(B3*4/PI()/2)"],
  ["Rim area, sq ft", () => "PI()/4*(2*B10+2*B8*B4/12)*(B10+2*B8*B4/12)"],
  ["Held in the soil mix, cu ft", () => "B3*B6*B7/12"],
  ["Held when full, cu ft", () => "B12+B3*B4/12+PI()/4*3*B10*B8*(B4/12)^2+PI()/3*B8^2*(B4/12)^3"],
  ["Drawn in an hour, cu ft", () => "(B5+B9/24)*B3/12"],
  ["Runoff, cu ft", (last) => `SUM(Hours!A2:A${last})*B1*B2/12`],
  ["Rain on the basin, cu ft", (last) => `SUM(Hours!A2:A${last})*B11/12`],
  ["Overflow, cu ft", (last) => `SUM(Hours!D2:D${last})`],
  ["Still stored, cu ft", (last) => `Hours!C${last}`],
  ["Overflows", (last) => `SUM(Hours!E2:E${last})`],
  ["Longest ponding, h", (last) => `MAX(MAX(Hours!G2:G${last}),IF(Hours!C${last}>B12,${last - 1}-Hours!F${last},0))`],
];

/** Where what the hours come to begins, after the garden and what follows from it. */
export const FIRST_RESULT = 14;

/** Of each hour: rain, inflow, stored, spilled, whether an overflow begins, since when it ponds, how long it ponded. Row 1 is the empty basin. */
const HOUR = (row: number): readonly string[] => {
  const before = row - 1;
  return [
    `A${row}*(Result!$B$1*Result!$B$2+Result!$B$11)/12`,
    `MIN(MAX(C${before}+B${row}-Result!$B$14,0),Result!$B$13)`,
    `MAX(C${before}+B${row}-Result!$B$14-Result!$B$13,0)`,
    `IF(AND(D${row}>0,D${before}=0),1,0)`,
    `IF(C${row}>Result!$B$12,IF(C${before}<=Result!$B$12,ROW()-2+(Result!$B$12-C${before})/(B${row}-Result!$B$14),F${before}),0)`,
    `IF(AND(C${row}<=Result!$B$12,C${before}>Result!$B$12),ROW()-2+(Result!$B$12-C${before})/(B${row}-Result!$B$14)-F${before},0)`,
  ];
};

/** Writes the long-term balance of a garden as formulas, an hour a row, with no answers kept: whoever opens it computes them all. */
export async function writeBalanceWorkbook(path: string, rainInches: readonly number[], garden: Garden): Promise<void> {
  const workbook = new ExcelJS.stream.xlsx.WorkbookWriter({ filename: path });
  const result = workbook.addWorksheet("Result");
  const last = rainInches.length + 1;
  for (const [name, cell] of RESULT) result.addRow([name, typeof cell === "string" ? garden[cell] : { formula: cell(last) }]).commit();
  result.commit();
  const hours = workbook.addWorksheet("Hours");
  hours.addRow([0, 0, 0, 0, 0, 0, 0]).commit();
  for (const [step, rain] of rainInches.entries()) hours.addRow([rain, ...HOUR(step + 2).map((formula) => ({ formula }))]).commit();
  hours.commit();
  await workbook.commit();
}
