import type { ReportLine, ReportTotal } from "../../../addin/actions/report/report.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { YardButton } from "../../yard-button.tsx";
import { counted, metricWords, totalWords, type ReportFigure } from "./report-words.ts";
import { reportText as words } from "./text.ts";

/** Every total in both states, each with the yards behind it. */
export function ReportTable({ lines, select }: { readonly lines: readonly ReportLine[]; readonly select: (yard: Yard) => unknown }) {
  return (
    <ul class="report-lines">
      {lines.map((line) => (
        <li key={line.figure.key} class="report-line">
          <h3>{line.figure.label}</h3>
          <dl class="report-totals">
            <Total name={words.built} figure={line.figure} total={line.built} />
            <Total name={words.designed} figure={line.figure} total={line.designed} />
          </dl>
          <details class="report-behind">
            <summary>
              {words.behind}
              <span class="unseen">{words.behindOf(line.figure.label)}</span>
            </summary>
            <p class="hint">{line.figure.source}</p>
            <Behind name={words.built} figure={line.figure} total={line.built} select={select} />
            <Behind name={words.designed} figure={line.figure} total={line.designed} select={select} />
          </details>
        </li>
      ))}
    </ul>
  );
}

interface TotalProps {
  readonly name: string;
  readonly figure: ReportFigure;
  readonly total: ReportTotal;
}

function Total({ name, figure, total }: TotalProps) {
  const metric = metricWords(figure, total.value);
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <span class={total.value === null ? "result-none" : "report-number"}>{totalWords(figure, total.value, total.why)}</span>
        {metric !== "" && <span class="hint">{metric}</span>}
        {figure.key !== "yards" && <span class="hint">{words.yards(counted(total))}</span>}
      </dd>
    </div>
  );
}

function Behind({ name, figure, total, select }: TotalProps & { readonly select: (yard: Yard) => unknown }) {
  return (
    <div>
      <h4>{name}</h4>
      {total.behind.length === 0 ? (
        <p class="hint">{words.none}</p>
      ) : (
        <ul class="yard-list">
          {total.behind.map(({ yard, value }) => (
            <li key={yard.siteId}>
              <YardButton yard={yard} says={totalWords(figure, value, null)} onPick={() => select(yard)} />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
