import { useEffect, useRef, useState } from "preact/hooks";
import { minutesOfToday, today } from "../../../addin/actions/dates.ts";
import { yardStanding, type StageOfYard } from "../../../addin/actions/visits/stage-standing.ts";
import { useRememberedName } from "../../parts/remembered-name.ts";
import type { TabId } from "../../tab-ids.ts";
import type { ViewProps } from "../../view.ts";
import { GateBar, GateNotice } from "./gate-notice.tsx";
import { Reminders } from "./reminders.tsx";
import { StagePicker } from "./stage-picker.tsx";
import { StageSteps } from "./stage-steps.tsx";
import { TicketBar } from "./ticket-hints.tsx";
import "./visits.css";

type StageId = StageOfYard["stage"]["id"];

/** The stage to show when a yard's visits are opened next, for whoever sends a person there. */
let asked: { readonly siteId: string; readonly stage: StageId; readonly step: string | null } | null = null;

/** With a step, that one is open and has the focus. */
export function showStageNext(siteId: string, stage: StageId, step: string | null = null): void {
  asked = { siteId, stage, step };
}

/** The visits of a yard, one stage at a time: what stands before it, what to mind, and its steps. */
export function VisitsView({ openTab, ...view }: ViewProps & { readonly openTab: (tab: TabId) => void }) {
  const { program, yard } = view;
  const standing = yardStanding(program, yard, today(), minutesOfToday());
  const [picked, setPicked] = useState<Picked>(() => takeAsked(yard.siteId) ?? { stage: standing.current.stage.id, step: null, count: 0 });
  const pick = (stage: StageId, step: string | null = null) => setPicked(({ count }) => ({ stage, step, count: count + 1 }));
  const [by, rememberBy] = useRememberedName();
  const shown = standing.stages.find(({ stage }) => stage.id === picked.stage) ?? standing.current;
  const heading = useRef<HTMLElement>(null);
  const before = useRef(picked);
  useEffect(() => {
    if (before.current === picked) return;
    before.current = picked;
    if (picked.step === null) heading.current?.focus();
  }, [picked]);
  return (
    <>
      <StagePicker stages={standing.stages} shown={shown} heading={heading} onPick={(stage) => pick(stage)} />
      <GateNotice {...view} standing={shown} by={by} rememberBy={rememberBy} onGo={(at) => pick(at.stage, at.step)} />
      <TicketBar {...view} stage={shown.stage.id} />
      <Reminders {...view} stage={shown.stage} />
      <StageSteps
        key={`${picked.stage} ${picked.count}`}
        {...view}
        stages={standing.stages}
        standing={shown}
        by={by}
        rememberBy={rememberBy}
        openTab={openTab}
        openStep={picked.step}
        onPick={(stage) => pick(stage)}
      />
    </>
  );
}

/** What forbids the work of a stage, above a view of another tab where that work is done. */
export function StageBar({ program, yard, stage, onGo }: ViewProps & { readonly stage: StageId; readonly onGo: () => void }) {
  const standing = yardStanding(program, yard, today(), minutesOfToday()).stages.find((one) => one.stage.id === stage);
  const go = () => {
    showStageNext(yard.siteId, stage);
    onGo();
  };
  return standing === undefined ? null : <GateBar standing={standing} onGo={go} />;
}

/** Counted, so that the same step asked for twice opens twice. */
interface Picked {
  readonly stage: StageId;
  readonly step: string | null;
  readonly count: number;
}

function takeAsked(siteId: string): Picked | null {
  const taken = asked?.siteId === siteId ? { stage: asked.stage, step: asked.step, count: 0 } : null;
  asked = null;
  return taken;
}
