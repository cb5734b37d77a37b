import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { Program } from "../../../addin/actions/program/read-program.ts";
import { mixRecipes } from "../../../functions/amendment/mix-recipes.ts";
import { BASIN_SHAPES, USUAL_OUTLINE } from "../../../functions/basin/basin-shape.ts";
import { DEEPEST_USUAL_PONDING_INCHES } from "../../../functions/basin/deepest-ponding.ts";
import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import { Fold } from "../../parts/fold.tsx";
import { ChoiceField, isEnterInField, NumberField } from "../../parts/form.tsx";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { numberWords, quantityWords } from "../../parts/quantity-words.ts";
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
  onEnter,
}: {
  readonly typed: TypedBasin;
  readonly faults: BasinAsRead["faults"];
  readonly draft: BasinDraft;
  readonly settings: Program["settings"];
  readonly units: UnitSystem;
  readonly set: (changed: Partial<TypedBasin>) => void;
  /** Enter in a field writes them all. */
  readonly onEnter: () => Promise<void>;
}) {
  const depth = (inches: number) => quantityWords("depth", fromUs("depth", inches, units), units);
  const ponding = valueOf(draft.pondingDepth);
  const pondingHint =
    typed.pondingDepth.trim() === "" && ponding !== null
      ? words.defaults.pondingNow(quantityWords("depth", ponding, units))
      : words.defaults.pondingDepth(depth(DEEPEST_USUAL_PONDING_INCHES));
  const field = (key: NumberInput, unit: string, hint: string, inForce: string) => (
    <NumberField
      label={words[key]}
      unit={unit}
      hint={hint}
      placeholder={inForce}
      value={typed[key]}
      fault={faults[key]}
      onInput={(text) => set({ [key]: text })}
    />
  );
  const inDepth = shownUnit("depth", units);
  const inLength = shownUnit("length", units);
  const inForce = (kind: "depth", inches: number) => numberWords(kind, fromUs(kind, inches, units), units);
  const outline = [typed.shape === null ? "" : words.shapes[draft.shape], typed.mixRecipe ?? ""].filter((said) => said !== "").join(", ");
  const more = [faults.roomLength, faults.roomWidth].some((fault) => fault !== undefined);
  return (
    <section
      class="basin-inputs"
      aria-label={words.title}
      onKeyDown={(event) => {
        if (isEnterInField(event)) void onEnter();
      }}
    >
      <div class="field-rows">
        {field(
          "stormDepth",
          inDepth,
          words.defaults.stormDepth(depth(settings.stormDepthInches)),
          inForce("depth", settings.stormDepthInches),
        )}
        {field("pondingDepth", inDepth, pondingHint, ponding === null ? "" : numberWords("depth", ponding, units))}
        {field("mediaDepth", inDepth, words.defaults.mediaDepth, "0")}
        {field("sideSlope", words.perRise, words.defaults.sideSlope(shown(settings.sideSlope, 2)), shown(settings.sideSlope, 2))}
        {field("lengthToWidth", words.perWidth, words.defaults.lengthToWidth, shown(USUAL_OUTLINE.lengthToWidth, 2))}
      </div>
      <Fold title={words.more} says={outline} needed={more}>
        <div class="field-rows">
          <ChoiceField
            label={words.shape}
            hint={words.defaults.shape}
            value={typed.shape}
            choices={SHAPES}
            blank={words.defaultShape}
            onChoose={(shape) => set({ shape })}
          />
          <ChoiceField
            label={words.mixRecipe}
            value={typed.mixRecipe}
            choices={RECIPES}
            blank={words.noMix}
            onChoose={(mixRecipe) => set({ mixRecipe })}
          />
          {field("roomLength", inLength, words.defaults.room, "")}
          {field("roomWidth", inLength, words.defaults.room, "")}
        </div>
      </Fold>
    </section>
  );
}
