import { absolute, addressOf, type FormulaWrite } from "../workbook/port.ts";
import { asBuiltFormulas } from "./as-built-formulas.ts";
import { asBuiltSheet } from "./as-built.ts";
import { designSheet } from "./design.ts";
import { designFormulas } from "./design-formulas.ts";
import { inEachRow } from "./formula-writes.ts";
import { estimateLineFormulas } from "./estimate-lines-formulas.ts";
import { estimateLinesSheet } from "./estimate-lines.ts";
import { holeTestsSheet, READINGS } from "./hole-tests.ts";
import { placeAsSetUp, type Place } from "./place.ts";
import { pricesSheet } from "./prices.ts";
import { placesAsSetUp, type Places } from "./program.ts";
import { reportFormulas } from "./report-formulas.ts";
import { rulesSheet } from "./rules.ts";
import { unitsOfSite } from "./site-units.ts";
import { whatIfSheet } from "./what-if.ts";

/**
 * Every formula of the workbook, for sheets that stand where `places` says. On computed sheets each spills over all rows;
 * on sheets that people type in each stands in every row and reads no other: rows may be sorted, inserted and deleted.
 */
export function workbookFormulas(places: Places = placesAsSetUp): readonly FormulaWrite[] {
  return [
    ...holeTestFormulas(places.of(holeTestsSheet), places.of(designSheet)),
    ...designFormulas(places),
    ...asBuiltFormulas(places.of(asBuiltSheet), places.of(designSheet)),
    ...estimateLineFormulas(places.of(estimateLinesSheet), places.of(pricesSheet)),
    ...reportFormulas(places),
    whatIfFormula(),
  ];
}

function holeTestFormulas(holeTests: Place<typeof holeTestsSheet>, design: Place<typeof designSheet>): FormulaWrite[] {
  const readings = (row: number, first: "minutes1" | "water1") =>
    addressOf({ ...holeTests.cell(row, first), columns: READINGS }).replace(/^.*!/, "");
  const here = (row: number, key: "siteId" | "units" | "holeDiameter") => addressOf(holeTests.cell(row, key)).replace(/^.*!/, "");
  return [
    inEachRow(holeTests, "units", (row) => unitsOfSite(design, here(row, "siteId"))),
    inEachRow(
      holeTests,
      "infiltrationRate",
      // Only a row with readings is a call: Excel answers each one on its own.
      (row) =>
        `=IF(COUNT(${readings(row, "minutes1")},${readings(row, "water1")})=0,"",SOAK.HOLERATE(${readings(row, "minutes1")},${readings(row, "water1")},${here(row, "holeDiameter")},${here(row, "units")}))`,
    ),
  ];
}

/** Where the grid of the what-if sheet stands: shared inputs first, then rates across and areas down. */
export const whatIfGrid = {
  inputsRow: whatIfSheet.preface.length + 1,
  ratesRow: whatIfSheet.preface.length + 2 + whatIfSheet.sharedInputs.length,
};

function whatIfFormula(): FormulaWrite {
  const { inputsRow, ratesRow } = whatIfGrid;
  const range = (row: number, column: number, rows: number, columns: number) =>
    absolute(addressOf({ sheet: whatIfSheet.name, row, column, rows, columns })).replace(/^.*!/, "");
  const [ponding, storm, stormHours, slope, hours] = whatIfSheet.sharedInputs.map((_, index) => range(inputsRow + index, 1, 1, 1));
  const areas = range(ratesRow + 1, 0, whatIfSheet.contributingAreasSquareFeet.length, 1);
  const rates = range(ratesRow, 1, 1, whatIfSheet.designRatesInchesPerHour.length);
  return {
    range: { sheet: whatIfSheet.name, row: ratesRow + 1, column: 1, rows: 1, columns: 1 },
    formulas: [[`=SOAK.BASINAREA(${areas},${rates},${ponding},${storm},0.95,0,0.25,${stormHours},${slope},TRUE,${hours})`]],
  };
}

/** SITECHECK against the Rules sheet, for one measured answer of a visit. */
export function verdictFormula(
  rule: string,
  answerAddress: string,
  units: string,
  rules: Place<typeof rulesSheet> = placeAsSetUp(rulesSheet),
): string {
  return `=SOAK.SITECHECK("${rule.replaceAll('"', '""')}",${answerAddress},${rules.tableReference("rule", "checked")},"${units}")`;
}
