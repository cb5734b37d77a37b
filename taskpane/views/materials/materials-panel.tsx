import type { ComponentChildren } from "preact";
import { basinInputsOf, draftBasin } from "../../../addin/actions/basin/draft-basin.ts";
import { draftMaterials, type MaterialsDraft } from "../../../addin/actions/estimate/draft-materials.ts";
import type { Answer } from "../../../addin/actions/worksheet-answers.ts";
import { PICKUP_TONS } from "../../../functions/earthwork/truck-loads.ts";
import { EARTH_SOILS, type EarthSoil } from "../../../functions/published/fm-5-434.ts";
import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import { useDraft } from "../../parts/drafts.ts";
import { ChoiceField, MessageBar, NumberField } from "../../parts/form.tsx";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { columnWords, quantityWords } from "../../parts/quantity-words.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import type { ViewProps } from "../../view.ts";
import { materialsText as words } from "./text.ts";
import "./materials.css";

/** As typed; blank where it is not known. */
interface TypedOrder {
  readonly soil: EarthSoil;
  readonly loadVolume: string;
  readonly loadWeight: string;
  readonly bagSize: string;
}

const NOTHING_TYPED: TypedOrder = { soil: "loam", loadVolume: "", loadWeight: "", bagSize: "" };

/** Dig, heap, loads, mix, mulch and stone of the yard's basin, in bulk and in bags, with what they weigh. */
export function MaterialsPanel({ program: { settings }, yard }: Pick<ViewProps, "program" | "yard">) {
  const { units } = yard;
  // A truck and a bag are the program's, not a yard's; kept apart by units, so that 5 cu yd never turn into 5 cubic meters.
  const typed = useDraft<TypedOrder>(`materials/${units}`, NOTHING_TYPED);
  const set = (changed: Partial<TypedOrder>) => typed.set((current) => ({ ...current, ...changed }));
  const { loadVolume, loadWeight, bagSize } = readOrder(typed.value);
  const basin = draftBasin(basinInputsOf(yard), settings);
  const drafted = draftMaterials(basin, settings, {
    soil: typed.value.soil,
    loadVolume: loadVolume.value,
    loadWeight: loadWeight.value,
    bagSize: bagSize.value,
  });
  return (
    <section class="materials" aria-label={words.title}>
      <h2>{words.title}</h2>
      {"sentence" in drafted.inPlace ? (
        <MessageBar kind="warning">{drafted.inPlace.sentence}</MessageBar>
      ) : (
        <>
          <p class="hint">{words.intro}</p>
          <div class="side-by-side">
            <ChoiceField
              label={words.soil}
              value={typed.value.soil}
              choices={EARTH_SOILS.map((soil) => ({ value: soil, says: words.soils[soil] }))}
              onChoose={(soil) => set({ soil: soil ?? "loam" })}
            />
            <NumberField
              label={words.loadVolume}
              unit={shownUnit("earthVolume", units)}
              value={typed.value.loadVolume}
              fault={loadVolume.fault}
              onInput={(text) => set({ loadVolume: text })}
            />
            <NumberField
              label={words.loadWeight}
              hint={words.loadWeightHint}
              unit={shownUnit("weight", units)}
              value={typed.value.loadWeight}
              fault={loadWeight.fault}
              onInput={(text) => set({ loadWeight: text })}
            />
            <NumberField
              label={words.bagSize}
              hint={words.bagHint[units]}
              unit={words.bagUnit[units]}
              value={typed.value.bagSize}
              fault={bagSize.fault}
              onInput={(text) => set({ bagSize: text })}
            />
          </div>
          <DigAndHaul drafted={drafted} units={units} />
          <ToBuy drafted={drafted} units={units} hasMix={basin.mix.length > 0} mixSentence={basin.mixSentence} />
          <Cautions drafted={drafted} units={units} />
        </>
      )}
    </section>
  );
}

function readOrder(typed: TypedOrder) {
  const number = (text: string, label: string) => {
    const read = readTypedNumber(text, { label, moreThan: 0 });
    return isRefused(read) ? { value: null, fault: read.sentence } : { value: read.value, fault: null };
  };
  return {
    loadVolume: number(typed.loadVolume, words.loadVolume),
    loadWeight: number(typed.loadWeight, words.loadWeight),
    bagSize: number(typed.bagSize, words.bagSize),
  };
}

