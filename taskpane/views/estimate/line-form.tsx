import { useState } from "preact/hooks";
import { unitOnPrices, type DraftedLine, type LineKind } from "../../../addin/actions/estimate/draft-estimate.ts";
import type { Program } from "../../../addin/actions/program/read-program.ts";
import type { Draft } from "../../parts/drafts.ts";
import { ChoiceField, NumberField, Segmented, TextField } from "../../parts/form.tsx";
import { WriteOrDiscard } from "../../parts/write-or-discard.tsx";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import { estimateText } from "./text.ts";

const words = estimateText.add;
const KINDS = (["cash", "in-kind"] as const).map((value) => ({ value, says: words.kinds[value] }));

export interface TypedLine {
  readonly item: string | null;
  readonly quantity: string;
  readonly kind: LineKind;
  readonly note: string;
}

export const NOTHING_TYPED: TypedLine = { item: null, quantity: "", kind: "cash", note: "" };

/** One more line, its item chosen from Prices and its quantity in the unit of its price. */
export function LineForm({
  program,
  draft,
  save,
  close,
}: {
  readonly program: Program;
  readonly draft: Draft<TypedLine, unknown>;
  readonly save: (line: DraftedLine) => Promise<boolean>;
  readonly close: () => void;
}) {
  const [asked, setAsked] = useState(false);
  const { item, quantity, kind, note } = draft.value;
  const set = (changed: Partial<TypedLine>) => draft.set((current) => ({ ...current, ...changed }));
  const items = program.prices.flatMap(({ record }) => (record.item === null ? [] : [{ value: record.item, says: record.item }]));
  const unit = item === null ? "" : (unitOnPrices(program.prices, item) ?? "");
  const read = readTypedNumber(quantity, { label: words.quantity, required: true, atLeast: 0 });
  const discard = () => {
    draft.clear();
    close();
  };
  const write = async () => {
    setAsked(true);
    if (item === null || isRefused(read) || read.value === null) return;
    if (await save({ group: "", item, quantity: read.value, unit, kind, note })) discard();
  };
  if (items.length === 0) return <p class="hint">{words.noItems}</p>;
  return (
    <div class="form card">
      <h3>{words.title}</h3>
      <ChoiceField
        label={words.item}
        hint={words.itemHint}
        value={item}
        choices={items}
        blank={words.blank}
        fault={asked && item === null ? words.missing : null}
        onChoose={(chosen) => set({ item: chosen })}
      />
      <NumberField
        label={words.quantity}
        unit={unit}
        value={quantity}
        fault={asked && isRefused(read) ? read.sentence : null}
        onInput={(typed) => set({ quantity: typed })}
      />
      <Segmented label={words.kind} value={kind} choices={KINDS} onChoose={(chosen) => set({ kind: chosen })} />
      <TextField label={words.note} value={note} onInput={(typed) => set({ note: typed })} />
      <WriteOrDiscard save={words.save} touched={draft.touched} onSave={write} onDiscard={discard} />
    </div>
  );
}
