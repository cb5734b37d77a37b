import type { StepStanding } from "../../../addin/actions/visits/stage-standing.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { unitOf } from "../../../functions/quantities.ts";
import { groundSlope } from "../../../functions/worksheet/siting.ts";
import { Choices } from "../../parts/choices.tsx";
import { Button, ChoiceField, DateField, NumberField, TextField, TimeField } from "../../parts/form.tsx";
import { shown } from "../../parts/numbers.ts";
import { text } from "../../text.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import { visitsText as words } from "./text.ts";
import type { AnswerFaults, TypedAnswer } from "./typed-answer.ts";

interface AnswerFieldProps {
  readonly step: StepStanding["step"];
  readonly yard: Yard;
  readonly typed: TypedAnswer;
  readonly faults: AnswerFaults;
  readonly set: (changed: Partial<TypedAnswer>) => void;
  /** What is said by one tap is written at once. */
  readonly answer: (said: Partial<TypedAnswer>) => Promise<void>;
}

/** More choices than this go into a list. */
export const MOST_IN_SIGHT = 6;

/** The input that a step asks for: a tape reading, a level string, a name, a day, or one of a few answers. */
export function AnswerField({ step, yard, typed, faults, set, answer: write }: AnswerFieldProps) {
  const { answer } = step;
  const field = { label: step.ask, value: typed.value, fault: faults.value, onInput: (value: string) => set({ value }) };
  switch (answer.kind) {
    case "measured":
      return (
        <>
          <NumberField big {...field} unit={unitOf(answer.quantity, yard.units)} />
          {answer.orNone !== undefined && <Button onClick={() => write({ value: "", none: true })}>{answer.orNone}</Button>}
          {answer.orLater !== undefined && <Button onClick={() => write({ value: "", later: true })}>{answer.orLater}</Button>}
        </>
      );
    case "number":
      return <NumberField big {...field} unit={answer.unit[yard.units]} />;
    case "text":
      return <TextField {...field} />;
    case "date":
      return (
        <>
          <DateField {...field} />
          {answer.hour !== undefined && (
            <TimeField
              label={answer.hour === "asked" ? words.hour : words.hourIfKnown}
              value={typed.hour}
              fault={faults.hour}
              onInput={(hour) => set({ hour })}
            />
          )}
        </>
      );
    case "slope":
      return (
        <fieldset class="pair">
          <legend class="label">{step.ask}</legend>
          <NumberField big label={words.drop} value={typed.drop} fault={faults.drop} onInput={(drop) => set({ drop })} />
          <NumberField big label={words.run} hint={words.sameUnit} value={typed.run} fault={faults.run} onInput={(run) => set({ run })} />
          <p role="status" class="slope-is">
            {slopeWords(typed)}
          </p>
        </fieldset>
      );
    case "chosen": {
      const chosen = { label: step.ask, value: typed.says, fault: faults.says };
      if (answer.options.length > MOST_IN_SIGHT) {
        return (
          <ChoiceField
            {...chosen}
            blank={words.notChosen}
            choices={answer.options.map(({ says }) => ({ value: says, says }))}
            onChoose={(says) => set({ says })}
          />
        );
      }
      return (
        <Choices
          {...chosen}
          choices={answer.options.map(({ says, verdict }) => ({ value: says, says, meaning: text.verdicts[verdict] }))}
          onChoose={(says) => write({ says })}
        />
      );
    }
  }
}

/** The percent while it is typed, so that a slip is seen before it is written. */
function slopeWords({ drop, run }: TypedAnswer): string {
  const fall = readTypedNumber(drop, { label: words.drop });
  const length = readTypedNumber(run, { label: words.run });
  if (isRefused(fall) || isRefused(length)) return "";
  const percent = groundSlope.evaluate([fall.value, length.value])[0]?.[0];
  return typeof percent === "number" ? words.slopeIs(shown(percent, 1)) : "";
}
