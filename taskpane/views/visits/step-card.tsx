import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { isoDate } from "../../../addin/actions/dates.ts";
import { recordAnswer } from "../../../addin/actions/visits/record-answer.ts";
import type { RuleInForce, StageStanding, StepStanding } from "../../../addin/actions/visits/stage-standing.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { useDraft } from "../../parts/drafts.ts";
import { Button, TextField, VerdictBadge, isEnterInField } from "../../parts/form.tsx";
import { shown } from "../../parts/numbers.ts";
import { text } from "../../text.ts";
import { asTyped } from "../../parts/typed-number.ts";
import type { ViewProps } from "../../view.ts";
import { AnswerField, MOST_IN_SIGHT } from "./answer-field.tsx";
import { DecisionForm, Settled } from "./decision.tsx";
import { visitsText as words } from "./text.ts";
import { BLANK_ANSWER, readAnswer, type AnswerFaults, type TypedAnswer } from "./typed-answer.ts";

export function StepCard({
  stage,
  standing,
  by,
  day,
  open,
  hint,
  onToggle,
  onWritten,
  ...view
}: Omit<ViewProps, "program"> & {
  readonly stage: StageStanding["stage"];
  readonly standing: StepStanding;
  readonly by: string;
  /** Day of the visit; null while what is typed for it is no day. */
  readonly day: number | null;
  readonly open: boolean;
  /** What is said beside this step alone, by what is typed so far. */
  readonly hint?: (typed: TypedAnswer) => ComponentChildren;
  readonly onToggle: () => void;
  readonly onWritten: () => void;
}) {
  const { step, answer, verdict } = standing;
  const { yard, workbook, write } = view;
  // The cells alone, because a draft is kept as plain data: where they stand is the row's to say.
  const draft = useDraft(answerDraftKey(yard, step.id), initialAnswer(standing, yard), yard.site.cells);
  const [faults, setFaults] = useState<AnswerFaults>({});
  const [refusal, refuse] = useState<string | null>(null);
  const [again, answerAgain] = useState(false);
  const answering = again || draft.touched;
  const isTyped = step.answer.kind !== "chosen" || step.answer.options.length > MOST_IN_SIGHT;
  const bodyId = `soakbook-step-${encodeURIComponent(step.id)}`;
  const set = (changed: Partial<TypedAnswer>) => draft.set((current) => ({ ...current, ...changed }));

  const save = async (said: Partial<TypedAnswer> = {}) => {
    const typed = { ...draft.value, ...said };
    const read = readAnswer(step, typed, by);
    setFaults("faults" in read ? read.faults : {});
    refuse(day === null ? words.dayMissing : null);
    if ("faults" in read || day === null) return;
    const seen: Yard = { ...yard, site: { ...yard.site, cells: draft.basis } };
    if (!(await write(() => recordAnswer(workbook, seen, stage, step, { ...read.answer, day }), words.done(step.title)))) {
      // What was tapped and could not be written stands in the form, as what was typed does.
      draft.set(typed);
      return;
    }
    draft.clear();
    answerAgain(false);
    onWritten();
  };
  const discard = () => {
    draft.clear();
    setFaults({});
  };

  return (
    <li class={open ? "step step-open" : "step"}>
      <h3>
        <button type="button" id={toggleId(step.id)} class="step-toggle" aria-expanded={open} aria-controls={bodyId} onClick={onToggle}>
          <span class="step-title">{step.title}</span>
          {answer !== null && <span class="step-answer">{saidAnswer(answer)}</span>}
          {draft.touched && <span class="unsaved">{text.form.unsaved}</span>}
          <StepBadge standing={standing} />
        </button>
      </h3>
      {open && (
        <div id={bodyId} class="step-body" onKeyDown={(event) => isEnterInField(event) && void save()}>
          <Limits standing={standing} />
          <p role="status" class="fault">
            {refusal ??
              standing.fault ??
              (answer !== null && verdict === "not measured" && isErrorText(answer.cells.verdict) ? words.checkRules : "")}
          </p>
          <Settled standing={standing} />
          {verdict === "refer" && <DecisionForm {...view} stage={stage} standing={standing} onWritten={onWritten} />}
          {verdict === "refer" && !answering ? (
            <Button aria-label={words.decision.againLabel(step.title)} onClick={() => answerAgain(true)}>
              {words.decision.answerAgain}
            </Button>
          ) : (
            <>
              <AnswerField step={step} yard={yard} typed={draft.value} faults={faults} set={set} answer={save} />
              {hint?.(draft.value)}
              {answer !== null && (
                <p class="hint">
                  {[words.answered(saidAnswer(answer)), ...whenAndWho(answer)].join(" ")}. {words.again}
                </p>
              )}
              <div class="buttons">
                {isTyped && (
                  <Button kind="primary" aria-label={`${words.save}: ${step.title}`} onClick={() => save()}>
                    {words.save}
                  </Button>
                )}
                {draft.touched && (
                  <Button kind="quiet" aria-label={`${text.form.discard}: ${step.title}`} onClick={discard}>
                    {text.form.discard}
                  </Button>
                )}
              </div>
              <More open={draft.value.note !== "" || draft.value.link !== ""}>
                <p class="step-why">
                  <strong>{words.why}</strong> {step.why}
                </p>
                <TextField label={words.note} value={draft.value.note} onInput={(note) => set({ note })} />
                <TextField label={words.link} hint={words.linkHint} value={draft.value.link} onInput={(link) => set({ link })} />
              </More>
            </>
          )}
        </div>
      )}
    </li>
  );
}

