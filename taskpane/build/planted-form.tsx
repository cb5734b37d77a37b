import { useState } from "preact/hooks";
import { isoDate, today } from "../../addin/actions/dates.ts";
import type { Yard } from "../../addin/actions/read-program.ts";
import { clumpsToCount, plantedSoFar, recordPlanted } from "../../addin/actions/record-planted.ts";
import { useDraft } from "../drafts.ts";
import { Button, DateField, NumberField } from "../form.tsx";
import type { ViewProps } from "../view.ts";
import { readPlanted, typedCount, withCount } from "./planted-draft.ts";
import type { TypedPlanted } from "./planted-draft.ts";
import { buildText } from "./text.ts";
import "./build.css";

const words = buildText.planted;

/** What went into the ground, clump by clump: as planned unless a count is changed. */
export function PlantedForm({ yard, workbook, write }: ViewProps) {
  const draft = useDraft<TypedPlanted>(`${yard.siteId}/planted`, { date: isoDate(today()), counts: [] });
  const [asked, ask] = useState(false);
  const waiting = clumpsToCount(yard);
  const { date, counted, faults } = readPlanted(draft.value, waiting);
  const plants = counted.reduce((sum, { planted }) => sum + planted, 0);
  const save = async () => {
    ask(true);
    if (date === null || faults.size > 0 || counted.length === 0) return;
    if (!(await write(() => recordPlanted(workbook, date, counted), words.done(plants, counted.length)))) return;
    draft.clear();
    ask(false);
  };
  return (
    <section class="build" aria-label={words.title}>
      <h2>{words.title}</h2>
      <SoFar yard={yard} waiting={waiting.length} />
      {waiting.length > 0 && (
        <div class="form">
          <DateField label={words.date} value={draft.value.date} fault={date === null ? words.dateMissing : null} onInput={(day) => draft.set((current) => ({ ...current, date: day }))} />
          <details class="build-reminders" open={draft.value.counts.length > 0}>
            <summary>{words.change}</summary>
            <p class="hint">{words.changeHint}</p>
            {waiting.map((row) => (
              <NumberField
                key={row.row}
                label={words.clump(row.record.plant ?? "", row.record.zone, row.record.planned)}
                value={typedCount(draft.value, row)}
                fault={faults.get(row.row)}
                onInput={(count) => draft.set((current) => withCount(current, row, count))}
              />
            ))}
          </details>
          <p class="fault" role="status">{asked && counted.length === 0 ? words.nothing : asked && faults.size > 0 ? words.fixFirst : ""}</p>
          {draft.touched && <p class="unsaved">{words.unsaved}</p>}
          <div class="buttons">
            <Button kind="primary" onClick={save}>
              {words.save(plants, counted.length)}
            </Button>
            {draft.touched && (
              <Button kind="quiet" onClick={draft.clear}>
                {words.discard}
              </Button>
            )}
          </div>
        </div>
      )}
    </section>
  );
}

function SoFar({ yard, waiting }: { readonly yard: Yard; readonly waiting: number }) {
  const { planted, planned, clumps } = plantedSoFar(yard);
  if (clumps > 0) return <p>{words.soFar(planted, planned, clumps)}</p>;
  return <p class="hint">{waiting > 0 ? words.explain : words.noPlan}</p>;
}
