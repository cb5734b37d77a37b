import { inputKeys, type ListTarget } from "../../../addin/actions/bring-in/known-columns.ts";
import type { ListTable } from "../../../addin/actions/bring-in/list-table.ts";
import { unitsFor, type Destination } from "../../../addin/actions/bring-in/propose-columns.ts";
import { ChoiceField } from "../../parts/form.tsx";
import { bringInText } from "./text.ts";

const SAMPLES = 3;
const SAMPLE_LETTERS = 24;

/** Where each column of the list goes, and what it is measured in. One of ours is the goal of one column alone. */
export function ListColumns({
  target,
  table,
  columns,
  onChange,
}: {
  readonly target: ListTarget;
  readonly table: ListTable;
  readonly columns: readonly Destination[];
  readonly onChange: (columns: readonly Destination[]) => void;
}) {
  const change = (at: number, destination: Destination) =>
    onChange(
      columns.map((each, column) => {
        if (column === at) return destination;
        const isTaken = each.kind === "ours" && destination.kind === "ours" && each.key === destination.key;
        return isTaken ? { kind: "own" } : each;
      }),
    );
  return (
    <section aria-label={bringInText.columns}>
      <h3>{bringInText.columns}</h3>
      <p class="hint">{bringInText.columnsExplain}</p>
      {columns.map((destination, at) => {
        const heading = table.headings[at] ?? "";
        const units = destination.kind === "ours" ? unitsFor(target, destination.key) : [];
        return (
          <div class="list-column" key={`${at} ${heading}`}>
            <ChoiceField
              label={bringInText.goesTo(heading)}
              hint={samplesOf(table, at)}
              value={destination.kind === "ours" ? `ours ${destination.key}` : destination.kind}
              choices={[
                ...inputKeys(target.sheet).map((key) => ({ value: `ours ${key}`, says: target.sheet.columns[key]?.heading ?? key })),
                ...(target.ofYards ? [{ value: "address of the yard", says: bringInText.addressOfYard }] : []),
                { value: "own", says: bringInText.own },
                { value: "left out", says: bringInText.leftOut },
              ]}
              onChoose={(value) => change(at, destinationOf(value))}
            />
            {destination.kind === "ours" && units.length > 0 && (
              <ChoiceField
                label={bringInText.unit(heading)}
                value={destination.unit ?? null}
                blank={bringInText.unitAsOurs}
                choices={units.map(({ name }) => ({ value: name, says: name }))}
                onChoose={(unit) => change(at, { kind: "ours", key: destination.key, ...(unit === null ? {} : { unit }) })}
              />
            )}
          </div>
        );
      })}
    </section>
  );
}

function destinationOf(value: string | null): Destination {
  const key = /^ours (.+)$/.exec(value ?? "")?.[1];
  if (key !== undefined) return { kind: "ours", key };
  return value === "own" || value === "address of the yard" ? { kind: value } : { kind: "left out" };
}

function samplesOf({ rows }: ListTable, at: number): string {
  const samples = rows.flatMap(({ cells }) => {
    const words = String(cells[at] ?? "").trim();
    return words === "" ? [] : [words.length > SAMPLE_LETTERS ? `${words.slice(0, SAMPLE_LETTERS - 1)}…` : words];
  });
  const different = [...new Set(samples)].slice(0, SAMPLES);
  return different.length === 0 ? bringInText.holdsNothing : bringInText.holds(different);
}
