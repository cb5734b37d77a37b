import { useMemo, useState } from "preact/hooks";
import { isoDate, today } from "../../../addin/actions/dates.ts";
import type { Answer } from "../../../addin/actions/basin/draft-basin.ts";
import type { DraftedLine } from "../../../addin/actions/estimate/draft-estimate.ts";
import { estimateOf, type Estimate, type PricedLine } from "../../../addin/actions/estimate/estimate.ts";
import {
  addEstimateLines,
  addProposedLines,
  proposeEstimate,
  takeDraftedQuantity,
} from "../../../addin/actions/estimate/propose-estimate.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { useDraft } from "../../parts/drafts.ts";
import { Button, MessageBar } from "../../parts/form.tsx";
import { LiveSentence } from "../../parts/live-sentence.tsx";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { NoResult, ResultNumber, ResultRow } from "../../parts/result-row.tsx";
import type { ViewProps } from "../../view.ts";
import { ExportButtons } from "./export-buttons.tsx";
import { LineForm, NOTHING_TYPED, type TypedLine } from "./line-form.tsx";
import { estimateText, moneyWords } from "./text.ts";
import "./estimate.css";

/** What a yard costs, the lines behind it, what the basin asks for, and the files that leave the workbook. */
export function EstimateView({ program, yard, workbook, write }: ViewProps) {
  const estimate = useMemo(() => estimateOf(program, yard, today()), [program, yard]);
  const [adding, setAdding] = useState(false);
  const draft = useDraft<TypedLine>(`${yard.siteId}/estimate-line`, NOTHING_TYPED);
  const save = (line: DraftedLine) => write(() => addEstimateLines(workbook, yard, [line]), estimateText.add.done(line.item));
  return (
    <>
      <Totals estimate={estimate} yard={yard} />
      <LookAgain estimate={estimate} />
      <section aria-label={estimateText.lines.title}>
        <h2>{estimateText.lines.title}</h2>
        <p class="hint">{estimateText.lines.where}</p>
        <ul class="estimate-lines">
          {estimate.lines.map((line, place) => (
            <Line key={line.row?.row ?? place} line={line} />
          ))}
        </ul>
        {adding || draft.touched ? (
          <LineForm program={program} draft={draft} save={save} close={() => setAdding(false)} />
        ) : (
          <Button onClick={() => setAdding(true)}>{estimateText.add.open}</Button>
        )}
      </section>
      <Proposal program={program} yard={yard} workbook={workbook} write={write} />
      <section aria-label={estimateText.exports.title}>
        <h2>{estimateText.exports.title}</h2>
        <p class="hint">{estimateText.exports.explain}</p>
        <ExportButtons program={program} workbook={workbook} write={write} yards={[yard]} />
      </section>
    </>
  );
}

function Totals({ estimate, yard }: { readonly estimate: Estimate; readonly yard: Yard }) {
  const words = estimateText.totals;
  if (estimate.lines.length === 0) {
    return (
      <section aria-label={words.title}>
        <h2>{words.title}</h2>
        <p class="hint">{words.none}</p>
      </section>
    );
  }
  const { treated, held } = estimate;
  const money = moneyWords;
  const area = shownUnit("area", yard.units);
  return (
    <section aria-label={words.title}>
      <h2>{words.title}</h2>
      {estimate.unpriced > 0 && <MessageBar kind="warning">{words.unpriced(estimate.unpriced)}</MessageBar>}
      <dl class="result-group">
        <Total label={words.cost} hint={words.costHint(shown(estimate.contingencyPercent, 1))} amount={{ value: estimate.cost }} headline />
        <Total label={words.cash} amount={{ value: estimate.cash }} />
        <Total label={words.contingency} amount={{ value: estimate.contingency }} />
        {estimate.costShare !== null && (
          <>
            <Total label={words.costShare} amount={{ value: estimate.costShare }} />
            <Total label={words.ownPart} amount={{ value: estimate.ownPart }} />
          </>
        )}
        <Total label={words.inKind} hint={words.inKindHint} amount={{ value: estimate.inKind }} />
        <Total
          label={words.treated(area)}
          hint={words.treatedHint(quantityWords("area", treated.area, yard.units))}
          amount={treated.cost}
        />
        <Total
          label={words.held(held.unit)}
          hint={held.volume === null ? undefined : words.heldHint(`${shown(held.volume, held.unit === "gal" ? 0 : 2)} ${held.unit}`)}
          amount={held.cost}
        />
      </dl>
      <LiveSentence says={words.announced(money(estimate.cost))} />
    </section>
  );
}

