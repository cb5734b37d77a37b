import type { Report } from "../../../addin/actions/report/report.ts";
import { ReportChart, type Chart } from "./report-chart.tsx";
import { counted, metricWords, totalWords } from "./report-words.ts";
import { reportText as words } from "./text.ts";

/** The report on paper: one table, its sources and its charts. */
export function ReportPaper({
  report,
  charts,
  title,
  date,
}: {
  readonly report: Report;
  readonly charts: readonly Chart[];
  readonly title: string;
  readonly date: string;
}) {
  const { columns } = words;
  return (
    <>
      <h1>{`${words.title}: ${title}`}</h1>
      <p>{words.printed(date)}</p>
      <table>
        <thead>
          <tr>
            {[columns.figure, columns.built, columns.builtYards, columns.designed, columns.designedYards, columns.source].map((heading) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {report.lines.map(({ figure, built, designed }) => (
            <tr key={figure.key}>
              <th scope="row">{figure.label}</th>
              {[built, designed].flatMap((total, place) => [
                <td key={place}>
                  {totalWords(figure, total.value, total.why)}
                  <br />
                  {metricWords(figure, total.value)}
                </td>,
                <td key={`${place} yards`}>{counted(total)}</td>,
              ])}
              <td class="report-source">{figure.source}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {charts.map((chart) => (
        <ReportChart key={chart.title} chart={chart} />
      ))}
    </>
  );
}
