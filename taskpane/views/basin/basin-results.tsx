import type { ComponentChildren } from "preact";
import type { Answer, BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { Fold } from "../../parts/fold.tsx";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { columnWords, numberWords, quantityWords } from "../../parts/quantity-words.ts";
import { NoResult, ResultNumber, ResultRow } from "../../parts/result-row.tsx";
import { ruleOfThumbWords, valueOf } from "./basin-checks.ts";
import { basinText } from "./text.ts";

const words = basinText.results;

type SpokenKind = Parameters<typeof numberWords>[0];

/** What is to be built, large and with units; where there is no number, why. */
export function BasinResults({
  draft,
  units,
  assumed,
}: {
  readonly draft: BasinDraft;
  readonly units: UnitSystem;
  readonly assumed: boolean;
}) {
  const row = (label: string, kind: SpokenKind, answer: Answer, hint?: string) => (
    <ResultRow label={label} hint={hint}>
      {numberOrSentence(answer, kind, units)}
    </ResultRow>
  );
  const sameSentence = "sentence" in draft.floorArea ? draft.floorArea.sentence : null;
  const ruleWords = ruleOfThumbWords(draft, units);
  const held = valueOf(draft.waterHeld);
  return (
    <Fold title={words.title} says={held === null ? "" : words.holds(quantityWords("waterVolume", held, units))}>
      <div class="basin-results">
        {assumed && <p class="assumed-mark">{basinText.assumed.mark}</p>}
        {sameSentence !== null && <p class="result-none">{sameSentence}</p>}
        <div class="result-group">
          <h3>{words.groups.size}</h3>
          <dl>
            <ResultRow label={words.floorArea} headline>
              {numberOrSentence(draft.floorArea, "area", units)}
            </ResultRow>
            {row(words.rimArea, "area", draft.rimArea, words.rimHint)}
            <ResultRow label={words.floorSize}>{sizeWords(draft.floorLength, draft.floorWidth, units)}</ResultRow>
            <ResultRow label={words.rimSize}>{sizeWords(draft.rimLength, draft.rimWidth, units)}</ResultRow>
            {row(words.floorEdge, "length", draft.floorEdge)}
            <ResultRow label={words.ruleArea} hint={words.ruleHint}>
              {numberOrSentence(draft.ruleArea, "area", units)}
            </ResultRow>
          </dl>
          {ruleWords !== null && <p class="hint">{ruleWords}</p>}
        </div>
        <div class="result-group">
          <h3>{words.groups.water}</h3>
          <dl>
            {row(words.pondingDepth, "depth", draft.pondingDepth)}
            {row(words.runoff, "waterVolume", draft.runoff, draft.runoffRule)}
            {row(words.waterHeld, "waterVolume", draft.waterHeld)}
            {row(words.drawdown, "hours", draft.drawdownHours, words.drawdownHint)}
          </dl>
        </div>
        <div class="result-group">
          <h3>{words.groups.materials}</h3>
          <dl>
            {row(words.digVolume, "earthVolume", draft.digVolume, words.digHint)}
            {row(words.looseVolume, "earthVolume", draft.looseVolume, words.looseHint)}
            {row(words.mulch, "earthVolume", draft.mulchVolume)}
            <ResultRow label={words.plants[draft.plantsFrom]} hint={words.plantsHint[draft.plantsFrom]}>
              {"value" in draft.plants ? <ResultNumber says={shown(draft.plants.value, 0)} /> : <NoNumber />}
            </ResultRow>
          </dl>
          <Mix draft={draft} units={units} />
        </div>
      </div>
    </Fold>
  );
}

function Mix({ draft, units }: { readonly draft: BasinDraft; readonly units: UnitSystem }) {
  if (draft.mixSentence !== null) return <p class="result-none">{draft.mixSentence}</p>;
  if (draft.mix.length === 0) return <p class="hint">{words.noMix}</p>;
  return (
    <table class="mix">
      <caption>{words.mixTitle}</caption>
      <thead>
        <tr>
          <th scope="col">{words.material}</th>
          <th scope="col">{words.volume(shownUnit("earthVolume", units))}</th>
        </tr>
      </thead>
      <tbody>
        {draft.mix.map(({ material, volume }) => (
          <tr key={material}>
            <th scope="row">{material}</th>
            <td>{columnWords("earthVolume", volume, units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function numberOrSentence(answer: Answer, kind: SpokenKind, units: UnitSystem): ComponentChildren {
  if ("sentence" in answer) return <NoNumber />;
  return <ResultNumber says={numberWords(kind, answer.value, units)} unit={shownUnit(kind, units)} />;
}

/** The sentence stands once, above the rows. */
function NoNumber() {
  return <NoResult says={words.none} />;
}

function sizeWords(length: Answer, width: Answer, units: UnitSystem): ComponentChildren {
  const long = valueOf(length);
  const wide = valueOf(width);
  return long === null || wide === null ? <NoNumber /> : <Size length={long} width={wide} units={units} />;
}

function Size({ length, width, units }: { readonly length: number; readonly width: number; readonly units: UnitSystem }) {
  return (
    <ResultNumber
      says={`${numberWords("length", length, units)} × ${numberWords("length", width, units)}`}
      unit={shownUnit("length", units)}
    />
  );
}
