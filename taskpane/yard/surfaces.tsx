import { useState } from "preact/hooks";
import { addSurface, changeSurface } from "../../addin/actions/record-yard.ts";
import type { SurfaceEntry } from "../../addin/actions/record-yard.ts";
import type { Yard } from "../../addin/actions/read-program.ts";
import { unitOf } from "../../functions/quantities.ts";
import { curveNumber } from "../../functions/worksheet/runoff.ts";
import { useDraft } from "../drafts.ts";
import type { Draft } from "../drafts.ts";
import { useFocusWhenOpened } from "../focus.ts";
import { Button, ChoiceField, NumberField, TextField } from "../form.tsx";
import { shown } from "../numbers.ts";
import { asTyped, isRefused, readTypedNumber } from "../typed-number.ts";
import type { ViewProps } from "../view.ts";
import { yardText } from "./text.ts";

type SurfaceRow = Yard["surfaces"][number];

/** A surface as typed: nothing is a number yet. */
interface TypedSurface {
  readonly surface: string;
  readonly cover: string | null;
  readonly area: string;
  readonly share: string;
}

const BLANK: TypedSurface = { surface: "", cover: null, area: "", share: "" };

const COVERS = (curveNumber.parameters.find(({ key }) => key === "cover")?.choices ?? []).map((cover) => ({ value: cover, says: cover }));

export function Surfaces(view: ViewProps) {
  const { yard } = view;
  return (
    <section aria-label={yardText.surfaces.title}>
      <h2>{yardText.surfaces.title}</h2>
      <p class="hint">{yard.surfaces.length === 0 ? yardText.surfaces.empty : yardText.surfaces.hint}</p>
      <ul class="surface-list">
        {yard.surfaces.map((row) => (
          <li key={row.row} class="card">
            <Surface {...view} row={row} />
          </li>
        ))}
      </ul>
      <NewSurface {...view} />
    </section>
  );
}

function Surface({ row, ...view }: ViewProps & { readonly row: SurfaceRow }) {
  const { yard, workbook, write } = view;
  const [opened, setOpened] = useState(false);
  const draft = useDraft(`${yard.siteId}/surface/${row.row}`, typedFrom(row), row);
  const open = opened || draft.touched;
  const place = useFocusWhenOpened(open);
  if (open) {
    return (
      <div ref={place}>
        <SurfaceForm
          yard={yard}
          draft={draft}
          save={(entry) => write(() => changeSurface(workbook, draft.basis, entry), yardText.surfaces.changed)}
          close={() => setOpened(false)}
        />
      </div>
    );
  }
  const name = row.record.surface ?? yardText.surfaces.unnamed;
  return (
    <div ref={place} class="surface">
      <div>
        <p class="surface-name">{name}</p>
        <p class="surface-facts">
          {[row.record.cover, ...sizeOf(row, yard)].filter((fact) => fact !== null).join(" · ")}
        </p>
      </div>
      <Button aria-label={yardText.surfaces.editLabel(name)} onClick={() => setOpened(true)}>
        {yardText.surfaces.edit}
      </Button>
    </div>
  );
}

function sizeOf({ record, cells }: SurfaceRow, yard: Yard): readonly string[] {
  if (record.area === null) return cells.area === null ? [] : [asTyped(cells.area)];
  const share = record.share === null || record.share === 1 ? yardText.surfaces.all : yardText.surfaces.share(shown(record.share * 100, 1));
  return [`${shown(record.area, 1)} ${unitOf("area", yard.units)}`, `${share} ${yardText.surfaces.drains}`];
}

function NewSurface({ yard, workbook, write }: ViewProps) {
  const [opened, setOpened] = useState(false);
  const draft = useDraft(`${yard.siteId}/surface/new`, BLANK);
  const open = opened || draft.touched;
  const place = useFocusWhenOpened(open);
  if (!open) {
    return (
      <div ref={place}>
        <Button onClick={() => setOpened(true)}>{yardText.surfaces.add}</Button>
      </div>
    );
  }
  return (
    <div ref={place} class="card">
      <h3>{yardText.surfaces.add}</h3>
      <SurfaceForm
        yard={yard}
        draft={draft}
        save={(entry) => write(() => addSurface(workbook, yard, entry), yardText.surfaces.added)}
        close={() => setOpened(false)}
      />
    </div>
  );
}

function SurfaceForm({ yard, draft, save, close }: {
  readonly yard: Yard;
  readonly draft: Draft<TypedSurface, unknown>;
  readonly save: (entry: SurfaceEntry) => Promise<boolean>;
  readonly close: () => void;
}) {
  const [asked, setAsked] = useState(false);
  const typed = draft.value;
  const set = (changed: Partial<TypedSurface>) => draft.set((current) => ({ ...current, ...changed }));
  const area = readTypedNumber(typed.area, { label: yardText.surfaces.area, required: true, atLeast: 0 });
  const share = readTypedNumber(typed.share, { label: yardText.surfaces.shareLabel, atLeast: 0, atMost: 1 });
  const discard = () => {
    draft.clear();
    close();
  };
  const write = async () => {
    setAsked(true);
    if (isRefused(area) || isRefused(share)) return;
    if (await save({ surface: typed.surface.trim(), cover: typed.cover ?? "", area: area.value, share: share.value })) discard();
  };
  return (
    <div class="form">
      <TextField label={yardText.surfaces.surface} hint={yardText.surfaces.surfaceHint} value={typed.surface} onInput={(surface) => set({ surface })} />
      <ChoiceField label={yardText.surfaces.cover} value={typed.cover} choices={COVERS} blank={yardText.surfaces.coverBlank} onChoose={(cover) => set({ cover })} />
      <NumberField
        label={yardText.surfaces.area}
        unit={unitOf("area", yard.units)}
        value={typed.area}
        fault={asked && isRefused(area) ? area.sentence : null}
        onInput={(text) => set({ area: text })}
      />
      <NumberField
        label={yardText.surfaces.shareLabel}
        hint={yardText.surfaces.shareHint}
        value={typed.share}
        fault={asked && isRefused(share) ? share.sentence : null}
        onInput={(text) => set({ share: text })}
      />
      {draft.touched && <p class="unsaved">{yardText.surfaces.unsaved}</p>}
      <div class="buttons">
        <Button kind="primary" onClick={write}>
          {yardText.surfaces.save}
        </Button>
        <Button kind="quiet" onClick={discard}>
          {yardText.surfaces.discard}
        </Button>
      </div>
    </div>
  );
}

function typedFrom({ cells }: SurfaceRow): TypedSurface {
  return { surface: asTyped(cells.surface), cover: cells.cover === null ? null : String(cells.cover), area: asTyped(cells.area), share: asTyped(cells.share) };
}