/** Why it is asked, a note and a photo: rarely wanted, and one tap away. */
function More({ open, children }: { readonly open: boolean; readonly children: ComponentChildren }) {
  return (
    <details class="step-more" open={open}>
      <summary>{words.more}</summary>
      <div class="step-body">{children}</div>
    </details>
  );
}

export function toggleId(stepId: string): string {
  return `soakbook-step-toggle-${encodeURIComponent(stepId)}`;
}

/** Brings the keyboard to the first field of an open step, or to its heading where it is folded. */
export function focusStep(stepId: string): void {
  const toggle = document.getElementById(toggleId(stepId));
  const body = document.getElementById(`soakbook-step-${encodeURIComponent(stepId)}`);
  const field = body?.querySelector<HTMLElement>("input:checked, .choice[aria-pressed=true], input, select, .choice") ?? toggle;
  // A step that was the last to answer is folded away with the others by now.
  if (field === null) document.querySelector<HTMLElement>(".stage-picker summary")?.focus();
  field?.focus({ preventScroll: true });
  toggle?.scrollIntoView({ block: "start" });
}

export function answerDraftKey({ siteId }: Yard, stepId: string): string {
  return `${siteId}/visits/${stepId}`;
}

function StepBadge({ standing: { step, answer, verdict, decision, override, fault } }: { readonly standing: StepStanding }) {
  if (answer === null) return <VerdictBadge verdict="not measured" says={step.optional === true ? words.optional : words.toDo} />;
  if (override !== null) return <VerdictBadge verdict="pass" says={words.decision.overridden} />;
  if (decision !== null && verdict === "pass") return <VerdictBadge verdict="pass" says={words.decision.badge} />;
  if (fault !== null) return <VerdictBadge verdict={verdict} />;
  const { kind } = step.answer;
  return kind === "text" || kind === "date" || kind === "number" ? (
    <VerdictBadge verdict="pass" says={words.onRecord} />
  ) : (
    <VerdictBadge verdict={verdict} />
  );
}

/** What the answer will be held against: rows of the Rules sheet, or the verdict of each choice. */
function Limits({ standing: { rules } }: { readonly standing: StepStanding }) {
  if (rules.length === 0) return null;
  return (
    <div class="limits">
      <p class="limits-title">{words.rule.title}</p>
      <ul>
        {rules.map((rule) => (
          <li key={ruleLine(rule)}>{ruleLine(rule)}</li>
        ))}
      </ul>
    </div>
  );
}

export function ruleLine({ comparison, limit, ifNotMet }: RuleInForce): string {
  return words.rule.line(comparison, limit, text.verdicts[ifNotMet].toLowerCase());
}

/** A slope shows the drop and run that Sites holds; every other answer starts blank. */
function initialAnswer({ step }: StepStanding, { site }: Yard): TypedAnswer {
  return step.answer.kind === "slope"
    ? { ...BLANK_ANSWER, drop: asTyped(site.cells.slopeDrop), run: asTyped(site.cells.slopeRun) }
    : BLANK_ANSWER;
}

type Answer = NonNullable<StepStanding["answer"]>;

export function saidAnswer({ record }: Answer): string {
  const { answer, unit } = record;
  if (answer === null) return words.notAnswered;
  const value = typeof answer === "number" ? shown(answer, 2) : String(answer);
  return unit === null ? value : `${value} ${unit}`;
}

function whenAndWho({ record }: Answer): readonly string[] {
  return [...(record.date === null ? [] : [words.on(isoDate(record.date))]), ...(record.by === null ? [] : [words.by(record.by)])];
}

function isErrorText(cell: unknown): boolean {
  return typeof cell === "string" && cell.startsWith("#");
}
