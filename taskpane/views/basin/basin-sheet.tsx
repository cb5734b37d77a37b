import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { MessageBar } from "../../parts/form.tsx";
import { shown } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { valueOf } from "./basin-checks.ts";
import type { Difference } from "./basin-form.ts";
import { basinText } from "./text.ts";

/** What writing would change on the sheet, or that nothing would. */
export function Differences({
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
    <div class={touched ? "differences unsaved" : "differences"}>
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
export function SheetAnswer({ yard, draft }: { readonly yard: Yard; readonly draft: BasinDraft }) {
  const { floorArea } = yard.design;
  const here = valueOf(draft.floorArea);
  if (typeof floorArea !== "number" || here === null) return null;
  const onSheet = quantityWords("area", floorArea, yard.units);
  if (Math.abs(floorArea - here) <= 1e-9 * Math.abs(floorArea)) return <p class="hint">{basinText.sheet.computes(onSheet)}</p>;
  return <MessageBar kind="warning">{basinText.sheet.differs(onSheet, quantityWords("area", here, yard.units))}</MessageBar>;
}
