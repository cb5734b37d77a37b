import type { HoleTestDraft } from "../../../addin/actions/hole-test/draft-hole-test.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Button, VerdictBadge } from "../../parts/form.tsx";
import { Headline } from "../../parts/headline.tsx";
import { quantityWords } from "../../parts/quantity-words.ts";
import { holeTestText } from "./text.ts";
import { steadinessWords } from "./verdict-words.ts";

/** The rate so far, whether to read on, and the way to the sheet, in sight while readings are taken. */
export function HoleHeadline({
  test,
  units,
  marked,
  unsaved,
  onSave,
}: {
  readonly test: HoleTestDraft;
  readonly units: UnitSystem;
  /** Something typed is at fault, so that no rate is shown. */
  readonly marked: boolean;
  readonly unsaved: boolean;
  readonly onSave: () => Promise<void>;
}) {
  const rate = !marked && "value" in test.infiltrationRate ? test.infiltrationRate.value : null;
  return (
    <Headline
      figure={rate === null ? holeTestText.verdict.none : quantityWords("rate", rate, units)}
      badge={rate !== null && <VerdictBadge verdict={test.check.verdict} />}
      action={
        <Button kind={unsaved ? "primary" : "plain"} onClick={onSave}>
          {holeTestText.sheet.write}
        </Button>
      }
    >
      <p class="steadiness">{rate === null ? "" : steadinessWords(test)}</p>
    </Headline>
  );
}
