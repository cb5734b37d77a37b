import { useId } from "preact/hooks";
import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import { Fold } from "../../parts/fold.tsx";
import type { ViewProps } from "../../view.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";
import { Patterns } from "./drafting.tsx";
import { DrawingActions } from "./drawing-actions.tsx";
import { zoneWords } from "./drawing-sheet.tsx";
import type { Pulling } from "./handle.tsx";
import { PlanDrawing } from "./plan-drawing.tsx";
import { SectionDrawing } from "./section-drawing.tsx";
import { basinText } from "./text.ts";

const words = basinText.drawing;

/** Plan and section, as a homeowner is handed them. */
export function BasinDrawings({
  basin,
  assumed,
  pulling,
}: {
  readonly basin: BasinDimensions | null;
  readonly assumed: boolean;
  readonly pulling: Pulling;
}) {
  return (
    <section class="drawings" aria-label={words.title}>
      {basin === null ? (
        <p class="hint">{words.none}</p>
      ) : (
        <>
          {assumed && <p class="assumed-mark">{basinText.assumed.mark}</p>}
          <figure class="drawing-figure">
            <PlanDrawing basin={basin} pulling={pulling} />
          </figure>
          <figure class="drawing-figure">
            <SectionDrawing basin={basin} pulling={pulling} />
          </figure>
        </>
      )}
    </section>
  );
}

/** What the drawing means and rests on, and the ways to hand it on. */
export function DrawingFold({
  draft,
  basin,
  assumed,
  ...view
}: ViewProps & {
  readonly draft: BasinDraft;
  readonly basin: BasinDimensions;
  readonly assumed: boolean;
}) {
  return (
    <Fold title={words.more}>
      <Legend draft={draft} />
      <p class="hint">{words.basis(basin)}</p>
      <DrawingActions {...view} draft={draft} basin={basin} assumed={assumed} />
    </Fold>
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
