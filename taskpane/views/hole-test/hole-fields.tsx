import { LEAST_LIKELY_DIAMETER_INCHES } from "../../../functions/infiltration/hole-rate.ts";
import { toUs, type UnitSystem } from "../../../functions/quantities.ts";
import { DateField, MessageBar, NumberField, Segmented, TextField } from "../../parts/form.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import type { HoleDraft, HoleFault, Measured } from "./hole-draft.ts";
import { holeTestText } from "./text.ts";

const words = holeTestText.fields;

/** The hole itself, and how its water is measured. */
export function HoleFields({
  draft,
  faults,
  markFault,
  units,
  set,
  measure,
}: {
  readonly draft: HoleDraft;
  readonly faults: readonly HoleFault[];
  /** Why the way of measuring could not be changed. */
  readonly markFault: string | null;
  readonly units: UnitSystem;
  readonly set: (changed: Partial<HoleDraft>) => void;
  readonly measure: (measured: Measured) => void;
}) {
  const faultOf = (field: HoleFault["field"]) => faults.find((fault) => fault.field === field)?.sentence;
  const unit = shownUnit("depth", units);
  const depth = readTypedNumber(draft.holeDepth, { label: "", moreThan: 0 });
  const depthWords = isRefused(depth) || depth.value === null ? null : quantityWords("depth", depth.value, units);
  return (
    <div class="hole-fields">
      <div class="hole-pair">
        <TextField label={words.hole} value={draft.hole} onInput={(hole) => set({ hole })} />
        <DateField label={words.date} value={draft.date} onInput={(date) => set({ date })} />
      </div>
      <TextField label={words.tester} value={draft.tester} onInput={(tester) => set({ tester })} />
      <Segmented
        label={words.soaked}
        hint={words.soakedHint}
        value={draft.soaked}
        choices={[
          { value: "yes", says: words.yes },
          { value: "no", says: words.no },
        ]}
        onChoose={(soaked) => set({ soaked })}
      />
      <div class="hole-pair">
        <NumberField
          label={words.holeDepth}
          hint={words.depthHint}
          unit={unit}
          value={draft.holeDepth}
          fault={faultOf("holeDepth")}
          onInput={(holeDepth) => set({ holeDepth })}
        />
        <NumberField
          label={words.holeDiameter}
          hint={words.diameterHint}
          unit={unit}
          value={draft.holeDiameter}
          fault={faultOf("holeDiameter")}
          onInput={(holeDiameter) => set({ holeDiameter })}
        />
      </div>
      <div role="status">
        {isUnlikelyDiameter(draft, units) && <MessageBar kind="warning">{holeTestText.smallDiameter(units)}</MessageBar>}
      </div>
      <Segmented
        label={words.measured}
        value={draft.measured}
        hint={draft.measured === "down" ? words.downExplained : undefined}
        fault={draft.measured === "up" ? markFault : null}
        choices={[
          { value: "up", says: words.up },
          { value: "down", says: words.down },
        ]}
        onChoose={measure}
      />
      {draft.measured === "down" && (
        <NumberField
          label={words.mark}
          hint={words.markHint(depthWords)}
          unit={unit}
          value={draft.mark}
          fault={faultOf("mark") ?? markFault}
          onInput={(mark) => set({ mark })}
        />
      )}
    </div>
  );
}

function isUnlikelyDiameter(draft: HoleDraft, units: UnitSystem): boolean {
  const typed = readTypedNumber(draft.holeDiameter, { label: "", moreThan: 0 });
  return !isRefused(typed) && typed.value !== null && toUs("depth", typed.value, units) < LEAST_LIKELY_DIAMETER_INCHES;
}
