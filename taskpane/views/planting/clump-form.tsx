import { useState } from "preact/hooks";
import { changeClump, removeClump, swapPlant, type PlannedClump } from "../../../addin/actions/planting/plan.ts";
import { plantNamed, type PalettePlant } from "../../../addin/actions/planting/palette.ts";
import { MOISTURE_ZONES, type MoistureZone, type Spot } from "../../../addin/actions/planting/planting-zones.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Button, ChoiceField, NumberField } from "../../parts/form.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { asTyped, isRefused, readTypedNumber, type TypedNumber } from "../../parts/typed-number.ts";
import { plantingText } from "./text.ts";

const words = plantingText.clump;

type NumberKey = "planned" | "along" | "across";

/** Everything about one clump that the drawing shows, for the keyboard and for exact numbers. */
export function ClumpForm({
  clump,
  palette,
  units,
  change,
  nudge,
  add,
  remove,
}: {
  readonly clump: PlannedClump;
  readonly palette: readonly PalettePlant[];
  readonly units: UnitSystem;
  readonly change: (to: (clumps: readonly PlannedClump[]) => readonly PlannedClump[]) => void;
  readonly nudge: (by: Spot) => void;
  readonly add: () => void;
  readonly remove: () => void;
}) {
  // Text as typed, shown while it is no number yet or is the clump's own number; a move of the clump shows its new place.
  const [typed, type] = useState<Partial<Record<NumberKey, string>>>({});
  const known = plantNamed(palette, clump.plant);
  const zone = clump.zone ?? known?.zones[0] ?? null;
  const unit = shownUnit("length", units);
  const number = (key: NumberKey, label: string, hint?: string) => {
    const text = typed[key];
    const read = text === undefined ? null : readNumber(key, label, text);
    const isShown = text !== undefined && read !== null && (isRefused(read) || read.value === clump[key]);
    return (
      <NumberField
        label={label}
        hint={hint}
        unit={key === "planned" ? undefined : unit}
        value={isShown ? text : asTyped(clump[key])}
        fault={isShown && isRefused(read) ? read.sentence : null}
        onInput={(now) => {
          type({ ...typed, [key]: now });
          const number = readNumber(key, label, now);
          if (!isRefused(number)) change((clumps) => changeClump(clumps, clump.id, { [key]: number.value }));
        }}
      />
    );
  };
  return (
    <div class="clump-form">
      {clump.planted !== null && <p class="unsaved">{words.planted}</p>}
      <ChoiceField
        label={words.plant}
        value={clump.plant}
        choices={choicesFor(palette, zone)}
        onChoose={(name) => {
          const plant = plantNamed(palette, name);
          if (plant !== undefined) change((clumps) => swapPlant(clumps, clump.id, plant));
        }}
      />
      {known !== undefined && zone !== null && !known.zones.includes(zone) && (
        <p class="hint">{words.offZone(plantingText.named(known.name, known.commonName), zone)}</p>
      )}
      <ChoiceField
        label={words.zone}
        value={zone}
        choices={MOISTURE_ZONES.map((each) => ({ value: each, says: plantingText.zones[each] }))}
        onChoose={(chosen) => change((clumps) => changeClump(clumps, clump.id, { zone: chosen }))}
      />
      <div class="side-by-side">
        {number("planned", words.count)}
        {number("along", words.along, clump.along === null ? words.free : words.alongHint)}
        {number("across", words.across, clump.across === null ? words.free : words.acrossHint)}
      </div>
      <fieldset class="clump-move">
        <legend class="label">{words.move}</legend>
        <Button onClick={() => nudge({ along: -1, across: 0 })}>{words.directions.left}</Button>
        <Button onClick={() => nudge({ along: 0, across: 1 })}>{words.directions.up}</Button>
        <Button onClick={() => nudge({ along: 0, across: -1 })}>{words.directions.down}</Button>
        <Button onClick={() => nudge({ along: 1, across: 0 })}>{words.directions.right}</Button>
      </fieldset>
      <div class="buttons">
        <Button onClick={add}>{words.add}</Button>
        <Button
          kind="quiet"
          onClick={() => {
            change((clumps) => removeClump(clumps, clump.id));
            remove();
          }}
        >
          {words.remove}
        </Button>
      </div>
    </div>
  );
}

function readNumber(key: NumberKey, label: string, text: string): TypedNumber {
  if (key !== "planned") return readTypedNumber(text, { label });
  const read = readTypedNumber(text, { label, required: true, atLeast: 1 });
  return isRefused(read) || Number.isInteger(read.value) ? read : { sentence: words.wholeNumber };
}

/** The plants of the zone first: the others stay to be chosen, and then say that they are of another zone. */
function choicesFor(palette: readonly PalettePlant[], zone: MoistureZone | null) {
  const isOfZone = ({ zones }: PalettePlant) => zone !== null && zones.includes(zone);
  const ordered = [...palette.filter(isOfZone), ...palette.filter((plant) => !isOfZone(plant))];
  return ordered.map(({ name, commonName }) => ({ value: name, says: plantingText.named(name, commonName) }));
}
