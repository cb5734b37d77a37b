import type { ComponentChildren } from "preact";
import "./headline.css";

/** The answer of a view and what to do with it, in sight while what it rests on is changed. */
export function Headline({
  figure,
  badge,
  action,
  children,
}: {
  /** The key figure, or that there is none. */
  readonly figure: string;
  readonly badge: ComponentChildren;
  readonly action: ComponentChildren;
  /** A line under the figure. */
  readonly children?: ComponentChildren;
}) {
  return (
    <div class="headline">
      <div class="headline-answer">
        <p>
          <strong>{figure}</strong>
          {badge}
        </p>
        <div class="headline-more">{children}</div>
      </div>
      {action}
    </div>
  );
}
