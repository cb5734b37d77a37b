import type { FormulaWrite } from "../workbook/workbook.ts";
import { absolute, addressOf } from "../workbook/workbook.ts";
import { designSheet } from "./design.ts";
import { holeTestsSheet, READINGS } from "./hole-tests.ts";
import { settingCell } from "./program.ts";
import { rulesSheet } from "./rules.ts";
import { cellOf, cellReference, columnReference, firstRow } from "./sheet.ts";
import type { Sheet } from "./sheet.ts";
import { sitesSheet } from "./sites.ts";
import { surfacesSheet } from "./surfaces.ts";
import { whatIfSheet } from "./what-if.ts";

/** Every formula of the workbook. Columns that can spill are one formula each; the rest stand row by row. */
export function workbookFormulas(): readonly FormulaWrite[] {
  return [...surfaceFormulas(), ...holeTestFormulas(), ...designFormulas(), whatIfFormula()];
}

function surfaceFormulas(): FormulaWrite[] {
  const area = columnReference(surfacesSheet, "area");
  const share = columnReference(surfacesSheet, "share");
  return [spilled(surfacesSheet, "drainingArea", `=IF(${area}="","",${area}*IF(${share}="",1,${share}))`)];
}

function holeTestFormulas(): FormulaWrite[] {
  const siteIds = columnReference(sitesSheet, "siteId");
  const units = columnReference(sitesSheet, "units");
  const readings = (row: number, first: "minutes1" | "water1") =>
    addressOf({ ...cellOf(holeTestsSheet, row, first), columns: READINGS }).replace(/^.*!/, "");
  const here = (row: number, key: "siteId" | "units" | "holeDiameter") => addressOf(cellOf(holeTestsSheet, row, key)).replace(/^.*!/, "");
  return [
    // The &"" keeps a blank unit blank: a bare reference to a blank cell would answer 0.
    eachRow(holeTestsSheet, "units", (row) => `=IF(${here(row, "siteId")}="","",IFERROR(INDEX(${units},MATCH(${here(row, "siteId")},${siteIds},0))&"",""))`),
    eachRow(holeTestsSheet, "dropRate", (row) => `=SOAK.DROPRATE(${readings(row, "minutes1")},${readings(row, "water1")},${here(row, "units")})`),
    eachRow(
      holeTestsSheet,
      "infiltrationRate",
      (row) => `=SOAK.HOLERATE(${readings(row, "minutes1")},${readings(row, "water1")},${here(row, "holeDiameter")},${here(row, "units")})`,
    ),
  ];
}

