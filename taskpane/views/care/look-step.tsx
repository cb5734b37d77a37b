import type { AskedLook, AskedStep } from "../../../addin/actions/care/asked-at-look.ts";
import { DateField, NumberField, Segmented, TextField } from "../../parts/form.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { text } from "../../text.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import type { ViewProps } from "../../view.ts";
import { mulchSentence } from "./care-words.ts";
import { typedStep, withReading, withStep, type TypedLook, type TypedStep } from "./look-draft.ts";
import { careText } from "./text.ts";

type Verdict = NonNullable<TypedStep["verdict"]>;

const words = careText.look;

interface LookStepProps extends ViewProps {
  readonly look: AskedLook;
  readonly asked: AskedStep;
  readonly typed: TypedLook;
  readonly usualRepairDay: string;
  readonly fault: string | null;
  readonly set: (change: (current: TypedLook) => TypedLook) => void;
}

/** One item of a look: a reading where a number decides, the choice, and what follows from it. */
export function LookStep(part: LookStepProps) {
  const { look, asked, typed, fault, set, yard } = part;
  const { step, measure } = asked;
  const seen = typedStep(typed, step);
  const change = (changed: Parameters<typeof withStep>[2]) => set((current) => withStep(current, step, changed));
  if (step.answer.kind !== "chosen") {
    return (
      <li onKeyDown={(event) => event.key === "Enter" && isReading(event.target) && goOn(event)}>
        {step.answer.kind === "number" ? (
          <NumberField
            label={step.title}
            hint={step.ask}
            unit={step.answer.unit[yard.units]}
            value={seen.reading}
            fault={fault}
            onInput={(reading) => change({ reading })}
          />
        ) : (
          <TextField label={step.title} hint={step.ask} value={seen.reading} fault={fault} onInput={(reading) => change({ reading })} />
        )}
      </li>
    );
  }
  const choices = choicesOf(look, step.answer.options);
  const chooseByKey = (event: KeyboardEvent) => {
    const verdict = verdictOfKey(
      event,
      choices.map(({ value }) => value),
    );
    const goesOn = verdict !== null || (event.key === "Enter" && seen.verdict !== null && isReading(event.target));
    if (!goesOn) return;
    if (verdict !== null) change({ verdict });
    goOn(event);
  };
  return (
    <li onKeyDown={chooseByKey}>
      {measure !== null && (
        <NumberField
          label={measure.label}
          unit={shownUnit(measure.kind, yard.units)}
          value={seen.reading}
          onInput={(reading) => set((current) => withReading(current, step, measure, reading, yard.units))}
        />
      )}
      <Segmented
        label={step.title}
        hint={step.ask}
        value={seen.verdict}
        choices={choices}
        fault={fault}
        onChoose={(verdict) => change({ verdict })}
      />
      <WhatFollows {...part} />
    </li>
  );
}

/** The note on what did not pass, the repair and its day, and the mulch to bring. */
function WhatFollows({ look, asked: { step, item }, typed, usualRepairDay, set, program, yard }: LookStepProps) {
  const seen = typedStep(typed, step);
  const change = (changed: Parameters<typeof withStep>[2]) => set((current) => withStep(current, step, changed));
  const depth = item?.id === "mulch" ? readTypedNumber(seen.reading, { label: words.note, atLeast: 0 }) : null;
  const repaired = seen.verdict === "fail" && look.plansRepairs;
  return (
    <>
      {depth !== null && !isRefused(depth) && depth.value !== null && <p>{mulchSentence(yard, depth.value, program.settings)}</p>}
      {repaired && (
        <>
          {item !== null && (
            <p>
              <strong>{words.repair}:</strong> {item.action}
            </p>
          )}
          <DateField
            label={words.repairBy}
            value={seen.repairBy === "" ? usualRepairDay : seen.repairBy}
            onInput={(repairBy) => change({ repairBy })}
          />
        </>
      )}
      {seen.verdict !== null && seen.verdict !== "pass" && (
        <TextField label={words.note} value={seen.note} onInput={(note) => change({ note })} />
      )}
    </>
  );
}

interface LookChoice {
  readonly value: Verdict;
  readonly says: string;
  readonly meaning?: string;
}

/** What the checklist offers; at an inspection a thing may also not have been seen. */
function choicesOf(
  { stageId }: AskedLook,
  offered: readonly { readonly says: string; readonly verdict: Verdict }[],
): readonly LookChoice[] {
  const options = offered.map(({ says, verdict }) => ({ value: verdict, says: text.verdicts[verdict], meaning: says }));
  return stageId !== null ? [...options, { value: "not measured", says: words.notSeen }] : options;
}

/** Brings the keyboard to the item after this one. */
function goOn(event: KeyboardEvent): void {
  event.preventDefault();
  (event.currentTarget as HTMLElement).nextElementSibling?.querySelector<HTMLElement>("input")?.focus();
}

function isReading(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.inputMode === "decimal";
}

const KEYS: ReadonlyMap<string, readonly Verdict[]> = new Map<string, readonly Verdict[]>([
  ["p", ["pass"]],
  ["w", ["watch", "refer"]],
  ["f", ["fail", "stop"]],
  ["n", ["not measured"]],
]);

/** The verdict a letter stands for, on a choice and in a reading, which is no word; in any other field it is a letter like others. */
function verdictOfKey({ key, target, ctrlKey, altKey, metaKey }: KeyboardEvent, offered: readonly Verdict[]): Verdict | null {
  if (ctrlKey || altKey || metaKey || !(target instanceof HTMLInputElement) || (target.type !== "radio" && !isReading(target))) return null;
  return KEYS.get(key.toLowerCase())?.find((verdict) => offered.includes(verdict)) ?? null;
}
