import { largestOf } from "../../../functions/extremes.ts";
import type { ReportPart } from "../../../addin/actions/report/report.ts";
import { shown } from "../../parts/numbers.ts";

export interface Chart {
  readonly title: string;
  readonly parts: readonly ReportPart[];
}

export const CHART_PIXELS = 320;
const BAR = 18;
const LINE = 22;
const LABEL = 20;
/** Room for "123,456 designed" beside the longest bar. */
const VALUE = 128;

interface Bar {
  readonly kind: "built" | "designed";
  readonly value: number;
}

/** A bar for each of the two that is there; one of nothing where both are 0. */
function barsOf({ built, designed }: ReportPart): readonly Bar[] {
  const bars = (
    [
      { kind: "built", value: built },
      { kind: "designed", value: designed },
    ] as const
  ).filter(({ value }) => value > 0);
  return bars.length === 0 ? [{ kind: "built", value: 0 }] : bars;
}

function partHeight(part: ReportPart): number {
  return LABEL + barsOf(part).length * LINE + 8;
}

export function chartHeight({ parts }: Chart): number {
  return parts.reduce((height, part) => height + partHeight(part), LABEL);
}

/** Bars that read without color: built is solid, designed is an outline with dashes, and each bears its number. */
export function ReportChart({
  chart,
  paper = false,
}: {
  readonly chart: Chart;
  /** With a white ground of its own, for a picture that may stand on a dark sheet. */
  readonly paper?: boolean;
}) {
  const { title, parts } = chart;
  const most = largestOf([1, ...parts.flatMap(({ built, designed }) => [built, designed])]);
  const widthOf = (value: number) => Math.max(value > 0 ? 2 : 0, (value / most) * (CHART_PIXELS - VALUE - 8));
  const height = chartHeight(chart);
  return (
    <svg class="report-chart" viewBox={`0 0 ${CHART_PIXELS} ${height}`} role="img" aria-label={chartWords(chart)}>
      {paper && <rect class="report-chart-paper" width={CHART_PIXELS} height={height} />}
      <text x="0" y={LABEL - 6} class="report-chart-title">
        {title}
      </text>
      {parts.map((part, place) => (
        <g key={part.name} transform={`translate(0 ${chartHeight({ title, parts: parts.slice(0, place) })})`}>
          <text x="0" y={LABEL - 5}>
            {part.name.length > 40 ? `${part.name.slice(0, 39)}…` : part.name}
          </text>
          {barsOf(part).map(({ kind, value }, row) => (
            <g key={kind} transform={`translate(0 ${LABEL + row * LINE})`}>
              <rect class={`report-bar-${kind}`} x="1" y="1" width={widthOf(value)} height={BAR - 2} />
              <text x={widthOf(value) + 6} y={BAR - 5}>
                {`${shown(value, 0)} ${kind}`}
              </text>
            </g>
          ))}
        </g>
      ))}
    </svg>
  );
}

/** The chart in words. */
export function chartWords({ title, parts }: Chart): string {
  return `${title}. ${parts.map(({ name, built, designed }) => `${name}: built ${shown(built, 0)}, designed ${shown(designed, 0)}.`).join(" ")}`;
}
