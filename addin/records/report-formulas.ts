import { GALLONS_PER_CUBIC_FOOT } from "../../functions/planting/water-need.ts";
import { metricPerUs, unitOf } from "../../functions/quantities.ts";
import { absolute, addressOf, type CellValue, type FormulaWrite, type ValueWrite } from "../workbook/port.ts";
import { holds, withSpaces } from "./as-word.ts";
import { digDaysSheet } from "./dig-days.ts";
import { estimateLinesSheet } from "./estimate-lines.ts";
import { placeAsSetUp } from "./place.ts";
import { plantingSheet } from "./planting.ts";
import type { Places } from "./program.ts";
import { NO_FUNDER, REPORT_YEARS, reportFigures, reportSheet, type ReportFigure, type ReportFigureKey, type ReportUnit } from "./report.ts";
import { reportYardsFormulas, volunteerRate } from "./report-yards-formulas.ts";
import { reportYardsSheet } from "./report-yards.ts";
import type { KeyOf, Sheet } from "./sheet.ts";

/** Units as they are written, and how many metric units make one of the US. */
export const reportUnits: Readonly<Record<ReportUnit, { readonly us: string; readonly metric: string; readonly factor: number }>> = {
  yards: { us: "yards", metric: "", factor: 1 },
  area: { us: unitOf("area", "us"), metric: unitOf("area", "metric"), factor: metricPerUs("area") },
  volume: { us: unitOf("waterVolume", "us"), metric: unitOf("waterVolume", "metric"), factor: metricPerUs("waterVolume") },
  gallons: { us: "gal", metric: "L", factor: (1000 * metricPerUs("waterVolume")) / GALLONS_PER_CUBIC_FOOT },
  load: { us: unitOf("load", "us"), metric: unitOf("load", "metric"), factor: metricPerUs("load") },
  count: { us: "", metric: "", factor: 1 },
  hours: { us: "h", metric: "", factor: 1 },
  money: { us: "money", metric: "", factor: 1 },
  "money per area": { us: "money / sq ft", metric: "money / m²", factor: 1 / metricPerUs("area") },
  "money per gallon": { us: "money / gal", metric: "money / L", factor: GALLONS_PER_CUBIC_FOOT / (1000 * metricPerUs("waterVolume")) },
};

/** Lines that add up a column of Report yards stand first; the others have formulas of their own. */
const figures: readonly ReportFigure[] = reportFigures;
const addedUp = figures.filter(({ adds }) => adds !== undefined).length;

/** Rows below the headings where the further blocks stand. */
const TWICE = figures.length;
const YEARS = TWICE + 2;
const FUNDERS = YEARS + REPORT_YEARS + 3;
const MOST_FUNDERS = reportSheet.rows - FUNDERS - 1;

/** What stands on Report besides its formulas: labels, units, sources, and what each line adds up. */
export function reportTexts(): readonly ValueWrite[] {
  const report = placeAsSetUp(reportSheet);
  const keys = Object.keys(reportSheet.columns) as KeyOf<typeof reportSheet>[];
  const lines = new Map<number, Partial<Record<KeyOf<typeof reportSheet>, CellValue>>>(
    figures.map(({ label, unit, source, adds, times }, place) => {
      const { us, metric, factor } = reportUnits[unit];
      return [
        place,
        {
          figure: label,
          unit: us,
          metricUnit: metric,
          source,
          metricFactor: metric === "" ? null : factor,
          ...(adds === undefined ? {} : { adds: reportYardsSheet.columns[adds].heading, times: times ?? 1 }),
        },
      ];
    }),
  );
  lines.set(TWICE, { figure: "Site IDs that stand twice on Sites, counted once" });
  lines.set(YEARS, {
    figure: "Cash by the year of the yard's date",
    source: "Report yards, Date: the day of As-built, or the first dig day where it is not built yet. The unit is money.",
  });
  lines.set(FUNDERS, { figure: "Cash by funder", source: "Estimate lines that are not in-kind, by Funder. The unit is money." });
  return [...lines].flatMap(([place, cells]) =>
    keys.flatMap((key): ValueWrite[] => {
      const value = cells[key] ?? null;
      return value === null || value === "" ? [] : [{ range: report.cell(report.firstRow + place, key), values: [[value]] }];
    }),
  );
}

/** Both sheets of the report. */
export function reportFormulas(places: Places): readonly FormulaWrite[] {
  return [...reportYardsFormulas(places), ...sumFormulas(places), ...otherFormulas(places), ...listFormulas(places)];
}

const CLASSES = '{"built","designed"}';

