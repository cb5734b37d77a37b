import { useState } from "preact/hooks";
import { AddYard } from "./add-yard.tsx";
import { hasDraft } from "./parts/drafts.ts";
import { TextField } from "./parts/form.tsx";
import { SlipList, type GoTo } from "./parts/slip-list.tsx";
import { yardsMatching } from "./parts/yards-matching.ts";
import { text } from "./text.ts";
import type { ViewProps } from "./view.ts";
import { YardButton } from "./yard-button.tsx";

export function YardPicker({
  program,
  workbook,
  write,
  goTo,
  onPick,
  onCheck,
}: Pick<ViewProps, "program" | "workbook" | "write"> & {
  readonly goTo: GoTo;
  /** Leads to the check of the workbook, with what it finds. */
  readonly onCheck: () => void;
  readonly onPick: (siteId: string) => void;
}) {
  const [search, setSearch] = useState("");
  const found = yardsMatching(program, search);
  return (
    <section>
      <h2>{text.picker.title}</h2>
      <SlipList title={text.sheetSlips} slips={program.slips} goTo={goTo} onCheck={onCheck} />
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
                <YardButton yard={yard} says={yard.site.record.address ?? ""} onPick={() => onPick(yard.siteId)}>
                  {hasDraft(`${yard.siteId}/`) && <span class="unsaved">{text.form.unsaved}</span>}
                </YardButton>
              </li>
            ))}
          </ul>
        </>
      )}
      <AddYard workbook={workbook} write={write} onAdded={onPick} />
    </section>
  );
}
