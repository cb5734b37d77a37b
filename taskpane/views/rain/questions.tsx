import type { RainChoices, RainFile } from "../../../addin/actions/rain-record/read-rain-file.ts";
import type { RainTable } from "../../../addin/actions/rain-record/rain-table.ts";
import { ChoiceField, Segmented } from "../../parts/form.tsx";
import { rowsAsDays } from "./rain-words.ts";
import { rainText } from "./text.ts";

const words = rainText.ask;

interface QuestionsProps {
  readonly table: RainTable;
  readonly file: RainFile;
  readonly choices: RainChoices;
  readonly onChoose: (chosen: Partial<RainChoices>) => void;
}

/** What only a person can say of the file; what it says itself is not asked. */
export function Questions({ table, file, choices, onChoose }: QuestionsProps) {
  const { asks, open } = file;
  const asksFor = new Set(asks);
  return (
    <section aria-label={words.title}>
      <h3>{words.title}</h3>
      <Columns table={table} choices={choices} onChoose={onChoose} />
      {asksFor.has("unit") && (
        <Segmented
          label={words.unit.label}
          hint={words.unit.hint}
          value={choices.unit}
          choices={(["in", "mm"] as const).map((value) => ({ value, says: words.unit[value] }))}
          onChoose={(unit) => onChoose({ unit })}
        />
      )}
      {asksFor.has("dateOrder") && (
        <Segmented
          label={words.dateOrder.label}
          hint={words.dateOrder.hint(exampleDate(table, choices))}
          value={choices.dateOrder}
          choices={(["day first", "month first"] as const).map((value) => ({ value, says: words.dateOrder[value] }))}
          onChoose={(dateOrder) => onChoose({ dateOrder })}
        />
      )}
      {asksFor.has("repeated") && (
        <Segmented
          label={words.repeated.label}
          value={choices.repeated}
          choices={(["first", "last", "sum"] as const).map((value) => ({ value, says: words.repeated[value] }))}
          onChoose={(repeated) => onChoose({ repeated })}
        />
      )}
      {(["notMeasured", "noReading"] as const).map(
        (question) =>
          asksFor.has(question) && (
            <Segmented
              key={question}
              label={words[question].label}
              value={choices[question]}
              choices={[
                { value: "blank" as const, says: words[question].blank, meaning: words[question].blankMeaning },
                { value: "dry" as const, says: words[question].dry, meaning: words[question].dryMeaning },
              ]}
              onChoose={(value) => onChoose({ [question]: value })}
            />
          ),
      )}
      <Time file={file} choices={choices} onChoose={onChoose} />
      {open.length > 0 && <p class="hint">{words.open}</p>}
    </section>
  );
}

function Columns({ table, choices: { columns }, onChoose }: Pick<QuestionsProps, "table" | "choices" | "onChoose">) {
  const choices = table.headings.map((heading, column) => ({ value: String(column), says: heading }));
  const indexOf = (value: string | null) => (value === null ? null : Number(value));
  const chosen = (column: number | null) => (column === null ? null : String(column));
  return (
    <>
      <ChoiceField
        label={words.columns.date}
        value={chosen(columns.date)}
        blank={words.columns.choose}
        choices={choices}
        onChoose={(value) => onChoose({ columns: { ...columns, date: indexOf(value) } })}
      />
      {table.headings.length > 2 && (
        <ChoiceField
          label={words.columns.time}
          value={chosen(columns.time)}
          blank={words.columns.noTime}
          choices={choices}
          onChoose={(value) => onChoose({ columns: { ...columns, time: indexOf(value) } })}
        />
      )}
      <ChoiceField
        label={words.columns.depth}
        value={chosen(columns.depth)}
        blank={words.columns.choose}
        choices={choices}
        onChoose={(value) => onChoose({ columns: { ...columns, depth: indexOf(value) } })}
      />
    </>
  );
}

/** How times are meant, and whether steps are added up to days. */
function Time({ file, choices, onChoose }: Pick<QuestionsProps, "file" | "choices" | "onChoose">) {
  const rows = rowsAsDays(file);
  if (file.read === null || !file.read.hasTimes) return null;
  return (
    <>
      <Segmented
        label={words.timesSay.label}
        hint={words.timesSay.hint}
        value={choices.timesSay}
        choices={(["began", "ended"] as const).map((value) => ({ value, says: words.timesSay[value] }))}
        onChoose={(timesSay) => onChoose({ timesSay })}
      />
      {file.clockChanges.length > 0 && (
        <Segmented
          label={words.clock.label}
          hint={words.clock.hint}
          value={file.isSummerTime ? "summer" : "standard"}
          choices={(["summer", "standard"] as const).map((value) => ({ value, says: words.clock[value] }))}
          onChoose={(clock) => onChoose({ clock })}
        />
      )}
      {rows !== null && (
        <Segmented
          label={words.kept.label}
          hint={words.kept.hint(rows.steps.toLocaleString("en-US"), rows.days.toLocaleString("en-US"))}
          value={choices.kept}
          choices={(["every step", "daily totals"] as const).map((value) => ({ value, says: words.kept[value] }))}
          onChoose={(kept) => onChoose({ kept })}
        />
      )}
    </>
  );
}

function exampleDate(table: RainTable, { columns: { date } }: RainChoices): string {
  return (date === null ? "" : (table.rows[0]?.cells[date] ?? "")).slice(0, 20);
}
