import { render } from "preact";
import { useEffect, useErrorBoundary, useMemo, useRef, useState } from "preact/hooks";
import { logWrites } from "../addin/actions/program/change-log.ts";
import { yardAt, type Program } from "../addin/actions/program/read-program.ts";
import { selectYard } from "../addin/actions/yard/select-yard.ts";
import type { CellRange, Workbook } from "../addin/workbook/port.ts";
import { onViewAsked } from "./asked-view.ts";
import { useDraftsOf } from "./parts/drafts.ts";
import { applyTheme, type PaneTheme } from "./parts/fluent.ts";
import { Button, MessageBar } from "./parts/form.tsx";
import { ProgramWatch, type Reading } from "./program-watch.ts";
import { ProgramPage, showProgramTabNext } from "./program-page.tsx";
import { LeftAlone, SetUp, SheetsMissing } from "./set-up.tsx";
import { sentenceOfError } from "./parts/spoken-errors.ts";
import { text } from "./text.ts";
import { useWriting } from "./parts/writing.ts";
import { WritingNotices } from "./parts/writing-notices.tsx";
import { showTabNext, YardPage } from "./yard-page.tsx";
import { WorkingBar, WorkingView } from "./views/working/working-view.tsx";
import { useWorking } from "./views/working/use-working.ts";
import "./pane.css";
import "./parts/yard-list.css";
import "./parts/paper.css";
import "./parts/form.css";
import "./parts/results.css";

/** Shows the pane in the element, beside the workbook, until the function returned is called. */
export function mountPane(element: HTMLElement, workbook: Workbook, theme: PaneTheme): () => void {
  const stopFollowing = applyTheme(theme);
  element.classList.add("soakbook-pane");
  render(<Pane workbook={workbook} />, element);
  return () => {
    render(null, element);
    element.classList.remove("soakbook-pane");
    stopFollowing();
  };
}

function Pane({ workbook: host }: { readonly workbook: Workbook }) {
  const recorded = useMemo(() => logWrites(host), [host]);
  const { workbook } = recorded;
  const [reading, show] = useState<Reading>({ state: "first" });
  /** Ahead of the page by a moment: what was just written is already in it. */
  const latest = useRef<Program | null>(null);
  const watch = useMemo(
    () =>
      new ProgramWatch(workbook, (next) => {
        latest.current = next.state === "ready" ? next.program : null;
        show(next);
      }),
    [workbook],
  );
  const readAgain = () => watch.readAgain();
  const writing = useWriting(recorded, readAgain);
  useEffect(() => watch.start(), [watch]);
  const hasDrafts = useDraftsOf(host);
  const program = reading.state === "ready" && hasDrafts ? reading.program : null;
  const [siteId, pick] = useSelectedYard(workbook, program, latest);
  const working = useWorking(workbook);
  const [failure, showAgain] = useErrorBoundary();

  /** Counts the views asked for from outside, each of which begins a page anew. */
  const [opening, countOpening] = useState(0);
  useEffect(() =>
    onViewAsked((view) => {
      if (view === "working") return working.show();
      if (view === "visits") showTabNext("visits");
      if (view === "workbook") {
        showProgramTabNext("workbook");
        pick(null);
      }
      working.close();
      countOpening((count) => count + 1);
    }),
  );

  const goTo = (where: CellRange) => writing.attempt(() => workbook.select(where));
  /** Whether the page that comes next was asked for in the pane: only then may it take the focus. */
  const askedHere = useRef(false);
  const pickAndSelect = (wanted: string) => {
    askedHere.current = true;
    pick(wanted);
    const yard = latest.current?.yards.find((candidate) => candidate.siteId === wanted);
    if (yard !== undefined) void writing.attempt(() => selectYard(workbook, yard));
  };

  if (failure !== undefined) {
    return (
      <div class="pane page">
        <MessageBar kind="error" actions={<Button onClick={showAgain}>{text.errors.showAgain}</Button>}>
          {sentenceOfError(failure)}
        </MessageBar>
      </div>
    );
  }
  const yard = program?.yards.find((candidate) => candidate.siteId === siteId);
  if (working.open !== null) {
    return (
      <div class="pane">
        <WorkingView working={working.open} onBack={working.close} workbook={workbook} write={writing.write} />
        <div class="pane-foot">
          <WritingNotices writing={writing} />
        </div>
      </div>
    );
  }
  return (
    <div class="pane">
      {(reading.state === "first" || (reading.state === "ready" && !hasDrafts)) && (
        <p class="page loading" role="status">
          <fluent-spinner size="small" aria-hidden="true" /> {text.reading}
        </p>
      )}
      {reading.state === "failed" && (
        <div class="page">
          <MessageBar kind="error" actions={<Button onClick={readAgain}>{text.readAgain}</Button>}>
            {reading.sentence}
          </MessageBar>
        </div>
      )}
      {reading.state === "absent" && <SetUp workbook={workbook} write={writing.write} />}
      {reading.state === "incomplete" && (
        <SheetsMissing missing={reading.missing} workbook={workbook} write={writing.write} readAgain={readAgain} />
      )}
      {reading.state === "taken" && <LeftAlone {...text.taken} names={reading.names} readAgain={readAgain} />}
      {reading.state === "newer" && <LeftAlone {...text.newer} names={[]} readAgain={readAgain} />}
      {program !== null && yard === undefined && (
        <ProgramPage
          key={opening}
          program={program}
          workbook={workbook}
          write={writing.write}
          goTo={goTo}
          takesFocus={askedHere}
          onPick={pickAndSelect}
        />
      )}
      {program !== null && yard !== undefined && (
        <YardPage
          key={`${yard.siteId} ${opening}`}
          program={program}
          yard={yard}
          workbook={workbook}
          write={writing.write}
          attempt={writing.attempt}
          goTo={goTo}
          takesFocus={askedHere}
          onLeave={() => {
            askedHere.current = true;
            pick(null);
          }}
        />
      )}
      <div class="pane-foot">
        <WorkingBar working={working.offered} takesFocus={working.returning} onOpen={working.show} />
        <WritingNotices writing={writing} />
      </div>
    </div>
  );
}

/**
 * The yard in view: the one whose row was selected last in the workbook, or picked last in the pane. A row that is
 * no yard yet is remembered, and becomes the yard in view once it is one.
 */
function useSelectedYard(
  workbook: Workbook,
  program: Program | null,
  latest: { readonly current: Program | null },
): readonly [string | null, (siteId: string | null) => void] {
  const [siteId, setSiteId] = useState<string | null>(null);
  const unresolved = useRef<CellRange | null>(null);

  const follow = (selection: CellRange) => {
    const yard = latest.current === null ? undefined : yardAt(latest.current, selection.sheet, selection.row);
    unresolved.current = yard === undefined ? selection : null;
    if (yard !== undefined) setSiteId(yard.siteId);
  };

  useEffect(() => {
    let selectedSince = false;
    const stopListening = workbook.onSelectionChanged((selection) => {
      selectedSince = true;
      follow(selection);
    });
    workbook.selection().then(
      (selection) => {
        if (selection !== null && !selectedSince) follow(selection);
      },
      // The pane works without knowing the first selection: it shows the list of yards.
      () => undefined,
    );
    return stopListening;
  }, [workbook]);

  useEffect(() => {
    if (unresolved.current !== null) follow(unresolved.current);
  }, [program]);

  return [
    siteId,
    (picked) => {
      unresolved.current = null;
      setSiteId(picked);
    },
  ];
}
