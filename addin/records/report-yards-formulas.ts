import { runoffCoefficient, USUAL_RUNOFF_STORM_SHARE } from "../../functions/runoff/pollutant-load.ts";
import { absolute, addressOf, type FormulaWrite } from "../workbook/port.ts";
import { asWord, withSpaces } from "./as-word.ts";
import { asBuiltSheet } from "./as-built.ts";
import { designSheet } from "./design.ts";
import { digDaysSheet } from "./dig-days.ts";
import { estimateLinesSheet } from "./estimate-lines.ts";
import { followUpsSheet } from "./follow-ups.ts";
import { spilled } from "./formula-writes.ts";
import { plantingSheet } from "./planting.ts";
import { DRAFTED_ITEMS, pricesSheet } from "./prices.ts";
import type { Places, ProgramKey } from "./program.ts";
import { reportYardsSheet } from "./report-yards.ts";
import type { KeyOf, Sheet } from "./sheet.ts";
import { sitesSheet } from "./sites.ts";

/** The simple method's coefficient of a yard is a straight line between that of bare ground and that of roof and paving. */
const SOFT = runoffCoefficient(0);
const HARD_MORE = Number((runoffCoefficient(100) - SOFT).toPrecision(12));

/** What an hour of a volunteer is worth on Prices; 0 where it has no price. */
export function volunteerRate(places: Places): string {
  const prices = places.of(pricesSheet);
  return `N(XLOOKUP("${DRAFTED_ITEMS.volunteerHour}",${asWord(prices.listReference("item"))},${prices.listReference("unitPrice")},0))`;
}

/** 0 where no row of the key has a number above 0: the spreadsheet of the page without Excel has words or infinity there. */
function extreme(name: "MAXIFS" | "MINIFS", numbers: string, keys: string, key: string): string {
  return `IF(COUNTIFS(${keys},${key},${numbers},">0")=0,0,${name}(${numbers},${keys},${key}))`;
}

