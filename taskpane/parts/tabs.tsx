import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

/** Tabs whose panel the caller renders with `TabPanel`. */
export function Tabs<Id extends string>({
  label,
  tabs,
  active,
  onActivate,
}: {
  readonly label: string;
  readonly tabs: readonly { readonly id: Id; readonly says: string }[];
  readonly active: Id;
  readonly onActivate: (id: Id) => void;
}) {
  const activated = (event: Event) => {
    const id = (event.currentTarget as HTMLElement & { activeid?: string }).activeid?.slice(TAB_ID.length);
    const tab = tabs.find((candidate) => candidate.id === id);
    if (tab !== undefined && tab.id !== active) onActivate(tab.id);
  };
  return (
    <fluent-tablist class="tabs" aria-label={label} activeid={TAB_ID + active} onChange={activated}>
      {tabs.map(({ id, says }) => (
        <fluent-tab key={id} id={TAB_ID + id} aria-controls={PANEL_ID}>
          {says}
        </fluent-tab>
      ))}
    </fluent-tablist>
  );
}

export function TabPanel({ active, children }: { readonly active: string; readonly children: ComponentChildren }) {
  const shown = useRef(active);
  useEffect(() => {
    if (shown.current !== active) showTopOfTab(active);
    shown.current = active;
  }, [active]);
  return (
    <div id={PANEL_ID} role="tabpanel" aria-labelledby={TAB_ID + active} class="tab-panel">
      {children}
    </div>
  );
}

/** After another tab came to the front: its beginning in sight, and the focus on the tab if its button is gone. */
function showTopOfTab(active: string): void {
  const tab = document.getElementById(TAB_ID + active);
  const panel = document.getElementById(PANEL_ID);
  if (tab === null || panel === null) return;
  if (panel.getBoundingClientRect().top < tab.getBoundingClientRect().bottom) panel.scrollIntoView({ block: "start" });
  if (document.activeElement === null || document.activeElement === document.body) tab.focus();
}

const TAB_ID = "soakbook-tab-";
const PANEL_ID = "soakbook-tab-panel";
