import { useState } from "preact/hooks";
import { addSurface, changeSurface } from "../../../addin/actions/yard/record-yard.ts";
import { clearRow } from "../../../addin/actions/program/write-records.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { unitOf } from "../../../functions/quantities.ts";
import { useDraft } from "../../parts/drafts.ts";
import { useFocusWhenOpened } from "../../parts/focus.ts";
import { Button, MessageBar } from "../../parts/form.tsx";
import { shown } from "../../parts/numbers.ts";
import { Removing } from "../../parts/removing.tsx";
import { asTyped } from "../../parts/typed-number.ts";
import type { ViewProps } from "../../view.ts";
import { Downspout } from "./downspout.tsx";
import { BLANK_SURFACE, differenceWords, typedFrom, type SurfaceRow } from "./surface-draft.ts";
import { SurfaceForm } from "./surface-form.tsx";
import { surfacesText } from "./surfaces-text.ts";

export function Surfaces(view: ViewProps) {
  const { yard } = view;
  return (
    <section aria-label={surfacesText.title}>
      <h2>{surfacesText.title}</h2>
      <p class="hint">{yard.surfaces.length === 0 ? surfacesText.empty : surfacesText.hint}</p>
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
  // The cells alone, because a draft is kept as plain data: where they stand is the row's to say.
  const draft = useDraft(`${yard.siteId}/surface/${row.row}`, typedFrom(row, yard.units), row.cells);
  const open = opened || draft.touched;
  const place = useFocusWhenOpened(open);
  const name = row.record.surface ?? surfacesText.unnamed;
  if (open) {
    return (
      <div ref={place}>
        <SurfaceForm
          units={yard.units}
          draft={draft}
          save={(entry) => write(() => changeSurface(workbook, { ...row, cells: draft.basis }, entry), surfacesText.changed)}
          close={() => setOpened(false)}
        />
      </div>
    );
  }
  const difference = differenceWords(row, yard.units);
  return (
    <div ref={place} class="surface">
      <div class="surface-words">
        <p class="surface-name">{name}</p>
        <p class="surface-facts">{[row.record.cover, ...sizeOf(row, yard)].filter((fact) => fact !== null).join(" · ")}</p>
        {row.record.howMeasured !== null && <p class="hint">{row.record.howMeasured}</p>}
      </div>
      <div class="buttons">
        <Button aria-label={surfacesText.editLabel(name)} onClick={() => setOpened(true)}>
          {surfacesText.edit}
        </Button>
        <Removing
          says={surfacesText.remove}
          label={surfacesText.removeLabel(name)}
          question={surfacesText.removeQuestion(name)}
          keep={surfacesText.removeKeep}
          remove={surfacesText.removeYes}
          onRemove={() => write(() => clearRow(workbook, row), surfacesText.removed(name))}
        />
      </div>
      {difference !== null && <MessageBar kind="warning">{difference}</MessageBar>}
      {row.record.cover === "roof" && <Downspout {...view} row={row} name={name} />}
    </div>
  );
}

function sizeOf({ record, cells }: SurfaceRow, yard: Yard): readonly string[] {
  if (record.area === null) return cells.area === null ? [] : [asTyped(cells.area)];
  const share = record.share === null || record.share === 1 ? surfacesText.all : surfacesText.share(shown(record.share * 100, 1));
  return [`${shown(record.area, 1)} ${unitOf("area", yard.units)}`, `${share} ${surfacesText.drains}`];
}

function NewSurface({ yard, workbook, write }: ViewProps) {
  const [opened, setOpened] = useState(false);
  const draft = useDraft(`${yard.siteId}/surface/new`, BLANK_SURFACE);
  const open = opened || draft.touched;
  const place = useFocusWhenOpened(open);
  if (!open) {
    return (
      <div ref={place}>
        <Button onClick={() => setOpened(true)}>{surfacesText.add}</Button>
      </div>
    );
  }
  return (
    <div ref={place} class="card">
      <h3>{surfacesText.add}</h3>
      <SurfaceForm
        units={yard.units}
        draft={draft}
        save={(entry) => write(() => addSurface(workbook, yard, entry), surfacesText.added)}
        close={() => setOpened(false)}
      />
    </div>
  );
}
