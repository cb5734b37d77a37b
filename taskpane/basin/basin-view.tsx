import { useMemo, useState } from "preact/hooks";
import { draftBasin } from "../../addin/actions/draft-basin.ts";
import type { BasinDraft } from "../../addin/actions/draft-basin.ts";
import { writeBasin } from "../../addin/actions/record-yard.ts";
import type { Yard } from "../../addin/actions/read-program.ts";
import type { UnitSystem } from "../../functions/quantities.ts";
import { useDraft } from "../drafts.ts";
import { Button, MessageBar, NumberField, VerdictBadge } from "../form.tsx";
import { LiveSentence } from "../live-sentence.tsx";
import { shown, shownUnit } from "../numbers.ts";
import { quantityWords } from "../quantity-words.ts";
import type { ViewProps } from "../view.ts";
import { basinChecks, drawingCautions, pondingHours, valueOf, worstOf } from "./basin-checks.ts";
import type { BasinCheck } from "./basin-checks.ts";
import { basinDimensions } from "./basin-dimensions.ts";
import { BasinDrawings } from "./basin-drawings.tsx";
import { BasinFields } from "./basin-fields.tsx";
import { differencesFrom, groundsOf, inputsFor, NOTHING_ASSUMED, readBasin, typedFrom } from "./basin-form.ts";
import type { Assumed, Difference, Grounds, TypedBasin } from "./basin-form.ts";
import { BasinResults } from "./basin-results.tsx";
import { basinText } from "./text.ts";
import "./basin.css";

/** The basin of a yard: inputs tried out live, the drawing, the checks, and what writing would change. */
export function BasinView({ program, yard, workbook, write }: ViewProps) {
  const { units } = yard;
  const form = useDraft<TypedBasin, Yard["site"]>(`${yard.siteId}/basin`, typedFrom(yard), yard.site);
  // Never written, so it is no unwritten entry of the yard and its key does not begin with the yard's.
  const assumed = useDraft<Assumed>(`assumed/${yard.siteId}`, NOTHING_ASSUMED);
  const [refusal, refuse] = useState<string | null>(null);

  const { entry, faults } = readBasin(form.value);
  const grounds = groundsOf(yard, assumed.value);
  const inputs = inputsFor(yard, entry, grounds);
  const draft = useMemo(() => draftBasin(inputs, program.settings), [JSON.stringify(inputs), program.settings]);
  const slope = typeof yard.design.groundSlopePercent === "number" ? yard.design.groundSlopePercent : null;
  const dimensions = basinDimensions(draft, program.settings.mulchDepthInches, slope, units);
  const faulty = Object.keys(faults).length > 0;
  const isAssumed = (grounds.areaMissing && grounds.contributingArea !== null) || (grounds.rateMissing && grounds.testedRate !== null);
  const checks = basinChecks(draft, grounds.testedRate, slope, program.rules, units);
  const cautions = [...draft.cautions, ...(dimensions === null ? [] : drawingCautions(dimensions))];
  const differences = differencesFrom({ ...yard, site: form.basis }, entry);

  const save = async () => {
    refuse(faulty ? basinText.sheet.fixFirst : null);
    if (faulty) return;
    const seen: Yard = { ...yard, site: form.basis };
    if (await write(() => writeBasin(workbook, seen, entry), basinText.sheet.done(yard.siteId))) form.clear();
  };

  return (
    <>
      {(grounds.areaMissing || grounds.rateMissing) && (
        <Missing grounds={grounds} assumed={assumed.value} units={units} set={(changed) => assumed.set((current) => ({ ...current, ...changed }))} />
      )}
      {isAssumed && <MessageBar kind="warning">{assumedWords(grounds)}</MessageBar>}
      <Headline draft={draft} verdict={worstOf(checks)} assumed={isAssumed} units={units} />
      <BasinFields
        typed={form.value}
        faults={faults}
        draft={draft}
        settings={program.settings}
        units={units}
        set={(changed) => {
          refuse(null);
          form.set((current) => ({ ...current, ...changed }));
        }}
      />
      <Origins draft={draft} grounds={grounds} units={units} />
      <BasinResults draft={draft} units={units} assumed={isAssumed} />
      <Checks checks={checks} />
      <Cautions cautions={cautions} />
      <BasinDrawings basin={dimensions} assumed={isAssumed} />
      <LiveSentence says={announcement(draft, units)} />
      <section class="sheet-part" aria-label={basinText.sheet.title}>
        <h2>{basinText.sheet.title}</h2>
        <Differences differences={differences} touched={form.touched} units={units} />
        {isAssumed && <p class="hint">{basinText.sheet.assumedStay}</p>}
        {!isAssumed && differences.length === 0 && <SheetAnswer yard={yard} draft={draft} />}
        <p class="fault" role="status">{refusal ?? ""}</p>
        <div class="buttons">
          <Button kind="primary" disabled={!form.touched && differences.length === 0} onClick={save}>{basinText.sheet.write}</Button>
          {form.touched && (
            <Button
              kind="quiet"
              onClick={() => {
                refuse(null);
                form.clear();
              }}
            >
              {basinText.sheet.back}
            </Button>
          )}
        </div>
      </section>
    </>
  );
}

