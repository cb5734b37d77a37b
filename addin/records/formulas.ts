import { absolute, addressOf, type FormulaWrite } from "../workbook/port.ts";
import { asBuiltFormulas } from "./as-built-formulas.ts";
import { asBuiltSheet } from "./as-built.ts";
import { designSheet } from "./design.ts";
import { inEachRow, spilled } from "./formula-writes.ts";
import { estimateLineFormulas } from "./estimate-lines-formulas.ts";
import { estimateLinesSheet } from "./estimate-lines.ts";
import { holeTestsSheet, READINGS } from "./hole-tests.ts";
import { placeAsSetUp, type Place } from "./place.ts";
import type { KeyOf } from "./sheet.ts";
import { pricesSheet } from "./prices.ts";
import { placesAsSetUp, type Places, type ProgramKey } from "./program.ts";
import { reportFormulas } from "./report-formulas.ts";
import { rulesSheet } from "./rules.ts";
import { sitesSheet } from "./sites.ts";
import { unitsOfSite } from "./site-units.ts";
import { surfacesSheet } from "./surfaces.ts";
import { UsedRows } from "./used-rows.ts";
import { whatIfSheet } from "./what-if.ts";

/**
 * Every formula of the workbook, for sheets that stand where `places` says. Columns that can spill are one formula each;
 * the rest stand row by row, and find what they need by Site ID: rows may be sorted, inserted and deleted.
 */
export function workbookFormulas(places: Places = placesAsSetUp): readonly FormulaWrite[] {
  return [
    ...surfaceFormulas(places.of(surfacesSheet)),
    ...holeTestFormulas(places.of(holeTestsSheet), places.of(sitesSheet)),
    ...designFormulas(places),
    ...asBuiltFormulas(places.of(asBuiltSheet), places.of(sitesSheet)),
    ...estimateLineFormulas(places.of(estimateLinesSheet), places.of(pricesSheet)),
    ...reportFormulas(places),
    whatIfFormula(),
  ];
}

function surfaceFormulas(surfaces: Place<typeof surfacesSheet>): FormulaWrite[] {
  const area = surfaces.columnReference("area");
  const share = surfaces.columnReference("share");
  return [spilled(surfaces, "drainingArea", `=IF(${area}="","",${area}*IF(${share}="",1,${share}))`)];
}

function holeTestFormulas(holeTests: Place<typeof holeTestsSheet>, sites: Place<typeof sitesSheet>): FormulaWrite[] {
  const readings = (row: number, first: "minutes1" | "water1") =>
    addressOf({ ...holeTests.cell(row, first), columns: READINGS }).replace(/^.*!/, "");
  const here = (row: number, key: "siteId" | "units" | "holeDiameter") => addressOf(holeTests.cell(row, key)).replace(/^.*!/, "");
  return [
    inEachRow(holeTests, "units", (row) => unitsOfSite(sites, here(row, "siteId"))),
    inEachRow(
      holeTests,
      "infiltrationRate",
      (row) => `=SOAK.HOLERATE(${readings(row, "minutes1")},${readings(row, "water1")},${here(row, "holeDiameter")},${here(row, "units")})`,
    ),
  ];
}

