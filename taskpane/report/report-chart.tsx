import type { ReportPart } from "../../addin/actions/report.ts";
import { shown } from "../numbers.ts";
import { reportText as words } from "./text.ts";

export interface Chart {
  readonly title: string;
  readonly parts: readonly ReportPart[];
}

export const CHART_PIXELS = 480;
const BAR = 18;
const LINE = 22;
const LABEL = 20;
const VALUE = 76;

export function chartHeight({ parts }: Chart): number {
  return parts.length * (LABEL + 2 * LINE + 8) + LABEL;
}

/** Bars that read without color: built is solid, designed is an outline with dashes, and each bears its number. */
export function ReportChart({ chart }: { readonly chart: Chart }) {
  const { title, parts } = chart;
  const most = Math.max(1, ...parts.flatMap(({ built, designed }) => [built, designed]));
  const widthOf = (value: number) => Math.max(value > 0 ? 2 : 0, (value / most) * (CHART_PIXELS - VALUE - 8));
  const height = chartHeight(chart);
  return (
    <svg class="report-chart" viewBox={`0 0 ${CHART_PIXELS} ${height}`} role="img" aria-label={chartWords(chart)}>
      <text x="0" y={LABEL - 6} class="report-chart-title">
        {title}
      </text>
      {parts.map(({ name, built, designed }, place) => {
        const top = LABEL + place * (LABEL + 2 * LINE + 8);
        return (
          <g key={name} transform={`translate(0 ${top})`}>
            <text x="0" y={LABEL - 5}>
              {name.length > 48 ? `${name.slice(0, 47)}…` : name}
            </text>
            {[built, designed].map((value, row) => (
              <g key={row} transform={`translate(0 ${LABEL + row * LINE})`}>
                <rect class={row === 0 ? "report-bar-built" : "report-bar-designed"} x="1" y="1" width={widthOf(value)} height={BAR - 2} />
                <text x={widthOf(value) + 6} y={BAR - 5}>
                  {`${shown(value, 0)} ${row === 0 ? words.built.toLowerCase() : "designed"}`}
                </text>
              </g>
            ))}
          </g>
        );
      })}
    </svg>
  );
}

/** The chart in words. */
export function chartWords({ title, parts }: Chart): string {
  return `${title}. ${parts.map(({ name, built, designed }) => `${name}: built ${shown(built, 0)}, designed ${shown(designed, 0)}.`).join(" ")}`;
}
