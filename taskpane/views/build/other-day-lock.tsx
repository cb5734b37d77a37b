import { isoDate, today } from "../../../addin/actions/dates.ts";
import { digRefusals } from "../../../addin/actions/build/record-dig-day.ts";
import { MessageBar } from "../../parts/form.tsx";
import type { VisitProps } from "../../view.ts";
import { buildText } from "./text.ts";

/** Today's lock stands above the stage; another day may have had another. */
export function OtherDayLock({ yard, day }: VisitProps) {
  const refusals = day === null || day === today() ? [] : digRefusals(yard, day);
  if (day === null || refusals.length === 0) return null;
  return (
    <MessageBar kind="error">
      <strong>{buildText.day.locked(isoDate(day))}</strong>
      {refusals.map(({ id, sentence }) => (
        <p key={id}>{sentence}</p>
      ))}
    </MessageBar>
  );
}
