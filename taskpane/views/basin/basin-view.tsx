import { useMemo, useState } from "preact/hooks";
import { today } from "../../../addin/actions/dates.ts";
import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import { writeBasin } from "../../../addin/actions/yard/record-yard.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { routeBasin } from "../../../addin/actions/basin/route-basin.ts";
import type { StormType } from "../../../functions/published/scs-24-hour-storms.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { useDraft } from "../../parts/drafts.ts";
import { CaptureCurveView } from "../../parts/capture/capture-curve.tsx";
import { Fold } from "../../parts/fold.tsx";
import { Button } from "../../parts/form.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { quantityWords } from "../../parts/quantity-words.ts";
import { useWorkedOutLater } from "../../parts/worked-out-later.ts";
import type { ViewProps } from "../../view.ts";
import { ALTERNATIVE_NAMES, compareAlternatives, workOut, type AlternativeName, type KeptAlternatives } from "./alternatives.ts";
import { Alternatives } from "./alternatives-view.tsx";
import { drawingCautions, valueOf } from "./basin-checks.ts";
import { basinDimensions } from "./basin-dimensions.ts";
import { BasinDrawings, DrawingFold } from "./basin-drawings.tsx";
import { BasinFields } from "./basin-fields.tsx";
import {
  differencesFrom,
  groundsOf,
  inputsFor,
  NOTHING_ASSUMED,
  typedFrom,
  typedWith,
  type Assumed,
  type TypedBasin,
} from "./basin-form.ts";
import { AssumedBar, Missing, Origins } from "./basin-grounds.tsx";
import { BasinHeadline } from "./basin-headline.tsx";
import { BasinResults } from "./basin-results.tsx";
import { Differences, SheetAnswer } from "./basin-sheet.tsx";
import { Cautions, Checks, RoomRemedy } from "./basin-verdicts.tsx";
import { costOfDraft, costWords, type DraftCost } from "./cost-words.ts";
import { Earthwork } from "./earthwork-view.tsx";
import { StormRouting } from "./storm-routing.tsx";
import { basinText } from "./text.ts";
import "./basin.css";