function designFormulas(): FormulaWrite[] {
  const site = (key: keyof typeof sitesSheet.columns) => columnReference(sitesSheet, key);
  const own = (key: keyof typeof designSheet.columns) => columnReference(designSheet, key).replace(/^.*!/, "");
  const here = (row: number, key: keyof typeof designSheet.columns) => cellReference(designSheet, row, key).replace(/^.*!/, "");
  const setting = (key: Parameters<typeof settingCell>[0]) => absolute(addressOf(settingCell(key)));
  const surfaceSiteIds = columnReference(surfacesSheet, "siteId");
  const testSiteIds = columnReference(holeTestsSheet, "siteId");
  const forSites = (formula: string) => `=IF(${own("siteId")}="","",${formula})`;
  // A setting on Program is in US units; a metric yard's column of numbers needs the same thing in its own.
  const inchesAsDepth = (key: Parameters<typeof settingCell>[0]) => `${setting(key)}*IF(${own("units")}="metric",25.4,1)`;
  const feetAsLength = (key: Parameters<typeof settingCell>[0]) => `${setting(key)}*IF(${own("units")}="metric",0.3048,1)`;
  const mixOf = (row: number) =>
    `SOAK.SOILMIX(${here(row, "mixVolume")},${cellReference(sitesSheet, row, "mixRecipe")},${setting("settlingShare")},${here(row, "units")})`;
  const withRecipe = (row: number, formula: string) =>
    `=IF(OR(${here(row, "siteId")}="",${cellReference(sitesSheet, row, "mixRecipe")}=""),"",${formula})`;
  const mixPart = (key: "mixSand" | "mixTopsoil" | "mixCompost" | "mixNativeSoil", material: string) =>
    eachRow(designSheet, key, (row) => withRecipe(row, `IFNA(VLOOKUP("${material}",${mixOf(row)},2,FALSE),0)`));
  return [
    spilled(designSheet, "siteId", `=IF(${site("siteId")}="","",${site("siteId")})`),
    spilled(designSheet, "yard", `=IF(${site("yard")}="","",${site("yard")})`),
    spilled(designSheet, "units", forSites(`IF(${site("units")}="","us",${site("units")})`)),
    spilled(designSheet, "groundSlopePercent", `=SOAK.GROUNDSLOPE(${site("slopeDrop")},${site("slopeRun")})`),
    spilled(
      designSheet,
      "contributingArea",
      forSites(`IF(COUNTIFS(${surfaceSiteIds},${own("siteId")})=0,"",SUMIFS(${columnReference(surfacesSheet, "drainingArea")},${surfaceSiteIds},${own("siteId")}))`),
    ),
    spilled(designSheet, "stormDepth", forSites(`IF(${site("stormDepth")}="",${inchesAsDepth("stormDepthInches")},${site("stormDepth")})`)),
    spilled(designSheet, "holes", forSites(`COUNTIFS(${testSiteIds},${own("siteId")})`)),
    eachRow(
      designSheet,
      "testedRate",
      (row) =>
        `=IF(${here(row, "siteId")}="","",SOAK.DESIGNRATE(IF(${testSiteIds}=${here(row, "siteId")},${columnReference(holeTestsSheet, "infiltrationRate")},""),1,"geometric mean",${here(row, "units")}))`,
    ),
    spilled(
      designSheet,
      "designRate",
      `=SOAK.SITEDESIGN(${own("contributingArea")},${own("testedRate")},${setting("reductionFactor")},${own("stormDepth")},${site("pondingDepth")},${site("mediaDepth")},IF(${site("sideSlope")}="",${setting("sideSlope")},${site("sideSlope")}),${setting("drainHours")},${own("units")})`,
    ),
    spilled(designSheet, "floorLength", `=SOAK.BASINSIZE(${own("floorArea")},,,${own("units")})`),
    spilled(designSheet, "looseVolume", forSites(`SOAK.SOILSTATE(${own("digVolume")},"in place","loose","loam",${own("units")})`)),
    spilled(designSheet, "mixVolume", forSites(`SOAK.LAYERVOLUME(${own("floorArea")},IF(${site("mediaDepth")}="",0,${site("mediaDepth")}),0,${own("units")})`)),
    eachRow(designSheet, "mixLoose", (row) => withRecipe(row, `SUM(${mixOf(row)})`)),
    mixPart("mixSand", "sand"),
    mixPart("mixTopsoil", "topsoil"),
    mixPart("mixCompost", "compost"),
    mixPart("mixNativeSoil", "native soil"),
    spilled(designSheet, "mulchVolume", forSites(`SOAK.LAYERVOLUME(${own("rimArea")},${inchesAsDepth("mulchDepthInches")},0,${own("units")})`)),
    spilled(designSheet, "plants", forSites(`SOAK.PLANTCOUNT(${own("rimArea")},${feetAsLength("plantSpacingFeet")},"triangle",${own("units")})`)),
    eachRow(designSheet, "yardRunoff", (row) => {
      const ofSite = (key: "cover" | "drainingArea") => `IF(${surfaceSiteIds}=${here(row, "siteId")},${columnReference(surfacesSheet, key)},"")`;
      const soilGroup = cellReference(sitesSheet, row, "soilGroup");
      return `=IF(OR(${here(row, "siteId")}="",${soilGroup}=""),"",SOAK.YARDRUNOFF(${here(row, "stormDepth")},${ofSite("cover")},${ofSite("drainingArea")},${soilGroup},1,${here(row, "units")}))`;
    }),
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
export function verdictFormula(rule: string, answerAddress: string, units: string): string {
  const table = absolute(addressOf({ sheet: rulesSheet.name, row: firstRow(rulesSheet), column: 0, rows: rulesSheet.rows, columns: Object.keys(rulesSheet.columns).length }));
  return `=SOAK.SITECHECK("${rule.replaceAll('"', '""')}",${answerAddress},${table},"${units}")`;
}

function spilled<S extends Sheet>(sheet: S, key: keyof S["columns"] & string, formula: string): FormulaWrite {
  return { range: cellOf(sheet, firstRow(sheet), key), formulas: [[formula]] };
}

function eachRow<S extends Sheet>(sheet: S, key: keyof S["columns"] & string, formula: (row: number) => string): FormulaWrite {
  const rows = Array.from({ length: sheet.rows }, (_, index) => [formula(firstRow(sheet) + index)]);
  return { range: { ...cellOf(sheet, firstRow(sheet), key), rows: sheet.rows }, formulas: rows };
}
