import { useState } from "preact/hooks";
import { dayNumberOf, isoDate } from "../../../addin/actions/dates.ts";
import { followUpsCountFrom, planFirstLooks, proposedFollowUps } from "../../../addin/actions/care/plan-follow-ups.ts";
import { Button, DateField } from "../../parts/form.tsx";
import type { ViewProps } from "../../view.ts";
import { careText } from "./text.ts";

const words = careText.plan;

/** The first looks at a garden, with what will be written; gone once all of them stand on Follow-ups. */
export function PlanForm({ yard, workbook, write }: ViewProps) {
  const known = followUpsCountFrom(yard);
  const [typed, setTyped] = useState<string | null>(null);
  const [asked, ask] = useState(false);
  const shownDay = typed ?? (known === null ? "" : isoDate(known));
  const from = dayNumberOf(shownDay);
  const missing = proposedFollowUps(yard.followUps, from ?? 0);
  if (missing.length === 0) return null;
  const save = async () => {
    ask(true);
    if (from !== null) await write(() => planFirstLooks(workbook, yard, missing), words.done);
  };
  return (
    <section class="form" aria-label={words.title}>
      <h2>{words.title}</h2>
      <DateField label={words.from} value={shownDay} fault={asked && from === null ? words.fromMissing : null} onInput={setTyped} />
      <p class="hint">{words.explain}</p>
      <ul class="care-plan">
        {missing.map(({ kind, due, note }) => (
          <li key={kind}>
            <strong>{from === null ? "—" : isoDate(due)}</strong> {careText.kinds[kind]}
            {note !== null && <span class="hint">{note}</span>}
          </li>
        ))}
      </ul>
      <Button kind="primary" onClick={save}>
        {words.save(missing.length)}
      </Button>
    </section>
  );
}