function designFormulas(places: Places): FormulaWrite[] {
  const sites = places.of(sitesSheet);
  const design = places.of(designSheet);
  const surfaces = places.of(surfacesSheet);
  const holeTests = places.of(holeTestsSheet);
  const site = (key: KeyOf<typeof sitesSheet>) => sites.columnReference(key);
  const own = (key: KeyOf<typeof designSheet>) => design.ownColumn(key);
  const here = (row: number, key: KeyOf<typeof designSheet>) => design.ownCell(row, key);
  const ofSite = (row: number, key: KeyOf<typeof sitesSheet>) => `INDEX(${site(key)},MATCH(${here(row, "siteId")},${site("siteId")},0))`;
  const setting = (key: ProgramKey) => absolute(addressOf(places.setting(key)));
  const surfaceSiteIds = surfaces.columnReference("siteId");
  const testSiteIds = holeTests.columnReference("siteId");
  const forSites = (formula: string) => `=IF(${own("siteId")}="","",${formula})`;
  const inUse = new UsedRows(own("siteId"));
  const forUsedSites = (key: KeyOf<typeof designSheet>, formula: string) =>
    spilled(design, key, `=${inUse.formula(`LET(ids,${inUse.of(own("siteId"))},IF(ids="","",${formula}))`)}`);
  // A setting on Program is in US units; a metric yard's column of numbers needs the same thing in its own.
  const inchesAsDepth = (key: ProgramKey) => `${setting(key)}*IF(${own("units")}="metric",25.4,1)`;
  const feetAsLength = (key: ProgramKey) => `${setting(key)}*IF(${own("units")}="metric",0.3048,1)`;
  const asTyped = (key: KeyOf<typeof designSheet>, from: KeyOf<typeof sitesSheet>) =>
    spilled(design, key, `=IF(${site(from)}="","",${site(from)})`);
  const mixOf = (row: number) =>
    `SOAK.SOILMIX(${here(row, "mixVolume")},${ofSite(row, "mixRecipe")},${setting("settlingShare")},${here(row, "units")})`;
  // Site ID first: without one there is no row of Sites to look at.
  const withRecipe = (row: number, formula: string) => `=IF(${here(row, "siteId")}="","",IF(${ofSite(row, "mixRecipe")}="","",${formula}))`;
  const mixPart = (key: "mixSand" | "mixTopsoil" | "mixCompost" | "mixNativeSoil", material: string) =>
    inEachRow(design, key, (row) => withRecipe(row, `IFNA(VLOOKUP("${material}",${mixOf(row)},2,FALSE),0)`));
  return [
    asTyped("siteId", "siteId"),
    asTyped("yard", "yard"),
    spilled(design, "units", `=IF(${site("siteId")}="","",IF(${site("units")}="","us",${site("units")}))`),
    spilled(design, "groundSlopePercent", `=SOAK.GROUNDSLOPE(${site("slopeDrop")},${site("slopeRun")})`),
    // Only for the rows in use: the embedded spreadsheet would look through the whole sheet for every blank row.
    forUsedSites(
      "contributingArea",
      `IF(COUNTIFS(${surfaceSiteIds},ids)=0,"",SUMIFS(${surfaces.columnReference("drainingArea")},${surfaceSiteIds},ids))`,
    ),
    spilled(
      design,
      "stormDepth",
      `=IF(${site("siteId")}="","",IF(${site("stormDepth")}="",${setting("stormDepthInches")}*IF(${site("units")}="metric",25.4,1),${site("stormDepth")}))`,
    ),
    forUsedSites("holes", `COUNTIFS(${testSiteIds},ids)`),
    inEachRow(
      design,
      "testedRate",
      (row) =>
        `=IF(${here(row, "siteId")}="","",SOAK.DESIGNRATE(IF(${testSiteIds}=${here(row, "siteId")},${holeTests.columnReference("infiltrationRate")},""),1,"geometric mean",${here(row, "units")}))`,
    ),
    // What Sites holds stands here once more, so that the calls below read this sheet alone: a row inserted on Sites makes
    // its columns longer than these, and columns of two lengths have no common answer.
    asTyped("pondingAsked", "pondingDepth"),
    asTyped("mediaDepth", "mediaDepth"),
    spilled(design, "sideSlope", `=IF(${site("siteId")}="","",IF(${site("sideSlope")}="",${setting("sideSlope")},${site("sideSlope")}))`),
    asTyped("shape", "shape"),
    asTyped("lengthToWidth", "lengthToWidth"),
    spilled(
      design,
      "designRate",
      `=SOAK.SITEDESIGN(${own("contributingArea")},${own("testedRate")},${setting("reductionFactor")},${own("stormDepth")},,${own("pondingAsked")},${own("mediaDepth")},${inchesAsDepth("mulchDepthInches")},${own("sideSlope")},${setting("drainHours")},${own("shape")},${own("lengthToWidth")},IFNA(${own("groundSlopePercent")},""),${own("units")})`,
    ),
    spilled(design, "floorLength", `=SOAK.BASINSIZE(${own("floorArea")},${own("shape")},${own("lengthToWidth")},${own("units")})`),
    spilled(design, "looseVolume", forSites(`SOAK.SOILSTATE(${own("digVolume")},"in place","loose","loam",${own("units")})`)),
    spilled(
      design,
      "mixVolume",
      forSites(`SOAK.LAYERVOLUME(${own("floorArea")},IF(${own("mediaDepth")}="",0,${own("mediaDepth")}),0,${own("units")})`),
    ),
    inEachRow(design, "mixLoose", (row) => withRecipe(row, `SUM(${mixOf(row)})`)),
    mixPart("mixSand", "sand"),
    mixPart("mixTopsoil", "topsoil"),
    mixPart("mixCompost", "compost"),
    mixPart("mixNativeSoil", "native soil"),
    spilled(design, "mulchVolume", forSites(`SOAK.LAYERVOLUME(${own("rimArea")},${inchesAsDepth("mulchDepthInches")},0,${own("units")})`)),
    spilled(
      design,
      "plants",
      forSites(`SOAK.PLANTCOUNT(${own("rimArea")},${feetAsLength("plantSpacingFeet")},"triangle",${own("units")})`),
    ),
    inEachRow(design, "yardRunoff", (row) => {
      const ofSurfaces = (key: "cover" | "drainingArea") =>
        `IF(${surfaceSiteIds}=${here(row, "siteId")},${surfaces.columnReference(key)},"")`;
      const runoff = `SOAK.YARDRUNOFF(${here(row, "stormDepth")},${ofSurfaces("cover")},${ofSurfaces("drainingArea")},${ofSite(row, "soilGroup")},1,${here(row, "units")})`;
      return `=IF(${here(row, "siteId")}="","",IF(${ofSite(row, "soilGroup")}="","",${runoff}))`;
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
export function verdictFormula(
  rule: string,
  answerAddress: string,
  units: string,
  rules: Place<typeof rulesSheet> = placeAsSetUp(rulesSheet),
): string {
  return `=SOAK.SITECHECK("${rule.replaceAll('"', '""')}",${answerAddress},${rules.tableReference("rule", "checked")},"${units}")`;
}
