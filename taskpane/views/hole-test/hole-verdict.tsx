import type { Answer } from "../../../addin/actions/basin/draft-basin.ts";
import type { HoleTestDraft } from "../../../addin/actions/hole-test/draft-hole-test.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { MessageBar, VerdictBadge } from "../../parts/form.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { shownUnit } from "../../parts/numbers.ts";
import { numberWords, quantityWords } from "../../parts/quantity-words.ts";
import { NoResult, ResultNumber, ResultRow } from "../../parts/result-row.tsx";
import { holeTestText } from "./text.ts";
import { homeownerWords, steadinessWords } from "./verdict-words.ts";

/** The rate, whether to read on, and what it means. */
export function HoleVerdict({
  test,
  units,
  reductionFactor,
  notSoaked,
  shallow,
  marked,
}: {
  readonly test: HoleTestDraft;
  readonly units: UnitSystem;
  readonly reductionFactor: number;
  readonly notSoaked: boolean;
  /** The hole ends above the bottom of the planned dig: what it tests will be dug away. */
  readonly shallow: string | null;
  /** Something typed is at fault, so that no rate is shown. */
  readonly marked: boolean;
}) {
  const words = holeTestText.verdict;
  const steadiness = steadinessWords(test);
  const rate = "value" in test.infiltrationRate ? test.infiltrationRate.value : null;
  if (marked || rate === null) {
    const sentence = marked ? words.fixFirst : sentenceOf(test.infiltrationRate);
    return (
      <section class="card hole-verdict" aria-label={words.title}>
        <h2>{words.title}</h2>
        <p>{sentence}</p>
        <LiveSentence says={sentence} />
      </section>
    );
  }
  const cautions = [
    ...(notSoaked ? [holeTestText.notSoaked] : []),
    ...(shallow === null ? [] : [shallow]),
    ...test.cautions.filter((caution) => !saidElsewhere(caution, units)),
  ];
  return (
    <section class="card hole-verdict" aria-label={words.title}>
      <h2>{words.title}</h2>
      <dl>
        <Rate label={words.rate} hint={words.rateHint} answer={test.infiltrationRate} units={units} headline />
        <Rate label={words.design} hint={words.designHint(reductionFactor)} answer={test.designRate} units={units} />
        <Rate label={words.drop} answer={test.dropRate} units={units} />
        <ResultRow label={words.rule} hint={test.check.rule}>
          <VerdictBadge verdict={test.check.verdict} />
        </ResultRow>
      </dl>
      {test.check.sentence !== null && <MessageBar kind="warning">{test.check.sentence}</MessageBar>}
      {cautions.map((caution) => (
        <MessageBar key={caution} kind="warning">
          {caution}
        </MessageBar>
      ))}
      {"value" in test.dropRate && <p>{homeownerWords(test.dropRate.value, units)}</p>}
      <LiveSentence says={words.announced(quantityWords("rate", rate, units), steadiness ?? "")} />
    </section>
  );
}

function Rate({
  label,
  hint,
  answer,
  units,
  headline = false,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly answer: Answer;
  readonly units: UnitSystem;
  readonly headline?: boolean;
}) {
  return (
    <ResultRow label={label} hint={hint} headline={headline}>
      {"value" in answer ? (
        <ResultNumber says={numberWords("rate", answer.value, units)} unit={shownUnit("rate", units)} />
      ) : (
        <NoResult says={answer.sentence} />
      )}
    </ResultRow>
  );
}

function sentenceOf(answer: Answer): string {
  return "sentence" in answer ? answer.sentence : "";
}

/** The line on steadiness says these with its number, and the diameter's stands at its field. */
function saidElsewhere(caution: string, units: UnitSystem): boolean {
  return (
    caution === holeTestText.smallDiameter(units) ||
    ["Not steady yet", "One interval", "The hole ran dry"].some((beginning) => caution.startsWith(beginning))
  );
}
