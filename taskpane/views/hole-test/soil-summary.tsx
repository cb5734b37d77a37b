import { useState } from "preact/hooks";
import type { CombinedHoles } from "../../../addin/actions/hole-test/combine-holes.ts";
import { WIDE_SPREAD_RATIO } from "../../../functions/infiltration/design-rate.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Fold } from "../../parts/fold.tsx";
import { Button, MessageBar, VerdictBadge } from "../../parts/form.tsx";
import { quantityWords } from "../../parts/quantity-words.ts";
import { NoResult, ResultNumber, ResultRow } from "../../parts/result-row.tsx";
import { copyText } from "../working/copy-text.ts";
import { chainOf, homeownerNote, spreadWords } from "./soil-words.ts";
import { holeTestText } from "./text.ts";

const words = holeTestText.soil;

/** Where the yard's soil stands, in one line above the holes. */
export function SoilInShort({ soil, units }: { readonly soil: CombinedHoles; readonly units: UnitSystem }) {
  const { testedRate, rates, standing, retest } = soil;
  return (
    <div class="soil-in-short" role="status">
      {standing === "not tested" && <VerdictBadge verdict="not measured" says={words.notTested} />}
      {standing === "no rate" && <VerdictBadge verdict="not measured" says={words.noRate} />}
      {"value" in testedRate && <span>{words.inShort(quantityWords("rate", testedRate.value, units), rates.length)}</span>}
      {retest.length > 0 && <VerdictBadge verdict="refer" says={words.again} />}
    </div>
  );
}

/** All holes of the yard together: each rate, their spread, the design rate, whether to test again, and a note to hand over. */
export function SoilSummary({
  soil,
  designTestedRate,
  units,
}: {
  readonly soil: CombinedHoles;
  /** As the Design sheet computes it; null while it shows none. */
  readonly designTestedRate: number | null;
  readonly units: UnitSystem;
}) {
  const { testedRate, retest, standing } = soil;
  if (standing === "not tested") {
    return (
      <section class="card" aria-label={words.title}>
        <h2>{words.title}</h2>
        <VerdictBadge verdict="not measured" says={words.notTested} />
        <p>{words.notTestedHint}</p>
      </section>
    );
  }
  const spread = spreadWords(soil, units);
  const differs =
    "value" in testedRate && designTestedRate !== null && Math.abs(testedRate.value - designTestedRate) > 1e-9 * Math.abs(testedRate.value);
  // A wide spread is said among the reasons to test again.
  const cautions = soil.cautions.filter((caution) => !caution.startsWith("The highest tested rate"));
  return (
    <Fold
      title={words.title}
      says={"value" in soil.designRate ? words.designedWith(quantityWords("rate", soil.designRate.value, units)) : ""}
    >
      {standing === "no rate" && <VerdictBadge verdict="not measured" says={words.noRate} />}
      <h3>{words.chain}</h3>
      <dl>
        {chainOf(soil, units).map(({ label, hint, says, known }) => (
          <ResultRow key={label} label={label} hint={hint === "" ? undefined : hint}>
            {known ? <ResultNumber says={says} /> : <NoResult says={says} />}
          </ResultRow>
        ))}
      </dl>
      {spread !== null && (
        <p>
          {spread} {words.spreadRule(WIDE_SPREAD_RATIO)}
        </p>
      )}
      {differs && <MessageBar kind="warning">{words.design(quantityWords("rate", designTestedRate, units))}</MessageBar>}
      {cautions.map((caution) => (
        <MessageBar key={caution} kind="warning">
          {caution}
        </MessageBar>
      ))}
      <div role="status">
        {retest.length === 0 ? (
          <p>{words.notAgain}</p>
        ) : (
          <MessageBar kind="warning">
            <strong>{words.again}</strong>
            <ul>
              {retest.map((reason) => (
                <li key={reason}>{reason}</li>
              ))}
            </ul>
          </MessageBar>
        )}
      </div>
      <HomeownerNote note={homeownerNote(soil, units)} />
    </Fold>
  );
}

function HomeownerNote({ note }: { readonly note: string | null }) {
  const [said, say] = useState("");
  if (note === null) return null;
  const copy = async () => say((await copyText(note)) ? words.note.copied : words.note.copyByHand);
  return (
    <div class="homeowner-note">
      <h3>{words.note.title}</h3>
      <p class="note-text">{note}</p>
      <p class="hint">{words.note.source}</p>
      <div class="buttons">
        <Button onClick={copy}>{words.note.copy}</Button>
      </div>
      <p role="status" class="hint">
        {said}
      </p>
    </div>
  );
}
