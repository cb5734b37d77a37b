import type { RefObject } from "preact";
import { useRef } from "preact/hooks";
import type { StageOfYard } from "../../../addin/actions/visits/stage-standing.ts";
import { VerdictBadge, type ShownVerdict } from "../../parts/form.tsx";
import { visitsText } from "./text.ts";

const words = visitsText.stages;

const BADGES: Readonly<Record<StageOfYard["state"], ShownVerdict>> = {
  locked: "not measured",
  ready: "not measured",
  begun: "watch",
  ask: "refer",
  stopped: "stop",
  done: "pass",
};

/** The stages in order, each with how it stands; folded away once one is picked. */
export function StagePicker({
  stages,
  shown,
  heading,
  onPick,
}: {
  readonly stages: readonly StageOfYard[];
  readonly shown: StageOfYard;
  /** What takes the focus when another stage is picked. */
  readonly heading: RefObject<HTMLElement | null>;
  readonly onPick: (id: StageOfYard["stage"]["id"]) => void;
}) {
  const list = useRef<HTMLDetailsElement>(null);
  const pick = (id: StageOfYard["stage"]["id"]) => {
    list.current?.removeAttribute("open");
    onPick(id);
  };
  return (
    <nav class="stage-head" aria-label={words.title}>
      <details ref={list} class="stage-picker">
        <summary ref={heading}>
          <div class="stage-now">
            <h2>{shown.stage.name}</h2>
            <span class="hint">{words.now(stages.indexOf(shown) + 1, stages.length, progressOf(shown))}</span>
          </div>
          <StateBadge state={shown.state} />
        </summary>
        <ol>
          {stages.map(({ stage, state }) => (
            <li key={stage.id}>
              <button
                type="button"
                class="stage-button"
                aria-current={stage.id === shown.stage.id ? "step" : undefined}
                onClick={() => pick(stage.id)}
              >
                <span>{stage.name}</span>
                <StateBadge state={state} />
              </button>
            </li>
          ))}
        </ol>
      </details>
    </nav>
  );
}

function progressOf({ steps }: StageOfYard): string {
  return visitsText.progress(steps.filter(({ answer }) => answer !== null).length, steps.length);
}

export function StateBadge({ state }: Pick<StageOfYard, "state">) {
  return <VerdictBadge verdict={BADGES[state]} says={words.states[state]} />;
}
