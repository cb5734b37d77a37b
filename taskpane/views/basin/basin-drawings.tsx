import { useId } from "preact/hooks";
import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { ViewProps } from "../../view.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";
import { Patterns } from "./drafting.tsx";
import { DrawingActions } from "./drawing-actions.tsx";
import { zoneWords } from "./drawing-sheet.tsx";
import { PlanDrawing } from "./plan-drawing.tsx";
import { SectionDrawing } from "./section-drawing.tsx";
import { basinText } from "./text.ts";

const words = basinText.drawing;

/** Plan, zones and section, as a homeowner is handed them. */
export function BasinDrawings({
  draft,
  basin,
  assumed,
  ...view
}: ViewProps & {
  readonly draft: BasinDraft;
  readonly basin: BasinDimensions | null;
  readonly assumed: boolean;
}) {
  return (
    <section class="drawings" aria-label={words.title}>
      <h2>{words.title}</h2>
      {basin === null ? (
        <p class="hint">{words.none}</p>
      ) : (
        <>
          {assumed && <p class="assumed-mark">{basinText.assumed.mark}</p>}
          <figure class="drawing-figure">
            <figcaption>{words.planCaption}</figcaption>
            <PlanDrawing basin={basin} />
          </figure>
          <Legend draft={draft} />
          <figure class="drawing-figure">
            <figcaption>{words.sectionCaption}</figcaption>
            <SectionDrawing basin={basin} />
          </figure>
          <p class="hint">{words.basis(basin)}</p>
          <DrawingActions {...view} draft={draft} basin={basin} assumed={assumed} />
        </>
      )}
    </section>
  );
}

function Legend({ draft }: { readonly draft: BasinDraft }) {
  const id = useId();
  return (
    <ul class="drawing zones" aria-label={words.legend}>
      {(["A", "B", "C"] as const).map((zone) => (
        <li key={zone}>
          <svg class="drawing-paper" width="28" height="20" aria-hidden="true" focusable="false">
            <Patterns id={`${id}-${zone}`} />
            <rect class="zone" x="1" y="1" width="26" height="18" style={{ fill: `url(#${id}-${zone}-${zone.toLowerCase()})` }} />
          </svg>
          {zoneWords(draft, zone)}
        </li>
      ))}
    </ul>
  );
}
