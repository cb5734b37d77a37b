import { isoDate } from "../../../addin/actions/dates.ts";
import { suggestedLawfulFrom, ticketRuleOfYard } from "../../../addin/actions/visits/ticket-hints.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { Button } from "../../parts/form.tsx";
import { visitsText } from "./text.ts";
import type { TypedAnswer } from "./typed-answer.ts";

const words = visitsText.suggestion;

/** What may help with a step of the ticket: the counted day, or the state's rule as it was read. Null for any other step. */
export function ticketHint(stepId: string, yard: Yard, set: (changed: Partial<TypedAnswer>) => void) {
  if (stepId === "ticket-lawful-from") return <CountedDay yard={yard} set={set} />;
  return stepId === "ticket-rule" || stepId === "ticket-expires" ? <StateRule yard={yard} /> : null;
}

function CountedDay({ yard, set }: { readonly yard: Yard; readonly set: (changed: Partial<TypedAnswer>) => void }) {
  const suggested = suggestedLawfulFrom(yard);
  if (suggested === null) return null;
  const date = isoDate(suggested.day);
  return (
    <div class="suggestion">
      <p>{words.lawfulFrom(date)}</p>
      <ul>
        {suggested.cautions.map((caution) => (
          <li key={caution} class="hint">
            {caution}
          </li>
        ))}
      </ul>
      <Button onClick={() => set({ value: date })}>{words.use(date)}</Button>
    </div>
  );
}

function StateRule({ yard }: { readonly yard: Yard }) {
  const rule = ticketRuleOfYard(yard);
  if (rule === null) return null;
  const facts = [
    [words.notice, rule.notice],
    [words.life, rule.life],
    [words.handDigging, rule.handDigging],
  ] as const;
  return (
    <div class="suggestion">
      <p>{words.rule(rule.state)}</p>
      <dl class="facts">
        {facts.map(([term, fact]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{fact ?? words.notRead}</dd>
          </div>
        ))}
      </dl>
      <p class="hint">{`${rule.read}. ${words.lawDecides}`}</p>
    </div>
  );
}
