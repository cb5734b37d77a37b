import { unitsOf, type Report, type ReportLine, type ReportTotal } from "../../../addin/actions/report/report.ts";
import { moneyWords } from "../estimate/text.ts";
import { shown } from "../../parts/numbers.ts";
import { reportText as words } from "./text.ts";

export type ReportFigure = ReportLine["figure"];

/** "1,234 sq ft", or why there is no number. */
export function totalWords(figure: ReportFigure, value: number | null, why: string | null): string {
  if (value === null) return why ?? words.without;
  if (figure.unit === "money") return moneyWords(value);
  return `${shown(value, decimalsOf(value))} ${figure.unit === "yards" ? "" : priceless(unitsOf(figure).us)}`.trimEnd();
}

/** Money is in the program's own currency, which has no sign here: "per sq ft" of it says enough. */
function priceless(unit: string): string {
  return unit.replace("money / ", "per ");
}

/** "114.6 m²"; nothing where both systems count alike. */
export function metricWords(figure: ReportFigure, value: number | null): string {
  const { metric, factor } = unitsOf(figure);
  if (value === null || metric === "") return "";
  return `${shown(value * factor, decimalsOf(value * factor))} ${priceless(metric)}`;
}

/** Two places where the number is small, none where they would only pretend. */
function decimalsOf(value: number): number {
  const size = Math.abs(value);
  return size >= 1000 ? 0 : size >= 100 ? 1 : 2;
}

/** How many yards brought a number to the total. */
export function counted({ behind }: ReportTotal): number {
  return behind.filter(({ value }) => value !== null).length;
}

type PastedRow = readonly (string | number | null)[];

/** The table that a grant report wants: plain numbers, each with its unit, its yards and its source. */
export function pastedReport(report: Report): readonly PastedRow[] {
  return [
    Object.values(words.columns),
    ...report.lines.map(pastedLine),
    ...report.cashByFunder.map(
      ({ name, built, designed }): PastedRow => [
        `${words.chartFunder}: ${name}`,
        built,
        null,
        designed,
        null,
        words.money,
        null,
        null,
        null,
        null,
      ],
    ),
  ];
}

function pastedLine({ figure, built, designed }: ReportLine): PastedRow {
  const { us, metric, factor } = unitsOf(figure);
  const inMetric = ({ value }: ReportTotal) => (metric === "" || value === null ? null : value * factor);
  return [
    figure.label,
    built.value ?? built.why,
    counted(built),
    designed.value ?? designed.why,
    counted(designed),
    us,
    inMetric(built),
    inMetric(designed),
    metric,
    figure.source,
  ];
}
