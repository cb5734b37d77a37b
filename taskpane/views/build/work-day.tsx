import { isoDate } from "../../../addin/actions/dates.ts";
import { digDayReminders, digDayTotals } from "../../../addin/actions/build/record-dig-day.ts";
import { shown } from "../../parts/numbers.ts";
import type { ViewProps, VisitProps } from "../../view.ts";
import { Incidents } from "./incidents.tsx";
import { Quantities } from "./quantities.tsx";
import { SignInForm } from "./sign-in.tsx";
import { buildText } from "./text.ts";
import "./build.css";

const words = buildText.day;

/** A day of work in one yard: who came, what was moved, what went wrong. */
export function WorkDay(view: VisitProps) {
  const { day } = view;
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
      {day !== null && (
        <>
          <SignInForm {...view} day={day} />
          <Totals {...view} />
          <Quantities {...view} day={day} />
          <Incidents {...view} day={day} />
        </>
      )}
    </section>
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
      {days.length > 1 && (
        <p>
          {words.total.all(
            days.length,
            shown(
              days.reduce((sum, { hours }) => sum + hours, 0),
              2,
            ),
          )}
          .
        </p>
      )}
    </section>
  );
}
