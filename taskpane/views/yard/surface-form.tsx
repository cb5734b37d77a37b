import { useState } from "preact/hooks";
import { figuresOf } from "../../../addin/actions/yard/measure-surface.ts";
import type { SurfaceEntry } from "../../../addin/actions/yard/record-yard.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { curveNumber } from "../../../functions/worksheet/runoff.ts";
import type { Draft } from "../../parts/drafts.ts";
import { ChoiceField, NumberField, TextField } from "../../parts/form.tsx";
import { WriteOrDiscard } from "../../parts/write-or-discard.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { BLANK_SURFACE, figureLabel, isShape, readSurface, WAYS, type SurfaceAsRead, type TypedSurface } from "./surface-draft.ts";
import { surfacesText } from "./surfaces-text.ts";

const COVERS = (curveNumber.parameters.find(({ key }) => key === "cover")?.choices ?? []).map((cover) => ({ value: cover, says: cover }));
const CHOICES = WAYS.map((way) => ({ value: way, says: surfacesText.measuring.ways[way] }));

export function SurfaceForm({
  units,
  draft,
  save,
  close,
}: {
  readonly units: UnitSystem;
  readonly draft: Draft<TypedSurface, unknown>;
  readonly save: (entry: SurfaceEntry) => Promise<boolean>;
  readonly close: () => void;
}) {
  const [asked, setAsked] = useState(false);
  // A draft may be from before a field was there.
  const typed = { ...BLANK_SURFACE, ...draft.value };
  const read = readSurface(typed, units);
  const set = (changed: Partial<TypedSurface>) => draft.set((current) => ({ ...current, ...changed }));
  const discard = () => {
    draft.clear();
    close();
  };
  const write = async () => {
    setAsked(true);
    if (read.entry !== null && (await save(read.entry))) discard();
  };
  return (
    <div class="form">
      <TextField
        label={surfacesText.surface}
        hint={surfacesText.surfaceHint}
        value={typed.surface}
        onInput={(surface) => set({ surface })}
      />
      <ChoiceField
        label={surfacesText.cover}
        value={typed.cover}
        choices={COVERS}
        blank={surfacesText.coverBlank}
        onChoose={(cover) => set({ cover })}
      />
      <ChoiceField label={surfacesText.measuring.way} value={typed.way} choices={CHOICES} onChoose={(way) => set({ way: way ?? "area" })} />
      <Measuring typed={typed} read={read} units={units} asked={asked} set={set} />
      <NumberField
        label={surfacesText.shareLabel}
        hint={surfacesText.shareHint}
        value={typed.share}
        fault={asked ? read.faults.share : null}
        onInput={(share) => set({ share })}
      />
      <WriteOrDiscard save={surfacesText.save} touched={draft.touched} onSave={write} onDiscard={discard} />
    </div>
  );
}

/** The fields of the way that was chosen, and the area they give. */
function Measuring({
  typed,
  read: { measured, notes, faults },
  units,
  asked,
  set,
}: {
  readonly typed: TypedSurface;
  readonly read: SurfaceAsRead;
  readonly units: UnitSystem;
  readonly asked: boolean;
  readonly set: (changed: Partial<TypedSurface>) => void;
}) {
  const { measuring } = surfacesText;
  const { way } = typed;
  const unit = shownUnit("length", units);
  const shownFault = (fault: string | null | undefined) => (asked ? fault : null);
  if (way === "area") {
    return (
      <>
        <NumberField
          label={measuring.area}
          unit={shownUnit("area", units)}
          value={typed.area}
          fault={shownFault(faults.area)}
          onInput={(area) => set({ area })}
        />
        <TextField label={measuring.words} hint={measuring.wordsHint} value={typed.words} onInput={(words) => set({ words })} />
      </>
    );
  }
  const gives = measured === null ? null : measuring.gives(quantityWords("area", measured, units));
  return (
    <div class="measuring">
      {way === "widths" && (
        <>
          <NumberField
            label={measuring.step}
            hint={measuring.stepHint}
            unit={unit}
            value={typed.step}
            fault={shownFault(faults.step)}
            onInput={(step) => set({ step })}
          />
          <TextField
            label={measuring.widthsIn(unit)}
            hint={measuring.widthsHint}
            value={typed.widths}
            fault={shownFault(faults.widths)}
            onInput={(widths) => set({ widths })}
          />
        </>
      )}
      {isShape(way) &&
        figuresOf(way).map(({ name, kind }, place) => (
          <NumberField
            key={`${way} ${name}`}
            label={figureLabel(name)}
            hint={measuring.hints[name]}
            unit={kind === "length" ? unit : undefined}
            value={typed.figures[place] ?? ""}
            fault={shownFault(faults.figures[place])}
            onInput={(figure) => set({ figures: withFigure(typed.figures, place, figure) })}
          />
        ))}
      {(way === "roof footprint" || way === "roof slope") && <p class="hint">{measuring.pitch}</p>}
      <p class="fault" role="status">
        {shownFault(faults.measurement) ?? ""}
      </p>
      {gives !== null && (
        <div class="measured">
          <p class="measured-area">{gives}</p>
          {notes.map((note) => (
            <p key={note} class="hint">
              {note}
            </p>
          ))}
          <LiveSentence says={gives} />
        </div>
      )}
    </div>
  );
}

function withFigure(figures: readonly string[], place: number, figure: string): readonly string[] {
  return Array.from({ length: Math.max(figures.length, place + 1) }, (_, at) => (at === place ? figure : (figures[at] ?? "")));
}
