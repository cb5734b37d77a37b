import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { countsInMix } from "../../../addin/actions/planting/draft-planting.ts";
import type { DrawnPlan } from "../../../addin/actions/planting/plan.ts";
import { plantsByKind } from "../../../addin/actions/planting/plant-counts.ts";
import { MOISTURE_ZONES, type PlantingZones } from "../../../addin/actions/planting/planting-zones.ts";
import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import { Patterns } from "../basin/drafting.tsx";
import { Fold } from "../../parts/fold.tsx";
import { MessageBar } from "../../parts/form.tsx";
import { quantityWords } from "../../parts/quantity-words.ts";
import { MarkKey } from "./plant-mark.tsx";
import type { PlantMark } from "./plant-marks.ts";
import { PlantingDrawing } from "./planting-drawing.tsx";
import { plantingText } from "./text.ts";
import type { Plan } from "./use-plan.ts";

const words = plantingText.plan;

/** How far an arrow key moves a clump, in feet. */
const STEP_FEET = 0.5;

/** The drawing with its legend, its counts, the ground that SOAK.PLANTMIX finds bare, and what of the rows is not in it. */
export function PlanSection({
  plan,
  marks,
  children,
}: {
  readonly plan: Plan;
  readonly marks: ReadonlyMap<string, PlantMark>;
  readonly children: ComponentChildren;
}) {
  const { zones, drawn, nameOf, sentence, form } = plan;
  return (
    <section aria-label={words.title}>
      {sentence !== null && <MessageBar kind="warning">{sentence}</MessageBar>}
      {form.value.length === 0 && <p class="hint">{words.none}</p>}
      {zones !== null && (
        <>
          <PlantingDrawing
            zones={zones}
            standing={drawn.standing}
            marks={marks}
            nameOf={nameOf}
            chosen={plan.chosen?.id ?? null}
            choose={plan.choose}
            chooseNext={(step) => chooseNext(plan, step)}
            move={plan.move}
            step={fromUs("length", STEP_FEET, zones.units)}
          />
          {drawn.standing.length > 0 && <p class="hint">{words.keys}</p>}
          {children}
          <PlantLegend {...plan} units={zones.units} marks={marks} />
          <Fold title={words.more}>
            <ZoneLegend />
            <ZoneCounts drawn={drawn} zones={zones} />
            <p class="hint">{words.basis}</p>
          </Fold>
          <Notices drawn={drawn} nameOf={nameOf} />
        </>
      )}
    </section>
  );
}

/** Another clump takes the keyboard with it, as the one before did. */
function chooseNext({ drawn, chosen, choose }: Plan, step: 1 | -1): void {
  const ids = drawn.standing.filter(({ plants }) => plants.length > 0).map(({ clump }) => clump.id);
  const next = ids[(Math.max(ids.indexOf(chosen?.id ?? ""), 0) + step + ids.length) % ids.length];
  if (next === undefined) return;
  choose(next);
  document.querySelector<SVGGElement>(`[data-clump="${next}"]`)?.focus();
}

/** As planned, whether or not all of them find room in the drawing: the notices say where they do not. */
function plantsOf({ standing }: DrawnPlan, isWanted: (clump: DrawnPlan["standing"][number]["clump"]) => boolean): number {
  return standing.reduce((sum, { clump }) => sum + (isWanted(clump) ? clump.count : 0), 0);
}

export function PlantLegend({
  marks,
  nameOf,
  form,
  palette,
  units,
}: Pick<Plan, "nameOf" | "form" | "palette"> & {
  readonly marks: ReadonlyMap<string, PlantMark>;
  readonly units: UnitSystem;
}) {
  const kinds = plantsByKind(form.value, palette, units);
  if (kinds.length === 0) return null;
  return (
    <div>
      <p>
        {words.summary(
          kinds.reduce((sum, { count }) => sum + count, 0),
          kinds.length,
          form.value.filter(({ plant }) => plant !== null).length,
        )}
      </p>
      <ul class="plant-legend drawing" aria-label={words.legend}>
        {kinds.map(({ plant, count }) => {
          const mark = marks.get(plant);
          return (
            <li key={plant}>
              {mark !== undefined && <MarkKey mark={mark} />}
              {words.legendLine(nameOf(plant), count)}
            </li>
          );
        })}
      </ul>
    </div>
  );
}

export function ZoneLegend({ idPrefix = "" }: { readonly idPrefix?: string }) {
  const id = idPrefix + useId();
  return (
    <ul class="drawing zones" aria-label={words.zoneLegend}>
      {MOISTURE_ZONES.map((zone) => (
        <li key={zone}>
          <svg class="drawing-paper" width="28" height="20" aria-hidden="true" focusable="false">
            <Patterns id={`${id}-${zone}`} />
            <rect class="zone" x="1" y="1" width="26" height="18" style={{ fill: `url(#${id}-${zone}-${zone.toLowerCase()})` }} />
          </svg>
          {plantingText.zones[zone]}
        </li>
      ))}
    </ul>
  );
}

function ZoneCounts({ drawn, zones }: { readonly drawn: DrawnPlan; readonly zones: PlantingZones }) {
  return (
    <ul class="zone-counts">
      {zones.rings.map((ring) => {
        const own = drawn.standing.filter(({ clump }) => clump.zone === ring.zone);
        const area = quantityWords("area", ring.area, zones.units);
        const spacings = new Map(own.map(({ clump }) => [clump.plant, clump.spacing]));
        const counted = countsInMix(ring, [...spacings.values()], zones).reduce((sum, count) => sum + count, 0);
        const planned = plantsOf(drawn, ({ zone }) => zone === ring.zone);
        return (
          <li key={ring.zone}>
            {own.length === 0 ? words.zoneEmpty(ring.zone, area) : words.zoneCount(ring.zone, planned, area, counted - planned)}
          </li>
        );
      })}
    </ul>
  );
}

function Notices({ drawn, nameOf }: Pick<Plan, "drawn" | "nameOf">) {
  const short = drawn.standing
    .filter(({ clump, plants }) => plants.length < clump.count)
    .map(({ clump, plants }) => ({ id: clump.id, says: words.short(nameOf(clump.plant), plants.length, clump.count) }));
  const undrawn = drawn.undrawn.map(({ id, plant, reason }) => ({
    id,
    says: words.undrawn(plant === null ? null : nameOf(plant), reason),
  }));
  const notices = [...short, ...undrawn];
  if (notices.length === 0) return null;
  return (
    <MessageBar kind="warning">
      <ul>
        {notices.map(({ id, says }) => (
          <li key={id}>{says}</li>
        ))}
      </ul>
    </MessageBar>
  );
}
