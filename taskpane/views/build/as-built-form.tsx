import { useState } from "preact/hooks";
import { isoDate } from "../../../addin/actions/dates.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { compareAsBuilt, newestAsBuilt, recordAsBuilt, type AsBuiltMeasures } from "../../../addin/actions/build/record-as-built.ts";
import { BASIN_SHAPES } from "../../../functions/basin/basin-shape.ts";
import { useDraft } from "../../parts/drafts.ts";
import { useFocusWhenOpened } from "../../parts/focus.ts";
import { Button, ChoiceField, NumberField, TextField, VerdictBadge } from "../../parts/form.tsx";
import { WriteOrDiscard } from "../../parts/write-or-discard.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import type { ViewProps, VisitProps } from "../../view.ts";
import { asBuiltEntry, readAsBuilt, startingAsBuilt, type MeasureKey, type TypedAsBuilt } from "./as-built-draft.ts";
import { asBuiltLines } from "./as-built-words.ts";
import { buildText } from "./text.ts";
import "./build.css";

const words = buildText.asBuilt;
const SHAPES = BASIN_SHAPES.map((shape) => ({ value: shape, says: words.shapes[shape] }));

/** The finished garden, measured again and held beside the design. */
export function AsBuiltForm(view: VisitProps) {
  const { yard } = view;
  const newest = newestAsBuilt(yard.asBuilt);
  const [opened, setOpened] = useState(false);
  const draft = useDraft<TypedAsBuilt>(`${yard.siteId}/as-built`, startingAsBuilt(yard));
  const open = opened || draft.touched;
  const place = useFocusWhenOpened(open);
  return (
    <section class="build" aria-label={words.title}>
      <h2>{words.title}</h2>
      <p class="hint">{words.explain}</p>
      {newest !== null && <Newest {...view} newest={newest} />}
      <div ref={place}>
        {open ? (
          <Measuring
            {...view}
            draft={draft}
            close={() => {
              draft.clear();
              setOpened(false);
            }}
          />
        ) : (
          <Button kind={newest === null ? "primary" : "plain"} onClick={() => setOpened(true)}>
            {newest === null ? words.first : words.again}
          </Button>
        )}
      </div>
    </section>
  );
}

function Newest({ newest, ...view }: ViewProps & { readonly newest: Yard["asBuilt"][number] }) {
  const { date, by, note } = newest.record;
  const earlier = view.yard.asBuilt.length - 1;
  return (
    <div class="card">
      <h3>{date === null ? words.undated : words.newest(isoDate(date))}</h3>
      {(by !== null || note !== null) && <p class="hint">{[by, note].filter((fact) => fact !== null).join(": ")}</p>}
      <Beside {...view} measures={newest.record} />
      {earlier > 0 && <p class="hint">{words.earlier(earlier)}</p>}
    </div>
  );
}

function Measuring({
  draft,
  close,
  ...view
}: VisitProps & { readonly draft: ReturnType<typeof useDraft<TypedAsBuilt>>; readonly close: () => void }) {
  const { yard, workbook, write, by, day } = view;
  const [asked, ask] = useState(false);
  const typed = draft.value;
  const { measures, faults } = readAsBuilt(typed);
  const set = (changed: Partial<TypedAsBuilt>) => draft.set((current) => ({ ...current, ...changed }));
  const save = async () => {
    ask(true);
    const entry = day === null ? null : asBuiltEntry(typed, day, by);
    if (entry !== null && (await write(() => recordAsBuilt(workbook, yard, entry), words.done))) close();
  };
  const field = (key: MeasureKey, unit: string, hint?: string) => (
    <NumberField
      label={words[key]}
      hint={hint}
      unit={unit}
      value={typed[key]}
      fault={asked ? faults[key] : null}
      onInput={(text) => set({ [key]: text })}
    />
  );
  const length = shownUnit("length", yard.units);
  const depth = shownUnit("depth", yard.units);
  return (
    <div class="form">
      <ChoiceField label={words.shape} value={typed.shape} choices={SHAPES} onChoose={(shape) => set({ shape: shape ?? "ellipse" })} />
      {field("floorLength", length)}
      {field("floorWidth", length)}
      {field("pondingDepth", depth, words.pondingDepthHint)}
      {field("sideSlope", words.sideSlopeUnit, words.sideSlopeHint)}
      {field("mediaDepth", depth, words.mediaDepthHint)}
      {field("sillWidth", length)}
      {field("lowestBerm", depth, words.lowestBermHint)}
      <h3>{words.flowTest}</h3>
      <p class="hint">{words.flowTestHint}</p>
      {field("drainHours", "h")}
      <TextField label={words.note} value={typed.note} onInput={(note) => set({ note })} />
      <Beside {...view} measures={measures} live />
      <p class="fault" role="status">
        {asked ? (faults.nothing ?? "") : ""}
      </p>
      <WriteOrDiscard save={words.save} touched={draft.touched} onSave={save} onDiscard={close} />
    </div>
  );
}

function Beside({ program, yard, measures, live = false }: ViewProps & { readonly measures: AsBuiltMeasures; readonly live?: boolean }) {
  const designedSlope = yard.site.record.sideSlope ?? program.settings.sideSlope;
  const expected = yard.design.drawdownHours;
  const lines = asBuiltLines(
    compareAsBuilt(measures, yard.design, designedSlope, program.settings, yard.units),
    typeof expected === "number" ? expected : null,
    yard.units,
  );
  return (
    <>
      {live && lines.length > 0 && <h3>{words.beside}</h3>}
      <ul class="build-lines">
        {lines.map(({ what, words: says, finding }) => (
          <li key={what}>
            {finding === null ? <span /> : <VerdictBadge verdict={finding} />}
            <span>{says}</span>
          </li>
        ))}
      </ul>
      {live && <LiveSentence says={lines[0]?.words ?? ""} />}
    </>
  );
}
