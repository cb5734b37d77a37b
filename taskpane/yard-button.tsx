import type { ComponentChildren } from "preact";
import type { Yard } from "../addin/actions/program/read-program.ts";
import { text } from "./text.ts";

/** The way to a yard, in any list of yards; `says` is what the list has to say of it. */
export function YardButton({
  yard,
  says,
  children,
  onPick,
}: {
  readonly yard: Yard;
  readonly says: string;
  readonly children?: ComponentChildren;
  readonly onPick: () => unknown;
}) {
  return (
    <button type="button" class="yard-button" onClick={() => void onPick()}>
      <span class="yard-id">{yard.siteId}</span>
      <span class="yard-name">{nameOf(yard)}</span>
      <span class="yard-address">{says}</span>
      {children}
    </button>
  );
}

export function nameOf({ site: { record } }: Yard): string {
  return record.yard ?? record.address ?? text.picker.unnamed;
}
