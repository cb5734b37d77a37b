import type { StageOfYard, StepStanding } from "../../../addin/actions/visits/stage-standing.ts";
import { markingServiceOf, reminderWords } from "../../../addin/actions/visits/marking-service.ts";
import { earlyWarning } from "../../../addin/actions/visits/ticket-hints.ts";
import { isoDate } from "../../../addin/actions/dates.ts";
import type { PrintedDocument } from "../../../addin/actions/export/printed-page.ts";
import type { Program, Yard } from "../../../addin/actions/program/read-program.ts";
import { unitOf } from "../../../functions/quantities.ts";
import { shown, shownUnit } from "../../parts/numbers.ts";
import { printPaper } from "../../parts/print-paper.tsx";
import { text } from "../../text.ts";
import { yardText } from "../yard/text.ts";
import { ruleLine, saidAnswer } from "./step-card.tsx";
import { ticketLine } from "./ticket-line.ts";
import { visitsText } from "./text.ts";

const words = visitsText.print;

/** Prints the stage as one page for a clipboard; what stands on it, where the page may not print. */
export function printFieldSheet(sheet: FieldSheetProps): Promise<PrintedDocument | null> {
  return printPaper(<FieldSheet {...sheet} />, "field-sheet", true);
}

interface FieldSheetProps {
  readonly program: Program;
  readonly yard: Yard;
  readonly standing: StageOfYard;
  /** The day number of the print. */
  readonly printedOn: number;
}

export function FieldSheet({ program, yard, standing, printedOn }: FieldSheetProps) {
  const { stage, steps, gate } = standing;
  const refusals = gate.refusals.filter(({ override }) => override === null);
  const warning = earlyWarning(program, yard, printedOn);
  const service = markingServiceOf(program, yard);
  const overrides = gate.refusals.flatMap(({ override }) => (override === null ? [] : [override]));
  return (
    <div class={isLong(standing) ? "sheet sheet-long" : "sheet"}>
      <h1>
        {words.title(stage.name)} <span class="sheet-site">{yard.siteId}</span>
      </h1>
      <p>{stage.purpose}</p>
      <dl class="sheet-facts">
        {factsOfYard(yard, isoDate(printedOn)).map(([term, fact]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{fact}</dd>
          </div>
        ))}
      </dl>
      {warning !== null && <p class="sheet-lock">{warning.sentences.join(" ")}</p>}
      {refusals.length > 0 && (
        <p class="sheet-lock">
          <strong>{`${words.shut}: `}</strong>
          {refusals.map(({ sentence }) => sentence).join(" ")}
        </p>
      )}
      {overrides.length > 0 && (
        <p class="sheet-lock">
          {overrides.map(({ by, date, reason }) => visitsText.gate.overridden(by, date === null ? "" : isoDate(date), reason)).join(" ")}
        </p>
      )}
      <ul class="sheet-reminders">
        {stage.reminders.map((reminder) => (
          <li key={reminder.id}>
            <strong>{`${reminder.title}. `}</strong>
            {reminderWords(reminder, service)}
          </li>
        ))}
      </ul>
      <table class="sheet-steps">
        <thead>
          <tr>
            <th scope="col">{words.step}</th>
            <th scope="col">{words.written}</th>
            <th scope="col">{words.note}</th>
          </tr>
        </thead>
        <tbody>
          {steps.map((each, place) => (
            <tr key={each.step.id}>
              <td>
                <strong>{`${place + 1}. ${each.step.title}. `}</strong>
                {each.step.ask}
                {each.rules.length > 0 && <span class="sheet-limit">{`${words.limit} ${each.rules.map(ruleLine).join("; ")}`}</span>}
                {each.answer !== null && <span class="sheet-limit">{`${words.earlier} ${saidAnswer(each.answer)}`}</span>}
                {each.decision !== null && (
                  <span class="sheet-limit">
                    {visitsText.decision.decided(each.decision.by, isoDate(each.decision.date), each.decision.words)}
                  </span>
                )}
                {each.verdict === "refer" && <span class="sheet-limit">{words.decide}</span>}
              </td>
              <td>
                <Blank step={each.step} yard={yard} />
              </td>
              <td />
            </tr>
          ))}
        </tbody>
      </table>
      <p class="sheet-signature">
        <span>{words.signature}</span>
        <span>{words.date}</span>
      </p>
      <p class="sheet-footer">{words.footer}</p>
    </div>
  );
}

/** More choices than this are written by hand. */
const MOST_BOXES = 6;

/** Room for the answer: a box for each choice, or a line with its unit. */
function Blank({ step, yard: { units } }: { readonly step: StepStanding["step"]; readonly yard: Yard }) {
  const { answer } = step;
  if (answer.kind === "chosen" && answer.options.length <= MOST_BOXES) {
    return (
      <ul class="sheet-boxes">
        {answer.options.map(({ says, verdict }) => (
          <li key={says}>
            {says} {verdict !== "pass" && <em>{`(${text.verdicts[verdict].toLowerCase()})`}</em>}
          </li>
        ))}
      </ul>
    );
  }
  if (answer.kind === "slope") return <Lines labels={[visitsText.drop, visitsText.run]} />;
  const unit = answer.kind === "measured" ? unitOf(answer.quantity, units) : answer.kind === "number" ? answer.unit[units] : "";
  return (
    <>
      <Lines labels={[unit]} />
      {answer.kind === "measured" && answer.orNone !== undefined && (
        <ul class="sheet-boxes">
          <li>{answer.orNone}</li>
          {answer.orLater !== undefined && <li>{answer.orLater}</li>}
        </ul>
      )}
    </>
  );
}

function Lines({ labels }: { readonly labels: readonly string[] }) {
  return (
    <>
      {labels.map((label) => (
        <span key={label} class="sheet-line">
          {label}
        </span>
      ))}
    </>
  );
}

function factsOfYard(yard: Yard, printedOn: string): readonly (readonly [term: string, fact: string])[] {
  const { design, site, units } = yard;
  const amount = (value: unknown, decimals: number, unit: string) =>
    typeof value === "number" ? `${shown(value, decimals)} ${unit}`.trim() : words.notKnown;
  return [
    [words.yard, `${yard.siteId} ${site.record.yard ?? ""}`.trim()],
    [words.address, site.record.address ?? words.notKnown],
    [words.units, text.units[units]],
    [words.printed, printedOn],
    [yardText.details.soilGroup, site.record.soilGroup ?? words.notKnown],
    [yardText.chain.groundSlopePercent, amount(design.groundSlopePercent, 1, "%")],
    [yardText.chain.contributingArea, amount(design.contributingArea, 1, shownUnit("area", units))],
    [yardText.chain.designRate, amount(design.designRate, 2, shownUnit("rate", units))],
    [yardText.chain.floorArea, amount(design.floorArea, 1, shownUnit("area", units))],
    [yardText.chain.pondingDepth, amount(design.pondingDepth, 1, shownUnit("depth", units))],
    [words.ticket, ticketLine(yard)],
  ];
}

/** What would not fit a page in the larger print. */
function isLong({ stage, steps }: StageOfYard): boolean {
  const letters = stage.reminders.reduce((sum, { text: says }) => sum + says.length, 0);
  return steps.length > MOST_LARGE_STEPS || letters > MOST_LARGE_LETTERS;
}

const MOST_LARGE_STEPS = 8;
const MOST_LARGE_LETTERS = 1200;
