import type { StageOfYard } from "../../../addin/actions/visits/stage-standing.ts";
import { visitsText as words } from "./text.ts";

/** The one reminder that is never folded away. */
const UTILITIES_REMINDER = "utilities";

export function Reminders({ stage: { reminders } }: Pick<StageOfYard, "stage">) {
  const utilities = reminders.find(({ id }) => id === UTILITIES_REMINDER);
  const others = reminders.filter(({ id }) => id !== UTILITIES_REMINDER);
  return (
    <section class="reminders" aria-label={words.reminders(reminders.length)}>
      {utilities !== undefined && (
        <div class="reminder reminder-first">
          <h2>{utilities.title}</h2>
          <p>{utilities.text}</p>
        </div>
      )}
      {others.length > 0 && (
        <details>
          <summary>{utilities === undefined ? words.reminders(others.length) : words.more(others.length)}</summary>
          {others.map(({ id, title, text }) => (
            <div key={id} class="reminder">
              <h3>{title}</h3>
              <p>{text}</p>
            </div>
          ))}
        </details>
      )}
    </section>
  );
}
