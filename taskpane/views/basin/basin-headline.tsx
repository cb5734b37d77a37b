import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Button, VerdictBadge } from "../../parts/form.tsx";
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
    <div class="basin-headline">
      <div class="basin-answer">
        <p>
          <strong>{floor === null ? basinText.results.none : quantityWords("area", floor, units)}</strong>
          <VerdictBadge verdict={verdict} />
        </p>
        <p class="basin-hours">
          {standing !== null && <span>{basinText.results.pondingGone(quantityWords("hours", standing, units))}</span>}
          {assumed && <span class="assumed-mark">{basinText.assumed.mark}</span>}
        </p>
      </div>
      <Button kind={unsaved ? "primary" : "plain"} disabled={!unsaved} onClick={onSave}>
        {basinText.sheet.write}
      </Button>
    </div>
  );
}
