import { dayNumberOf, minutesOf, today } from "../../../addin/actions/dates.ts";
import { earlyWarning, ruleOfProgram, ticketDaysOf } from "../../../addin/actions/visits/ticket-hints.ts";
import type { StageOfYard } from "../../../addin/actions/visits/stage-standing.ts";
import { Button, MessageBar } from "../../parts/form.tsx";
import type { ViewProps } from "../../view.ts";
import { ticketLine } from "./ticket-line.ts";
import { visitsText } from "./text.ts";
import type { TypedAnswer } from "./typed-answer.ts";

const words = visitsText.ticket;

type TicketProps = Pick<ViewProps, "program" | "yard" | "workbook">;

/** What is said beside a step of the ticket: a day too early, and the state's rule as it was read. Null for any other step. */
export function ticketHint(stepId: string, view: TicketProps, typed: TypedAnswer) {
  if (stepId === "ticket-lawful-from") {
    const day = dayNumberOf(typed.value.trim());
    return (
      <>
        <EarlyBar {...view} typed={day === null ? null : { day, minutes: minutesOf(typed.hour) }} />
        <StateRule {...view} />
      </>
    );
  }
  return stepId === "ticket-expires" ? <StateRule {...view} /> : null;
}

/** Stages before whose work somebody looks at the ticket. */
const ASKED_OF_TICKET: ReadonlySet<StageOfYard["stage"]["id"]> = new Set(["ticket", "test-visit", "pre-dig", "dig-day"]);

/** The ticket as it was typed, above the stages that rest on it. */
export function TicketBar({ stage, ...view }: TicketProps & { readonly stage: StageOfYard["stage"]["id"] }) {
  if (!ASKED_OF_TICKET.has(stage) || ticketDaysOf(view.yard).number === null) return null;
  return (
    <section aria-label={words.title} class="ticket">
      <p>
        <strong>{words.title}</strong> {ticketLine(view.yard)}
      </p>
      <EarlyBar {...view} typed={null} />
    </section>
  );
}

function EarlyBar({ program, yard, typed }: TicketProps & { readonly typed: Parameters<typeof earlyWarning>[3] }) {
  const warning = earlyWarning(program, yard, today(), typed);
  return (
    <div role="status">
      {warning !== null && (
        <MessageBar kind="warning">
          {warning.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </MessageBar>
      )}
    </div>
  );
}

function StateRule({ program, workbook }: TicketProps) {
  const known = ruleOfProgram(program, today());
  const { placeAt } = program.oneCall;
  const choose = placeAt !== null && <Button onClick={() => workbook.select(placeAt)}>{words.choose}</Button>;
  if (known.kind !== "known") {
    return (
      <div class="suggestion">
        <p>{known.kind === "too old" ? words.tooOld(known.state, known.rule.readOn) : words.noRule[known.kind]}</p>
        {known.kind === "no place" && choose}
      </div>
    );
  }
  const { state, rule } = known;
  const facts = [
    [words.notice, rule.notice],
    [words.countedFrom, rule.countedFrom],
    [words.life, rule.life],
    [words.zone, rule.toleranceZone],
  ] as const;
  return (
    <div class="suggestion">
      <p>{words.rule(state, rule.readOn)}</p>
      <dl class="facts">
        {facts.map(([term, fact]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{fact === null ? words.notRead : words.reading(fact)}</dd>
          </div>
        ))}
      </dl>
      <p class="hint">{`${words.readIn(rule.sources.map(words.source).join("; "))} ${words.lawDecides}`}</p>
      {choose}
    </div>
  );
}
