import type { ListTarget } from "../../../addin/actions/bring-in/known-columns.ts";
import { filledKeys, type ListPlan } from "../../../addin/actions/bring-in/plan-list.ts";
import type { CellValue } from "../../../addin/workbook/port.ts";
import { cellWords } from "../../parts/cell-words.ts";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { bringInText } from "./text.ts";

const ROWS_SHOWN = 5;
const LINES_SHOWN = 20;

/** The rows as they would stand, and every cell or row that is not taken, with the reason. */
export function ListPreview({ target, plan }: { readonly target: ListTarget; readonly plan: ListPlan }) {
  const { rows, alreadyThere, notTaken } = plan;
  const keys = filledKeys(target, rows);
  const shown = rows.slice(0, ROWS_SHOWN);
  return (
    <section aria-label={bringInText.preview}>
      <h3>{bringInText.preview}</h3>
      <LiveSentence says={[bringInText.rows(rows.length), ...(alreadyThere > 0 ? [bringInText.there(alreadyThere)] : [])].join(" ")} />
      <p>{[bringInText.rows(rows.length), ...(alreadyThere > 0 ? [bringInText.there(alreadyThere)] : [])].join(" ")}</p>
      {shown.length > 0 && (
        <ol class="list-rows" aria-label={bringInText.firstRows(shown.length)}>
          {shown.map(({ line, values, own }) => (
            <li key={line}>
              <dl>
                {keys.map((key) => (
                  <Fact
                    key={key}
                    term={target.sheet.columns[key]?.heading ?? key}
                    fact={values[key]}
                    format={target.sheet.columns[key]?.numberFormat}
                  />
                ))}
                {[...own].map(([heading, value]) => (
                  <Fact key={`own ${heading}`} term={heading} fact={value} />
                ))}
              </dl>
            </li>
          ))}
        </ol>
      )}
      {notTaken.length > 0 && (
        <>
          <h3>{bringInText.notTaken}</h3>
          <ul class="bullets">
            {notTaken.slice(0, LINES_SHOWN).map(({ line, heading, sentence }) => (
              <li key={`${line} ${heading} ${sentence}`}>
                {bringInText.line(line, heading)}
                {sentence}
              </li>
            ))}
            {notTaken.length > LINES_SHOWN && <li>{bringInText.more(notTaken.length - LINES_SHOWN)}</li>}
          </ul>
        </>
      )}
    </section>
  );
}

/** What is blank is not shown: a row of a narrow pane has no room for it. */
function Fact({
  term,
  fact = null,
  format,
}: {
  readonly term: string;
  readonly fact?: CellValue | undefined;
  readonly format?: string | undefined;
}) {
  return fact === null ? null : (
    <div>
      <dt>{term}</dt>
      <dd>{cellWords(fact, format)}</dd>
    </div>
  );
}
