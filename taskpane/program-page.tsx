import { useState } from "preact/hooks";
import { useFocusIfAsked } from "./parts/focus.ts";
import { ExportMany } from "./views/estimate/export-many.tsx";
import { Tabs, TabPanel } from "./parts/tabs.tsx";
import { NextView } from "./views/next/next-view.tsx";
import { RainView } from "./views/rain/rain-view.tsx";
import { ReportView } from "./views/report/report-view.tsx";
import type { GoTo } from "./parts/slip-list.tsx";
import { PROGRAM_TAB_IDS, type ProgramTabId } from "./tab-ids.ts";
import { text } from "./text.ts";
import type { ViewProps } from "./view.ts";
import { WhatIfView } from "./views/what-if/what-if-view.tsx";
import { WorkbookView } from "./views/workbook/workbook-view.tsx";
import { YardPicker } from "./yard-picker.tsx";

const TABS = PROGRAM_TAB_IDS.map((id) => ({ id, says: text.programTabs[id] }));

/** Comes back to where the person was, after a look at one yard. */
let lastTab: ProgramTabId = "yards";

/** The tab that the program opens on next, for whoever sends a person there. */
export function showProgramTabNext(tab: ProgramTabId): void {
  lastTab = tab;
}

/** The whole program, while no yard is in view. */
export function ProgramPage({
  program,
  workbook,
  write,
  goTo,
  takesFocus,
  onPick,
}: Pick<ViewProps, "program" | "workbook" | "write"> & {
  readonly goTo: GoTo;
  readonly takesFocus: { current: boolean };
  readonly onPick: (siteId: string) => void;
}) {
  const [tab, setTab] = useState<ProgramTabId>(lastTab);
  const open = (id: ProgramTabId) => {
    lastTab = id;
    setTab(id);
  };
  const [checksAtOnce, checkAtOnce] = useState(false);
  const activate = (id: ProgramTabId) => {
    checkAtOnce(false);
    open(id);
  };
  const check = () => {
    checkAtOnce(true);
    open("workbook");
  };
  const heading = useFocusIfAsked(takesFocus);
  const view = { program, workbook, write };
  return (
    <>
      <header class="yard-header">
        <h1 ref={heading} tabIndex={-1}>
          {text.programTabs.title}
        </h1>
      </header>
      <Tabs label={text.programTabs.label} tabs={TABS} active={tab} onActivate={activate} />
      <TabPanel active={tab}>
        {tab === "yards" && (
          <>
            <YardPicker {...view} goTo={goTo} onPick={onPick} onCheck={check} />
            <ExportMany {...view} />
          </>
        )}
        {tab === "next" && <NextView {...view} onPick={onPick} />}
        {tab === "what-if" && <WhatIfView {...view} />}
        {tab === "report" && <ReportView {...view} goTo={goTo} />}
        {tab === "rain" && <RainView workbook={workbook} write={write} goTo={goTo} />}
        {tab === "workbook" && <WorkbookView {...view} goTo={goTo} checksAtOnce={checksAtOnce} />}
      </TabPanel>
    </>
  );
}
