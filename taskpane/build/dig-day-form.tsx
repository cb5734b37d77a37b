import { useState } from "preact/hooks";
import { dayNumberOf, isoDate, today } from "../../addin/actions/dates.ts";
import { digDayReminders, digDayTotals, digRefusals } from "../../addin/actions/record-dig-day.ts";
import { DateField, MessageBar, TextField } from "../form.tsx";
import { shown } from "../numbers.ts";
import { useRememberedName } from "../remembered-name.ts";
import type { ViewProps } from "../view.ts";
import { Incidents } from "./incidents.tsx";
import { Quantities } from "./quantities.tsx";
import { SignInForm } from "./sign-in.tsx";
import { buildText } from "./text.ts";
import "./build.css";

const words = buildText.dig;

/** A dig or planting day of one yard: who came, what was moved, what went wrong. */
export function DigDayForm(view: ViewProps) {
  const [typedDate, setDate] = useState(() => isoDate(today()));
  const [by, rememberBy] = useRememberedName();
  const date = dayNumberOf(typedDate);
  return (
    <section class="build" aria-label={words.title}>
      <h2>{words.title}</h2>
      <details class="build-reminders">
        <summary>{words.reminders}</summary>
        {digDayReminders.map(({ id, title, text }) => (
          <div key={id}>
            <h3>{title}</h3>
            <p>{text}</p>
          </div>
        ))}
      </details>
      <div class="build-day">
        <DateField label={words.date} value={typedDate} fault={date === null ? words.dateMissing : null} onInput={setDate} />
        <TextField label={words.by} hint={words.byHint} value={by} onInput={rememberBy} />
      </div>
      {date !== null && (
        <>
          <OtherDayLock {...view} date={date} />
          <SignInForm {...view} date={date} by={by.trim()} />
          <Totals {...view} />
          <Quantities {...view} date={date} by={by.trim()} />
          <Incidents {...view} date={date} by={by.trim()} />
        </>
      )}
    </section>
  );
}

/** Today's lock stands above the form; another day may have had another. */
function OtherDayLock({ yard, date }: ViewProps & { readonly date: number }) {
  const refusals = date === today() ? [] : digRefusals(yard, date);
  if (refusals.length === 0) return null;
  return (
    <MessageBar kind="error">
      <strong>{words.locked(isoDate(date))}</strong>
      {refusals.map(({ id, sentence }) => (
        <p key={id}>{sentence}</p>
      ))}
    </MessageBar>
  );
}

function Totals({ yard }: ViewProps) {
  const days = digDayTotals(yard.digDays);
  if (days.length === 0) return null;
  return (
    <section class="form" aria-label={words.total.title}>
      <h3>{words.total.title}</h3>
      <ul class="build-list">
        {days.map(({ date, people, hours, withoutHours, incidents }) => (
          <li key={date}>
            <strong>{isoDate(date)}</strong>{" "}
            {[words.total.day(people, shown(hours, 2)), ...(incidents === 0 ? [] : [words.total.incidents(incidents)])].join(", ")}.{" "}
            {withoutHours.length > 0 && <span class="unsaved">{words.total.withoutHours(withoutHours.join(", "))}</span>}
          </li>
        ))}
      </ul>
      {days.length > 1 && <p>{words.total.all(days.length, shown(days.reduce((sum, { hours }) => sum + hours, 0), 2))}.</p>}
    </section>
  );
}
