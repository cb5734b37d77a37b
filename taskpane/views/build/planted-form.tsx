import { useState } from "preact/hooks";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { clumpsToCount, plantedSoFar, recordPlanted } from "../../../addin/actions/planting/record-planted.ts";
import { useDraft } from "../../parts/drafts.ts";
import { NumberField } from "../../parts/form.tsx";
import { WriteOrDiscard } from "../../parts/write-or-discard.tsx";
import { quantityWords } from "../../parts/quantity-words.ts";
import type { VisitProps } from "../../view.ts";
import { countedClumps, plantedClumps, withCount, type TypedPlanted } from "./planted-draft.ts";
import { buildText } from "./text.ts";
import "./build.css";

const words = buildText.planted;

/** What went into the ground, clump by clump: as planned unless a count is changed. */
export function PlantedForm({ yard, workbook, write, day }: VisitProps) {
  const draft = useDraft<TypedPlanted>(`${yard.siteId}/planted`, []);
  const [asked, ask] = useState(false);
  const waiting = clumpsToCount(yard);
  const clumps = countedClumps(draft.value, waiting);
  const counted = plantedClumps(clumps);
  const wrong = clumps.some(({ fault }) => fault !== null);
  const plants = counted.reduce((sum, { planted }) => sum + planted, 0);
  const discard = () => {
    draft.clear();
    ask(false);
  };
  const save = async () => {
    ask(true);
    if (day === null || wrong || counted.length === 0) return;
    if (await write(() => recordPlanted(workbook, day, counted), words.done(plants, counted.length))) discard();
  };
  return (
    <section class="build" aria-label={words.title}>
      <h2>{words.title}</h2>
      <SoFar yard={yard} waiting={waiting.length} />
      {waiting.length > 0 && (
        <div class="form">
          <details class="build-counts" open={draft.touched}>
            <summary>{words.change}</summary>
            <p class="hint">{words.changeHint}</p>
            {clumps.map(({ row: { record }, key, typed, fault }) => (
              <NumberField
                key={key}
                label={words.clump(record.plant ?? "", record.zone, record.planned, placeWords(record, yard.units))}
                value={typed}
                fault={fault}
                onInput={(count) => draft.set((current) => withCount(current, key, count))}
              />
            ))}
          </details>
          <p class="fault" role="status">
            {asked && wrong ? words.fixFirst : asked && counted.length === 0 ? words.nothing : ""}
          </p>
          <WriteOrDiscard save={words.save(plants, counted.length)} touched={draft.touched} onSave={save} onDiscard={discard} />
        </div>
      )}
    </section>
  );
}

/** Where a clump stands on the plan, which tells it from others of its kind. */
function placeWords({ alongLength, acrossWidth }: Yard["clumps"][number]["record"], units: Yard["units"]): string | null {
  return alongLength === null || acrossWidth === null
    ? null
    : words.place(quantityWords("length", alongLength, units), quantityWords("length", acrossWidth, units));
}

function SoFar({ yard, waiting }: { readonly yard: Yard; readonly waiting: number }) {
  const { planted, planned, clumps } = plantedSoFar(yard);
  if (clumps > 0) return <p>{words.soFar(planted, planned, clumps)}</p>;
  return <p class="hint">{waiting > 0 ? words.explain : words.noPlan}</p>;
}
