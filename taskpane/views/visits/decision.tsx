import { useState } from "preact/hooks";
import { dayNumberOf, isoDate, today } from "../../../addin/actions/dates.ts";
import { DECISION_WORDS, recordDecision } from "../../../addin/actions/visits/record-answer.ts";
import type { StageStanding, StepStanding } from "../../../addin/actions/visits/stage-standing.ts";
import { useDraft } from "../../parts/drafts.ts";
import { Button, DateField, isEnterInField, Segmented, TextField } from "../../parts/form.tsx";
import { text } from "../../text.ts";
import type { ViewProps } from "../../view.ts";
import { visitsText } from "./text.ts";

const words = visitsText.decision;

/** What was decided on a finding that refers, or who answered for a stop: a line each, where the step is read. */
export function Settled({ standing: { decision, override } }: { readonly standing: StepStanding }) {
  return (
    <>
      {decision !== null && <p class="settled">{words.decided(decision.by, isoDate(decision.date), decision.words)}</p>}
      {override !== null && (
        <p class="settled">
          {visitsText.gate.overridden(override.by, override.date === null ? "" : isoDate(override.date), override.words)}
        </p>
      )}
    </>
  );
}

interface TypedDecision {
  readonly says: string | null;
  readonly by: string;
  readonly what: string;
  readonly date: string;
  readonly paper: string;
}

/** Who decided, what, when and on what paper: what ends a refer. */
export function DecisionForm({
  stage,
  standing: { step },
  onWritten,
  yard,
  workbook,
  write,
}: Omit<ViewProps, "program"> & {
  readonly stage: StageStanding["stage"];
  readonly standing: StepStanding;
  readonly onWritten: () => void;
}) {
  const blank: TypedDecision = { says: null, by: "", what: "", date: isoDate(today()), paper: "" };
  const draft = useDraft<TypedDecision>(`${yard.siteId}/decision/${step.id}`, blank);
  const [asked, ask] = useState(false);
  const typed = draft.value;
  const set = (changed: Partial<TypedDecision>) => draft.set((current) => ({ ...current, ...changed }));
  const date = dayNumberOf(typed.date);
  const missing = (value: string, label: string) => (asked && value.trim() === "" ? words.missing(label) : null);
  const save = async () => {
    ask(true);
    if (typed.says === null || date === null || [typed.by, typed.what, typed.paper].some((value) => value.trim() === "")) return;
    const entry = { ...typed, says: typed.says, date };
    if (!(await write(() => recordDecision(workbook, yard, { stage: stage.id, step: step.id }, entry), words.done(step.title)))) return;
    draft.clear();
    ask(false);
    onWritten();
  };
  return (
    <div
      class="card decision"
      role="group"
      aria-label={words.title}
      onKeyDown={(event) => {
        // Enter belongs to the form it is pressed in, not to the answer around it.
        event.stopPropagation();
        if (isEnterInField(event)) void save();
      }}
    >
      <h4>{words.title}</h4>
      <p class="hint">{words.hint}</p>
      <Segmented
        label={words.says}
        value={typed.says}
        fault={asked && typed.says === null ? words.missing(words.says) : null}
        choices={DECISION_WORDS.map((says) => ({ value: says, says }))}
        onChoose={(says) => set({ says })}
      />
      <TextField label={words.by} hint={words.byHint} value={typed.by} fault={missing(typed.by, words.by)} onInput={(by) => set({ by })} />
      <TextField label={words.what} value={typed.what} fault={missing(typed.what, words.what)} onInput={(what) => set({ what })} />
      <DateField
        label={words.date}
        value={typed.date}
        fault={asked && date === null ? words.missing(words.date) : null}
        onInput={(day) => set({ date: day })}
      />
      <TextField
        label={words.paper}
        hint={words.paperHint}
        value={typed.paper}
        fault={missing(typed.paper, words.paper)}
        onInput={(paper) => set({ paper })}
      />
      <div class="buttons">
        <Button kind="primary" aria-label={`${words.save}: ${step.title}`} onClick={save}>
          {words.save}
        </Button>
        {draft.touched && (
          <Button
            kind="quiet"
            onClick={() => {
              draft.clear();
              ask(false);
            }}
          >
            {text.form.discard}
          </Button>
        )}
      </div>
    </div>
  );
}
