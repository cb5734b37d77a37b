import { useState } from "preact/hooks";
import { recordIncident } from "../../../addin/actions/build/record-dig-day.ts";
import { useDraft } from "../../parts/drafts.ts";
import { useFocusWhenOpened } from "../../parts/focus.ts";
import { Button, MessageBar, TextField } from "../../parts/form.tsx";
import { WriteOrDiscard } from "../../parts/write-or-discard.tsx";
import type { DayProps } from "../../view.ts";
import { buildText } from "./text.ts";

const words = buildText.day.incident;
const BLANK = { who: "", note: "", done: "" };

/** Every incident, however small: the person first, the paper second. */
export function Incidents({ yard, workbook, write, day, by }: DayProps) {
  const [opened, setOpened] = useState(false);
  const [asked, ask] = useState(false);
  const draft = useDraft(`${yard.siteId}/dig-day/incident`, BLANK);
  const open = opened || draft.touched;
  const place = useFocusWhenOpened(open);
  const typed = draft.value;
  const set = (changed: Partial<typeof BLANK>) => draft.set((current) => ({ ...current, ...changed }));
  const close = () => {
    draft.clear();
    setOpened(false);
    ask(false);
  };
  const save = async () => {
    ask(true);
    const entry = { who: typed.who.trim(), note: typed.note.trim(), done: typed.done.trim() };
    if (entry.note === "" || entry.done === "") return;
    if (await write(() => recordIncident(workbook, yard, day, entry, by), words.saved)) close();
  };
  const written = yard.digDays.filter(({ record }) => record.entry === "incident" && record.date === day);
  return (
    <section class="form" aria-label={words.title}>
      <h3>{words.title}</h3>
      {written.length > 0 && (
        <ul class="build-list">
          {written.map(({ row, record }) => (
            <li key={row}>
              <strong>{record.who}</strong> {[record.note, record.done].filter((fact) => fact !== null).join(" — ")}
            </li>
          ))}
        </ul>
      )}
      <div ref={place} class="form">
        {open ? (
          <>
            <MessageBar kind="warning">{buildText.day.firstPeople}</MessageBar>
            <TextField label={words.who} value={typed.who} onInput={(who) => set({ who })} />
            <TextField
              label={words.what}
              value={typed.note}
              fault={asked && typed.note.trim() === "" ? words.whatMissing : null}
              onInput={(note) => set({ note })}
            />
            <TextField
              label={words.done}
              hint={words.doneHint}
              value={typed.done}
              fault={asked && typed.done.trim() === "" ? words.doneMissing : null}
              onInput={(done) => set({ done })}
            />
            <WriteOrDiscard save={words.save} touched={draft.touched} onSave={save} onDiscard={close} />
          </>
        ) : (
          <Button onClick={() => setOpened(true)}>{words.open}</Button>
        )}
      </div>
    </section>
  );
}
