import { useState } from "preact/hooks";
import type { Program, Yard } from "../addin/actions/read-program.ts";
import { AddYard } from "./add-yard.tsx";
import { hasDraft } from "./drafts.ts";
import { TextField } from "./form.tsx";
import { SlipList } from "./slip-list.tsx";
import type { GoTo } from "./slip-list.tsx";
import { text } from "./text.ts";
import type { ViewProps } from "./view.ts";

export function YardPicker({ program, workbook, write, goTo, onPick }: Pick<ViewProps, "program" | "workbook" | "write"> & {
  readonly goTo: GoTo;
  readonly onPick: (siteId: string) => void;
}) {
  const [search, setSearch] = useState("");
  const found = yardsMatching(program, search);
  return (
    <section>
      <h2>{text.picker.title}</h2>
      <SlipList title={text.sheetSlips} slips={program.slips} goTo={goTo} />
      {program.yards.length === 0 ? (
        <p>{text.picker.empty}</p>
      ) : (
        <>
          <p class="hint">{text.picker.follows}</p>
          <TextField label={text.picker.search} hint={text.picker.searchHint} value={search} onInput={setSearch} />
          <p role="status" class="hint">
            {found.length === 0 ? text.picker.none : text.picker.count(found.length, program.yards.length)}
          </p>
          <ul class="yard-list">
            {found.map((yard) => (
              <li key={yard.siteId}>
                <button type="button" class="yard-button" onClick={() => onPick(yard.siteId)}>
                  <span class="yard-id">{yard.siteId}</span>
                  <span class="yard-name">{nameOf(yard)}</span>
                  <span class="yard-address">{yard.site.record.address ?? ""}</span>
                  {hasDraft(`${yard.siteId}/`) && <span class="unsaved">{text.form.unsaved}</span>}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <AddYard workbook={workbook} write={write} onAdded={onPick} />
    </section>
  );
}

export function nameOf(yard: Yard): string {
  return yard.site.record.yard ?? yard.site.record.address ?? text.picker.unnamed;
}

/** Every word typed must occur in the number, name or address; "y 4" finds Y-004. */
export function yardsMatching(program: Program, search: string): readonly Yard[] {
  return program.yards.filter((yard) => matches(yard, search));
}

export function matches({ siteId, site }: Yard, search: string): boolean {
  const said = `${siteId} ${site.record.yard ?? ""} ${site.record.address ?? ""}`.toLowerCase();
  return search.toLowerCase().split(/\s+/).every((word) => said.includes(word));
}
