import type { StepStanding } from "../../addin/actions/screen-yard.ts";
import type { Yard } from "../../addin/actions/read-program.ts";
import { unitOf } from "../../functions/quantities.ts";
import { groundSlope } from "../../functions/worksheet/siting.ts";
import { CheckField, NumberField, Segmented } from "../form.tsx";
import { shown } from "../numbers.ts";
import { text } from "../text.ts";
import { isRefused, readTypedNumber } from "../typed-number.ts";
import { screeningText } from "./text.ts";
import type { AnswerFaults, TypedAnswer } from "./typed-answer.ts";

interface AnswerFieldProps {
  readonly step: StepStanding["step"];
  readonly yard: Yard;
  readonly typed: TypedAnswer;
  readonly faults: AnswerFaults;
  readonly set: (changed: Partial<TypedAnswer>) => void;
}

/** The input that a step asks for: a tape reading, a level string, or one of a few answers. */
export function AnswerField({ step, yard, typed, faults, set }: AnswerFieldProps) {
  const { answer } = step;
  switch (answer.kind) {
    case "measured":
      return (
        <>
          <NumberField
            big
            label={step.ask}
            unit={unitOf(answer.quantity, yard.units)}
            value={typed.value}
            fault={faults.value}
            disabled={typed.none}
            onInput={(value) => set({ value })}
          />
          {answer.orNone !== undefined && <CheckField label={answer.orNone} checked={typed.none} onChange={(none) => set({ none })} />}
        </>
      );
    case "slope":
      return (
        <fieldset class="pair">
          <legend class="label">{step.ask}</legend>
          <NumberField big label={screeningText.drop} value={typed.drop} fault={faults.drop} onInput={(drop) => set({ drop })} />
          <NumberField big label={screeningText.run} hint={screeningText.sameUnit} value={typed.run} fault={faults.run} onInput={(run) => set({ run })} />
          <p role="status" class="slope-is">
            {slopeWords(typed)}
          </p>
        </fieldset>
      );
    case "chosen":
      return (
        <Segmented
          label={step.ask}
          value={typed.says}
          fault={faults.says}
          choices={answer.options.map(({ says, verdict }) => ({ value: says, says, meaning: text.verdicts[verdict] }))}
          onChoose={(says) => set({ says })}
        />
      );
  }
}

/** The percent while it is typed, so that a slip is seen before it is written. */
function slopeWords({ drop, run }: TypedAnswer): string {
  const fall = readTypedNumber(drop, { label: screeningText.drop });
  const length = readTypedNumber(run, { label: screeningText.run });
  if (isRefused(fall) || isRefused(length)) return "";
  const percent = groundSlope.evaluate([fall.value, length.value])[0]?.[0];
  return typeof percent === "number" ? screeningText.slopeIs(shown(percent, 1)) : "";
}
