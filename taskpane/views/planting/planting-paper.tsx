import type { PalettePlant } from "../../../addin/actions/planting/palette.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { BloomStrip } from "./bloom-strip.tsx";
import { PlantLegend, ZoneLegend } from "./plan-section.tsx";
import type { PlantMark } from "./plant-marks.ts";
import { PAPER_PREFIX, PrintedDrawing } from "./planting-drawing.tsx";
import type { ShoppingLine } from "./shopping-list.ts";
import { ShoppingTable } from "./shopping-view.tsx";
import { plantingText } from "./text.ts";
import type { Plan } from "./use-plan.ts";

/** Plan, legend and list as they go into the field. */
export function PlantingPaper({
  heading,
  date,
  plan,
  marks,
  plants,
  lines,
  units,
  cautions,
}: {
  readonly heading: string;
  readonly date: string;
  readonly plan: Pick<Plan, "zones" | "drawn" | "nameOf" | "form" | "palette">;
  readonly marks: ReadonlyMap<string, PlantMark>;
  readonly plants: readonly PalettePlant[];
  readonly lines: readonly ShoppingLine[];
  readonly units: UnitSystem;
  readonly cautions: readonly string[];
}) {
  const { zones, drawn, nameOf } = plan;
  return (
    <div class="planting-paper">
      <h1>{heading}</h1>
      <p>{plantingText.shopping.date(date)}</p>
      {zones !== null && (
        <>
          <PrintedDrawing zones={zones} standing={drawn.standing} marks={marks} nameOf={nameOf} />
          <PlantLegend {...plan} units={units} marks={marks} />
          <ZoneLegend idPrefix={PAPER_PREFIX} />
          <p>
            {zones.rings.map(({ zone, area }) => `${plantingText.zone(zone)}: ${quantityWords("area", area, zones.units)}`).join(" · ")}
          </p>
        </>
      )}
      <h2>{plantingText.shopping.title}</h2>
      <ShoppingTable lines={lines} units={units} />
      <BloomStrip plants={plants} marks={marks} />
      <h2>{plantingText.cautions.title}</h2>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </div>
  );
}
