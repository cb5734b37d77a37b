import { useEffect, useState } from "preact/hooks";
import { screeningOf } from "../../addin/actions/screen-yard.ts";
import type { StageStanding, StepStanding } from "../../addin/actions/screen-yard.ts";
import { TextField, VerdictBadge } from "../form.tsx";
import { useRememberedName } from "../remembered-name.ts";
import type { ViewProps } from "../view.ts";
import { TICKET_STEP } from "../yard/next-steps.ts";
import { StepCard, toggleId } from "./step-card.tsx";
import { screeningText } from "./text.ts";
import "./screening.css";

/** The one reminder that is never folded away. */
const UTILITIES_REMINDER = "utilities";

/** The first visit: reminders, the stage's verdict, and each step of the checklist. */
export function ScreeningView({ program, ...view }: ViewProps) {
  const standing = screeningOf(program, view.yard);
  const [by, rememberBy] = useRememberedName();
  const [open, setOpen] = useState<string | null>(() => nextUnmeasured(standing.steps, null));
  const [written, setWritten] = useState<string | null>(null);

  // A step that passes folds away and the next unanswered one opens; one that does not pass stays in sight.
  useEffect(() => {
    if (written === null) return;
    setWritten(null);
    if (standing.steps.find(({ step }) => step.id === written)?.verdict !== "pass") return;
    const next = nextUnmeasured(standing.steps, written);
    setOpen(next);
    document.getElementById(toggleId(next ?? written))?.focus();
  }, [written]);

  return (
    <>
      <Reminders standing={standing} />
      <section aria-label={screeningText.overall} role="status" class="stage-verdict">
        <h2>{screeningText.overall}</h2>
        <VerdictBadge big verdict={standing.verdict} />
        <p>{screeningText.verdicts[standing.verdict]}</p>
        <p class="hint">
          {screeningText.progress(standing.steps.filter(({ verdict }) => verdict !== "not measured").length, standing.steps.length)}
        </p>
        <p class="hint">{screeningText.localCodes}</p>
      </section>
      <TextField label={screeningText.name} hint={screeningText.nameHint} value={by} onInput={rememberBy} />
      <ol class="steps">
        {standing.steps.map((each) => (
          <StepCard
            key={each.step.id}
            {...view}
            stage={standing.stage}
            standing={each}
            by={by}
            open={open === each.step.id}
            onToggle={() => setOpen(open === each.step.id ? null : each.step.id)}
            onWritten={() => setWritten(each.step.id)}
          />
        ))}
      </ol>
    </>
  );
}

/** The first step without an answer after the given one, or from the top where none is left below it. */
function nextUnmeasured(steps: readonly StepStanding[], after: string | null): string | null {
  const start = steps.findIndex(({ step }) => step.id === after) + 1;
  return [...steps.slice(start), ...steps.slice(0, start)].find(({ verdict }) => verdict === "not measured")?.step.id ?? null;
}

function Reminders({ standing: { stage, steps } }: { readonly standing: StageStanding }) {
  const utilities = stage.reminders.find(({ id }) => id === UTILITIES_REMINDER);
  const others = stage.reminders.filter(({ id }) => id !== UTILITIES_REMINDER);
  const ticket = steps.find(({ step }) => step.id === TICKET_STEP);
  return (
    <section class="reminders" aria-label={screeningText.reminders(stage.reminders.length)}>
      {utilities !== undefined && (
        <div class="reminder reminder-first">
          <h2>{utilities.title}</h2>
          <p>{utilities.text}</p>
          {ticket !== undefined && (
            <p role="status" class="ticket">
              <strong>{screeningText.ticketState}</strong> <VerdictBadge verdict={ticket.verdict} />
              <span>{ticket.answer === null ? screeningText.notAnswered : String(ticket.answer.record.answer ?? screeningText.notAnswered)}</span>
            </p>
          )}
        </div>
      )}
      <details>
        <summary>{screeningText.reminders(others.length)}</summary>
        {others.map(({ id, title, text }) => (
          <div key={id} class="reminder">
            <h3>{title}</h3>
            <p>{text}</p>
          </div>
        ))}
      </details>
    </section>
  );
}
