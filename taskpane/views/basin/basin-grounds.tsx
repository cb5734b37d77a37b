import type { UnitSystem } from "../../../functions/quantities.ts";
import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import { Fold } from "../../parts/fold.tsx";
import { MessageBar, NumberField } from "../../parts/form.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { valueOf } from "./basin-checks.ts";
import type { Assumed, Grounds } from "./basin-form.ts";
import { basinText } from "./text.ts";

/** What to do next and where, and the numbers to try meanwhile. */
export function Missing({
  grounds,
  assumed,
  units,
  set,
}: {
  readonly grounds: Grounds;
  readonly assumed: Assumed;
  readonly units: UnitSystem;
  readonly set: (changed: Partial<Assumed>) => void;
}) {
  const words = basinText.assumed;
  return (
    <section class="card" aria-label={words.title}>
      <h2>{words.title}</h2>
      {grounds.areaMissing && <p>{words.area}</p>}
      {grounds.rateMissing && <p>{words.rate}</p>}
      <p class="hint">{words.whatIf}</p>
      {grounds.areaMissing && (
        <NumberField
          label={words.contributingArea}
          unit={shownUnit("area", units)}
          value={assumed.contributingArea}
          fault={grounds.faults.contributingArea}
          onInput={(contributingArea) => set({ contributingArea })}
        />
      )}
      {grounds.rateMissing && (
        <NumberField
          label={words.testedRate}
          unit={shownUnit("rate", units)}
          value={assumed.testedRate}
          fault={grounds.faults.testedRate}
          onInput={(testedRate) => set({ testedRate })}
        />
      )}
    </section>
  );
}

/** That a number is assumed, before any number that rests on it. */
export function AssumedBar({ grounds }: { readonly grounds: Grounds }) {
  return <MessageBar kind="warning">{assumedWords(grounds)}</MessageBar>;
}

function assumedWords({ areaMissing, rateMissing, contributingArea, testedRate }: Grounds): string {
  const words = basinText.assumed;
  const area = areaMissing && contributingArea !== null;
  const rate = rateMissing && testedRate !== null;
  return words.marked(area && rate ? words.bothName : area ? words.areaName : words.rateName);
}

/** What the basin is worked out from. */
export function Origins({ draft, grounds, units }: { readonly draft: BasinDraft; readonly grounds: Grounds; readonly units: UnitSystem }) {
  const words = basinText.from;
  const line = (label: string, value: number | null, kind: "area" | "rate", assumed: boolean) => (
    <div>
      <dt>{label}</dt>
      <dd>
        {value === null ? words.notKnown : quantityWords(kind, value, units)}
        {assumed && value !== null && <span class="assumed-mark">{basinText.assumed.mark}</span>}
      </dd>
    </div>
  );
  const rate = valueOf(draft.designRate);
  return (
    <Fold title={words.title} says={rate === null ? "" : quantityWords("rate", rate, units)}>
      <dl class="facts">
        {line(words.contributingArea, grounds.contributingArea, "area", grounds.areaMissing)}
        {line(words.testedRate, grounds.testedRate, "rate", grounds.rateMissing)}
        {line(words.designRate, valueOf(draft.designRate), "rate", grounds.rateMissing)}
      </dl>
    </Fold>
  );
}
