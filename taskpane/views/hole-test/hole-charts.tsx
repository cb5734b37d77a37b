import type { HoleTestDraft } from "../../../addin/actions/hole-test/draft-hole-test.ts";
import type { Reading } from "../../../addin/actions/yard/record-yard.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Fold } from "../../parts/fold.tsx";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { columnWords } from "../../parts/quantity-words.ts";
import { TimeChart } from "../../parts/time-chart.tsx";
import { levelPoints, ratePoints } from "./chart-points.ts";
import { holeTestText } from "./text.ts";

/** Level and rate over time, and the same numbers as a table. */
export function HoleCharts({
  readings,
  test,
  units,
}: {
  readonly readings: readonly Reading[];
  readonly test: HoleTestDraft;
  readonly units: UnitSystem;
}) {
  const words = holeTestText.charts;
  const level = levelPoints(readings);
  const rate = ratePoints(level.times[0] ?? 0, test.intervals);
  const until = level.times.at(-1) ?? 0;
  if (level.times.length < 2) return <p class="hint">{words.none}</p>;
  return (
    <section aria-label={words.title}>
      <TimeChart title={words.level(shownUnit("depth", units))} words={words.levelWords(level.times.length)} points={level} until={until} />
      {test.intervals.length > 0 && (
        <TimeChart
          title={words.rate(shownUnit("rate", units))}
          words={words.rateWords(test.intervals.length)}
          points={rate}
          until={until}
          steps
        />
      )}
      <p class="chart-axis">{words.time}</p>
      {test.intervals.length > 0 && (
        <Fold title={holeTestText.table.title}>
          <IntervalTable test={test} units={units} />
        </Fold>
      )}
    </section>
  );
}

function IntervalTable({ test, units }: { readonly test: HoleTestDraft; readonly units: UnitSystem }) {
  const words = holeTestText.table;
  const unit = shownUnit("rate", units);
  return (
    <table class="intervals" aria-label={words.title}>
      <thead>
        <tr>
          {[words.until, words.drop(unit), words.rate(unit), words.change, words.steady].map((heading) => (
            <th key={heading} scope="col">
              {heading}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {test.intervals.map(({ minutes, dropRate, correctedRate, change, verdict }) => (
          <tr key={minutes}>
            <th scope="row">{shown(minutes, 2)}</th>
            <td>{columnWords("rate", dropRate, units)}</td>
            <td>{columnWords("rate", correctedRate, units)}</td>
            <td>{change === null ? words.first : words.changeOf(change)}</td>
            <td>{words.steadyWords[verdict]}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
