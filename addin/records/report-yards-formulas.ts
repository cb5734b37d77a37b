import { IMPERVIOUS_COVERS } from "../../functions/published/tr-55.ts";
import { metricPerUs } from "../../functions/quantities.ts";
import { runoffCoefficient, USUAL_RUNOFF_STORM_SHARE } from "../../functions/runoff/pollutant-load.ts";
import { absolute, addressOf, type FormulaWrite } from "../workbook/port.ts";
import { asBuiltSheet } from "./as-built.ts";
import { designSheet } from "./design.ts";
import { digDaysSheet } from "./dig-days.ts";
import { estimateLinesSheet } from "./estimate-lines.ts";
import { followUpsSheet } from "./follow-ups.ts";
import type { KeyOf, Sheet } from "./sheet.ts";
import { plantingSheet } from "./planting.ts";
import type { Places, ProgramKey } from "./program.ts";
import { reportYardsSheet } from "./report-yards.ts";
import { sitesSheet } from "./sites.ts";
import { surfacesSheet } from "./surfaces.ts";
import { UsedRows } from "./used-rows.ts";

/** Every column of Report yards, one spilled formula each. */
export function reportYardsFormulas(places: Places): readonly FormulaWrite[] {
  const here = places.of(reportYardsSheet);
  const of =
    <S extends Sheet>(sheet: S) =>
    (key: KeyOf<S>) =>
      places.of(sheet).columnReference(key);
  const [surface, asBuilt, digDay, line, clump, look] = [
    of(surfacesSheet),
    of(asBuiltSheet),
    of(digDaysSheet),
    of(estimateLinesSheet),
    of(plantingSheet),
    of(followUpsSheet),
  ] as const;
  const yards = new UsedRows(of(sitesSheet)("siteId"));
  const own = (key: KeyOf<typeof reportYardsSheet>) => yards.of(here.ownColumn(key));
  const site = (key: KeyOf<typeof sitesSheet>) => yards.of(of(sitesSheet)(key));
  const design = (key: KeyOf<typeof designSheet>) => yards.of(of(designSheet)(key));
  const ids = "ids";
  const setting = (key: ProgramKey) => absolute(addressOf(places.setting(key)));
  const column = (key: KeyOf<typeof reportYardsSheet>, formula: string): FormulaWrite => ({
    range: here.cell(here.firstRow, key),
    formulas: [[`=${yards.formula(`LET(ids,${site("siteId")},IF(ids="","",${formula}))`)}`]],
  });
  // An error, a blank and words are no number: left out, never 0.
  const inUs = (value: string, kind: "area" | "waterVolume") =>
    `LET(value,${value},IF(ISNUMBER(value),value/IF(${site("units")}="metric",${metricPerUs(kind)},1),""))`;

  // The newest row of As-built, and of two of one day the lower: looked for from below by Site ID and day.
  const asBuiltDay = `IF(ISNUMBER(${asBuilt("date")}),${asBuilt("date")},0)`;
  const newest = (key: "floorArea" | "waterHeld") =>
    `XLOOKUP(${ids}&"|"&MAXIFS(${asBuilt("date")},${asBuilt("siteId")},${ids}),${asBuilt("siteId")}&"|"&${asBuiltDay},${asBuilt(key)},"",0,-1)`;
  const builtOr = (key: "floorArea" | "waterHeld") => `IF(${own("countsAs")}="built",${newest(key)},${design(key)})`;
  const dayOr = (day: string, otherwise: string) => `IF(${day}>0,${day},${otherwise})`;
  const impervious = IMPERVIOUS_COVERS.map(
    (cover) => `SUMIFS(${surface("drainingArea")},${surface("siteId")},${ids},${surface("cover")},"${cover}")`,
  ).join("+");
  const counted = (table: string, formula: string) => `IF(COUNTIFS(${table},${ids})=0,"",${formula})`;

  // The simple method's coefficient is a straight line, so that roof and paving, and the rest, add up to the whole.
  const rain = setting("yearlyRainInches");
  const parts = (roofAndPaving: string, others: string) =>
    `IF(${rain}="","",IF(ISNUMBER(${own("contributingArea")}),IFERROR(${roofAndPaving}+${others},""),""))`;
  const rest = `${own("contributingArea")}-${own("imperviousArea")}`;
  const yearly = (area: string, imperviousPercent: number) =>
    `SOAK.RUNOFFVOLUME(${area},${rain}*${USUAL_RUNOFF_STORM_SHARE},${runoffCoefficient(imperviousPercent)})`;
  const load = (pollutant: string) =>
    parts(
      `SOAK.POLLUTANTLOAD(${own("imperviousArea")},${rain},100,"${pollutant}")`,
      `SOAK.POLLUTANTLOAD(${rest},${rain},0,"${pollutant}")`,
    );
  const stormRunoff = `SOAK.RUNOFFVOLUME(${own("contributingArea")},${design("stormDepth")}/IF(${site("units")}="metric",${metricPerUs("depth")},1))`;
  const money = (kind: string) =>
    counted(line("siteId"), `SUMIFS(${line("amount")},${line("siteId")},${ids},${line("kind")},"${kind}",${line("amount")},">=0")`);
  const looks = (criteria: string) => `COUNTIFS(${look("siteId")},${ids},${criteria})`;

  return [
    column("siteId", ids),
    column("yard", `${site("yard")}&""`),
    column(
      "countsAs",
      `IF(MATCH(${ids},${ids},0)<${yards.places},"twice",IF(COUNTIFS(${asBuilt("siteId")},${ids})>0,"built",IF(IFERROR(${design("status")}="fits",FALSE),"designed","not yet")))`,
    ),
    column(
      "date",
      dayOr(
        `MAXIFS(${asBuilt("date")},${asBuilt("siteId")},${ids})`,
        `IF(COUNTIFS(${asBuilt("siteId")},${ids})>0,"",${dayOr(`MINIFS(${digDay("date")},${digDay("siteId")},${ids})`, '""')})`,
      ),
    ),
    column("contributingArea", inUs(design("contributingArea"), "area")),
    column("imperviousArea", counted(surface("siteId"), inUs(`(${impervious})`, "area"))),
    column("gardenArea", inUs(builtOr("floorArea"), "area")),
    column("storage", inUs(builtOr("waterHeld"), "waterVolume")),
    column(
      "stormCapture",
      `LET(held,${own("storage")},runoff,${stormRunoff},IF(ISNUMBER(held),IF(ISNUMBER(runoff),IF(held<runoff,held,runoff),""),""))`,
    ),
    column("yearRunoff", parts(yearly(own("imperviousArea"), 100), yearly(rest, 0))),
    column("phosphorus", load("TP")),
    column("nitrogen", load("TN")),
    column("solids", load("TSS")),
    column(
      "plants",
      counted(
        clump("siteId"),
        `IF(${own("countsAs")}="built",SUMIFS(${clump("planted")},${clump("siteId")},${ids}),SUMIFS(${clump("planned")},${clump("siteId")},${ids}))`,
      ),
    ),
    column("hours", `SUMIFS(${digDay("hours")},${digDay("siteId")},${ids},${digDay("entry")},"sign-in")`),
    column("cash", money("<>in-kind")),
    column("inKind", money("in-kind")),
    column("looksDone", looks(`${look("done")},">0"`)),
    column("looksOpen", looks(`${look("kind")},"<>",${look("done")},"="`)),
  ];
}
