import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { Program } from "../../../addin/actions/program/read-program.ts";
import { mixRecipes } from "../../../functions/amendment/mix-recipes.ts";
import { BASIN_SHAPES } from "../../../functions/basin/basin-shape.ts";
import { DEEPEST_USUAL_PONDING_INCHES } from "../../../functions/basin/deepest-ponding.ts";
import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import { ChoiceField, NumberField } from "../../parts/form.tsx";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { valueOf } from "./basin-checks.ts";
import type { BasinAsRead, NumberInput, TypedBasin } from "./basin-form.ts";
import { basinText } from "./text.ts";

const words = basinText.fields;

const SHAPES = BASIN_SHAPES.map((shape) => ({ value: shape, says: words.shapes[shape] }));

const RECIPES = mixRecipes.map(({ name }) => ({ value: name, says: name }));

/** The design inputs, each with the default that a blank takes. */
export function BasinFields({
  typed,
  faults,
  draft,
  settings,
  units,
  set,
}: {
  readonly typed: TypedBasin;
  readonly faults: BasinAsRead["faults"];
  readonly draft: BasinDraft;
  readonly settings: Program["settings"];
  readonly units: UnitSystem;
  readonly set: (changed: Partial<TypedBasin>) => void;
}) {
  const depth = (inches: number) => quantityWords("depth", fromUs("depth", inches, units), units);
  const ponding = valueOf(draft.pondingDepth);
  const pondingHint =
    typed.pondingDepth.trim() === "" && ponding !== null
      ? words.defaults.pondingNow(quantityWords("depth", ponding, units))
      : words.defaults.pondingDepth(depth(DEEPEST_USUAL_PONDING_INCHES));
  const field = (key: NumberInput, unit: string, hint: string) => (
    <NumberField
      label={words[key]}
      unit={unit}
      hint={hint}
      value={typed[key]}
      fault={faults[key]}
      onInput={(text) => set({ [key]: text })}
    />
  );
  const inDepth = shownUnit("depth", units);
  const inLength = shownUnit("length", units);
  return (
    <section class="side-by-side" aria-label={words.title}>
      <h2>{words.title}</h2>
      {field("stormDepth", inDepth, words.defaults.stormDepth(depth(settings.stormDepthInches)))}
      {field("pondingDepth", inDepth, pondingHint)}
      {field("mediaDepth", inDepth, words.defaults.mediaDepth)}
      {field("sideSlope", words.perRise, words.defaults.sideSlope(shown(settings.sideSlope, 2)))}
      <ChoiceField
        label={words.shape}
        hint={words.defaults.shape}
        value={typed.shape}
        choices={SHAPES}
        blank={words.defaultShape}
        onChoose={(shape) => set({ shape })}
      />
      {field("lengthToWidth", words.perWidth, words.defaults.lengthToWidth)}
      <ChoiceField
        label={words.mixRecipe}
        value={typed.mixRecipe}
        choices={RECIPES}
        blank={words.noMix}
        onChoose={(mixRecipe) => set({ mixRecipe })}
      />
      {field("roomLength", inLength, words.defaults.room)}
      {field("roomWidth", inLength, words.defaults.room)}
    </section>
  );
}