/** Every column of Report yards, row for row beside Design: it reads that sheet, and what other sheets hold by Site ID. */
export function reportYardsFormulas(places: Places): readonly FormulaWrite[] {
  const here = places.of(reportYardsSheet);
  const design = places.of(designSheet);
  const listsOf =
    <S extends Sheet>(sheet: S) =>
    (key: KeyOf<S>) =>
      places.of(sheet).listReference(key);
  const [site, asBuilt, digDay, line, clump, look] = [
    listsOf(sitesSheet),
    listsOf(asBuiltSheet),
    listsOf(digDaysSheet),
    listsOf(estimateLinesSheet),
    listsOf(plantingSheet),
    listsOf(followUpsSheet),
  ] as const;
  const own = (key: KeyOf<typeof reportYardsSheet>) => here.ownColumn(key);
  const setting = (key: ProgramKey) => absolute(addressOf(places.setting(key)));
  const column = (key: KeyOf<typeof reportYardsSheet>, formula: string): FormulaWrite => spilled(here, key, `=${formula}`);
  const forYards = (formula: string) => `LET(i,${own("siteId")},IF(i="","",${formula}))`;
  const factor = (usPerMetric: string) => `IF(${design.columnReference("units")}="metric",${usPerMetric},1)`;
  // Metres to feet twice over: the CONVERT of the page without Excel knows no square metre.
  const toUs = (metric: string, us: string) =>
    factor(metric === "m^2" ? 'CONVERT(CONVERT(1,"m","ft"),"m","ft")' : `CONVERT(1,"${metric}","${us}")`);
  // An error, a blank and words are no number: left out, never 0.
  const numberIn = (value: string, metric: string, us: string) => `LET(x,${value},IF(ISNUMBER(x),x*${toUs(metric, us)},""))`;
  // The newest row of As-built, whose day stands in Date where a yard is built, and of two of one day the lower: looked for from below.
  const newest = (key: "floorArea" | "waterHeld") =>
    `LET(t,${own("date")},d,${asBuilt("date")},XLOOKUP(${own("siteId")}&"|"&IF(ISNUMBER(t),t,0),${asBuilt("siteId")}&"|"&IF(ISNUMBER(d),d,0),${asBuilt(key)},"",0,-1))`;
  const builtOr = (key: "floorArea" | "waterHeld") => `IF(${own("countsAs")}="built",${newest(key)},${design.columnReference(key)})`;
  const [area, hard, rain] = [own("contributingArea"), own("imperviousArea"), setting("yearlyRainInches")];
  const yearly = (formula: string) => `IF(${rain}="","",IFERROR(${formula},""))`;
  const withRows = (ids: string, formula: string) => forYards(`IF(COUNTIFS(${ids},i)=0,"",${formula})`);
  const money = (isKind: "" | "<>") =>
    withRows(
      line("siteId"),
      `SUMIFS(${line("amount")},${line("siteId")},i,${line("kind")},"${isKind}${withSpaces("in-kind")}",${line("amount")},">=0")`,
    );
  const lines = (criteria: string) => `COUNTIFS(${line("siteId")},i,${line("item")},"<>"${criteria})`;
  const names = design.tableReference("siteId", "yard");
  // A status is missing (#N/A or blank) or impossible (#VALUE!) where a yard is not ready. Any other error is a broken
  // Design, and so is no status where what the basin is computed from is there.
  const isReady = `ISNUMBER(${design.columnReference("contributingArea")})*ISNUMBER(${design.columnReference("testedRate")})`;
  const designed = `IF(ISERROR(s),IF((ERROR.TYPE(s)=3)+(ERROR.TYPE(s)=7),"neither",s),IF((s="")*${isReady},NA(),IF(s="fits","designed","neither")))`;
  return [
    // A yard of Sites that Design does not show makes the report an error: added up without it, it would be too small in silence.
    column(
      "siteId",
      `LET(n,${names},IF(SUM((${design.columnReference("siteId")}<>"")*1)<SUM((TRIM(${site("siteId")})<>"")*1)-1,NA(),IF(n="","",n)))`,
    ),
    column(
      "countsAs",
      `LET(i,${own("siteId")},s,${design.columnReference("status")},IF(i="","",IF(MATCH(i,i,0)<ROW(${own("siteId")})-${here.headingRow + 1},"twice",IF(COUNTIFS(${asBuilt("siteId")},i)>0,"built",${designed}))))`,
    ),
    column(
      "date",
      `LET(i,${own("siteId")},b,${extreme("MAXIFS", asBuilt("date"), asBuilt("siteId"), "i")},d,${extreme("MINIFS", digDay("date"), digDay("siteId"), "i")},IF(i="","",IF(b>0,b,IF((COUNTIFS(${asBuilt("siteId")},i)>0)+(d=0)>0,"",d))))`,
    ),
    column("yards", forYards("1")),
    column("contributingArea", numberIn(design.tableReference("contributingArea", "hardArea"), "m^2", "ft^2")),
    column("gardenArea", numberIn(builtOr("floorArea"), "m^2", "ft^2")),
    column("storage", numberIn(builtOr("waterHeld"), "m^3", "ft^3")),
    column(
      "stormCapture",
      `LET(h,${own("storage")},w,IFERROR(${design.columnReference("runoff")}*${toUs("m^3", "ft^3")},""),IF(ISNUMBER(h)*ISNUMBER(w),IF(h<w,h,w),""))`,
    ),
    column("yearRunoff", yearly(`SOAK.RUNOFFVOLUME(${area},${rain}*${USUAL_RUNOFF_STORM_SHARE},${SOFT}+${HARD_MORE}*${hard}/${area})`)),
    column(
      "yearCaptured",
      `IF(${setting("yearlyCaptureShare")}="","",IF(ISNUMBER(${own("yearRunoff")}),${own("yearRunoff")}*${setting("yearlyCaptureShare")},""))`,
    ),
    column("phosphorus", yearly(`SOAK.POLLUTANTLOAD(${area},${rain},100*${hard}/${area},{"TP","TN","TSS"})`)),
    column(
      "plants",
      withRows(
        clump("siteId"),
        `IF(${own("countsAs")}="built",SUMIFS(${clump("planted")},${clump("siteId")},i),SUMIFS(${clump("planned")},${clump("siteId")},i))`,
      ),
    ),
    column("looksDone", forYards(`COUNTIFS(${look("siteId")},i,${look("done")},">0")`)),
    column(
      "looksOpen",
      forYards(
        `COUNTIFS(${look("siteId")},i,${look("kind")},"<>")-COUNTIFS(${look("siteId")},i,${look("kind")},"<>",${look("done")},">0")`,
      ),
    ),
    column("hours", forYards(`SUMIFS(${digDay("hours")},${digDay("siteId")},i,${digDay("entry")},"${withSpaces("sign-in")}")`)),
    column("hoursValue", `LET(p,${volunteerRate(places)},IF((p=0)+(${own("hours")}="")>0,"",${own("hours")}*p))`),
    column("cash", money("<>")),
    column("inKind", money("")),
    column("unpriced", forYards(`${lines("")}-${lines(`,${line("amount")},">=0"`)}`)),
  ];
}