type SpokenKind = Parameters<typeof quantityWords>[0];

function said(answer: Answer, kind: SpokenKind, units: UnitSystem): string {
  return "value" in answer ? quantityWords(kind, answer.value, units) : answer.sentence;
}

function DigAndHaul({ drafted, units }: { readonly drafted: MaterialsDraft; readonly units: UnitSystem }) {
  const { loads } = drafted;
  const loadsWords = loads === null ? words.dig.noLoads : "value" in loads ? words.dig.one(shown(loads.value, 0)) : loads.sentence;
  return (
    <div>
      <h3>{words.dig.title}</h3>
      <dl class="facts">
        <Fact label={words.dig.inPlace}>{said(drafted.inPlace, "earthVolume", units)}</Fact>
        <Fact label={words.dig.loose}>{said(drafted.loose, "earthVolume", units)}</Fact>
        <Fact label={words.dig.weight}>{said(drafted.earthWeight, "weight", units)}</Fact>
        <Fact label={words.dig.pile}>
          {words.dig.both(said(drafted.pileRadius, "length", units), said(drafted.pileHeight, "length", units))}
        </Fact>
        <Fact label={words.dig.ground}>{said(drafted.pileGround, "area", units)}</Fact>
        <Fact label={words.dig.loads}>{loadsWords}</Fact>
      </dl>
    </div>
  );
}

function Fact({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function ToBuy({
  drafted: { lines },
  units,
  hasMix,
  mixSentence,
}: {
  readonly drafted: MaterialsDraft;
  readonly units: UnitSystem;
  readonly hasMix: boolean;
  readonly mixSentence: string | null;
}) {
  const column = (answer: Answer | null, kind: SpokenKind) =>
    answer === null ? "" : "value" in answer ? columnWords(kind, answer.value, units) : words.none;
  const hasBags = lines.some(({ bags }) => bags !== null);
  const sentences = new Set(
    lines
      .flatMap(({ volume, weight, bags }) => [volume, weight, bags])
      .flatMap((answer) => (answer !== null && "sentence" in answer ? [answer.sentence] : [])),
  );
  return (
    <div>
      <h3>{words.buy.title}</h3>
      {!hasMix && <p class="hint">{mixSentence ?? words.buy.noMix}</p>}
      <table class="materials-table">
        <thead>
          <tr>
            <th scope="col">{words.buy.material}</th>
            <th scope="col">{words.buy.volume(shownUnit("earthVolume", units))}</th>
            <th scope="col">{words.buy.weight(shownUnit("weight", units))}</th>
            {hasBags && <th scope="col">{words.buy.bags}</th>}
          </tr>
        </thead>
        <tbody>
          {lines.map(({ material, volume, weight, weighedAs, bags }) => (
            <tr key={material}>
              <th scope="row">
                {material}
                {weighedAs !== null && weighedAs !== material && <span class="hint">{words.buy.weighedAs(weighedAs)}</span>}
              </th>
              <td>{column(volume, "earthVolume")}</td>
              <td>{column(weight, "weight")}</td>
              {hasBags && <td>{bags !== null && "value" in bags ? shown(bags.value, 0) : ""}</td>}
            </tr>
          ))}
        </tbody>
      </table>
      {[...sentences].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p class="hint">{words.buy.basis}</p>
    </div>
  );
}

function Cautions({ drafted: { pickupTrips, cautions }, units }: { readonly drafted: MaterialsDraft; readonly units: UnitSystem }) {
  const limit = quantityWords("weight", fromUs("weight", PICKUP_TONS, units), units);
  const trips = pickupTrips.map(({ material, trips: needed }) => words.cautions.trips(material, shown(needed, 0))).join(", ");
  const pickup = trips === "" ? [] : [words.cautions.pickup(trips, limit)];
  return (
    <div>
      <h3>{words.cautions.title}</h3>
      <ul class="bullets">
        {[...pickup, ...cautions, words.cautions.lifting].map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </div>
  );
}