function Total({
  label,
  hint,
  amount,
  headline = false,
}: {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly amount: Answer;
  readonly headline?: boolean;
}) {
  return (
    <ResultRow label={label} hint={hint} headline={headline}>
      {"value" in amount ? <ResultNumber says={moneyWords(amount.value)} /> : <NoResult says={amount.sentence} />}
    </ResultRow>
  );
}

function LookAgain({ estimate }: { readonly estimate: Estimate }) {
  const ofLines = estimate.lines.flatMap(({ amount, flags }) => [...("sentence" in amount ? [amount.sentence] : []), ...flags]);
  const sentences = [...new Set([...ofLines, ...estimate.flags])];
  if (sentences.length === 0) return null;
  return (
    <MessageBar kind="warning">
      <p>{estimateText.lookAgain}</p>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </MessageBar>
  );
}

function Line({ line }: { readonly line: PricedLine }) {
  const words = estimateText.lines;
  const { price, amount } = line;
  const facts = [
    line.quantity === null ? words.noQuantity : words.line(shown(line.quantity, 2), line.unit),
    ...(price === null
      ? []
      : [
          ...(price.bought === line.quantity ? [] : [words.bought(shown(price.bought, 2), line.unit)]),
          words.at(moneyWords(price.unitPrice)),
          ...(price.delivery === 0 ? [] : [words.delivery(moneyWords(price.delivery))]),
          ...(price.date === null ? [] : [words.priced(isoDate(price.date))]),
        ]),
    ...(line.kind === "in-kind" ? [words.inKind] : []),
    ...(line.funder === "" ? [] : [words.paidBy(line.funder)]),
  ];
  return (
    <li>
      <div class="estimate-line">
        <span class="estimate-item">{line.item === "" ? words.noItem : line.item}</span>
        <span class={"value" in amount ? "result-number" : "result-none"}>
          {"value" in amount ? moneyWords(amount.value) : estimateText.totals.noAmount}
        </span>
      </div>
      <p class="hint">{facts.join(" · ")}</p>
      {line.note !== "" && <p class="hint">{line.note}</p>}
    </li>
  );
}

function Proposal({ program, yard, workbook, write }: ViewProps) {
  const words = estimateText.draft;
  const { missing, differing, sentences } = useMemo(() => proposeEstimate(program, yard), [program, yard]);
  const quantityOf = ({ quantity, unit }: { readonly quantity: number | null; readonly unit: string | null }) =>
    quantity === null ? estimateText.lines.noQuantity : estimateText.lines.line(shown(quantity, 2), unit ?? "");
  return (
    <section aria-label={words.title}>
      <h2>{words.title}</h2>
      {sentences.map((sentence) => (
        <MessageBar key={sentence} kind="info">
          {sentence}
        </MessageBar>
      ))}
      {missing.length === 0 && differing.length === 0 && sentences.length === 0 && <p class="hint">{words.standsAll}</p>}
      {missing.length > 0 && (
        <>
          <p>{words.explain}</p>
          <ul class="estimate-lines">
            {missing.map((line) => (
              <li key={line.item}>
                <div class="estimate-line">
                  <span class="estimate-item">{line.item}</span>
                  <span>{quantityOf(line)}</span>
                </div>
                <p class="hint">{line.note}</p>
              </li>
            ))}
          </ul>
          <Button
            kind="primary"
            onClick={() => write(() => addProposedLines(workbook, yard, missing), words.added(missing.length, yard.siteId))}
          >
            {words.add(missing.length)}
          </Button>
        </>
      )}
      {differing.length > 0 && (
        <>
          <p>{words.differs}</p>
          <ul class="estimate-lines">
            {differing.map(({ row, drafted }) => (
              <li key={row.row}>
                <p>{words.onSheet(drafted.item, quantityOf(row.record), quantityOf(drafted))}</p>
                <Button
                  aria-label={`${drafted.item}: ${words.take(quantityOf(drafted))}`}
                  onClick={() => write(() => takeDraftedQuantity(workbook, row, drafted), words.taken(drafted.item, quantityOf(drafted)))}
                >
                  {words.take(quantityOf(drafted))}
                </Button>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
