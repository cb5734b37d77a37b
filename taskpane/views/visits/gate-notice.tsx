import { useState } from "preact/hooks";
import { isoDate } from "../../../addin/actions/dates.ts";
import { recordOverride, withdrawOverride } from "../../../addin/actions/visits/record-answer.ts";
import { refusalsInSight, stepTitle, type StageOfYard, type StepPlace } from "../../../addin/actions/visits/stage-standing.ts";
import { useDraft } from "../../parts/drafts.ts";
import { useFocusWhenOpened } from "../../parts/focus.ts";
import { Button, MessageBar, TextField } from "../../parts/form.tsx";
import type { ViewProps } from "../../view.ts";
import { visitsText } from "./text.ts";

const words = visitsText.gate;

type GateRefusal = StageOfYard["gate"]["refusals"][number];

/** What keeps the stage from being begun, what to do about it, and who answered for what. Nothing where nothing does. */
export function GateNotice({
  standing,
  by,
  rememberBy,
  onGo,
  ...view
}: ViewProps & {
  readonly standing: StageOfYard;
  readonly by: string;
  readonly rememberBy: (name: string) => void;
  /** Opens the step where a refusal is put right. */
  readonly onGo: (at: StepPlace) => void;
}) {
  const { gate, stage } = standing;
  const refusals = refusalsInSight(standing);
  const isOver = refusals.length < gate.refusals.length;
  if (refusals.length === 0) return isOver ? <p class="hint">{words.over}</p> : null;
  return (
    <section class={gate.open || isOver ? "gate" : "gate gate-shut"} aria-label={words.title}>
      <h2>{words.title}</h2>
      <p role="status" class="gate-verdict">
        {gate.open || isOver ? words.openBy : shutWords(standing)}
      </p>
      {isOver && <p class="hint">{words.over}</p>}
      <ul>
        {refusals.map((refusal) => (
          <li key={refusal.id}>
            <p>{refusal.sentence}</p>
            <Standing {...view} stage={stage} refusal={refusal} by={by} rememberBy={rememberBy} onGo={onGo} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The gate in short, for a view outside the visits that begins the stage. */
export function GateBar({ standing, onGo }: { readonly standing: StageOfYard; readonly onGo: () => void }) {
  const { gate, state } = standing;
  if (gate.open || state === "done") return null;
  return (
    <MessageBar kind="error" actions={<Button onClick={onGo}>{words.goTo}</Button>}>
      <strong>{shutWords(standing)}</strong>{" "}
      {gate.refusals
        .filter(({ override }) => override === null)
        .map(({ sentence }) => sentence)
        .join(" ")}
    </MessageBar>
  );
}

function shutWords({ stage: { id } }: StageOfYard): string {
  return id === "test-visit" || id === "dig-day" ? words.noDigging : words.shut;
}

interface RefusalProps extends ViewProps {
  readonly stage: StageOfYard["stage"];
  readonly refusal: GateRefusal;
  readonly by: string;
  readonly rememberBy: (name: string) => void;
  readonly onGo: (at: StepPlace) => void;
}

function Standing(props: RefusalProps) {
  const { refusal, stage, yard, workbook, write, by, onGo } = props;
  const { at } = refusal;
  const toStep = at !== undefined && at.stage !== stage.id && (
    <Button aria-label={`${words.goToStep(stepTitle(at))}: ${refusal.sentence}`} onClick={() => onGo(at)}>
      {words.goToStep(stepTitle(at))}
    </Button>
  );
  if (refusal.neverOverridden !== null)
    return (
      <>
        <p class="hint">{refusal.neverOverridden}</p>
        {toStep}
      </>
    );
  if (refusal.override === null)
    return (
      <>
        {toStep}
        <OverrideForm {...props} />
      </>
    );
  const { by: who, date, reason } = refusal.override;
  const withdraw = () =>
    write(() => withdrawOverride(workbook, yard, stage, refusal, { by, reason: words.withdrawReason }), words.withdrawn);
  return (
    <>
      <p class="overridden">{words.overridden(who, date === null ? "" : isoDate(date), reason)}</p>
      <Button kind="quiet" aria-label={words.withdrawLabel(refusal.sentence)} onClick={withdraw}>
        {words.withdraw}
      </Button>
    </>
  );
}

function OverrideForm({ refusal, stage, yard, workbook, write, by, rememberBy }: RefusalProps) {
  const draft = useDraft<string>(`${yard.siteId}/override/${refusal.id}`, "");
  const [opened, setOpened] = useState(false);
  const [asked, ask] = useState(false);
  const open = opened || draft.touched;
  const place = useFocusWhenOpened(open);
  const close = () => {
    draft.clear();
    setOpened(false);
    ask(false);
  };
  const save = async () => {
    ask(true);
    if (by.trim() === "" || draft.value.trim() === "") return;
    if (await write(() => recordOverride(workbook, yard, stage, refusal, { by, reason: draft.value }), words.done)) close();
  };
  return (
    <div ref={place}>
      {open ? (
        <div class="card" role="group" aria-label={words.overrideLabel(refusal.sentence)}>
          <h3>{words.overrideTitle}</h3>
          <p class="hint">{words.overrideHint}</p>
          <TextField label={visitsText.name} value={by} fault={asked && by.trim() === "" ? words.nameMissing : null} onInput={rememberBy} />
          <TextField
            label={words.reason}
            value={draft.value}
            fault={asked && draft.value.trim() === "" ? words.reasonMissing : null}
            onInput={draft.set}
          />
          <div class="buttons">
            <Button onClick={save}>{words.writeOverride}</Button>
            <Button kind="quiet" onClick={close}>
              {words.keep}
            </Button>
          </div>
        </div>
      ) : (
        <Button kind="quiet" aria-label={words.overrideLabel(refusal.sentence)} onClick={() => setOpened(true)}>
          {words.override}
        </Button>
      )}
    </div>
  );
}
