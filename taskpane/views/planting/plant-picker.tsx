import type { ComponentChildren } from "preact";
import {
  INDICATORS,
  plantsFor,
  RATING_REGIONS,
  SUN_LEVELS,
  type Indicator,
  type PalettePlant,
  type PlantWish,
  type RatingRegion,
  type SunLevel,
} from "../../../addin/actions/planting/palette.ts";
import { MOISTURE_ZONES, type MoistureZone } from "../../../addin/actions/planting/planting-zones.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Fold } from "../../parts/fold.tsx";
import { CheckField, ChoiceField, MessageBar, NumberField, Segmented } from "../../parts/form.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import { MONTHS } from "./bloom.ts";
import { plantingText } from "./text.ts";

const words = plantingText.picker;

/** The filters as typed. */
export interface TypedWish {
  readonly zone: MoistureZone;
  readonly sun: SunLevel | null;
  readonly region: RatingRegion | null;
  readonly atLeastAsWetAs: Indicator | null;
  readonly widestSpacing: string;
  readonly bloomMonth: string | null;
}

export const ANY_PLANT: TypedWish = { zone: "A", sun: null, region: null, atLeastAsWetAs: null, widestSpacing: "", bloomMonth: null };

/** The names chosen for each zone. */
export type ChosenNames = Readonly<Record<MoistureZone, readonly string[]>>;

function wishOf({ widestSpacing, bloomMonth, ...rest }: TypedWish): { readonly wish: PlantWish; readonly fault: string | null } {
  const spacing = readTypedNumber(widestSpacing, { label: words.spacing, moreThan: 0 });
  return {
    wish: {
      ...rest,
      widestSpacing: isRefused(spacing) ? null : spacing.value,
      bloomMonth: bloomMonth === null ? null : Number(bloomMonth),
    },
    fault: isRefused(spacing) ? spacing.sentence : null,
  };
}

export function PlantPicker({
  palette,
  typed,
  setWish,
  chosen,
  setChosen,
  units,
  needed,
  children,
}: {
  /** There is no plan yet. */
  readonly needed: boolean;
  readonly palette: readonly PalettePlant[];
  readonly typed: TypedWish;
  readonly setWish: (changed: Partial<TypedWish>) => void;
  readonly chosen: ChosenNames;
  readonly setChosen: (chosen: ChosenNames) => void;
  readonly units: UnitSystem;
  readonly children: ComponentChildren;
}) {
  const { wish, fault } = wishOf(typed);
  const suitable = plantsFor(palette, wish);
  const ofZone = chosen[wish.zone];
  const besides = ofZone.filter((name) => !suitable.some((plant) => plant.name === name));
  const toggle = (name: string, isOn: boolean) =>
    setChosen({ ...chosen, [wish.zone]: isOn ? [...ofZone, name] : ofZone.filter((other) => other !== name) });
  return (
    <Fold title={words.title} needed={needed}>
      <div class="plant-picker">
        {palette.length === 0 && <MessageBar kind="warning">{words.empty}</MessageBar>}
        <Segmented
          label={words.zone}
          value={typed.zone}
          choices={MOISTURE_ZONES.map((zone) => ({ value: zone, says: words.zones[zone] }))}
          onChoose={(zone) => setWish({ zone })}
        />
        <Filters typed={typed} setWish={setWish} units={units} fault={fault} />
        <div class="buttons">{children}</div>
        <h3>{words.plants(wish.zone)}</h3>
        {suitable.length === 0 ? <NoneSuits wish={wish} /> : <p class="hint">{words.count(suitable.length, ofZone.length)}</p>}
        <div class="plant-list">
          {suitable.map((plant) => (
            <div key={plant.name} class="plant-choice">
              <CheckField
                label={plantingText.named(plant.name, plant.commonName)}
                checked={ofZone.includes(plant.name)}
                onChange={(isOn) => toggle(plant.name, isOn)}
              />
              <p class="hint">{words.facts(factsOf(plant, wish.region, units))}</p>
            </div>
          ))}
        </div>
        {besides.length > 0 && (
          <div>
            <p class="hint">{words.chosenBesides(besides)}</p>
            {besides.map((name) => (
              <CheckField key={name} label={name} checked onChange={() => toggle(name, false)} />
            ))}
          </div>
        )}
      </div>
    </Fold>
  );
}

function Filters({
  typed,
  setWish,
  units,
  fault,
}: {
  readonly typed: TypedWish;
  readonly setWish: (changed: Partial<TypedWish>) => void;
  readonly units: UnitSystem;
  readonly fault: string | null;
}) {
  return (
    <div class="side-by-side">
      <ChoiceField
        label={words.sun}
        value={typed.sun}
        blank={words.anySun}
        choices={SUN_LEVELS.map((sun) => ({ value: sun, says: words.suns[sun] }))}
        onChoose={(sun) => setWish({ sun })}
      />
      <ChoiceField
        label={words.month}
        value={typed.bloomMonth}
        blank={words.anyMonth}
        choices={MONTHS.map((month) => ({ value: String(month), says: plantingText.months[month - 1] ?? "" }))}
        onChoose={(bloomMonth) => setWish({ bloomMonth })}
      />
      <NumberField
        label={words.spacing}
        hint={words.spacingHint}
        unit={shownUnit("length", units)}
        value={typed.widestSpacing}
        fault={fault}
        onInput={(widestSpacing) => setWish({ widestSpacing })}
      />
      <ChoiceField
        label={words.region}
        value={typed.region}
        blank={words.noRegion}
        choices={RATING_REGIONS.map((region) => ({ value: region, says: words.regions[region] }))}
        onChoose={(region) => setWish({ region, ...(region === null ? { atLeastAsWetAs: null } : {}) })}
      />
      {typed.region !== null && (
        <ChoiceField
          label={words.indicator}
          value={typed.atLeastAsWetAs}
          blank={words.anyIndicator}
          choices={INDICATORS.map((indicator) => ({ value: indicator, says: words.indicators[indicator] }))}
          onChoose={(atLeastAsWetAs) => setWish({ atLeastAsWetAs })}
        />
      )}
    </div>
  );
}

function NoneSuits({ wish: { zone, sun, atLeastAsWetAs, widestSpacing, bloomMonth } }: { readonly wish: PlantWish }) {
  const hasOthers = atLeastAsWetAs !== null || widestSpacing !== null || bloomMonth !== null;
  return (
    <MessageBar kind="warning">
      <p>{words.none(zone, sun)}</p>
      {hasOthers && <p>{words.noneAdvice.filters}</p>}
      {sun !== null && sun !== "sun" && <p>{words.noneAdvice.sun}</p>}
      <p>{words.noneAdvice.zone}</p>
    </MessageBar>
  );
}

function factsOf(plant: PalettePlant, region: RatingRegion | null, units: UnitSystem): readonly string[] {
  const rating = region === null ? null : plant.ratings[region];
  return [
    plant.form,
    plant.spacing === null ? words.noSpacing : words.apart(quantityWords("length", plant.spacing, units)),
    plant.sun.join(", "),
    plant.bloomMonths.length === 0 ? "" : words.blooms(monthsWords(plant.bloomMonths)),
    region === null ? "" : rating === null ? words.notRated : words.rated(rating),
    plant.cautions ?? "",
  ].filter((fact) => fact !== "");
}

function monthsWords(months: readonly number[]): string {
  const short = (month: number | undefined) => (plantingText.months[(month ?? 1) - 1] ?? "").slice(0, 3);
  return months.length === 1 ? short(months[0]) : `${short(months[0])}–${short(months.at(-1))}`;
}