/** The basin of a yard: inputs tried out live, the drawing, the checks, and what writing would change. */
export function BasinView({ program, yard, workbook, write }: ViewProps) {
  const { units } = yard;
  // The cells alone, because a draft is kept as plain data: where they stand is the row's to say.
  const form = useDraft<TypedBasin, Yard["site"]["cells"]>(`${yard.siteId}/basin`, typedFrom(yard), yard.site.cells);
  // These are never written, so they are no unwritten entry of the yard and their keys do not begin with the yard's.
  const assumed = useDraft<Assumed>(`assumed/${yard.siteId}`, NOTHING_ASSUMED);
  const kept = useDraft<KeptAlternatives>(`alternatives/${yard.siteId}`, {});
  const storm = useDraft<StormType>(`storm/${yard.siteId}`, "II");
  const [refusal, refuse] = useState<string | null>(null);

  // A draft may be from before a field was there.
  const typed = { ...typedFrom(yard), ...form.value };
  const grounds = groundsOf(yard, assumed.value);
  const basis = [program, yard.siteId, JSON.stringify(grounds)];
  const worked = useMemo(() => workOut(typed, program, yard, grounds), [...basis, JSON.stringify(typed)]);
  const alternatives = useMemo(
    () => ALTERNATIVE_NAMES.map((name) => (kept.value[name] === undefined ? null : workOut(kept.value[name], program, yard, grounds))),
    [...basis, JSON.stringify(kept.value)],
  );
  const { entry, faults, draft, room, checks, verdict } = worked;
  const routed = useWorkedOutLater(() => routeBasin(inputsFor(yard, entry, grounds), draft, storm.value), [worked, storm.value]);
  const cost = useWorkedOutLater(() => costOfDraft(program, yard, draft, today()), [worked]);
  const dimensions = basinDimensions(draft, program.settings.mulchDepthInches);
  const faulty = Object.keys(faults).length > 0;
  const isAssumed = (grounds.areaMissing && grounds.contributingArea !== null) || (grounds.rateMissing && grounds.testedRate !== null);
  const cautions = [
    ...new Set([...draft.cautions, ...(draft.earthwork?.cautions ?? []), ...(dimensions === null ? [] : drawingCautions(dimensions))]),
  ];
  const seen: Yard = { ...yard, site: { ...yard.site, cells: form.basis } };
  const differences = differencesFrom(seen, entry);
  const view = { program, yard, workbook, write };
  const tune = (changed: Partial<TypedBasin>) => {
    refuse(null);
    form.set((current) => ({ ...current, ...changed }));
  };

  const save = async () => {
    refuse(faulty ? basinText.sheet.fixFirst : null);
    if (faulty) return;
    if (await write(() => writeBasin(workbook, seen, entry), basinText.sheet.done(yard.siteId))) form.clear();
  };

  /** What the sheet shows now is what the person chooses over: the table beside it is worked out from the same reading. */
  const choose = async (name: AlternativeName) => {
    const chosen = alternatives[ALTERNATIVE_NAMES.indexOf(name)];
    if (chosen === null || chosen === undefined) return;
    const written = await write(() => writeBasin(workbook, yard, chosen.entry), basinText.alternatives.done(name, yard.siteId));
    if (written && JSON.stringify(typed) === JSON.stringify(kept.value[name])) form.clear();
  };

  return (
    <>
      <BasinHeadline
        draft={draft}
        verdict={verdict}
        assumed={isAssumed}
        units={units}
        unsaved={form.touched || differences.length > 0}
        onSave={save}
      />
      {(grounds.areaMissing || grounds.rateMissing) && (
        <Missing
          grounds={grounds}
          assumed={assumed.value}
          units={units}
          set={(changed) => assumed.set((current) => ({ ...current, ...changed }))}
        />
      )}
      {isAssumed && <AssumedBar grounds={grounds} />}
      <BasinDrawings basin={dimensions} assumed={isAssumed} pulling={{ draft, onTune: tune }} />
      <BasinFields typed={typed} faults={faults} draft={draft} settings={program.settings} units={units} set={tune} onEnter={save} />
      <section class="sheet-part" aria-label={basinText.sheet.title}>
        <Differences differences={differences} touched={form.touched} units={units} />
        {isAssumed && <p class="hint">{basinText.sheet.assumedStay}</p>}
        {!isAssumed && differences.length === 0 && <SheetAnswer yard={yard} draft={draft} />}
        <p class="fault" role="status">
          {refusal ?? ""}
        </p>
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
      </section>
      <RoomRemedy room={room} units={units} onUse={(remedy) => tune(typedWith(typed, remedy))} />
      <Checks checks={checks} />
      <Cautions cautions={cautions} />
      <LiveSentence says={announcement(draft, units)} />
      <div class="folds">
        <BasinResults draft={draft} units={units} assumed={isAssumed} />
        <Origins draft={draft} grounds={grounds} units={units} />
        <Earthwork draft={draft} />
        {cost !== null && <Cost cost={cost} />}
        <Alternatives
          kept={new Set(ALTERNATIVE_NAMES.filter((name) => kept.value[name] !== undefined))}
          rows={compareAlternatives(
            alternatives,
            alternatives.map((one) => (one === null ? null : (costOfDraft(program, yard, one.draft, today())?.cost ?? null))),
          )}
          faulty={faulty}
          onKeep={(name) => kept.set((current) => ({ ...current, [name]: typed }))}
          onOpen={(name) => tune(kept.value[name] ?? {})}
          onChoose={choose}
        />
        <StormRouting routed={routed} type={storm.value} units={units} onType={(type) => storm.set(type)} />
        <CaptureCurveView workbook={workbook} inputs={inputsFor(yard, entry, grounds)} draft={draft} />
        {dimensions !== null && <DrawingFold {...view} draft={draft} basin={dimensions} assumed={isAssumed} />}
      </div>
    </>
  );
}

function Cost({ cost: { cost, contingencyPercent, unpriced } }: { readonly cost: DraftCost }) {
  const words = basinText.cost;
  return (
    <Fold title={words.label} says={costWords(cost) ?? ""}>
      {"sentence" in cost ? (
        <p class="hint">{cost.sentence}</p>
      ) : (
        <>
          <p class="result-number">{costWords(cost)}</p>
          <p class="hint">{words.hint(quantityWords("percent", contingencyPercent, "us"))}</p>
          {unpriced > 0 && <p class="result-none">{words.unpriced(unpriced)}</p>}
        </>
      )}
    </Fold>
  );
}

function announcement(draft: BasinDraft, units: UnitSystem): string {
  const floor = valueOf(draft.floorArea);
  const drawdown = valueOf(draft.drawdownHours);
  if (floor === null || drawdown === null) return draft.status === "" ? basinText.checks.nothingYet : draft.status;
  return basinText.results.announced(
    quantityWords("area", floor, units),
    quantityWords("hours", drawdown, units),
    draft.status === "fits" ? basinText.checks.fits : draft.status,
  );
}
