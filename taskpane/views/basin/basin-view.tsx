import { useMemo, useState } from "preact/hooks";
import type { Remedy, RoomCheck } from "../../../addin/actions/basin/basin-room.ts";
import { today } from "../../../addin/actions/dates.ts";
import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import { writeBasin } from "../../../addin/actions/yard/record-yard.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { routeBasin } from "../../../addin/actions/basin/route-basin.ts";
import type { StormType } from "../../../functions/published/scs-24-hour-storms.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { useDraft } from "../../parts/drafts.ts";
import { CaptureCurveView } from "../../parts/capture/capture-curve.tsx";
import { Button, MessageBar, NumberField, VerdictBadge } from "../../parts/form.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import type { ViewProps } from "../../view.ts";
import { ALTERNATIVE_NAMES, compareAlternatives, workOut, type AlternativeName, type KeptAlternatives } from "./alternatives.ts";
import { Alternatives } from "./alternatives-view.tsx";
import { drawingCautions, pondingHours, remedyWords, valueOf, type BasinCheck } from "./basin-checks.ts";
import { basinDimensions } from "./basin-dimensions.ts";
import { BasinDrawings } from "./basin-drawings.tsx";
import { BasinFields } from "./basin-fields.tsx";
import {
  differencesFrom,
  groundsOf,
  inputsFor,
  NOTHING_ASSUMED,
  typedFrom,
  typedWith,
  type Assumed,
  type Difference,
  type Grounds,
  type TypedBasin,
} from "./basin-form.ts";
import { BasinResults } from "./basin-results.tsx";
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
  const routed = useMemo(() => routeBasin(inputsFor(yard, entry, grounds), draft, storm.value), [worked, storm.value]);
  const cost = useMemo(() => costOfDraft(program, yard, draft, today()), [worked]);
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
      {(grounds.areaMissing || grounds.rateMissing) && (
        <Missing
          grounds={grounds}
          assumed={assumed.value}
          units={units}
          set={(changed) => assumed.set((current) => ({ ...current, ...changed }))}
        />
      )}
      {isAssumed && <MessageBar kind="warning">{assumedWords(grounds)}</MessageBar>}
      <Headline draft={draft} verdict={verdict} assumed={isAssumed} units={units} />
      <BasinFields typed={typed} faults={faults} draft={draft} settings={program.settings} units={units} set={tune} />
      <RoomRemedy room={room} units={units} onUse={(remedy) => tune(typedWith(typed, remedy))} />
      <Origins draft={draft} grounds={grounds} units={units} />
      <BasinResults draft={draft} units={units} assumed={isAssumed} />
      {cost !== null && <Cost cost={cost} />}
      <Earthwork draft={draft} />
      <Checks checks={checks} />
      <Cautions cautions={cautions} />
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
      <BasinDrawings {...view} draft={draft} basin={dimensions} assumed={isAssumed} />
      <LiveSentence says={announcement(draft, units)} />
      <section class="sheet-part" aria-label={basinText.sheet.title}>
        <h2>{basinText.sheet.title}</h2>
        <Differences differences={differences} touched={form.touched} units={units} />
        {isAssumed && <p class="hint">{basinText.sheet.assumedStay}</p>}
        {!isAssumed && differences.length === 0 && <SheetAnswer yard={yard} draft={draft} />}
        <p class="fault" role="status">
          {refusal ?? ""}
        </p>
        <div class="buttons">
          <Button kind="primary" disabled={!form.touched && differences.length === 0} onClick={save}>
            {basinText.sheet.write}
          </Button>
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
function Headline({
  draft,
  verdict,
  assumed,
  units,
}: {
  readonly draft: BasinDraft;
  readonly verdict: BasinCheck["verdict"];
  readonly assumed: boolean;
  readonly units: UnitSystem;
}) {
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
function Missing({
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

/** What would fit where this basin does not, and the inputs for it in one tap. */
function RoomRemedy({
  room,
  units,
  onUse,
}: {
  readonly room: RoomCheck;
  readonly units: UnitSystem;
  readonly onUse: (remedy: Remedy) => void;
}) {
  if (room.verdict !== "too large") return null;
  const { remedy } = room;
  const words = basinText.room;
  if (remedy === null) return <MessageBar kind="warning">{words.none}</MessageBar>;
  return (
    <MessageBar kind="warning" actions={<Button onClick={() => onUse(remedy)}>{words.use}</Button>}>
      {remedyWords(remedy, units)}
    </MessageBar>
  );
}

function Cost({ cost: { cost, contingencyPercent, unpriced } }: { readonly cost: DraftCost }) {
  const words = basinText.cost;
  return (
    <section class="results" aria-label={words.label}>
      <h2>{words.label}</h2>
      {"sentence" in cost ? (
        <p class="hint">{cost.sentence}</p>
      ) : (
        <>
          <p class="result-number">{costWords(cost)}</p>
          <p class="hint">{words.hint(quantityWords("percent", contingencyPercent, "us"))}</p>
          {unpriced > 0 && <p class="result-none">{words.unpriced(unpriced)}</p>}
        </>
      )}
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
        <MessageBar key={caution} kind="warning">
          {caution}
        </MessageBar>
      ))}
    </section>
  );
}

function Differences({
  differences,
  touched,
  units,
}: {
  readonly differences: readonly Difference[];
  readonly touched: boolean;
  readonly units: UnitSystem;
}) {
  const words = basinText.sheet;
  if (differences.length === 0) return <p class="hint">{words.same}</p>;
  return (
    <div class={touched ? "unsaved" : ""}>
      <p>{words.willChange}</p>
      <ul class="bullets">
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
  if (field === "sideSlope") return `${shown(value, 2)} ${basinText.fields.perRise}`;
  if (field === "lengthToWidth") return `${shown(value, 2)} ${basinText.fields.perWidth}`;
  return quantityWords(field === "roomLength" || field === "roomWidth" ? "length" : "depth", value, units);
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
  return basinText.results.announced(
    quantityWords("area", floor, units),
    quantityWords("hours", drawdown, units),
    draft.status === "fits" ? basinText.checks.fits : draft.status,
  );
}
