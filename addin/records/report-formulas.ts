import { GALLONS_PER_CUBIC_FOOT } from "../../functions/planting/water-need.ts";
import { metricPerUs, unitOf } from "../../functions/quantities.ts";
import { absolute, addressOf, type FormulaWrite } from "../workbook/port.ts";
import { digDaysSheet } from "./dig-days.ts";
import { estimateLinesSheet } from "./estimate-lines.ts";
import type { Place } from "./place.ts";
import type { KeyOf, Sheet } from "./sheet.ts";
import { plantingSheet } from "./planting.ts";
import { DRAFTED_ITEMS, pricesSheet } from "./prices.ts";
import type { Places, ProgramKey } from "./program.ts";
import { NO_FUNDER, REPORT_YEARS, reportFigures, reportSheet, type ReportFigure, type ReportFigureKey, type ReportUnit } from "./report.ts";
import { reportYardsFormulas } from "./report-yards-formulas.ts";
import { reportYardsSheet } from "./report-yards.ts";
import { UsedRows } from "./used-rows.ts";

export type Counted = "built" | "designed";
type Cells = Partial<Record<KeyOf<typeof reportSheet>, string>>;

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

/** Both sheets of the report, and the column of Estimate lines that says for which kind of yard a line is. */
export function reportFormulas(places: Places): readonly FormulaWrite[] {
  const report = places.of(reportSheet);
  const lines: readonly Cells[] = [
    ...reportFigures.map((figure: ReportFigure, place) => figureCells(figure, places, report.firstRow + place)),
    ...twiceCells(places),
    {},
    {
      figure: text("Cash by the year of the yard's date"),
      source: text("Report yards, Date: the day of As-built, or the first dig day where it is not built yet. The unit is money."),
    },
    ...yearCells(places, report.firstRow + reportFigures.length + 3),
    {},
    { figure: text("Cash by funder"), source: text("Estimate lines that are not in-kind, by Funder. The unit is money.") },
    ...funderCells(places),
  ];
  const keys = Object.keys(reportSheet.columns) as KeyOf<typeof reportSheet>[];
  const written = lines.flatMap((cells, place) =>
    keys.flatMap((key): FormulaWrite[] =>
      cells[key] === undefined ? [] : [{ range: report.cell(report.firstRow + place, key), formulas: [[`=${cells[key]}`]] }],
    ),
  );
  return [...reportYardsFormulas(places), ...lineCounts(places), ...written];
}

function text(words: string): string {
  return `"${words.replaceAll('"', '""')}"`;
}

const settingIn = (places: Places, key: ProgramKey) => absolute(addressOf(places.setting(key)));

function of<S extends Sheet>(places: Places, sheet: S): (key: KeyOf<S>) => string {
  return (key) => places.of(sheet).columnReference(key);
}

function figureCells(figure: ReportFigure, places: Places, row: number): Cells {
  const yard = of(places, reportYardsSheet);
  const { us, metric, factor } = reportUnits[figure.unit];
  const report = places.of(reportSheet);
  const withNumber = (counts: Counted) =>
    `COUNTIFS(${yard("countsAs")},"${counts}"${figure.column === undefined ? "" : `,${yard(figure.column)},">=0"`})`;
  const own = (key: "built" | "designed") => report.ownCell(row, key);
  const inMetric = (key: "built" | "designed") => `IF(ISNUMBER(${own(key)}),${own(key)}*${factor},"")`;
  const hasYards = figure.column !== undefined || figure.key === "yards";
  const other = otherOf(figure.key as ReportFigureKey, places);
  return {
    figure: text(figure.label),
    built: totalOf(figure, "built", places),
    designed: totalOf(figure, "designed", places),
    ...(hasYards ? { builtYards: withNumber("built"), designedYards: withNumber("designed") } : {}),
    ...(other === null ? {} : { other }),
    ...(us === "" ? {} : { unit: text(us) }),
    ...(metric === "" ? {} : { builtMetric: inMetric("built"), designedMetric: inMetric("designed"), metricUnit: text(metric) }),
    source: text(figure.source),
  };
}

