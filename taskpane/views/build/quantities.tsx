import { useState } from "preact/hooks";
import { itemsToMove, quantitiesMoved, recordQuantity, type MovedQuantity } from "../../../addin/actions/build/record-dig-day.ts";
import { useDraft } from "../../parts/drafts.ts";
import { ChoiceField, NumberField, TextField } from "../../parts/form.tsx";
import { WriteOrDiscard } from "../../parts/write-or-discard.tsx";
import { shown } from "../../parts/numbers.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import type { DayProps } from "../../view.ts";
import { buildText } from "./text.ts";

const words = buildText.day.quantity;
const BLANK = { item: null as string | null, quantity: "", note: "" };

/** What was really moved, beside what the design asks for. */
export function Quantities({ yard, workbook, write, day, by }: DayProps) {
  const draft = useDraft(`${yard.siteId}/dig-day/quantity`, BLANK);
  const [asked, ask] = useState(false);
  const typed = draft.value;
  const set = (changed: Partial<typeof BLANK>) => draft.set((current) => ({ ...current, ...changed }));
  const items = itemsToMove(yard);
  const item = items.find((one) => one.item === typed.item) ?? null;
  const { unit, designed } = item ?? { unit: "", designed: null };
  const quantity = readTypedNumber(typed.quantity, { label: words.quantity, required: true, atLeast: 0 });

  const discard = () => {
    draft.clear();
    ask(false);
  };
  const save = async () => {
    ask(true);
    if (item === null || isRefused(quantity) || quantity.value === null) return;
    const entry = { item: item.item, quantity: quantity.value, unit, note: typed.note.trim() };
    if (await write(() => recordQuantity(workbook, yard, day, entry, by), words.done)) discard();
  };

  const moved = quantitiesMoved(yard.digDays, yard.design, yard.units);
  return (
    <section class="form" aria-label={words.title}>
      <h3>{words.title}</h3>
      {moved.length === 0 ? (
        <p class="hint">{words.none}</p>
      ) : (
        <ul class="build-list">
          {moved.map((line) => (
            <li key={`${line.item} ${line.unit}`}>
              <strong>{line.item}</strong> {movedWords(line)}
            </li>
          ))}
        </ul>
      )}
      <ChoiceField
        label={words.item}
        value={typed.item}
        choices={items.map(({ item: says }) => ({ value: says, says }))}
        blank={words.itemBlank}
        fault={asked && item === null ? words.itemMissing : null}
        onChoose={(chosen) => set({ item: chosen })}
      />
      <NumberField
        label={words.quantity}
        hint={designed === null ? undefined : words.designed(`${shown(designed, 2)} ${unit}`)}
        unit={unit}
        value={typed.quantity}
        fault={asked && isRefused(quantity) ? quantity.sentence : null}
        onInput={(text) => set({ quantity: text })}
      />
      <TextField label={words.note} value={typed.note} onInput={(note) => set({ note })} />
      <WriteOrDiscard save={words.save} touched={draft.touched} onSave={save} onDiscard={discard} />
    </section>
  );
}

function movedWords({ quantity, unit, designed }: MovedQuantity): string {
  const amount = `${shown(quantity, 2)} ${unit}`;
  if (designed === null || designed <= 0) return `${amount}, ${words.notDesigned}.`;
  return `${amount} ${words.ofDesign(`${shown(designed, 2)} ${unit}`, shown((quantity / designed) * 100, 0))}.`;
}
