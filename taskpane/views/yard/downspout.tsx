import { useState } from "preact/hooks";
import {
  LININGS,
  recordDownspout,
  ROOF_PEAK_COEFFICIENT,
  ROOF_PEAK_SOURCE,
  TRENCH_REMINDERS,
  type Conduit,
} from "../../../addin/actions/yard/check-downspout.ts";
import { isoDate, today } from "../../../addin/actions/dates.ts";
import { markingServiceOf, reminderWords } from "../../../addin/actions/visits/marking-service.ts";
import { useDraft } from "../../parts/drafts.ts";
import { useFocusWhenOpened } from "../../parts/focus.ts";
import { Button, ChoiceField, MessageBar, NumberField, Segmented, TextField, VerdictBadge } from "../../parts/form.tsx";
import { WriteOrDiscard } from "../../parts/write-or-discard.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import type { ViewProps } from "../../view.ts";
import {
  BLANK_DOWNSPOUT,
  defaultsOf,
  downspoutRecord,
  downspoutVerdict,
  readDownspout,
  type DownspoutAsRead,
  type DownspoutVerdict,
  type TypedDownspout,
} from "./downspout-draft.ts";
import type { SurfaceRow } from "./surface-draft.ts";
import { surfacesText } from "./surfaces-text.ts";

const words = surfacesText.downspout;
const CONDUITS = (["pipe", "trench"] as const).map((conduit) => ({ value: conduit, says: words.conduits[conduit] }));

interface DownspoutProps extends ViewProps {
  readonly row: SurfaceRow;
  /** What the surface is called. */
  readonly name: string;
}

/** Whether the pipe or trench that brings a roof's water to the garden is large enough. */
export function Downspout({ row, name, ...view }: DownspoutProps) {
  const { siteId } = view.yard;
  const [opened, setOpened] = useState(false);
  const draft = useDraft<TypedDownspout, SurfaceRow["cells"]>(`${siteId}/downspout/${row.row}`, BLANK_DOWNSPOUT, row.cells);
  const open = opened || draft.touched;
  const place = useFocusWhenOpened(open);
  const close = () => {
    draft.clear();
    setOpened(false);
  };
  return (
    <div ref={place} class="downspout">
      {row.record.downspout !== null && (
        <p class="hint">
          <strong>{words.kept}:</strong> {row.record.downspout}
        </p>
      )}
      {open ? (
        <DownspoutForm
          {...view}
          row={row}
          name={name}
          typed={draft.value}
          touched={draft.touched}
          set={(changed) => draft.set((current) => ({ ...current, ...changed }))}
          seen={{ ...row, cells: draft.basis }}
          close={close}
        />
      ) : (
        <Button kind="quiet" aria-label={words.openLabel(name)} onClick={() => setOpened(true)}>
          {words.open}
        </Button>
      )}
    </div>
  );
}

function DownspoutForm({
  program,
  yard,
  workbook,
  write,
  row,
  seen,
  typed,
  touched,
  set,
  close,
}: DownspoutProps & {
  /** The row as it stood when the form was opened. */
  readonly seen: SurfaceRow;
  readonly typed: TypedDownspout;
  readonly touched: boolean;
  readonly set: (changed: Partial<TypedDownspout>) => void;
  readonly close: () => void;
}) {
  const [refusal, refuse] = useState<string | null>(null);
  const read = readDownspout(typed, row, yard.units);
  const verdict = downspoutVerdict(read);
  const save = async () => {
    const record = downspoutRecord(read, typed, isoDate(today()));
    const reason = record === null ? words.notKnown : typed.source.trim() === "" ? words.sourceMissing : null;
    refuse(reason);
    if (record !== null && reason === null && (await write(() => recordDownspout(workbook, seen, record), words.saved))) close();
  };
  return (
    <section class="form" aria-label={words.title}>
      <h3>{words.title}</h3>
      <p class="hint">{words.explain}</p>
      <Reminders program={program} yard={yard} />
      <Fields typed={typed} read={read} row={row} set={set} />
      <Answer verdict={verdict} read={read} />
      <Sources typed={typed} row={row} />
      <p class="fault" role="status">
        {refusal ?? ""}
      </p>
      <WriteOrDiscard save={words.save} touched={touched} onSave={save} onDiscard={close} />
    </section>
  );
}

