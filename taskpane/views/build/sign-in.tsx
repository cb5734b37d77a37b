import { useRef, useState } from "preact/hooks";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { doubleSignIns, doubleSignInSentence, signIn, signInsOn, signOut } from "../../../addin/actions/build/record-dig-day.ts";
import { clearRow } from "../../../addin/actions/program/write-records.ts";
import { useDraft } from "../../parts/drafts.ts";
import { Button, MessageBar, NumberField, TextField, TimeField } from "../../parts/form.tsx";
import { WriteOrDiscard } from "../../parts/write-or-discard.tsx";
import { shown } from "../../parts/numbers.ts";
import { Removing } from "../../parts/removing.tsx";
import type { DayProps } from "../../view.ts";
import { BLANK_SIGN_IN, readSignIn, timeOfDay, timeWords, type SignInFaults, type TypedSignIn } from "./sign-in-draft.ts";
import { buildText } from "./text.ts";

type SignInRow = Yard["digDays"][number];

const words = buildText.day.signIn;

/** Volunteers, many and quickly: the times of the last ones stay, and Enter signs in. */
export function SignInForm(part: DayProps) {
  const { program, yard, workbook, write, day, by } = part;
  const [usual, setUsual] = useState(BLANK_SIGN_IN);
  const draft = useDraft<TypedSignIn>(`${yard.siteId}/dig-day/sign-in`, usual);
  const [faults, setFaults] = useState<SignInFaults>({});
  const [asked, ask] = useState(false);
  const form = useRef<HTMLDivElement>(null);
  const read = readSignIn(draft.value);
  const doubles =
    "people" in read
      ? doubleSignIns(
          program.yards,
          day,
          read.people.map(({ who }) => who),
        )
      : [];
  const set = (changed: Partial<TypedSignIn>) => {
    ask(false);
    draft.set((current) => ({ ...current, ...changed }));
  };

  const discard = () => {
    draft.clear();
    setFaults({});
    ask(false);
  };
  const save = async (confirmed: boolean) => {
    // A time typed in part is no time to the browser: taken for a blank, it would be lost without a word.
    const half = form.current?.querySelector("input:invalid") != null ? { times: words.halfTime } : {};
    const found = { ...("faults" in read ? read.faults : {}), ...half };
    setFaults(found);
    if ("faults" in read || Object.keys(found).length > 0) return;
    ask(doubles.length > 0);
    if (doubles.length > 0 && !confirmed) return;
    if (!(await write(() => signIn(workbook, yard, day, read.people, confirmed, by), words.done(read.people.length)))) return;
    setUsual({ ...draft.value, names: "" });
    discard();
    form.current?.querySelector("input")?.focus();
  };
  const saveOnEnter = (event: KeyboardEvent) => {
    if (event.key !== "Enter" || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    void save(false);
  };

  return (
    <section class="form" aria-label={words.title}>
      <h3>{words.title}</h3>
      <div ref={form} class="form" onKeyDown={saveOnEnter}>
        <TextField
          label={words.names}
          hint={words.namesHint}
          value={draft.value.names}
          fault={faults.names}
          onInput={(names) => set({ names })}
        />
        <div class="build-times">
          <TimeField label={words.arrived} value={draft.value.arrived} fault={faults.times} onInput={(arrived) => set({ arrived })} />
          <TimeField label={words.left} value={draft.value.left} onInput={(left) => set({ left })} />
        </div>
        <NumberField
          label={words.hours}
          hint={words.hoursHint}
          unit="h"
          value={draft.value.hours}
          fault={faults.hours}
          onInput={(hours) => set({ hours })}
        />
      </div>
      {asked && doubles.length > 0 && (
        <MessageBar
          kind="warning"
          actions={
            <>
              <Button onClick={() => ask(false)}>{words.leave}</Button>
              <Button onClick={() => save(true)}>{words.again}</Button>
            </>
          }
        >
          <strong>{words.doubleTitle}</strong>
          {doubles.map((double) => (
            <p key={double.who}>{doubleSignInSentence(double, day)}</p>
          ))}
        </MessageBar>
      )}
      <WriteOrDiscard save={words.save} touched={draft.touched} onSave={() => save(false)} onDiscard={discard} />
      <SignedIn {...part} />
    </section>
  );
}

function SignedIn({ yard, workbook, write, day }: DayProps) {
  const rows = signInsOn(yard.digDays, day);
  const here = rows.filter(({ record }) => record.arrived !== null && record.hours === null);
  if (rows.length === 0) return <p class="hint">{words.none}</p>;
  return (
    <>
      <ul class="build-people">
        {rows.map((row) => (
          <li key={row.row}>
            <span>
              <strong>{row.record.who}</strong> {factsOf(row)}
            </span>
            <Removing
              says={words.remove}
              label={words.removeLabel(row.record.who ?? "")}
              question={words.removeQuestion(row.record.who ?? "")}
              keep={words.removeKeep}
              remove={words.removeYes}
              onRemove={() => write(() => clearRow(workbook, row), words.removed(row.record.who ?? ""))}
            />
          </li>
        ))}
      </ul>
      {here.length > 0 && <SignOut rows={here} workbook={workbook} write={write} />}
    </>
  );
}

function factsOf({ record }: SignInRow): string {
  const { arrived, left, hours } = record;
  const times = arrived === null ? "" : left === null ? timeWords(arrived) : `${timeWords(arrived)}–${timeWords(left)}`;
  return [times, hours === null ? words.stillHere : words.hoursOf(shown(hours, 2))].filter((fact) => fact !== "").join(" · ");
}

function SignOut({ rows, workbook, write }: { readonly rows: readonly SignInRow[] } & Pick<DayProps, "workbook" | "write">) {
  const [typed, setTyped] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const save = async () => {
    const left = timeOfDay(typed);
    const leaves = left !== null && rows.some(({ record }) => record.arrived !== null && record.arrived < left);
    setFault(left === null ? words.signOutMissing : leaves ? null : words.signOutEarly);
    if (left === null || !leaves) return;
    await write(() => signOut(workbook, rows, left), words.signedOut);
  };
  return (
    <div class="card">
      <TimeField label={words.everyoneLeaves} value={typed} fault={fault} onInput={setTyped} />
      <Button onClick={save}>{words.signOut}</Button>
    </div>
  );
}
