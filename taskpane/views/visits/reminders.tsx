import type { StageOfYard } from "../../../addin/actions/visits/stage-standing.ts";
import { markingServiceOf, reminderWords } from "../../../addin/actions/visits/marking-service.ts";
import { SafetyLine } from "../../parts/safety-line.tsx";
import type { ViewProps } from "../../view.ts";
import { visitsText as words } from "./text.ts";

/** The one reminder that stands first. */
const UTILITIES_REMINDER = "utilities";

export function Reminders({ stage: { id, reminders }, program, yard }: Pick<StageOfYard, "stage"> & Pick<ViewProps, "program" | "yard">) {
  const service = markingServiceOf(program, yard);
  const utilities = reminders.find((reminder) => reminder.id === UTILITIES_REMINDER);
  const others = reminders.filter((reminder) => reminder.id !== UTILITIES_REMINDER);
  if (reminders.length === 0) return null;
  const list = others.map((reminder) => (
    <div key={reminder.id} class="reminder">
      <h3>{reminder.title}</h3>
      <p>{reminderWords(reminder, service)}</p>
    </div>
  ));
  if (utilities === undefined) {
    return (
      <SafetyLine id={`stage ${id}`} title={words.reminders(reminders.length)}>
        {list}
      </SafetyLine>
    );
  }
  return (
    <SafetyLine id={UTILITIES_REMINDER} title={utilities.title}>
      <p>{reminderWords(utilities, service)}</p>
      {others.length > 0 && (
        <details>
          <summary>{words.moreReminders(others.length)}</summary>
          {list}
        </details>
      )}
    </SafetyLine>
  );
}
