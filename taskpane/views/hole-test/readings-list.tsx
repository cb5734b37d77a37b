import { useId } from "preact/hooks";
import { HOLE_READINGS } from "../../../addin/actions/hole-test/draft-hole-test.ts";
import type { Reading } from "../../../addin/actions/yard/record-yard.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Button } from "../../parts/form.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { hasRoom, NO_READING, type HoleDraft, type HoleFault, type TypedReading } from "./hole-draft.ts";
import { holeTestText } from "./text.ts";

const words = holeTestText.readings;

/** Every reading as typed, each open to change; its sentence stands under it. */
export function ReadingsList({
  draft,
  read,
  faults,
  sentenceOf,
  units,
  onChange,
}: {
  readonly draft: HoleDraft;
  /** The same readings as numbers, depths measured up. */
  readonly read: readonly Reading[];
  readonly faults: readonly HoleFault[];
  /** The function's own sentence about a reading, counted from 1. */
  readonly sentenceOf: (reading: number) => string | null;
  readonly units: UnitSystem;
  readonly onChange: (readings: readonly TypedReading[]) => void;
}) {
  const { readings } = draft;
  const down = draft.measured === "down";
  const unit = shownUnit("depth", units);
  const change = (index: number, changed: Partial<TypedReading>) =>
    onChange(readings.map((reading, place) => (place === index ? { ...reading, ...changed } : reading)));
  const add = () => {
    onChange([...readings, NO_READING]);
    requestAnimationFrame(() => document.getElementById(minutesFieldId(readings.length + 1))?.focus());
  };
  return (
    <section aria-label={words.title}>
      {readings.length === 0 && <p class="hint">{words.empty}</p>}
      {readings.length > 0 && (
        <div class="readings" role="group" aria-label={words.title}>
          <div class="reading reading-headings" aria-hidden="true">
            <span>{words.number}</span>
            <span>{words.minutes}</span>
            <span>{down ? words.down(unit) : words.water(unit)}</span>
          </div>
          {readings.map((reading, index) => {
            const number = index + 1;
            const depth = read[index]?.waterDepth;
            return (
              <ReadingRow
                key={number}
                number={number}
                reading={reading}
                down={down}
                converted={down && typeof depth === "number" ? words.asDepth(quantityWords("depth", depth, units)) : null}
                faults={faults.filter((fault) => "reading" in fault && fault.reading === number)}
                sentence={sentenceOf(number)}
                onChange={(changed) => change(index, changed)}
                onEnter={number === readings.length && hasRoom(draft) ? add : null}
                onRemove={() => onChange(readings.filter((_, place) => place !== index))}
              />
            );
          })}
        </div>
      )}
      {hasRoom(draft) ? (
        <>
          <div class="buttons">
            <Button onClick={add}>{words.add}</Button>
          </div>
          {readings.length > 0 && <p class="hint">{words.enter}</p>}
        </>
      ) : (
        <p class="hint" role="status">
          {words.full(HOLE_READINGS)}
        </p>
      )}
    </section>
  );
}

function ReadingRow({
  number,
  reading,
  down,
  converted,
  faults,
  sentence,
  onChange,
  onEnter,
  onRemove,
}: {
  readonly number: number;
  readonly reading: TypedReading;
  readonly down: boolean;
  readonly converted: string | null;
  readonly faults: readonly HoleFault[];
  readonly sentence: string | null;
  readonly onChange: (changed: Partial<TypedReading>) => void;
  /** Begins the next reading; null where this is not the last, or there is no room for another. */
  readonly onEnter: (() => void) | null;
  readonly onRemove: () => void;
}) {
  const id = useId();
  const said = faults.length > 0 ? faults.map((fault) => fault.sentence).join(" ") : (sentence ?? "");
  const wrong = (field: "minutes" | "water") => (faults.length === 0 ? sentence !== null : faults.some((fault) => fault.field === field));
  const attributes = (field: "minutes" | "water") => ({
    class: "input",
    type: "text" as const,
    inputMode: "decimal" as const,
    autocomplete: "off" as const,
    "aria-describedby": `${id}-said`,
    ...(wrong(field) ? { "aria-invalid": "true" as const } : {}),
  });
  return (
    <div class={said === "" ? "reading" : "reading field-wrong"}>
      <span class="reading-number">{number}</span>
      <input
        {...attributes("minutes")}
        id={minutesFieldId(number)}
        aria-label={holeTestText.fields.minutesOf(number)}
        value={reading.minutes}
        onInput={(event) => onChange({ minutes: event.currentTarget.value })}
      />
      <input
        {...attributes("water")}
        id={waterFieldId(number)}
        aria-label={down ? holeTestText.fields.downOf(number) : holeTestText.fields.waterOf(number)}
        value={reading.water}
        onInput={(event) => onChange({ water: event.currentTarget.value })}
        onKeyDown={(event) => {
          if (event.key === "Enter" && !event.isComposing) onEnter?.();
        }}
      />
      <Button kind="quiet" aria-label={words.remove(number)} onClick={onRemove}>
        {words.removeSign}
      </Button>
      <p class="reading-said" id={`${id}-said`}>
        {converted !== null && <span class="hint">{converted}</span>}
        <span class="fault" role="status">
          {said}
        </span>
      </p>
    </div>
  );
}

function minutesFieldId(reading: number): string {
  return `soakbook-minutes-${reading}`;
}

/** So that the timer can lead to the depth of the reading it has just stamped. */
export function waterFieldId(reading: number): string {
  return `soakbook-water-${reading}`;
}