function Reminders({ program, yard }: Pick<ViewProps, "program" | "yard">) {
  const service = markingServiceOf(program, yard);
  return (
    <div class="reminder">
      <h4>{words.before}</h4>
      <ul class="bullets">
        {[...TRENCH_REMINDERS.map((reminder) => reminderWords(reminder, service)), ...words.more].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}

function Fields({
  typed,
  read: { inputs, faults },
  row,
  set,
}: {
  readonly typed: TypedDownspout;
  readonly read: DownspoutAsRead;
  readonly row: SurfaceRow;
  readonly set: (changed: Partial<TypedDownspout>) => void;
}) {
  const { conduit, units } = inputs;
  const { roofArea, isElsewhere, lining } = defaultsOf(row, typed);
  const choose = (chosen: Conduit) => set({ conduit: chosen, lining: LININGS[chosen][0]?.name ?? "" });
  return (
    <>
      <NumberField
        label={words.roofArea}
        hint={roofArea === null ? undefined : words.roofAreaHint(quantityWords("area", roofArea, units), isElsewhere)}
        unit={shownUnit("area", units)}
        value={typed.roofArea}
        fault={faults.roofArea}
        onInput={(typedArea) => set({ roofArea: typedArea })}
      />
      <NumberField
        label={words.intensity}
        hint={words.intensityHint}
        unit={shownUnit("rate", units)}
        value={typed.intensity}
        fault={faults.intensity}
        onInput={(intensity) => set({ intensity })}
      />
      <TextField label={words.source} hint={words.sourceHint} value={typed.source} onInput={(source) => set({ source })} />
      <NumberField
        label={words.coefficient}
        hint={words.coefficientHint(shown(ROOF_PEAK_COEFFICIENT, 2))}
        value={typed.coefficient}
        fault={faults.coefficient}
        onInput={(coefficient) => set({ coefficient })}
      />
      <Segmented
        label={words.conduit}
        hint={conduit === "trench" ? words.trenchHint : words.inside}
        value={conduit}
        choices={CONDUITS}
        onChoose={choose}
      />
      <NumberField
        label={words.width[conduit]}
        unit={shownUnit("depth", units)}
        value={typed.width}
        fault={faults.width}
        onInput={(width) => set({ width })}
      />
      <NumberField
        label={words.slope}
        hint={words.slopeHint}
        unit="%"
        value={typed.slope}
        fault={faults.slope}
        onInput={(slope) => set({ slope })}
      />
      <ChoiceField
        label={words.lining[conduit]}
        value={typed.lining}
        choices={LININGS[conduit].map((one) => ({ value: one.name, says: `${one.name}, n ${one.roughness}` }))}
        onChoose={(name) => set({ lining: name ?? "" })}
      />
      <NumberField
        label={words.roughness}
        hint={lining === null ? undefined : words.roughnessHint(shown(lining.roughness, 3))}
        value={typed.roughness}
        fault={faults.roughness}
        onInput={(roughness) => set({ roughness })}
      />
    </>
  );
}

function Answer({ verdict, read: { check } }: { readonly verdict: DownspoutVerdict | null; readonly read: DownspoutAsRead }) {
  if (verdict === null) return <p class="hint">{words.waiting}</p>;
  return (
    <div class="downspout-answer">
      <VerdictBadge verdict={verdict.carries ? "pass" : "refer"} says={verdict.inShort} />
      {verdict.sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {check.cautions.map((caution) => (
        <MessageBar key={caution} kind="warning">
          {caution}
        </MessageBar>
      ))}
      <p class="hint">{words.afterwards}</p>
      <LiveSentence says={[`${verdict.inShort}.`, ...verdict.sentences].join(" ")} />
    </div>
  );
}

function Sources({ typed, row }: { readonly typed: TypedDownspout; readonly row: SurfaceRow }) {
  const { lining } = defaultsOf(row, typed);
  return (
    <p class="hint">
      {words.from}: {[ROOF_PEAK_SOURCE, ...(lining === null ? [] : [lining.source])].join(" ")}
    </p>
  );
}
