import { useState } from "preact/hooks";
import { addYard, type NewYard } from "../addin/actions/yard/record-yard.ts";
import { useDraft } from "./parts/drafts.ts";
import { useFocusWhenOpened } from "./parts/focus.ts";
import { Button, ChoiceField, Segmented, TextField, isEnterInField } from "./parts/form.tsx";
import { WriteOrDiscard } from "./parts/write-or-discard.tsx";
import { text } from "./text.ts";
import type { ViewProps } from "./view.ts";

/** Its key starts with no Site ID, because there is none yet. */
const DRAFT_KEY = "new-yard";
const BLANK: NewYard = { yard: "", address: "", units: "us", soilGroup: null };
const SOIL_GROUPS = ["A", "B", "C", "D"].map((group) => ({ value: group, says: group }));

export function AddYard({
  workbook,
  write,
  onAdded,
}: Pick<ViewProps, "workbook" | "write"> & { readonly onAdded: (siteId: string) => void }) {
  const draft = useDraft<NewYard>(DRAFT_KEY, BLANK);
  const [opened, setOpened] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const open = opened || draft.touched;
  const place = useFocusWhenOpened(open);
  if (!open) {
    return (
      <div ref={place}>
        <Button onClick={() => setOpened(true)}>{text.addYard.open}</Button>
      </div>
    );
  }
  const entry = draft.value;
  const set = (changed: Partial<NewYard>) => draft.set((current) => ({ ...current, ...changed }));
  const close = () => {
    draft.clear();
    setFault(null);
    setOpened(false);
  };
  const save = async () => {
    const missing = entry.yard.trim() === "" ? text.addYard.missing : null;
    setFault(missing);
    if (missing !== null) return;
    let siteId = "";
    const written = await write(async () => {
      siteId = await addYard(workbook, { ...entry, yard: entry.yard.trim(), address: entry.address.trim() });
    }, text.addYard.done(entry.yard.trim()));
    if (!written) return;
    close();
    onAdded(siteId);
  };
  return (
    <div ref={place} class="card" role="group" aria-label={text.addYard.title} onKeyDown={(event) => isEnterInField(event) && void save()}>
      <h2>{text.addYard.title}</h2>
      <TextField
        label={text.addYard.yard}
        hint={text.addYard.yardHint}
        value={entry.yard}
        fault={fault}
        onInput={(yard) => set({ yard })}
      />
      <TextField label={text.addYard.address} value={entry.address} onInput={(address) => set({ address })} />
      <Segmented
        label={text.addYard.units}
        value={entry.units}
        choices={[
          { value: "us", says: text.addYard.us },
          { value: "metric", says: text.addYard.metric },
        ]}
        onChoose={(units) => set({ units })}
      />
      <ChoiceField
        label={text.addYard.soilGroup}
        hint={text.addYard.soilGroupHint}
        value={entry.soilGroup}
        choices={SOIL_GROUPS}
        blank={text.addYard.notKnown}
        onChoose={(soilGroup) => set({ soilGroup })}
      />
      <WriteOrDiscard save={text.addYard.save} touched={draft.touched} onSave={save} onDiscard={close} />
    </div>
  );
}