function listsOf<S extends Sheet>(places: Places, sheet: S): (key: KeyOf<S>) => string {
  return (key) => places.of(sheet).listReference(key);
}

/** The cells of Report from one row below the headings on. */
function block(places: Places, first: KeyOf<typeof reportSheet>, row: number, rows: number, columns = 1): string {
  const report = places.of(reportSheet);
  return absolute(addressOf({ ...report.cell(report.firstRow + row, first), rows, columns })).replace(/^.*!/, "");
}

/** 0, or the error of Report yards where Design is broken: what counts yards by COUNTIFS passes over errors, and would say 0. */
function ifWhole(places: Places): string {
  return `0*${block(places, "builtYards", 0, 1)}`;
}

function formulaAt(places: Places, key: KeyOf<typeof reportSheet>, row: number, formula: string): FormulaWrite {
  const report = places.of(reportSheet);
  return { range: report.cell(report.firstRow + row, key), formulas: [[`=${formula}`]] };
}

function rowOf(key: ReportFigureKey): number {
  return figures.findIndex((figure) => figure.key === key);
}

/** Sums of the built and the designed yards, how many yards had the number, and the sums in metric units. */
function sumFormulas(places: Places): readonly FormulaWrite[] {
  const yards = places.of(reportYardsSheet);
  const figuresOfYards = yards.tableReference("yards", "unpriced");
  const headings = absolute(
    addressOf({ ...yards.cell(yards.headingRow, "yards"), columns: yards.columnIndex("unpriced") - yards.columnIndex("yards") + 1 }),
  );
  const isCounted = `(${yards.columnReference("countsAs")}=${CLASSES})*1`;
  const adds = `(${block(places, "adds", 0, addedUp)}=${headings})*1`;
  const counts = block(places, "builtYards", 0, addedUp, 2);
  const totals = block(places, "built", 0, figures.length, 2);
  const factors = block(places, "metricFactor", 0, figures.length);
  return [
    formulaAt(places, "builtYards", 0, `MMULT(${adds},MMULT(TRANSPOSE(ISNUMBER(${figuresOfYards})*1),${isCounted}))`),
    formulaAt(
      places,
      "built",
      0,
      `IF(${counts}=0,"none",MMULT(${adds},MMULT(TRANSPOSE(IF(ISNUMBER(${figuresOfYards}),${figuresOfYards},0)),${isCounted}))*${block(places, "times", 0, addedUp)})`,
    ),
    formulaAt(places, "builtMetric", 0, `IF(ISNUMBER(${totals})*(${factors}<>""),${totals}*${factors},"")`),
    ...(["contributingArea", "storage"] as const).map((key) => {
      const [line, factor] = key === "storage" ? (["costPerGallon", GALLONS_PER_CUBIC_FOOT] as const) : (["costPerArea", 1] as const);
      const [cash, quantity] = [yards.columnReference("cash"), yards.columnReference(key)];
      const sum = (value: string) => `MMULT(TRANSPOSE(IF(b,${value},0)),k)`;
      return formulaAt(
        places,
        "built",
        rowOf(line),
        `LET(m,${cash},q,${quantity},b,ISNUMBER(m)*ISNUMBER(q),k,${isCounted},a,${sum("q")}${factor === 1 ? "" : `*${factor}`},IF(a>0,${sum("m")}/a,"none"))`,
      );
    }),
  ];
}