/** The answer, in sight while the inputs are tuned. */
function Headline({ draft, verdict, assumed, units }: { readonly draft: BasinDraft; readonly verdict: BasinCheck["verdict"]; readonly assumed: boolean; readonly units: UnitSystem }) {
  const floor = valueOf(draft.floorArea);
  const standing = pondingHours(draft, units);
  return (
    <div class="basin-headline">
      <p>
        <strong>{floor === null ? basinText.results.none : quantityWords("area", floor, units)}</strong>
        {standing !== null && <span>{basinText.results.pondingGone(quantityWords("hours", standing, units))}</span>}
        {assumed && <span class="assumed-mark">{basinText.assumed.mark}</span>}
      </p>
      <VerdictBadge verdict={verdict} />
    </div>
  );
}

/** What to do next and where, and the numbers to try meanwhile. */
function Missing({ grounds, assumed, units, set }: {
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
        <NumberField label={words.testedRate} unit={shownUnit("rate", units)} value={assumed.testedRate} fault={grounds.faults.testedRate} onInput={(testedRate) => set({ testedRate })} />
      )}
    </section>
  );
}

function assumedWords({ areaMissing, rateMissing, contributingArea, testedRate }: Grounds): string {
  const words = basinText.assumed;
  const area = areaMissing && contributingArea !== null;
  const rate = rateMissing && testedRate !== null;
  return words.marked(area && rate ? words.bothName : area ? words.areaName : words.rateName);
}

function Origins({ draft, grounds, units }: { readonly draft: BasinDraft; readonly grounds: Grounds; readonly units: UnitSystem }) {
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
  return (
    <section aria-label={words.title}>
      <h2>{words.title}</h2>
      <dl class="facts">
        {line(words.contributingArea, grounds.contributingArea, "area", grounds.areaMissing)}
        {line(words.testedRate, grounds.testedRate, "rate", grounds.rateMissing)}
        {line(words.designRate, valueOf(draft.designRate), "rate", grounds.rateMissing)}
      </dl>
    </section>
  );
}

function Checks({ checks }: { readonly checks: readonly BasinCheck[] }) {
  const words = basinText.checks;
  return (
    <section aria-label={words.title}>
      <h2>{words.title}</h2>
      <ul class="checks">
        {checks.map(({ name, words: says, verdict }) => (
          <li key={name}>
            <div>
              <span class="check-name">{name}</span>
              <span>{says}</span>
            </div>
            <VerdictBadge verdict={verdict} />
          </li>
        ))}
      </ul>
      <p class="hint">{words.localCodes}</p>
    </section>
  );
}

function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <section aria-label={basinText.cautions.title}>
      <h2>{basinText.cautions.title}</h2>
      {cautions.map((caution) => (
        <MessageBar key={caution} kind="warning">{caution}</MessageBar>
      ))}
    </section>
  );
}

function Differences({ differences, touched, units }: { readonly differences: readonly Difference[]; readonly touched: boolean; readonly units: UnitSystem }) {
  const words = basinText.sheet;
  if (differences.length === 0) return <p class="hint">{words.same}</p>;
  return (
    <div class={touched ? "unsaved" : ""}>
      <p>{words.willChange}</p>
      <ul class="differences">
        {differences.map(({ field, onSheet, here }) => (
          <li key={field}>{words.line(basinText.fields[field], cellWords(field, onSheet, units), cellWords(field, here, units))}</li>
        ))}
      </ul>
    </div>
  );
}

function cellWords(field: Difference["field"], value: Difference["here"], units: UnitSystem): string {
  if (value === null || value === "") return basinText.sheet.blank;
  if (typeof value !== "number") return basinText.sheet.text(String(value));
  return field === "sideSlope" ? `${shown(value, 2)} ${basinText.fields.perRise}` : quantityWords("depth", value, units);
}

/** The sheet's own floor area beside the pane's: the same cells must give the same number. */
function SheetAnswer({ yard, draft }: { readonly yard: Yard; readonly draft: BasinDraft }) {
  const { floorArea } = yard.design;
  const here = valueOf(draft.floorArea);
  if (typeof floorArea !== "number" || here === null) return null;
  const onSheet = quantityWords("area", floorArea, yard.units);
  if (Math.abs(floorArea - here) <= 1e-9 * Math.abs(floorArea)) return <p class="hint">{basinText.sheet.computes(onSheet)}</p>;
  return <MessageBar kind="warning">{basinText.sheet.differs(onSheet, quantityWords("area", here, yard.units))}</MessageBar>;
}

function announcement(draft: BasinDraft, units: UnitSystem): string {
  const floor = valueOf(draft.floorArea);
  const drawdown = valueOf(draft.drawdownHours);
  if (floor === null || drawdown === null) return draft.status === "" ? basinText.checks.nothingYet : draft.status;
  return basinText.results.announced(quantityWords("area", floor, units), quantityWords("hours", drawdown, units), draft.status === "fits" ? basinText.checks.fits : draft.status);
}
