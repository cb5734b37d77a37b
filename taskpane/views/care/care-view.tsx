import { useState } from "preact/hooks";
import { today } from "../../../addin/actions/dates.ts";
import { dueFollowUps, type DueFollowUp } from "../../../addin/actions/care/due-follow-ups.ts";
import { useFocusWhenOpened } from "../../parts/focus.ts";
import { Button, NumberField } from "../../parts/form.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import type { ViewProps } from "../../view.ts";
import { dueWords, mulchSentence, wateringSentence } from "./care-words.ts";
import { History } from "./history.tsx";
import { LookForm } from "./look-form.tsx";
import { PlanForm } from "./plan-form.tsx";
import { careText } from "./text.ts";
import "./care.css";

/** A finished garden: what is due, what is seen, what was found, and what the owner does meanwhile. */
export function CareView(view: ViewProps) {
  const { yard } = view;
  return (
    <>
      <Due {...view} />
      <PlanForm {...view} />
      <section class="form" aria-label={careText.water.title}>
        <h2>{careText.water.title}</h2>
        <p>{wateringSentence(yard)}</p>
      </section>
      <MulchCheck {...view} />
      <History {...view} />
    </>
  );
}

function Due(view: ViewProps) {
  const { yard } = view;
  const due = dueFollowUps({ yards: [yard] }, today());
  return (
    <section class="form" aria-label={careText.due.title}>
      <h2>{careText.due.title}</h2>
      {due.length === 0 && <p class="hint">{yard.followUps.length === 0 ? careText.due.none : careText.due.allDone}</p>}
      <ul class="care-due">
        {due.map((one) => (
          <li key={one.row.row} class="card">
            <DueLook {...view} due={one} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function DueLook({ due, ...view }: ViewProps & { readonly due: DueFollowUp }) {
  const [open, setOpen] = useState(false);
  const place = useFocusWhenOpened(open);
  const { kind, action, note } = due.row.record;
  if (kind === null) return null;
  const name = careText.kinds[kind];
  return (
    <div ref={place} class="form">
      <h3>{name}</h3>
      <p class={due.state === "overdue" ? "care-overdue" : "hint"}>{dueWords(due)}</p>
      {action !== null && <p>{action}</p>}
      {note !== null && <p class="hint">{note}</p>}
      {open ? (
        <LookForm {...view} row={due.row} kind={kind} close={() => setOpen(false)} />
      ) : (
        <Button
          kind={due.state === "overdue" || due.state === "today" ? "primary" : "plain"}
          aria-label={careText.due.recordLabel(name, dueWords(due))}
          onClick={() => setOpen(true)}
        >
          {careText.due.record}
        </Button>
      )}
    </div>
  );
}

function MulchCheck({ program, yard }: ViewProps) {
  const [typed, setTyped] = useState("");
  const words = careText.mulch;
  const read = readTypedNumber(typed, { label: words.depth, atLeast: 0 });
  const says = isRefused(read) || read.value === null ? "" : mulchSentence(yard, read.value, program.settings);
  return (
    <section class="form" aria-label={words.title}>
      <h2>{words.title}</h2>
      <NumberField
        label={words.depth}
        hint={words.hint}
        unit={shownUnit("depth", yard.units)}
        value={typed}
        fault={isRefused(read) ? read.sentence : null}
        onInput={setTyped}
      />
      {says !== "" && <p>{says}</p>}
      <LiveSentence says={says} />
    </section>
  );
}
