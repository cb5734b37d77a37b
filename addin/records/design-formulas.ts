import { absolute, addressOf, type FormulaWrite } from "../workbook/port.ts";
import { asWord } from "./as-word.ts";
import { designSheet } from "./design.ts";
import { spilled } from "./formula-writes.ts";
import { holeTestsSheet } from "./hole-tests.ts";
import { plantingSheet } from "./planting.ts";
import type { Places, ProgramKey } from "./program.ts";
import { mostRowsOf } from "./prepared-rows.ts";
import type { KeyOf, Sheet } from "./sheet.ts";
import { sitesSheet } from "./sites.ts";
import { surfacesSheet } from "./surfaces.ts";

type DesignKey = KeyOf<typeof designSheet>;
type SiteKey = KeyOf<typeof sitesSheet>;

/**
 * Design, a row a yard beside Sites. First what Sites holds stands here once more, so that the calls read this sheet
 * alone: a row inserted on Sites makes its columns longer than these, and columns of two lengths have no common answer.
 * Site IDs and units are read here once, spaces and case aside, and every other formula takes them from here.
 * Then four calls, each over all yards: what drains and runs off, what was tested, the basin, and its quantities. They
 * rest on typed cells, never on a formula of a sheet that people type in: a row that somebody inserts has none.
 */
export function designFormulas(places: Places): readonly FormulaWrite[] {
  const sites = places.of(sitesSheet);
  const design = places.of(designSheet);
  const surface = (key: KeyOf<typeof surfacesSheet>) => places.of(surfacesSheet).listReference(key);
  const hole = (key: KeyOf<typeof holeTestsSheet>) => places.of(holeTestsSheet).listReference(key);
  const readings = (first: "minutes1" | "water1", last: "minutes10" | "water10") =>
    places.of(holeTestsSheet).listTableReference(first, last);
  const clump = (key: KeyOf<typeof plantingSheet>) => places.of(plantingSheet).listReference(key);
  // Far below the rows that the formulas reach, where somebody may have typed on.
  const below = (sheet: typeof surfacesSheet | typeof holeTestsSheet) => {
    const place = places.of<Sheet>(sheet);
    return `COUNTIFS(${place.over(mostRowsOf(sheet)).listReference("siteId")},i)-COUNTIFS(${place.listReference("siteId")},i)`;
  };
  const own = (key: DesignKey) => design.ownColumn(key);
  const setting = (key: ProgramKey) => absolute(addressOf(places.setting(key)));
  // A setting on Program is in US units; a metric yard's column of numbers needs the same thing in its own.
  const inUnits = (key: ProgramKey, us: string, metric: string) =>
    `IF(${own("units")}="metric",CONVERT(${setting(key)},"${us}","${metric}"),${setting(key)})`;
  const typed = (key: DesignKey, from: SiteKey, whenBlank: string) =>
    spilled(
      design,
      key,
      whenBlank === '""'
        ? `=LET(t,${sites.rowsBelowHeading(from)},IF(${asWord("t")}="","",t))`
        : `=LET(i,${sites.rowsBelowHeading("siteId")},t,${sites.rowsBelowHeading(from)},IF(TRIM(i)="","",IF(${asWord("t")}="",${whenBlank},t)))`,
    );
  const call = (key: DesignKey, name: string, inputs: readonly string[]) => spilled(design, key, `=SOAK.${name}(${inputs.join(",")})`);
  return [
    spilled(design, "siteId", `=${asWord(sites.rowsBelowHeading("siteId"))}`),
    typed("yard", "yard", '""'),
    spilled(
      design,
      "units",
      `=LET(i,${sites.rowsBelowHeading("siteId")},u,LOWER(${asWord(sites.rowsBelowHeading("units"))}),IF(TRIM(i)="","",u))`,
    ),
    typed("soilGroup", "soilGroup", '""'),
    call("groundSlopePercent", "GROUNDSLOPE", [sites.rowsBelowHeading("slopeDrop"), sites.rowsBelowHeading("slopeRun")]),
    spilled(
      design,
      "stormDepth",
      `=LET(i,${sites.rowsBelowHeading("siteId")},t,${sites.rowsBelowHeading("stormDepth")},m,${asWord(sites.rowsBelowHeading("units"))}="metric",d,${setting("stormDepthInches")},IF(TRIM(i)="","",IF(TRIM(t)="",IF(m,CONVERT(d,"in","mm"),d),t)))`,
    ),
    call("contributingArea", "SITERUNOFF", [
      own("siteId"),
      own("stormDepth"),
      own("soilGroup"),
      ...(["siteId", "cover", "area", "share"] as const).map(surface),
      own("units"),
    ]),
    call("holes", "SITERATE", [
      own("siteId"),
      hole("siteId"),
      readings("minutes1", "minutes10"),
      readings("water1", "water10"),
      hole("holeDiameter"),
      own("units"),
    ]),
    typed("pondingAsked", "pondingDepth", '""'),
    typed("mediaDepth", "mediaDepth", '""'),
    typed("sideSlope", "sideSlope", setting("sideSlope")),
    typed("mixRecipe", "mixRecipe", '""'),
    typed("shape", "shape", '""'),
    typed("lengthToWidth", "lengthToWidth", '""'),
    spilled(
      design,
      "plannedPlants",
      `=LET(i,${own("siteId")},n,SUMIFS(${clump("planned")},${clump("siteId")},i)+SUMIFS(${clump("planted")},${clump("siteId")},i)-SUMIFS(${clump("planted")},${clump("siteId")},i,${clump("planned")},">=0"),IF(i="","",IF(n=0,"",n)))`,
    ),
    spilled(
      design,
      "notCounted",
      `=LET(i,${own("siteId")},n,${below(surfacesSheet)}+${below(holeTestsSheet)},IF(i="","",IF(${own("units")}="","Units is blank. ","")&IF(n=0,"","Rows below those that formulas reach: "&n&".")))`,
    ),
    spilled(
      design,
      "designRate",
      `=LET(u,${own("units")},k,IF(u="metric",CONVERT(1,"in","mm"),1),SOAK.SITEDESIGN(${[
        own("contributingArea"),
        own("testedRate"),
        setting("reductionFactor"),
        own("stormDepth"),
        own("surfaceRunoff"),
        own("pondingAsked"),
        own("mediaDepth"),
        `k*${setting("mulchDepthInches")}`,
        own("sideSlope"),
        setting("drainHours"),
        own("shape"),
        own("lengthToWidth"),
        // Not measured yet: dug as on level ground.
        `IFNA(${own("groundSlopePercent")},"")`,
        setting("largestFloorShare"),
        // The CONVERT of the page without Excel knows no square metre, and its arrays come before a number.
        `IF(u="metric",CONVERT(1,"ft","m")^2,1)*${setting("leastFloorSquareFeet")}`,
        `k*${setting("leastDesignRateInchesPerHour")}`,
        setting("longestEmptyHours"),
        `k*${setting("leastStormInches")}`,
        `k*${setting("largestStormInches")}`,
        own("notCounted"),
        "u",
      ].join(",")}))`,
    ),
    call("floorLength", "SITETAKEOFF", [
      own("floorArea"),
      own("rimArea"),
      own("digVolume"),
      own("mediaDepth"),
      inUnits("mulchDepthInches", "in", "mm"),
      inUnits("plantSpacingFeet", "ft", "m"),
      own("mixRecipe"),
      setting("settlingShare"),
      own("shape"),
      own("lengthToWidth"),
      own("plannedPlants"),
      own("units"),
    ]),
  ];
}
