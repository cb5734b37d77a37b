import type { StageOfYard } from "../../../addin/actions/visits/stage-standing.ts";
import { markingServiceOf, reminderWords } from "../../../addin/actions/visits/marking-service.ts";
import type { ViewProps } from "../../view.ts";
import { visitsText as words } from "./text.ts";

/** The one reminder that is never folded away. */
const UTILITIES_REMINDER = "utilities";

export function Reminders({ stage: { reminders }, program, yard }: Pick<StageOfYard, "stage"> & Pick<ViewProps, "program" | "yard">) {
  const service = markingServiceOf(program, yard);
  const utilities = reminders.find(({ id }) => id === UTILITIES_REMINDER);
  const others = reminders.filter(({ id }) => id !== UTILITIES_REMINDER);
  return (
    <section class="reminders" aria-label={words.reminders(reminders.length)}>
      {utilities !== undefined && (
        <div class="reminder reminder-first">
          <h2>{utilities.title}</h2>
          <p>{reminderWords(utilities, service)}</p>
        </div>
      )}
      {others.length > 0 && (
        <details>
          <summary>{utilities === undefined ? words.reminders(others.length) : words.more(others.length)}</summary>
          {others.map((reminder) => (
            <div key={reminder.id} class="reminder">
              <h3>{reminder.title}</h3>
              <p>{reminderWords(reminder, service)}</p>
            </div>
          ))}
        </details>
      )}
    </section>
  );
}
