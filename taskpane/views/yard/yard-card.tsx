import { contactsOf } from "../../../addin/actions/yard/contact-links.ts";
import { ownCellsOf } from "../../../addin/actions/yard/own-columns.ts";
import type { ViewProps } from "../../view.ts";
import { yardText } from "./text.ts";

/** Who lives there and how to reach them; then what the program keeps of the yard in columns of its own. */
export function YardCard({ program, yard }: Pick<ViewProps, "program" | "yard">) {
  const { card, ownColumns } = yardText;
  const { record } = yard.site;
  const contacts = contactsOf(record);
  const facts = (["owner", "tenure", "language", "parcel", "watershed", "funder"] as const).flatMap((key) => {
    const fact = record[key];
    return fact === null ? [] : [[card[key], fact] as const];
  });
  const own = ownCellsOf(program, yard);
  return (
    <>
      {facts.length + contacts.length > 0 && (
        <section aria-label={card.title}>
          <h2>{card.title}</h2>
          <dl class="facts">
            {facts.map(([term, fact]) => (
              <div key={term}>
                <dt>{term}</dt>
                <dd>{fact}</dd>
              </div>
            ))}
            {contacts.map(({ key, says, link }) => (
              <div key={key}>
                <dt>{card[key]}</dt>
                <dd>{link === null ? says : <a href={link}>{says}</a>}</dd>
              </div>
            ))}
          </dl>
        </section>
      )}
      {own.length > 0 && (
        <section aria-label={ownColumns.title}>
          <h2>{ownColumns.title}</h2>
          <dl class="facts">
            {own.map(({ sheet, heading, value }, at) => (
              <div key={at}>
                <dt>{ownColumns.of(heading, sheet)}</dt>
                <dd>{String(value)}</dd>
              </div>
            ))}
          </dl>
        </section>
      )}
    </>
  );
}
