import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import "./fold.css";

/** Stays with the person from yard to yard: whoever looks at the earthwork wants it on the next yard too. */
const opened = new Set<string>();

/**
 * What is folded to a line: its name, its key figure and a badge. What stands in it is made only while it is open, so that
 * nobody waits for a chart that nobody sees.
 */
export function Fold({
  title,
  name = title,
  says = "",
  badge,
  needed = false,
  children,
}: {
  readonly title: string;
  /** Under which it is remembered that it was opened, where the title is a person's or a day's. */
  readonly name?: string;
  /** The key figure of what is inside. */
  readonly says?: string;
  readonly badge?: ComponentChildren;
  /** Something in it needs a person now: it opens, and what a person has open is never closed for them. */
  readonly needed?: boolean;
  readonly children: ComponentChildren;
}) {
  const [open, setOpen] = useState(needed || opened.has(name));
  useEffect(() => {
    if (needed) setOpen(true);
  }, [needed]);
  const toggled = (isOpen: boolean) => {
    if (isOpen) opened.add(name);
    else opened.delete(name);
    setOpen(isOpen);
  };
  return (
    <section class="fold" aria-label={title}>
      <details open={open} onToggle={(event) => event.currentTarget.open !== open && toggled(event.currentTarget.open)}>
        <summary>
          <h2 class="fold-title">{title}</h2>
          {says !== "" && <span class="fold-says">{says}</span>}
          {badge}
        </summary>
        {open && <div class="fold-body">{children}</div>}
      </details>
    </section>
  );
}
