import { useId, useRef } from "preact/hooks";
import { Fault, Hint, describedBy, type Choice, type FieldProps } from "./form.tsx";

/**
 * One of a few, all in sight, where a tap is the answer: large enough for gloves, and by keyboard the digit of its place.
 * While an answer is on its way another tap does nothing.
 */
export function Choices<Value extends string>({
  label,
  fault,
  hint,
  value,
  choices,
  onChoose,
}: FieldProps & {
  readonly value: Value | null;
  readonly choices: readonly Choice<Value>[];
  readonly onChoose: (value: Value) => Promise<unknown>;
}) {
  const id = useId();
  const isWriting = useRef(false);
  const choose = async (chosen: Value) => {
    if (isWriting.current) return;
    isWriting.current = true;
    try {
      await onChoose(chosen);
    } finally {
      isWriting.current = false;
    }
  };
  const byDigit = (event: KeyboardEvent) => {
    const chosen =
      /^[1-9]$/.test(event.key) && !event.ctrlKey && !event.altKey && !event.metaKey ? choices[Number(event.key) - 1] : undefined;
    if (chosen === undefined) return;
    event.preventDefault();
    void choose(chosen.value);
  };
  return (
    <fieldset class="segmented" aria-describedby={describedBy(id, fault, hint)} onKeyDown={byDigit}>
      <legend class="label">{label}</legend>
      <Hint id={id} hint={hint} />
      <div class="segments">
        {choices.map((choice, place) => (
          <button
            key={choice.value}
            type="button"
            class="segment choice"
            aria-pressed={choice.value === value}
            aria-keyshortcuts={String(place + 1)}
            onClick={() => void choose(choice.value)}
          >
            <span class="segment-words">
              <span>{choice.says}</span>
              {choice.meaning !== undefined && <span class="segment-meaning">{choice.meaning}</span>}
            </span>
            <span class="choice-digit" aria-hidden="true">
              {place + 1}
            </span>
          </button>
        ))}
      </div>
      <Fault id={id} fault={fault} />
    </fieldset>
  );
}
