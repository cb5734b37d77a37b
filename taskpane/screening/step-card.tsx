import { useState } from "preact/hooks";
import { isoDate } from "../../addin/actions/dates.ts";
import { recordAnswer } from "../../addin/actions/record-yard.ts";
import type { RuleInForce, StageStanding, StepStanding } from "../../addin/actions/screen-yard.ts";
import type { Yard } from "../../addin/actions/read-program.ts";
import { useDraft } from "../drafts.ts";
import { Button, TextField, VerdictBadge } from "../form.tsx";
import { shown } from "../numbers.ts";
import { text } from "../text.ts";
import { asTyped } from "../typed-number.ts";
import type { ViewProps } from "../view.ts";
import { AnswerField } from "./answer-field.tsx";
import { screeningText } from "./text.ts";
import { BLANK_ANSWER, readAnswer } from "./typed-answer.ts";
import type { AnswerFaults, TypedAnswer } from "./typed-answer.ts";

export function StepCard({ stage, standing, by, open, onToggle, onWritten, ...view }: Omit<ViewProps, "program"> & {
  readonly stage: StageStanding["stage"];
  readonly standing: StepStanding;
  readonly by: string;
  readonly open: boolean;
  readonly onToggle: () => void;
  readonly onWritten: () => void;
}) {
  const { step, answer, verdict } = standing;
  const { yard, workbook, write } = view;
  const draft = useDraft(`${yard.siteId}/screening/${step.id}`, initialAnswer(standing, yard), yard.site);
  const [faults, setFaults] = useState<AnswerFaults>({});
  const bodyId = `soakbook-step-${step.id}`;

  const save = async () => {
    const read = readAnswer(step, draft.value, by);
    setFaults("faults" in read ? read.faults : {});
    if ("faults" in read) return;
    const seen: Yard = { ...yard, site: draft.basis };
    if (!(await write(() => recordAnswer(workbook, seen, stage, step, read.answer), screeningText.done(step.title)))) return;
    draft.clear();
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
          <span class="step-answer">{answer === null ? screeningText.notAnswered : saidAnswer(answer)}</span>
          {draft.touched && <span class="unsaved">{screeningText.unsaved}</span>}
          <VerdictBadge verdict={verdict} />
        </button>
      </h3>
      <div id={bodyId} hidden={!open} class="step-body">
        <p class="step-why">
          <strong>{screeningText.why}</strong> {step.why}
        </p>
        <Limits standing={standing} />
        <p role="status" class="fault">
          {standing.fault ?? (answer?.record.verdict === null && isErrorText(answer.cells.verdict) ? screeningText.checkRules : "")}
        </p>
        <AnswerField step={step} yard={yard} typed={draft.value} faults={faults} set={(changed) => draft.set((current) => ({ ...current, ...changed }))} />
        <TextField label={screeningText.note} value={draft.value.note} onInput={(note) => draft.set((current) => ({ ...current, note }))} />
        {answer !== null && <p class="hint">{[screeningText.answered(saidAnswer(answer)), ...whenAndWho(answer)].join(" ")}. {screeningText.again}</p>}
        <div class="buttons">
          <Button kind="primary" aria-label={`${screeningText.save}: ${step.title}`} onClick={save}>
            {screeningText.save}
          </Button>
          {draft.touched && (
            <Button kind="quiet" aria-label={`${screeningText.discard}: ${step.title}`} onClick={discard}>
              {screeningText.discard}
            </Button>
          )}
        </div>
      </div>
    </li>
  );
}

export function toggleId(stepId: string): string {
  return `soakbook-step-toggle-${stepId}`;
}

/** What the answer will be held against: rows of the Rules sheet, or the verdict of each choice. */
function Limits({ standing: { step, rules } }: { readonly standing: StepStanding }) {
  if (step.answer.kind === "chosen" || rules.length === 0) return null;
  return (
    <div class="limits">
      <p class="limits-title">{screeningText.rule.title}</p>
      <ul>
        {rules.map((rule) => (
          <li key={ruleLine(rule)}>{ruleLine(rule)}</li>
        ))}
      </ul>
    </div>
  );
}

function ruleLine({ comparison, limit, ifNotMet }: RuleInForce): string {
  return screeningText.rule.line(comparison, limit, text.verdicts[ifNotMet].toLowerCase());
}

/** A slope shows the drop and run that Sites holds; every other answer starts blank. */
function initialAnswer({ step }: StepStanding, { site }: Yard): TypedAnswer {
  return step.answer.kind === "slope" ? { ...BLANK_ANSWER, drop: asTyped(site.cells.slopeDrop), run: asTyped(site.cells.slopeRun) } : BLANK_ANSWER;
}

type Answer = NonNullable<StepStanding["answer"]>;

function saidAnswer({ record }: Answer): string {
  const { answer, unit } = record;
  if (answer === null) return screeningText.notAnswered;
  const value = typeof answer === "number" ? shown(answer, 2) : String(answer);
  return unit === null ? value : `${value} ${unit}`;
}

function whenAndWho({ record }: Answer): readonly string[] {
  return [...(record.date === null ? [] : [screeningText.on(isoDate(record.date))]), ...(record.by === null ? [] : [screeningText.by(record.by)])];
}

function isErrorText(cell: unknown): boolean {
  return typeof cell === "string" && cell.startsWith("#");
}