/** Different plants and people, and what belongs to no counted yard: said beside the totals, so that nothing is lost. */
function otherFormulas(places: Places): readonly FormulaWrite[] {
  const [clump, digDay, line] = [
    listsOf(places, plantingSheet),
    listsOf(places, digDaysSheet),
    listsOf(places, estimateLinesSheet),
  ] as const;
  const yards = places.of(reportYardsSheet);
  const [ids, countsAs] = [yards.columnReference("siteId"), yards.columnReference("countsAs")];
  const counted = (key: ReportFigureKey) => `SUM(${block(places, "built", rowOf(key), 1, 2)})`;
  // Sums of the same numbers in another order differ in their last digit: what nothing is left of is 0.
  const rest = (all: string, key: ReportFigureKey) => `ROUND(${all}-${counted(key)},6)`;
  const other = (key: ReportFigureKey, formula: string) => formulaAt(places, "other", rowOf(key), formula);
  const are = (classes: string) => `COUNTIFS(${ids},i,${countsAs},"${classes}")`;
  const species = (classes: "built" | "designed", amount: "planted" | "planned") =>
    formulaAt(
      places,
      classes,
      rowOf("species"),
      `LET(p,${clump("plant")},f,p<>"",i,FILTER(${clump("siteId")}&"",f),n,FILTER(${clump(amount)},f),IFERROR(ROWS(UNIQUE(LOWER(TRIM(FILTER(FILTER(p,f),${are(classes)}*ISNUMBER(n)*(n>0)))))),0)+${ifWhole(places)})`,
    );
  const people = (key: "built" | "designed" | "other", condition: string) =>
    formulaAt(
      places,
      key,
      rowOf("volunteers"),
      `LET(f,${holds(digDay("entry"), "sign-in")},i,FILTER(${digDay("siteId")}&"",f),w,FILTER(${digDay("who")},f),IFERROR(ROWS(UNIQUE(LOWER(TRIM(FILTER(w,(w<>"")*(${condition})))))),0)+${ifWhole(places)})`,
    );
  const money = (isKind: "" | "<>") =>
    `SUMIFS(${line("amount")},${line("kind")},"${isKind}${withSpaces("in-kind")}",${line("amount")},">=0")`;
  const unpriced = `COUNTIFS(${line("item")},"<>")-COUNTIFS(${line("item")},"<>",${line("amount")},">=0")-1`;
  return [
    species("built", "planted"),
    species("designed", "planned"),
    people("built", are("built")),
    people("designed", are("designed")),
    people("other", `${are("built")}+${are("designed")}=0`),
    other("yards", `COUNTIFS(${countsAs},"neither")+${ifWhole(places)}`),
    other("hours", rest(`SUMIFS(${digDay("hours")},${digDay("entry")},"${withSpaces("sign-in")}")`, "hours")),
    other("volunteerValue", `LET(p,${volunteerRate(places)},IF(p=0,"none",${block(places, "other", rowOf("hours"), 1)}*p))`),
    other("cash", rest(money("<>"), "cash")),
    other("inKind", rest(money(""), "inKind")),
    // The heading is no line.
    other("unpriced", `${unpriced}-${counted("unpriced")}`),
    formulaAt(
      places,
      "source",
      TWICE,
      `IF(COUNTIFS(${countsAs},"twice")=0,"None.","Give the lower row an ID of its own: "&TEXTJOIN(", ",TRUE,IF(${countsAs}="twice",${ids},"")))`,
    ),
  ];
}

/** Money by year, the latest years with any, and by funder, under the spelling of a name that came first. */
function listFormulas(places: Places): readonly FormulaWrite[] {
  const yards = places.of(reportYardsSheet);
  const line = listsOf(places, estimateLinesSheet);
  const [date, countsAs, cash] = [yards.columnReference("date"), yards.columnReference("countsAs"), yards.columnReference("cash")];
  const years = block(places, "figure", YEARS + 1, REPORT_YEARS + 1);
  const year = `k,${countsAs},d,${date},y,IF((k="built")+(k="designed"),IF(ISNUMBER(d),YEAR(d),"without a date"),"")`;
  const ofYears = (value: string) => `LET(${year},IF(${years}="","",MMULT((${years}=TRANSPOSE(y))*1,(k=${CLASSES})*${value})))`;
  const funders = block(places, "figure", FUNDERS + 1, MOST_FUNDERS);
  const isCash = (amount: string) => `ISNUMBER(${amount})*(1-${holds(line("kind"), "in-kind")})`;
  const funder = (cells: string) => `TRIM(IF(${cells}="","${NO_FUNDER}",${cells}))`;
  return [
    formulaAt(places, "figure", YEARS + 1, `LET(${year},SORT(UNIQUE(FILTER(y,(y<>"")*(y>MAX(y)-${REPORT_YEARS}),""))))`),
    formulaAt(places, "built", YEARS + 1, ofYears(`IF(ISNUMBER(${cash}),${cash},0)`)),
    formulaAt(places, "builtYards", YEARS + 1, ofYears("1")),
    formulaAt(
      places,
      "figure",
      FUNDERS + 1,
      `LET(u,${line("funder")},n,FILTER(${funder("u")},${isCash(line("amount"))},""),SORT(UNIQUE(XLOOKUP(n,n,n))))`,
    ),
    formulaAt(
      places,
      "built",
      FUNDERS + 1,
      `LET(a,${line("amount")},u,${line("funder")},k,XLOOKUP(${line("siteId")}&"",${yards.columnReference("siteId")},${countsAs},"neither"),IF(${funders}="","",MMULT((${funders}=TRANSPOSE(${funder("u")}))*1,IF(${isCash("a")},a,0)*(k={"built","designed","neither"}))+${ifWhole(places)}))`,
    ),
  ];
}
