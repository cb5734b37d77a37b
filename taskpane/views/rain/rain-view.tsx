import type { RecordedRain } from "../../../addin/actions/rain-record/recorded-rain.ts";
import { Button, MessageBar } from "../../parts/form.tsx";
import { ResultRow } from "../../parts/result-row.tsx";
import type { GoTo } from "../../parts/slip-list.tsx";
import { text } from "../../text.ts";
import type { ViewProps } from "../../view.ts";
import { RainImport } from "./rain-import.tsx";
import { depthWords, stepHoursWords, yearlyOf } from "./rain-words.ts";
import { spanWords } from "./record-span.ts";
import { rainText } from "./text.ts";
import { useRecordedRain } from "./use-recorded-rain.ts";
import "./rain.css";

const words = rainText.sheet;

/** Years of rain: what stands on the sheet Rain record, and how more comes there. */
export function RainView({ workbook, write, goTo }: Pick<ViewProps, "workbook" | "write"> & { readonly goTo: GoTo }) {
  const present = useRecordedRain(workbook);
  const record = typeof present === "object" && "readings" in present ? present : null;
  return (
    <>
      <section aria-label={words.title}>
        <h2>{words.title}</h2>
        <p class="hint">{words.explain}</p>
        {present === "reading" && <p role="status">{words.reading}</p>}
        {typeof present === "object" && "fault" in present && <MessageBar kind="error">{present.fault}</MessageBar>}
        {record !== null && (record.readings === 0 ? <p>{words.none}</p> : <Recorded record={record} goTo={goTo} />)}
      </section>
      {record !== null && <RainImport workbook={workbook} write={write} present={record} />}
    </>
  );
}

function Recorded({ record, goTo }: { readonly record: RecordedRain; readonly goTo: GoTo }) {
  const { unit, stepMinutes, total, faults } = record;
  const yearly = stepMinutes === null || total === null ? null : yearlyOf(record.depths, stepMinutes, total);
  const depth = (value: number | null) => (value === null || unit === null ? words.unknown : `${depthWords(value, unit)} ${unit}`);
  const facts = [
    { label: words.facts.rows, says: record.readings.toLocaleString("en-US") },
    { label: words.facts.span, says: spanWords(record) },
    { label: words.facts.step, says: stepMinutes === null ? words.unknown : stepHoursWords(stepMinutes) },
    { label: words.facts.total, says: depth(total) },
    ...(yearly === null ? [] : [{ label: words.facts.yearly, says: depth(yearly) }]),
    ...(record.notMeasured > 0 ? [{ label: words.facts.notMeasured, says: record.notMeasured.toLocaleString("en-US") }] : []),
    ...(stepMinutes !== null && unit !== null
      ? [{ label: words.formula, says: words.formulaWords(record.reference, stepHoursWords(stepMinutes), unit) }]
      : []),
  ];
  return (
    <>
      <dl class="basin-results">
        {facts.map(({ label, says }) => (
          <ResultRow key={label} label={label}>
            {says}
          </ResultRow>
        ))}
      </dl>
      {faults.map(({ kind, where, count }) => (
        <MessageBar
          key={kind}
          kind="warning"
          actions={
            <Button aria-label={`${text.goToCell}: ${words.faults[kind](count)}`} onClick={() => goTo(where)}>
              {text.goToCell}
            </Button>
          }
        >
          {words.faults[kind](count)}
        </MessageBar>
      ))}
    </>
  );
}
