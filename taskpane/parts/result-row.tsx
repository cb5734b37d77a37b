import type { ComponentChildren } from "preact";

/** A line of results, within a list of them: what it is, what to know about it, and its number or why there is none. */
export function ResultRow({
  label,
  hint,
  headline = false,
  children,
}: {
  readonly label: ComponentChildren;
  readonly hint?: string | undefined;
  readonly headline?: boolean | undefined;
  readonly children: ComponentChildren;
}) {
  return (
    <div class={headline ? "result result-headline" : "result"}>
      <dt>
        {label}
        {hint !== undefined && <span class="hint">{hint}</span>}
      </dt>
      <dd>{children}</dd>
    </div>
  );
}

export function ResultNumber({ says, unit = "" }: { readonly says: string; readonly unit?: string }) {
  return (
    <>
      <span class="result-number">{says}</span>
      {unit !== "" && <span class="unit"> {unit}</span>}
    </>
  );
}

/** Never a zero or a blank: the words that stand where a number would. */
export function NoResult({ says }: { readonly says: string }) {
  return <span class="result-none">{says}</span>;
}
