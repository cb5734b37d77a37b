import type { Program, Yard } from "../../addin/actions/program/read-program.ts";

/** Every word typed must occur in the number, name or address; "y 4" finds Y-004. */
export function yardsMatching(program: Program, search: string): readonly Yard[] {
  return program.yards.filter((yard) => matches(yard, search));
}

export function matches({ siteId, site }: Yard, search: string): boolean {
  const said = `${siteId} ${site.record.yard ?? ""} ${site.record.address ?? ""}`.toLowerCase();
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => said.includes(word));
}
