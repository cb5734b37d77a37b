import type { RoutedBasin } from "../../../addin/actions/basin/route-basin.ts";
import { STORM_TYPES, type StormType } from "../../../functions/published/scs-24-hour-storms.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Fold } from "../../parts/fold.tsx";
import { Segmented } from "../../parts/form.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { ResultRow } from "../../parts/result-row.tsx";
import { TimeChart } from "../../parts/time-chart.tsx";
import { capturedWords, pondingPoints, routedFacts, routedSentence, stepPoints } from "./routing-words.ts";
import { basinText } from "./text.ts";

const words = basinText.routing;

const TYPES = STORM_TYPES.map((type) => ({ value: type, says: type }));

/** The design storm through the basin until it is empty: key numbers first, then the same over time. */
export function StormRouting({
  routed,
  type,
  units,
  onType,
}: {
  readonly routed: RoutedBasin | null;
  readonly type: StormType;
  readonly units: UnitSystem;
  readonly onType: (type: StormType) => void;
}) {
  return (
    <Fold title={words.title} says={routed === null ? "" : words.capturedShare(capturedWords(routed))}>
      <div class="routing">
        <Segmented label={words.type} hint={words.typeHint} value={type} choices={TYPES} onChoose={onType} />
        {routed === null ? <p class="hint">{words.none}</p> : <Routed routed={routed} units={units} />}
      </div>
    </Fold>
  );
}

function Routed({ routed, units }: { readonly routed: RoutedBasin; readonly units: UnitSystem }) {
  const until = Math.max(routed.steps.at(-1)?.hours ?? 0, DAY_HOURS);
  const volume = shownUnit("waterVolume", units);
  return (
    <>
      <LiveSentence says={routedSentence(routed, units)} />
      <dl class="basin-results routed">
        {routedFacts(routed, units).map(({ label, says, hint }) => (
          <ResultRow key={label} label={label} hint={hint}>
            {says}
          </ResultRow>
        ))}
      </dl>
      <TimeChart
        title={words.inflow(volume)}
        words={words.chart(words.inflow(volume))}
        points={stepPoints(routed, "inflow")}
        until={until}
        steps
      />
      <TimeChart
        title={words.ponding(shownUnit("depth", units))}
        words={words.chart(words.ponding(shownUnit("depth", units)))}
        points={pondingPoints(routed)}
        until={until}
      />
      {routed.overflow > 0 && (
        <TimeChart
          title={words.overflow(volume)}
          words={words.chart(words.overflow(volume))}
          points={stepPoints(routed, "overflow")}
          until={until}
          steps
        />
      )}
      <p class="chart-axis">{words.axis}</p>
      <p class="hint">{words.basis(`${shown(100 * routed.runoffShare, 0)} %`, routed.runoffRule)}</p>
    </>
  );
}

const DAY_HOURS = 24;
