import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Button, VerdictBadge } from "../../parts/form.tsx";
import { Headline } from "../../parts/headline.tsx";
import { quantityWords } from "../../parts/quantity-words.ts";
import { pondingHours, valueOf, type BasinCheck } from "./basin-checks.ts";
import { basinText } from "./text.ts";

/** The answer and what to do with it, in sight while the inputs are tuned. */
export function BasinHeadline({
  draft,
  verdict,
  assumed,
  units,
  unsaved,
  onSave,
}: {
  readonly draft: BasinDraft;
  readonly verdict: BasinCheck["verdict"];
  readonly assumed: boolean;
  readonly units: UnitSystem;
  readonly unsaved: boolean;
  readonly onSave: () => Promise<void>;
}) {
  const floor = valueOf(draft.floorArea);
  const standing = pondingHours(draft, units);
  return (
    <Headline
      figure={floor === null ? basinText.results.none : quantityWords("area", floor, units)}
      badge={<VerdictBadge verdict={verdict} />}
      action={
        <Button kind={unsaved ? "primary" : "plain"} disabled={!unsaved} onClick={onSave}>
          {basinText.sheet.write}
        </Button>
      }
    >
      {standing !== null && <span>{basinText.results.pondingGone(quantityWords("hours", standing, units))}</span>}
      {assumed && <span class="assumed-mark">{basinText.assumed.mark}</span>}
    </Headline>
  );
}
