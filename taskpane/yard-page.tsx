import { useState } from "preact/hooks";
import { BasinView } from "./views/basin/basin-view.tsx";
import { EstimateView } from "./views/estimate/estimate-view.tsx";
import { useFocusIfAsked } from "./parts/focus.ts";
import { Button } from "./parts/form.tsx";
import { TabPanel, Tabs } from "./parts/tabs.tsx";
import { HoleTestView } from "./views/hole-test/hole-test-view.tsx";
import { PlantingView } from "./views/planting/planting-view.tsx";
import type { GoTo } from "./parts/slip-list.tsx";
import { TAB_IDS, type TabId } from "./tab-ids.ts";
import { text } from "./text.ts";
import type { ViewProps } from "./view.ts";
import { StageBar, VisitsView } from "./views/visits/visits-view.tsx";
import { nameOf } from "./yard-button.tsx";
import { YardView } from "./views/yard/yard-view.tsx";

const TABS = TAB_IDS.map((id) => ({ id, says: text.tabs[id] }));

/** Stays with the person from yard to yard: whoever tests holes all day wants the hole test each time. */
let lastTab: TabId = "yard";

/** The tab that a yard opens on next, for whoever sends a person there. */
export function showTabNext(tab: TabId): void {
  lastTab = tab;
}

export function YardPage({
  goTo,
  attempt,
  takesFocus,
  onLeave,
  ...view
}: ViewProps & {
  readonly goTo: GoTo;
  readonly attempt: (action: () => Promise<unknown>) => Promise<void>;
  readonly takesFocus: { current: boolean };
  readonly onLeave: () => void;
}) {
  const [tab, setTab] = useState<TabId>(lastTab);
  const open = (id: TabId) => {
    lastTab = id;
    setTab(id);
  };
  const { yard } = view;
  const heading = useFocusIfAsked(takesFocus);
  return (
    <>
      <header class="yard-header">
        <Button kind="quiet" aria-label={text.picker.change} onClick={onLeave}>
          <span aria-hidden="true">‹</span>
        </Button>
        <div>
          <h1 ref={heading} tabIndex={-1}>
            <span class="yard-id">{yard.siteId}</span> {nameOf(yard)}
          </h1>
          <p class="hint">{[yard.site.record.address, text.units[yard.units]].filter((fact) => fact !== null).join(" · ")}</p>
        </div>
      </header>
      <Tabs label={text.tabs.label} tabs={TABS} active={tab} onActivate={open} />
      <TabPanel active={tab}>
        {tab === "yard" && <YardView {...view} goTo={goTo} attempt={attempt} openTab={open} />}
        {tab === "visits" && <VisitsView {...view} openTab={open} />}
        {tab === "hole-test" && (
          <>
            <StageBar {...view} stage="test-visit" onGo={() => open("visits")} />
            <HoleTestView {...view} />
          </>
        )}
        {tab === "basin" && <BasinView {...view} />}
        {tab === "planting" && <PlantingView {...view} />}
        {tab === "estimate" && <EstimateView {...view} />}
      </TabPanel>
    </>
  );
}
