import { useEffect, useState } from "preact/hooks";
import { dayNumberOf, isoDate, today } from "../../../addin/actions/dates.ts";
import type { StageOfYard, StepStanding } from "../../../addin/actions/visits/stage-standing.ts";
import { useDraft } from "../../parts/drafts.ts";
import { Fold } from "../../parts/fold.tsx";
import { Button, DateField, TextField, VerdictBadge } from "../../parts/form.tsx";
import type { TabId } from "../../tab-ids.ts";
import type { ViewProps, VisitProps } from "../../view.ts";
import { layOutInstead } from "../../parts/lay-out-instead.ts";
import { printFieldSheet } from "./field-sheet.tsx";
import { stageForms } from "./stage-forms.tsx";
import { focusStep, StepCard } from "./step-card.tsx";
import { visitsText as words } from "./text.ts";
import { ticketHint } from "./ticket-hints.tsx";

type StageId = StageOfYard["stage"]["id"];

/** A stage whose work is written on another tab. */
const TABS: Partial<Record<StageId, { readonly tab: TabId; readonly says: string }>> = {
  "test-visit": { tab: "hole-test", says: words.stages.holeTest },
  "design-check": { tab: "basin", says: words.stages.basin },
};

/** How the stage stands, who enters it, and each of its steps. */
export function StageSteps({
  stages,
  standing,
  by,
  rememberBy,
  openTab,
  openStep,
  onPick,
  ...view
}: ViewProps & {
  readonly stages: readonly StageOfYard[];
  readonly standing: StageOfYard;
  readonly by: string;
  readonly rememberBy: (name: string) => void;
  readonly openTab: (tab: TabId) => void;
  /** The step that was asked for by name; it is open and has the focus. */
  readonly openStep: string | null;
  readonly onPick: (stage: StageId) => void;
}) {
  const { stage } = standing;
  const { tab, says } = TABS[stage.id] ?? {};
  const { form: Form, writesSteps = false } = stageForms[stage.id] ?? {};
  const next = stages[stages.indexOf(standing) + 1];
  // The day is no entry of the yard by itself, and belongs to the day it was typed on: tomorrow starts with tomorrow.
  const now = isoDate(today());
  const typedDay = useDraft<string>(`visit-day/${now}/${view.yard.siteId}/${stage.id}`, now);
  const day = dayNumberOf(typedDay.value);

  return (
    <>
      {tab !== undefined && says !== undefined && <Button onClick={() => openTab(tab)}>{says}</Button>}
      {!writesSteps && (
        <Fold
          name="who and when"
          title={words.who(by.trim())}
          says={typedDay.value === now ? words.today : typedDay.value}
          needed={by.trim() === "" || day === null || typedDay.touched}
        >
          <div class="who-and-when">
            <TextField label={words.name} value={by} onInput={rememberBy} />
            <DateField label={words.day} value={typedDay.value} fault={day === null ? words.dayMissing : null} onInput={typedDay.set} />
          </div>
        </Fold>
      )}
      {Form !== undefined && <Form {...view} by={by.trim()} day={day} />}
      {!writesSteps && <StepList {...view} standing={standing} by={by} day={day} openStep={openStep} />}
      <section aria-label={words.overall} role="status" class="stage-verdict">
        <p>
          <VerdictBadge verdict={standing.verdict} /> {words.verdicts[standing.verdict]}
        </p>
        {standing.missing.map(({ sentence }) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <p class="hint">{stage.purpose}</p>
        <p class="hint">{words.localCodes}</p>
      </section>
      <FieldSheetButton {...view} standing={standing} />
      {next !== undefined && <Button onClick={() => onPick(next.stage.id)}>{words.stages.next(next.stage.name)}</Button>}
    </>
  );
}

/** Each step in its card. */
function StepList({
  standing: { stage, steps },
  by,
  day,
  openStep,
  ...view
}: VisitProps & { readonly standing: StageOfYard; readonly openStep: string | null }) {
  const [open, setOpen] = useState<string | null>(() => openStep ?? nextToAnswer(steps, null));
  const [written, setWritten] = useState<string | null>(null);
  const [moved, setMoved] = useState<string | null>(openStep);

  // A step that is answered folds away and the next unanswered one opens; a stop stays in sight.
  useEffect(() => {
    if (written === null) return;
    setWritten(null);
    const verdict = steps.find(({ step }) => step.id === written)?.verdict;
    if (verdict === "stop" || verdict === "fail" || verdict === "not measured") return;
    const next = nextToAnswer(steps, written);
    setOpen(next);
    setMoved(next ?? written);
  }, [written]);
  useEffect(() => {
    if (moved === null) return;
    setMoved(null);
    focusStep(moved);
  }, [moved]);

  const card = (each: StepStanding) => (
    <StepCard
      key={each.step.id}
      {...view}
      stage={stage}
      standing={each}
      by={by}
      day={day}
      open={open === each.step.id}
      hint={(typed) => ticketHint(each.step.id, view, typed)}
      onToggle={() => setOpen(open === each.step.id ? null : each.step.id)}
      onWritten={() => setWritten(each.step.id)}
    />
  );
  const isFolded = (each: StepStanding) => isSettled(each) && each.step.id !== openStep;
  const folded = steps.filter(isFolded);
  return (
    <>
      {folded.length > 0 && (
        <Fold name="answered steps" title={words.settled(folded.length)} badge={<VerdictBadge verdict="pass" />}>
          <ol class="steps steps-settled">{folded.map(card)}</ol>
        </Fold>
      )}
      <ol class="steps">{steps.filter((each) => !isFolded(each)).map(card)}</ol>
    </>
  );
}

/** Nothing of it is left to do or to decide. */
function isSettled({ answer, verdict, fault }: StepStanding): boolean {
  return answer !== null && verdict === "pass" && fault === null;
}

function FieldSheetButton({ standing, ...view }: ViewProps & { readonly standing: StageOfYard }) {
  const { program, yard } = view;
  const print = async () => {
    const unprinted = await printFieldSheet({ program, yard, standing, printedOn: today() });
    await layOutInstead(view, `${yard.siteId} ${standing.stage.name}`, unprinted);
  };
  return <Button onClick={print}>{words.print.button}</Button>;
}

/** The first step without an answer after the given one, or from the top where none is left below it; then one to decide on. */
function nextToAnswer(steps: readonly StepStanding[], after: string | null): string | null {
  const start = steps.findIndex(({ step }) => step.id === after) + 1;
  const round = [...steps.slice(start), ...steps.slice(0, start)];
  const next = round.find(({ verdict }) => verdict === "not measured") ?? round.find(({ verdict }) => verdict === "refer");
  return next?.step.id ?? null;
}
