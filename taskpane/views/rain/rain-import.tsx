import { useMemo, useReducer, useRef, useState } from "preact/hooks";
import { NOTHING_CHOSEN, readRainFile, type RainChoices, type RainFile } from "../../../addin/actions/rain-record/read-rain-file.ts";
import { readRainTable, type RainTable } from "../../../addin/actions/rain-record/rain-table.ts";
import type { RainSeries } from "../../../addin/actions/rain-record/rain-series.ts";
import type { RecordedRain } from "../../../addin/actions/rain-record/recorded-rain.ts";
import { additionTo, writeRainRecord, type WayOfWriting } from "../../../addin/actions/rain-record/write-rain-record.ts";
import { Button, MessageBar, Segmented, TextField } from "../../parts/form.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import type { ViewProps } from "../../view.ts";
import { CsvSource } from "./csv-source.tsx";
import { Questions } from "./questions.tsx";
import { findings, refusalWords, unlikelyWords } from "./rain-words.ts";
import { spanWords } from "./record-span.ts";
import { rainText } from "./text.ts";

/** What was opened or pasted and what was said of it stays while other tabs are looked at; a file may be too long for the drafts of a session. */
interface Opened {
  readonly text: string;
  readonly gauge: string;
  readonly choices: Partial<RainChoices>;
  readonly way: WayOfWriting | null;
}

const NOTHING_OPENED: Opened = { text: "", gauge: "", choices: {}, way: null };
let opened = NOTHING_OPENED;

/** More rows than this take the spreadsheet seconds. */
const MANY_ROWS = 50_000;

/** A gauge's file on its way to the sheet: opened, looked through, asked about, and only then written. */
export function RainImport({ workbook, write, present }: Pick<ViewProps, "workbook" | "write"> & { readonly present: RecordedRain }) {
  const [, showAgain] = useReducer((count: number) => count + 1, 0);
  const [refusal, refuse] = useState<string | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const change = (changed: Partial<Opened>) => {
    opened = { ...opened, ...changed };
    refuse(null);
    showAgain(undefined);
  };
  const table = useMemo(() => (opened.text.trim() === "" ? null : readRainTable(opened.text)), [opened.text]);
  const readable = table !== null && !("sentence" in table) ? table : null;
  const choices = readable === null ? null : { ...NOTHING_CHOSEN, columns: readable.guess, ...opened.choices };
  const file = useMemo(
    () => (readable === null || choices === null ? null : readRainFile(readable, choices)),
    [readable, JSON.stringify(choices)],
  );

  const save = async (series: RainSeries) => {
    const way = present.readings === 0 ? "replace" : opened.way;
    if (way === null) return refuse(rainText.write.choose);
    const rows = rowsWritten(present, series, way);
    if (
      !(await write(
        (progress) => writeRainRecord(workbook, series, way, opened.gauge.trim(), present, progress),
        rainText.write.done(rows),
      ))
    )
      return;
    // The button that had the focus goes with the form.
    if (heading.current?.parentElement?.contains(document.activeElement) === true) heading.current.focus();
    change(NOTHING_OPENED);
  };

  return (
    <section class="rain-import" aria-label={rainText.source.title}>
      <h2 ref={heading} tabIndex={-1}>
        {rainText.source.title}
      </h2>
      <p class="hint">{rainText.source.explain}</p>
      <CsvSource text={opened.text} onText={(text) => change({ text, choices: {}, way: null })} />
      {table !== null && "sentence" in table && <MessageBar kind="error">{table.sentence}</MessageBar>}
      {readable !== null && choices !== null && file !== null && (
        <>
          <Found table={readable} file={file} onDays={() => change({ choices: { ...opened.choices, kept: "daily totals" } })} />
          <Questions
            table={readable}
            file={file}
            choices={choices}
            onChoose={(chosen) => change({ choices: { ...opened.choices, ...chosen } })}
          />
          {file.series !== null && (
            <Write
              series={file.series}
              present={present}
              gauge={opened.gauge}
              way={opened.way}
              refusal={refusal}
              onGauge={(gauge) => change({ gauge })}
              onWay={(way) => change({ way })}
              onWrite={save}
            />
          )}
        </>
      )}
    </section>
  );
}

function Found({ table, file, onDays }: { readonly table: RainTable; readonly file: RainFile; readonly onDays: () => void }) {
  const { refusal } = file;
  const sentences = findings(table, file);
  const offersDays = refusal?.kind === "too long" && refusal.daysWouldFit;
  return (
    <section aria-label={rainText.found.title}>
      <h3>{rainText.found.title}</h3>
      <LiveSentence says={sentences.join(" ")} />
      <ul class="bullets">
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {file.unlikely.map((doubt) => (
        <MessageBar key={doubt.kind} kind="warning">
          {unlikelyWords(doubt)}
        </MessageBar>
      ))}
      {refusal !== null && (
        <MessageBar kind="error" actions={offersDays ? <Button onClick={onDays}>{rainText.refusal.useDays}</Button> : undefined}>
          {refusalWords(refusal)}
        </MessageBar>
      )}
    </section>
  );
}

function rowsWritten(present: RecordedRain, series: RainSeries, way: WayOfWriting): number {
  const addition = additionTo(present, series);
  return way === "add" && "newer" in addition ? addition.newer + addition.between : series.depths.length;
}

function Write({
  series,
  present,
  gauge,
  way,
  refusal,
  onGauge,
  onWay,
  onWrite,
}: {
  readonly series: RainSeries;
  readonly present: RecordedRain;
  readonly gauge: string;
  readonly way: WayOfWriting | null;
  readonly refusal: string | null;
  readonly onGauge: (gauge: string) => void;
  readonly onWay: (way: WayOfWriting) => void;
  readonly onWrite: (series: RainSeries) => Promise<void>;
}) {
  const words = rainText.write;
  const addition = additionTo(present, series);
  const canAdd = "newer" in addition;
  const chosen = way === "add" && !canAdd ? null : way;
  const rows = chosen === "add" ? rowsWritten(present, series, chosen) : series.depths.length;
  return (
    <section aria-label={words.title}>
      <h3>{words.title}</h3>
      <TextField label={rainText.source.name} hint={rainText.source.nameHint} value={gauge} onInput={onGauge} />
      {present.readings > 0 && (
        <>
          <p>{words.present(present.readings, spanWords(present))}</p>
          <Segmented
            label={words.way}
            value={chosen}
            choices={[
              { value: "replace" as const, says: words.replace, meaning: words.replaceMeaning },
              ...(canAdd ? [{ value: "add" as const, says: words.add, meaning: words.addMeaning(addition.newer + addition.between) }] : []),
            ]}
            onChoose={onWay}
          />
          {"why" in addition && <p class="hint">{words.cannotAdd[addition.why]}</p>}
        </>
      )}
      {rows > MANY_ROWS && <p class="hint">{words.slow}</p>}
      <p class="fault" role="status">
        {refusal ?? ""}
      </p>
      <Button kind="primary" onClick={() => onWrite(series)}>
        {words.button(rows)}
      </Button>
    </section>
  );
}
