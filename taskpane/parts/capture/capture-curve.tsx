import { useId, useMemo, useState } from "preact/hooks";
import { captureCurve, yearsOfRain, type CaptureCurve, type YearsOfRain } from "../../../addin/actions/basin/capture-curve.ts";
import type { BasinDraft, BasinInputs } from "../../../addin/actions/basin/draft-basin.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import type { Workbook } from "../../../addin/workbook/port.ts";
import { Fold } from "../fold.tsx";
import { MessageBar } from "../form.tsx";
import { LiveSentence } from "../live-sentence.tsx";
import { shown, shownUnit } from "../numbers.ts";
import { useRecordedRain, type RainReading } from "../../views/rain/use-recorded-rain.ts";
import { ResultRow } from "../result-row.tsx";
import { TimeChart } from "../time-chart.tsx";
import {
  basisWords,
  captureFacts,
  captureMarks,
  capturePoints,
  captureRows,
  captureSentence,
  lastArea,
  triedWords,
  yearsWords,
} from "./capture-words.ts";
import { captureText } from "./text.ts";
import "./capture.css";

const words = captureText;

interface CaptureProps {
  readonly workbook: Workbook;
  readonly inputs: BasinInputs;
  readonly draft: BasinDraft;
}

/** Captured share of the years on the Rain record against the size of the garden; nothing of it is worked out while it is folded. */
export function CaptureCurveView(props: CaptureProps) {
  return (
    <Fold title={words.title}>
      <Capture {...props} />
    </Fold>
  );
}

/** Drawn anew with every change of the draft. */
function Capture({ workbook, inputs, draft }: CaptureProps) {
  const reading = useRecordedRain(workbook);
  const rain = useMemo(() => (typeof reading === "object" && "readings" in reading ? yearsOfRain(reading) : null), [reading]);
  const curve = useMemo(
    () => (rain === null ? null : captureCurve(inputs, draft, rain)),
    [rain, JSON.stringify(inputs), JSON.stringify(draft)],
  );
  return (
    <div class="capture">
      <p class="hint">{words.explain}</p>
      {rain === null ? (
        <NoYears reading={reading} />
      ) : curve === null ? (
        <p class="hint">{words.noSize}</p>
      ) : (
        <Drawn curve={curve} rain={rain} units={draft.units} />
      )}
    </div>
  );
}

/** Why there is no curve, and where to go for one. */
function NoYears({ reading }: { readonly reading: RainReading }) {
  if (reading === "reading") return <p role="status">{words.reading}</p>;
  if ("fault" in reading) return <MessageBar kind="error">{reading.fault}</MessageBar>;
  if (reading.readings === 0) return <p>{words.noRain}</p>;
  return (
    <MessageBar kind="warning">
      {reading.faults.length > 0 || reading.readings < 2 || reading.stepMinutes === null ? words.faulty : words.dry}
    </MessageBar>
  );
}

function Drawn({ curve, rain, units }: { readonly curve: CaptureCurve; readonly rain: YearsOfRain; readonly units: UnitSystem }) {
  const [part, setPart] = useState<number | null>(null);
  const id = useId();
  const last = lastArea(curve);
  const tried = useMemo(() => curve.at(part === null ? curve.drafted.area : (part / SLIDER_STEPS) * last), [curve, part]);
  const unit = shownUnit("area", units);
  const sentence = captureSentence(curve, units);
  return (
    <>
      <LiveSentence says={sentence} />
      <dl class="captured">
        {captureFacts(curve, rain, units).map(({ label, says }) => (
          <ResultRow key={label} label={label}>
            {says}
          </ResultRow>
        ))}
      </dl>
      <TimeChart
        title={words.chart(unit)}
        words={words.chartWords(sentence)}
        points={capturePoints(curve)}
        marks={captureMarks(curve, part === null ? null : tried)}
        until={last * ROOM_BESIDE}
      />
      <p class="chart-axis">{words.axis(unit)}</p>
      <p class="hint">{Object.values(words.legend).join(" · ")}</p>
      <div class="field">
        <label class="label" for={id}>
          {words.tryArea}
        </label>
        <input
          id={id}
          class="slider"
          type="range"
          min={1}
          max={SLIDER_STEPS}
          step={1}
          value={part ?? Math.max(1, Math.round((curve.drafted.area / last) * SLIDER_STEPS))}
          aria-valuetext={triedWords(tried, units)}
          onInput={(event) => setPart(Number(event.currentTarget.value))}
        />
        <p>{triedWords(tried, units)}</p>
      </div>
      <details>
        <summary>{words.table.title}</summary>
        <table class="table">
          <thead>
            <tr>
              <th scope="col">{words.table.area(unit)}</th>
              <th scope="col">{words.table.share}</th>
            </tr>
          </thead>
          <tbody>
            {captureRows(curve, units).map(([area, percent]) => (
              <tr key={area}>
                <td>{area}</td>
                <td>{percent}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
      <p class="hint">{basisWords(curve)}</p>
      <p class="hint">{words.runoff(`${shown(100 * curve.runoffShare, 0)} %`)}</p>
      {rain.isShort && <MessageBar kind="warning">{words.short(yearsWords(rain))}</MessageBar>}
      {rain.hasLongSteps && <p class="hint">{words.longSteps}</p>}
    </>
  );
}

/** Fine enough to follow the pointer, and a step of the arrow keys is still seen. */
const SLIDER_STEPS = 100;

/** Room at the right for half of a mark. */
const ROOM_BESIDE = 1.03;
