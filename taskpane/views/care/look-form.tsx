import { useState } from "preact/hooks";
import { askedAt, type LookKind } from "../../../addin/actions/care/asked-at-look.ts";
import { isoDate, today } from "../../../addin/actions/dates.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { planLook, recordLook, REPAIR_DAYS, type LookPlan } from "../../../addin/actions/care/record-look.ts";
import { useDraft } from "../../parts/drafts.ts";
import { DateField, TextField, VerdictBadge } from "../../parts/form.tsx";
import { WriteOrDiscard } from "../../parts/write-or-discard.tsx";
import { useRememberedName } from "../../parts/remembered-name.ts";
import type { ViewProps } from "../../view.ts";
import { blankLook, readLook, type LookFaults, type TypedLook } from "./look-draft.ts";
import { LookStep } from "./look-step.tsx";
import { careText } from "./text.ts";

type FollowUpRow = Yard["followUps"][number];

const words = careText.look;
const NO_FAULTS: LookFaults = { steps: new Map() };

/** One look, item by item: quick with the keyboard, and with what it will write before it is written. */
export function LookForm({
  row,
  kind,
  close,
  ...view
}: ViewProps & { readonly row: FollowUpRow; readonly kind: LookKind; readonly close: () => void }) {
  const { yard, workbook, write } = view;
  const look = askedAt(kind);
  const draft = useDraft<TypedLook, FollowUpRow["cells"]>(`${yard.siteId}/look/${kind}/${row.row}`, blankLook(today()), row.cells);
  const [by, rememberBy] = useRememberedName();
  const [tried, tryIt] = useState(false);
  const typed = draft.value;
  const read = readLook(kind, typed, by, yard.units);
  const faults = tried && "faults" in read ? read.faults : NO_FAULTS;
  const set = (change: (current: TypedLook) => TypedLook) => draft.set(change);
  const discard = () => {
    draft.clear();
    close();
  };
  const save = async () => {
    tryIt(true);
    if ("faults" in read) return;
    if (await write(() => recordLook(workbook, yard, { ...row, cells: draft.basis }, read.entry), words.saved(careText.kinds[kind])))
      discard();
  };
  return (
    <div class="form">
      <DateField label={words.done} value={typed.done} fault={faults.done} onInput={(done) => set((current) => ({ ...current, done }))} />
      <TextField label={words.by} hint={words.byHint} value={by} onInput={rememberBy} />
      <p class="hint">{words.keys}</p>
      <ol class="care-steps">
        {look.steps.map((asked) => (
          <LookStep
            key={asked.step.id}
            {...view}
            look={look}
            asked={asked}
            typed={typed}
            usualRepairDay={isoDate(("entry" in read ? read.entry.done : today()) + REPAIR_DAYS)}
            fault={faults.steps.get(asked.step.id) ?? null}
            set={set}
          />
        ))}
      </ol>
      <TextField label={words.noteOfLook} value={typed.note} onInput={(note) => set((current) => ({ ...current, note }))} />
      {"entry" in read ? <WillWrite plan={planLook(yard, row, read.entry)} /> : <p class="hint">{words.answerRest}</p>}
      <WriteOrDiscard save={words.save} touched={draft.touched} onSave={save} onDiscard={discard} />
    </div>
  );
}

function WillWrite({ plan }: { readonly plan: LookPlan }) {
  return (
    <div class="care-plan" role="status">
      <h4>{words.willWrite}</h4>
      <p>
        {words.willFind}: <VerdictBadge verdict={plan.finding} />
      </p>
      <ul>
        {plan.next.map(({ kind, due, action }) => (
          <li key={`${kind} ${due} ${action ?? ""}`}>{words.willDo(isoDate(due), careText.kinds[kind], action)}</li>
        ))}
      </ul>
    </div>
  );
}