function totalOf(figure: ReportFigure, counts: Counted, places: Places): string {
  const yard = of(places, reportYardsSheet);
  const sum = (key: KeyOf<typeof reportYardsSheet>) => `SUMIFS(${yard(key)},${yard("countsAs")},"${counts}")`;
  const both = (one: KeyOf<typeof reportYardsSheet>, other: KeyOf<typeof reportYardsSheet>) =>
    `SUMIFS(${yard(one)},${yard("countsAs")},"${counts}",${yard(other)},">=0")`;
  const yearly = (value: string) => unlessBlank(settingIn(places, "yearlyRainInches"), "Rain in a year", value);
  const gallons = (key: KeyOf<typeof reportYardsSheet>) => `${sum(key)}*${GALLONS_PER_CUBIC_FOOT}`;
  const captureShare = settingIn(places, "yearlyCaptureShare");
  const ofItsOwn: Partial<Record<ReportFigureKey, string>> = {
    yards: `COUNTIFS(${yard("countsAs")},"${counts}")`,
    storageGallons: gallons("storage"),
    stormGallons: gallons("stormCapture"),
    yearGallons: yearly(gallons("yearRunoff")),
    capturedGallons: yearly(unlessBlank(captureShare, "Runoff captured in a year", `${gallons("yearRunoff")}*${captureShare}`)),
    phosphorus: yearly(sum("phosphorus")),
    nitrogen: yearly(sum("nitrogen")),
    solids: yearly(sum("solids")),
    species: speciesOf(counts, places),
    volunteers: peopleOf(counts, places),
    volunteerValue: volunteerValueOf(sum("hours"), places),
    unpriced: unpricedOf(counts, places),
    costPerArea: ratio(both("cash", "contributingArea"), both("contributingArea", "cash")),
    costPerGallon: ratio(both("cash", "storage"), `${both("storage", "cash")}*${GALLONS_PER_CUBIC_FOOT}`),
  };
  return ofItsOwn[figure.key as ReportFigureKey] ?? sum(figure.column ?? "siteId");
}

/** Nothing is worked out from a setting that is blank, and the cell says which. */
function unlessBlank(cell: string, setting: string, value: string): string {
  return `IF(${cell}="",${text(`${setting} is blank on Program`)},${value})`;
}

function ratio(money: string, quantity: string): string {
  return `IF(${quantity}>0,${money}/(${quantity}),"no yard has both")`;
}

/** Rows of a sheet whose yard is counted so: looked for by Site ID. */
function isCounted(places: Places, siteIds: string, counts: Counted): string {
  const yard = of(places, reportYardsSheet);
  return `(COUNTIFS(${yard("siteId")},${siteIds},${yard("countsAs")},"${counts}")>0)`;
}

function differentAmong(rows: UsedRows, values: string, condition: string): string {
  return `IFERROR(${rows.formula(`ROWS(UNIQUE(FILTER(LOWER(TRIM(${values})),${condition})))`)},0)`;
}

function speciesOf(counts: Counted, places: Places): string {
  const rows = new UsedRows(of(places, plantingSheet)("siteId"));
  const clump = (key: KeyOf<typeof plantingSheet>) => rows.of(of(places, plantingSheet)(key));
  const amount = clump(counts === "built" ? "planted" : "planned");
  return differentAmong(
    rows,
    clump("plant"),
    `${isCounted(places, clump("siteId"), counts)}*(${clump("plant")}<>"")*ISNUMBER(${amount})*(${amount}>0)`,
  );
}

function peopleOf(counts: Counted | "other", places: Places): string {
  const rows = new UsedRows(of(places, digDaysSheet)("entry"));
  const digDay = (key: KeyOf<typeof digDaysSheet>) => rows.of(of(places, digDaysSheet)(key));
  const isCountedSo =
    counts === "other"
      ? `(${isCounted(places, digDay("siteId"), "built")}+${isCounted(places, digDay("siteId"), "designed")}=0)`
      : isCounted(places, digDay("siteId"), counts);
  return differentAmong(rows, digDay("who"), `(${digDay("entry")}="sign-in")*(${digDay("who")}<>"")*${isCountedSo}`);
}

function volunteerValueOf(hours: string, places: Places): string {
  const prices = places.of(pricesSheet);
  const rate = `VLOOKUP("${DRAFTED_ITEMS.volunteerHour}",${prices.tableReference("item", "priceDate")},${prices.columnIndex("unitPrice") - prices.columnIndex("item") + 1},FALSE)`;
  return `IF(IFERROR(${rate}="",TRUE),${text(`${DRAFTED_ITEMS.volunteerHour} has no unit price on Prices`)},SOAK.VOLUNTEERVALUE(${hours},${rate}))`;
}

function unpricedOf(counts: Counted | "other", places: Places): string {
  const line = of(places, estimateLinesSheet);
  return `SUMPRODUCT((${line("item")}<>"")*(${line("countsAs")}="${counts}")*(1-ISNUMBER(${line("amount")})))`;
}

/** What belongs to no counted yard is said beside the totals, so that nothing is lost. */
function otherOf(key: ReportFigureKey, places: Places): string | null {
  const line = of(places, estimateLinesSheet);
  const digDay = of(places, digDaysSheet);
  const yard = of(places, reportYardsSheet);
  const hours = `SUMIFS(${digDay("hours")},${digDay("entry")},"sign-in")-SUMIFS(${yard("hours")},${yard("countsAs")},"built")-SUMIFS(${yard("hours")},${yard("countsAs")},"designed")`;
  const money = (kind: string) => `SUMIFS(${line("amount")},${line("countsAs")},"other",${line("kind")},"${kind}",${line("amount")},">=0")`;
  const others: Partial<Record<ReportFigureKey, string>> = {
    yards: `COUNTIFS(${yard("countsAs")},"not yet")`,
    volunteers: peopleOf("other", places),
    hours,
    volunteerValue: volunteerValueOf(`(${hours})`, places),
    cash: money("<>in-kind"),
    inKind: money("in-kind"),
    unpriced: unpricedOf("other", places),
  };
  return others[key] ?? null;
}

