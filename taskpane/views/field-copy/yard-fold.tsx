import { headingOf, type Fields } from "../../../addin/actions/field-copy/taken-rows.ts";
import type { Choice, Difference } from "../../../addin/actions/field-copy/merge-rows.ts";
import type { YardDifferences } from "../../../addin/actions/field-copy/plan-bring-back.ts";
import { cellWords } from "../../parts/cell-words.ts";
import { Fold } from "../../parts/fold.tsx";
import { Button, CheckField, Segmented } from "../../parts/form.tsx";
import { fieldCopyText } from "./text.ts";

const words = fieldCopyText.bringing;
const ROWS_SHOWN = 20;

/** Only a person can say. */
export function isQuestion({ unlessChosen }: Difference): boolean {
  return unlessChosen === null;
}

/** By which an answer is found again when the workbook has been read anew. */
export function nameOfDifference({ taken, row, kind, field, home, copy }: Difference): string {
  return JSON.stringify([taken.sheet.name, row.key, kind, field, [...home, ...copy].map((fields) => [...fields])]);
}

/** What a yard of the copy brings: its questions first, then what comes without one. */
export function YardFold({
  yard: { siteId, name, differences },
  isIncluded,
  onInclude,
  chosen,
  onChoose,
}: {
  readonly yard: YardDifferences;
  readonly isIncluded: boolean;
  readonly onInclude: (isIncluded: boolean) => void;
  readonly chosen: (difference: Difference) => Choice | null;
  readonly onChoose: (answers: readonly (readonly [string, Choice])[]) => void;
}) {
  const questions = differences.filter(isQuestion);
  const open = questions.filter((difference) => chosen(difference) === null);
  const title = siteId === "" ? words.ofProgram : `${siteId} ${name}`;
  const says = words.counts(differences.length - questions.length, isIncluded ? open.length : 0);
  const all = (choice: Choice) => onChoose(questions.map((difference) => [nameOfDifference(difference), choice] as const));
  return (
    <Fold title={title} name={`bring back ${siteId}`} says={says} needed={isIncluded && open.length > 0}>
      <CheckField label={words.include} checked={isIncluded} onChange={onInclude} />
      {isIncluded && (
        <>
          {questions.length > 1 && (
            <div class="buttons">
              <Button kind="quiet" onClick={() => all("home")}>
                {words.allHome}
              </Button>
              <Button kind="quiet" onClick={() => all("copy")}>
                {words.allCopy}
              </Button>
            </div>
          )}
          {[...questions, ...differences.filter(({ kind }) => kind === "deleted")].map((difference) => (
            <Question
              key={nameOfDifference(difference)}
              difference={difference}
              value={chosen(difference) ?? difference.unlessChosen}
              onChoose={(choice) => onChoose([[nameOfDifference(difference), choice]])}
            />
          ))}
          <Lines differences={differences.filter(({ kind }) => kind === "new")} says={words.newRows} />
          <Lines differences={differences.filter(({ kind }) => kind === "changed")} says={words.changedRows} />
        </>
      )}
    </Fold>
  );
}

function Question({
  difference,
  value,
  onChoose,
}: {
  readonly difference: Difference;
  readonly value: Choice | null;
  readonly onChoose: (choice: Choice) => void;
}) {
  const { kind, home, copy, edits } = difference;
  const says: Partial<Record<Choice, string>> = kind === "new" || kind === "changed" ? {} : words.choices[kind];
  return (
    <div class="copy-question" role="group" aria-label={titleOf(difference)}>
      <p class="label">{titleOf(difference)}</p>
      <dl>
        <Side name={words.here} difference={difference} rows={home} />
        {kind !== "deleted" && <Side name={words.inCopy} difference={difference} rows={copy} />}
      </dl>
      <Segmented
        label={words.kinds[kind]}
        value={value}
        choices={(["home", "copy", "both"] as const)
          .filter((choice) => edits.has(choice))
          .map((value) => ({ value, says: says[value] ?? value }))}
        onChoose={onChoose}
      />
    </div>
  );
}

function Side({ name, difference, rows }: { readonly name: string; readonly difference: Difference; readonly rows: readonly Fields[] }) {
  const said = rows.map((fields) => factsOf(difference, fields)).filter((facts) => facts !== "");
  return (
    <div>
      <dt>{name}</dt>
      <dd>{said.length === 0 ? words.nothing : said.join("; ")}</dd>
    </div>
  );
}

function Lines({
  differences,
  says,
}: {
  readonly differences: readonly Difference[];
  readonly says: (sheet: string, count: number) => string;
}) {
  const sheets = [...new Set(differences.map(({ taken }) => taken.sheet.name))];
  return (
    <>
      {sheets.map((sheet) => {
        const own = differences.filter(({ taken }) => taken.sheet.name === sheet);
        return (
          <div key={sheet} class="copy-rows">
            <p>{says(sheet, own.length)}</p>
            <ul class="bullets">
              {own.slice(0, ROWS_SHOWN).map((difference) => (
                <li key={nameOfDifference(difference)}>{lineOf(difference)}</li>
              ))}
              {own.length > ROWS_SHOWN && <li>{words.more(own.length - ROWS_SHOWN)}</li>}
            </ul>
          </div>
        );
      })}
    </>
  );
}

function lineOf(difference: Difference): string {
  const { kind, home, copy } = difference;
  if (kind === "new") return factsOf(difference, copy[0] ?? new Map());
  const [was, is] = [home[0] ?? new Map<string, never>(), copy[0] ?? new Map<string, never>()];
  const facts = [...new Set([...is.keys(), ...was.keys()])].map((field) => {
    const [now, before] = [wordsOf(difference, field, is), wordsOf(difference, field, was)];
    return `${headingOf(difference.taken.sheet, field)}: ${now === "" ? words.nothing : now} (${words.was(before === "" ? words.nothing : before)})`;
  });
  return [...knownWords(difference), ...facts].join(" · ");
}

function titleOf(difference: Difference): string {
  const { taken, field } = difference;
  return [taken.sheet.name, ...knownWords(difference), ...(field === null ? [] : [headingOf(taken.sheet, field)])].join(" · ");
}

/** What tells the row from others, without the yard. */
function knownWords({ taken, row }: Difference): readonly string[] {
  return taken.knownBy.flatMap((name) => {
    const says = name === "siteId" ? "" : wordsOf({ taken }, name, row.fields);
    return says === "" ? [] : [says];
  });
}

function factsOf({ taken, field }: Difference, fields: Fields): string {
  const names = field === null ? [...fields.keys()].filter((name) => name !== "siteId") : [field];
  return names
    .flatMap((name) => {
      const value = wordsOf({ taken }, name, fields);
      if (value === "") return [];
      return [field === null ? `${headingOf(taken.sheet, name)}: ${value}` : value];
    })
    .join(", ");
}

function wordsOf({ taken }: Pick<Difference, "taken">, field: string, fields: Fields): string {
  return cellWords(fields.get(field) ?? null, taken.sheet.columns[field]?.numberFormat);
}
