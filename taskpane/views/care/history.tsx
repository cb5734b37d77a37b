import { askedAt } from "../../../addin/actions/care/asked-at-look.ts";
import { isoDate } from "../../../addin/actions/dates.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { VerdictBadge } from "../../parts/form.tsx";
import { shown } from "../../parts/numbers.ts";
import type { ViewProps } from "../../view.ts";
import { careText } from "./text.ts";

type FollowUpRow = Yard["followUps"][number];

const words = careText.history;

/** The looks that were made, the newest first, with what did not pass. */
export function History({ yard }: ViewProps) {
  const done = yard.followUps
    .filter(({ record }) => record.done !== null)
    .toSorted((one, other) => (other.record.done ?? 0) - (one.record.done ?? 0));
  return (
    <section class="form" aria-label={words.title}>
      <h2>{words.title}</h2>
      {done.length === 0 && <p class="hint">{words.none}</p>}
      <ul class="care-due">
        {done.map((row) => (
          <li key={row.row} class="card">
            <PastLook yard={yard} row={row} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function PastLook({ yard, row }: { readonly yard: Yard; readonly row: FollowUpRow }) {
  const { kind, done, by, finding, action, note } = row.record;
  const notPassed = answersOf(yard, row).filter(({ record }) => record.verdict !== null && record.verdict !== "pass");
  return (
    <>
      <div class="care-past">
        <h3>{kind === null ? "" : careText.kinds[kind]}</h3>
        {finding !== null && <VerdictBadge verdict={finding} />}
      </div>
      <p class="hint">{[isoDate(done ?? 0), ...(by === null ? [] : [words.by(by)])].join(" ")}</p>
      {action !== null && <p>{action}</p>}
      {note !== null && <p class="hint">{note}</p>}
      {notPassed.length > 0 && (
        <ul class="care-answers">
          {notPassed.map(({ row: place, record }) => (
            <li key={place}>
              {titleOf(row, record.step)}: {typeof record.answer === "number" ? shown(record.answer, 2) : String(record.answer ?? "")}{" "}
              {record.unit ?? ""}
              {record.note === null ? "" : ` (${record.note})`}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** What stands on Visits for the stage and the day of the look. */
function answersOf(yard: Yard, { record }: FollowUpRow): Yard["visits"] {
  const stageId = record.kind === null ? null : askedAt(record.kind).stageId;
  return stageId === null ? [] : yard.visits.filter((answer) => answer.record.stage === stageId && answer.record.date === record.done);
}

function titleOf({ record }: FollowUpRow, stepId: string | null): string {
  const asked = record.kind === null ? undefined : askedAt(record.kind).steps.find(({ step }) => step.id === stepId);
  return asked?.step.title ?? stepId ?? "";
}
