import { useEffect, useMemo, useState } from "preact/hooks";
import { bringInList, presentRecords } from "../../../addin/actions/bring-in/bring-in-list.ts";
import { isKnownHeading, listTargets, type ListTarget } from "../../../addin/actions/bring-in/known-columns.ts";
import { listTable } from "../../../addin/actions/bring-in/list-table.ts";
import { planList, type ListChoices, type PresentRecords } from "../../../addin/actions/bring-in/plan-list.ts";
import { proposedColumns } from "../../../addin/actions/bring-in/propose-columns.ts";
import { Button, ChoiceField, MessageBar, Segmented } from "../../parts/form.tsx";
import { sentenceOfError } from "../../parts/spoken-errors.ts";
import type { ViewProps } from "../../view.ts";
import { ListColumns } from "./list-columns.tsx";
import { ListPreview } from "./list-preview.tsx";
import { ListSource, type ListCells } from "./list-source.tsx";
import { bringInText } from "./text.ts";
import "./bring-in.css";

type Props = Pick<ViewProps, "program" | "workbook" | "write">;

/** Records in somebody's own form on their way to a sheet: seen, put right by a person, and only then written. */
export function BringIn(props: Props) {
  const [isOpen, open] = useState(false);
  return (
    <section aria-label={bringInText.title}>
      <h2>{bringInText.title}</h2>
      <p class="hint">{bringInText.explain}</p>
      <div class="buttons">
        <Button aria-expanded={isOpen} onClick={() => open(!isOpen)}>
          {isOpen ? bringInText.close : bringInText.start}
        </Button>
      </div>
      {isOpen && <List {...props} />}
    </section>
  );
}

function List(props: Props) {
  const [name, choose] = useState(listTargets[0]?.sheet.name ?? "");
  const [cells, take] = useState<ListCells | null>(null);
  // Another list begins with what is proposed for it.
  const [taken, count] = useState(0);
  const target = listTargets.find(({ sheet }) => sheet.name === name);
  return (
    <>
      <ChoiceField
        label={bringInText.sheet}
        value={name}
        choices={listTargets.map(({ sheet }) => ({ value: sheet.name, says: sheet.name }))}
        onChoose={(chosen) => choose(chosen ?? name)}
      />
      <ListSource
        workbook={props.workbook}
        onCells={(read) => {
          take(read);
          count(taken + 1);
        }}
      />
      {target !== undefined && cells !== null && <Taken key={`${name} ${taken}`} {...props} target={target} cells={cells} />}
    </>
  );
}

function Taken({ program, workbook, write, target, cells }: Props & { readonly target: ListTarget; readonly cells: ListCells }) {
  const table = useMemo(() => listTable(cells, (heading) => isKnownHeading(target, heading)), [cells, target]);
  const proposed = useMemo(() => ("sentence" in table ? [] : proposedColumns(target, table)), [table, target]);
  const [choices, setChoices] = useState<Partial<ListChoices>>({});
  const present = usePresent(workbook, target, program);
  if ("sentence" in table) return <MessageBar kind="error">{table.sentence}</MessageBar>;
  if (present === null) return null;
  if ("fault" in present) return <MessageBar kind="error">{present.fault}</MessageBar>;
  const chosen: ListChoices = { columns: proposed, units: "us", dateOrder: null, ...choices };
  const plan = planList(target, table, chosen, present);
  const asksUnits = target.sheet.columns["units"]?.role === "input";
  const count = plan.rows.length;
  return (
    <>
      <ListColumns target={target} table={table} columns={chosen.columns} onChange={(columns) => setChoices({ ...choices, columns })} />
      {asksUnits && (
        <Segmented
          label={bringInText.units}
          value={chosen.units}
          choices={(["us", "metric"] as const).map((value) => ({ value, says: bringInText.unitChoices[value] }))}
          onChoose={(units) => setChoices({ ...choices, units })}
        />
      )}
      {(plan.asksDateOrder || chosen.dateOrder !== null) && (
        <Segmented
          label={bringInText.dateOrder}
          value={chosen.dateOrder}
          choices={(["day first", "month first"] as const).map((value) => ({ value, says: bringInText.dateOrders[value] }))}
          onChoose={(dateOrder) => setChoices({ ...choices, dateOrder })}
        />
      )}
      <ListPreview target={target} plan={plan} />
      <div class="buttons">
        <Button
          kind="primary"
          disabled={count === 0}
          onClick={() => write(() => bringInList(workbook, target, plan), bringInText.done(count, target.sheet.name))}
        >
          {bringInText.write(count)}
        </Button>
      </div>
    </>
  );
}

/** What the list is held against, read again whenever the program is. */
function usePresent(
  workbook: Props["workbook"],
  target: ListTarget,
  program: Props["program"],
): PresentRecords | { readonly fault: string } | null {
  const [present, show] = useState<PresentRecords | { readonly fault: string } | null>(null);
  useEffect(() => {
    let isCurrent = true;
    presentRecords(workbook, target).then(
      (read) => isCurrent && show(read),
      (error: unknown) => isCurrent && show({ fault: sentenceOfError(error) }),
    );
    return () => {
      isCurrent = false;
    };
  }, [workbook, target, program]);
  return present;
}
