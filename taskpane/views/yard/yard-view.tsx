import { NOT_ALL_COUNTED } from "../../../functions/worksheet/design-status.ts";
import { minutesOfToday, today } from "../../../addin/actions/dates.ts";
import { shallowHoles } from "../../../addin/actions/hole-test/planned-dig.ts";
import { explainYard, type Explanation } from "../../../addin/actions/yard/explain-yard.ts";
import { basinStatusOf, stepTitle, yardStanding, type YardStanding } from "../../../addin/actions/visits/stage-standing.ts";
import { selectYard } from "../../../addin/actions/yard/select-yard.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { Button, MessageBar, VerdictBadge } from "../../parts/form.tsx";
import { SlipList, type GoTo } from "../../parts/slip-list.tsx";
import type { TabId } from "../../tab-ids.ts";
import type { ViewProps } from "../../view.ts";
import { StateBadge } from "../visits/stage-picker.tsx";
import { showStageNext } from "../visits/visits-view.tsx";
import { nextSteps, tabName, type NextStep } from "./next-steps.ts";
import { Results } from "./results.tsx";
import { Surfaces } from "./surfaces.tsx";
import { yardText } from "./text.ts";
import { YardCard } from "./yard-card.tsx";
import "./yard.css";

export function YardView({
  goTo,
  openTab,
  attempt,
  ...view
}: ViewProps & {
  readonly goTo: GoTo;
  readonly openTab: (tab: TabId) => void;
  readonly attempt: (action: () => Promise<unknown>) => Promise<void>;
}) {
  const { program, yard, workbook } = view;
  const standing = yardStanding(program, yard, today(), minutesOfToday());
  const explanations = worthReading(explainYard(program, yard), yard);
  const steps = nextSteps(standing, explanations.length > 0);
  const open = ({ tab, at }: NextStep) => {
    if (at !== undefined) showStageNext(yard.siteId, at.stage, at.step);
    openTab(tab);
  };
  return (
    <>
      <Standing standing={standing} hasFaults={explanations.length > 0} doubts={shallowHoles(program, yard)} />
      <Next steps={steps} open={open} />
      <SlipList title={yardText.explanations} slips={explanations} goTo={goTo} />
      <Results yard={yard} />
      <Surfaces {...view} />
      <YardCard {...view} />
      <Details yard={yard} edit={() => attempt(() => selectYard(workbook, yard))} />
    </>
  );
}

/**
 * What is not measured yet is said as the next thing to do, not as a fault of the basin; and a sentence that a cell
 * and the function reading it both say is said once, at the cell.
 */
function worthReading(explanations: readonly Explanation[], yard: Yard): readonly Explanation[] {
  const faults = explanations.filter(({ what }) => !(what === "Basin" && isIncomplete(yard)));
  return faults.filter(({ sentence }, place) => faults.findIndex((earlier) => earlier.sentence === sentence) === place);
}

function isIncomplete({ design, holeTests }: Yard): boolean {
  return typeof design.contributingArea !== "number" || (typeof design.testedRate !== "number" && holeTests.length === 0);
}

/** Both answers side by side: a basin that fits in a place that is ruled out is no basin. */
function Standing({
  standing: { yard, current, stages },
  hasFaults,
  doubts,
}: {
  readonly standing: YardStanding;
  readonly hasFaults: boolean;
  /** What keeps the basin's rate from being relied on. */
  readonly doubts: readonly string[];
}) {
  const screening = stages.find(({ stage }) => stage.id === "screening")?.verdict ?? "not measured";
  const status = basinStatusOf(yard);
  const known = status !== null;
  const fits = status === "fits";
  const partly = status?.startsWith(NOT_ALL_COUNTED) === true;
  const unknown = hasFaults ? yardText.status.faulty : yardText.status.unknown;
  return (
    <section aria-label={yardText.status.title} role="status" class="standing">
      <p>
        <strong>{yardText.status.screening}</strong>
        <VerdictBadge verdict={screening} />
      </p>
      <p>
        <strong>{yardText.status.stage}</strong>
        <span>{current.stage.name}</span>
        <StateBadge state={current.state} />
      </p>
      <p>
        <strong>{yardText.status.basin}</strong>
        {fits && <VerdictBadge verdict="pass" says={yardText.status.fits} />}
        {partly && <VerdictBadge verdict="refer" says={yardText.status.notAllCounted} />}
        {!fits && !partly && known && <VerdictBadge verdict="stop" says={yardText.status.doesNotFit} />}
        {!known && <VerdictBadge verdict="not measured" />}
        {!fits && <span>{known ? status : unknown}</span>}
      </p>
      {doubts.map((doubt) => (
        <MessageBar key={doubt} kind="warning">
          {doubt}
        </MessageBar>
      ))}
    </section>
  );
}

function Next({ steps: [first, ...others], open }: { readonly steps: readonly NextStep[]; readonly open: (step: NextStep) => void }) {
  return (
    <section aria-label={yardText.next.title} class="next">
      <h2>{yardText.next.title}</h2>
      {first === undefined ? (
        <p>{yardText.next.allDone}</p>
      ) : (
        <>
          <p class={first.kind === "stop" ? "next-first next-stop" : "next-first"}>{first.sentence}</p>
          {first.tab !== "yard" && (
            <Button kind="primary" onClick={() => open(first)}>
              {yardText.next.go(first.at === undefined ? tabName(first.tab) : stepTitle(first.at))}
            </Button>
          )}
        </>
      )}
      {others.length > 0 && (
        <>
          <h3>{yardText.next.more}</h3>
          <ul class="bullets">
            {others.map((step) => (
              <li key={step.sentence}>
                {step.sentence}
                {step.at !== undefined && (
                  <Button kind="quiet" onClick={() => open(step)}>
                    {yardText.next.go(stepTitle(step.at))}
                  </Button>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Details({ yard, edit }: { readonly yard: Yard; readonly edit: () => Promise<void> }) {
  const { record } = yard.site;
  const facts = [
    [yardText.details.soilGroup, record.soilGroup],
    [yardText.details.notes, record.notes],
  ] as const;
  return (
    <section aria-label={yardText.details.title}>
      <h2>{yardText.details.title}</h2>
      <dl class="facts">
        {facts.map(([term, fact]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{fact ?? yardText.details.none}</dd>
          </div>
        ))}
      </dl>
      <Button onClick={edit}>{yardText.details.edit}</Button>
    </section>
  );
}
