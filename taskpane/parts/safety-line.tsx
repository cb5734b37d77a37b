import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { isoDate, today } from "../../addin/actions/dates.ts";
import "./fold.css";

/** What must not be missed: a red line that opens, and stands open the first time on each day. */
export function SafetyLine({ id, title, children }: { readonly id: string; readonly title: string; readonly children: ComponentChildren }) {
  const day = isoDate(today());
  const [open, setOpen] = useState(() => lastShown(id) !== day);
  useEffect(() => wasShown(id, day), [id, day]);
  return (
    <section class="safety" aria-label={title}>
      <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          <h2>{title}</h2>
        </summary>
        <div class="safety-body">{children}</div>
      </details>
    </section>
  );
}

const KEY = "soakbook.safety-shown/";

/** Where storage is blocked it is shown every time. */
function lastShown(id: string): string | null {
  try {
    return localStorage.getItem(KEY + id);
  } catch {
    return null;
  }
}

function wasShown(id: string, day: string): void {
  try {
    localStorage.setItem(KEY + id, day);
  } catch {
    return;
  }
}