function twiceCells(places: Places): readonly Cells[] {
  const yard = of(places, reportYardsSheet);
  return [
    {
      figure: text("Site IDs that stand twice on Sites, counted once"),
      other: `COUNTIFS(${yard("countsAs")},"twice")`,
      source: `IF(COUNTIFS(${yard("countsAs")},"twice")=0,"None.","Give the lower row an ID of its own: "&TEXTJOIN(", ",TRUE,IF(${yard("countsAs")}="twice",${yard("siteId")},"")))`,
    },
  ];
}

/** The years of the counted yards' dates, the latest ten, one spilled formula a column. */
function yearCells(places: Places, firstRow: number): readonly Cells[] {
  const yard = of(places, reportYardsSheet);
  const report = places.of(reportSheet);
  const has = (counts: Counted) => `${yard("countsAs")},"${counts}",${yard("date")}`;
  const years = absolute(addressOf({ ...report.cell(firstRow, "figure"), rows: REPORT_YEARS })).replace(/^.*!/, "");
  const dates = `IF((${yard("countsAs")}="built")+(${yard("countsAs")}="designed"),${yard("date")},"")`;
  const list = `LET(dates,${dates},last,MAX(dates),IF(last=0,"",LET(first,MAX(YEAR(MIN(dates)),YEAR(last)-${REPORT_YEARS - 1}),SEQUENCE(YEAR(last)-first+1,1,first))))`;
  const forYears = (value: (year: string) => string) => `IF(${years}="","",${value(`IF(${years}="",1900,${years})`)})`;
  const within = (counts: Counted) => (year: string) => `${has(counts)},">="&DATE(${year},1,1),${yard("date")},"<"&DATE(${year}+1,1,1)`;
  const first: Cells = {
    figure: list,
    built: forYears((year) => `SUMIFS(${yard("cash")},${within("built")(year)})`),
    builtYards: forYears((year) => `COUNTIFS(${within("built")(year)})`),
    designed: forYears((year) => `SUMIFS(${yard("cash")},${within("designed")(year)})`),
    designedYards: forYears((year) => `COUNTIFS(${within("designed")(year)})`),
  };
  const undated = (counts: Counted) =>
    `SUMIFS(${yard("cash")},${yard("countsAs")},"${counts}")-SUMIFS(${yard("cash")},${has(counts)},">0")`;
  const undatedYards = (counts: Counted) => `COUNTIFS(${yard("countsAs")},"${counts}")-COUNTIFS(${has(counts)},">0")`;
  return [
    first,
    ...Array.from({ length: REPORT_YEARS - 1 }, () => ({})),
    {
      figure: text("without a date"),
      built: undated("built"),
      builtYards: undatedYards("built"),
      designed: undated("designed"),
      designedYards: undatedYards("designed"),
    },
  ];
}

/** Every funder named on a priced line, in one spilled list, and each one's money beside it. */
function funderCells(places: Places): readonly Cells[] {
  const rows = new UsedRows(of(places, estimateLinesSheet)("item"));
  const line = (key: KeyOf<typeof estimateLinesSheet>) => rows.of(of(places, estimateLinesSheet)(key));
  // A funder written in two ways, "Water fund" and "water fund", is one: under the spelling that came first.
  const funder = `LET(named,TRIM(IF(${line("funder")}="","${NO_FUNDER}",${line("funder")})),XLOOKUP(named,named,named))`;
  const funders = `SORT(UNIQUE(FILTER(funder,ISNUMBER(${line("amount")})*(${line("kind")}<>"in-kind"))))`;
  const withFunders = (expression: string) => `IFERROR(${rows.formula(`LET(funder,${funder},${expression})`)},"")`;
  const sum = (counts: Counted | "other") =>
    withFunders(
      `MMULT((${funders}=TRANSPOSE(funder))*1,IF(ISNUMBER(${line("amount")})*(${line("kind")}<>"in-kind")*(${line("countsAs")}="${counts}"),${line("amount")},0))`,
    );
  return [{ figure: withFunders(funders), built: sum("built"), designed: sum("designed"), other: sum("other") }];
}

/** For which kind of yard each estimate line is: "other" where its yard is neither, or it names none. */
function lineCounts(places: Places): readonly FormulaWrite[] {
  const lines: Place<typeof estimateLinesSheet> = places.of(estimateLinesSheet);
  const rows = new UsedRows(lines.ownColumn("item"));
  const counts = (kind: Counted) => isCounted(places, rows.of(lines.ownColumn("siteId")), kind);
  const formula = `IF(${rows.of(lines.ownColumn("item"))}="","",IF(${counts("built")},"built",IF(${counts("designed")},"designed","other")))`;
  return [{ range: lines.cell(lines.firstRow, "countsAs"), formulas: [[`=${rows.formula(formula)}`]] }];
}
