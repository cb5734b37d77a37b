/** Rows of Visits as they are read, for tests of what is judged from them. */
import { readRecords } from "../../../addin/records/read-records.ts";
import { visitsSheet, type VisitAnswerRow } from "../../../addin/records/visits.ts";
import type { CellValue } from "../../../addin/workbook/port.ts";

export interface VisitEntry {
  readonly step: string;
  readonly answer: CellValue;
  readonly verdict?: string;
  readonly by?: string;
  readonly note?: string;
  readonly link?: string;
  readonly date?: number | null;
}

/** The entries, oldest first, read through the sheet's own columns. */
export function visitRows(entries: readonly VisitEntry[]): readonly VisitAnswerRow[] {
  const keys = Object.keys(visitsSheet.columns);
  const cells = entries.map((entry) => {
    const record: Readonly<Record<string, CellValue | undefined>> = { siteId: "Y-001", date: 46100, stage: "any", ...entry };
    return keys.map((key) => record[key] ?? null);
  });
  const headings = Object.values(visitsSheet.columns).map(({ heading }) => heading);
  const { rows, slips } = readRecords(visitsSheet, [...visitsSheet.preface.map((line) => [line]), headings, ...cells]);
  if (slips.length > 0) throw new Error(slips[0]?.sentence);
  return rows;
}

/** A ticket in force from 7 a.m. of 2026-05-04 to 2026-06-18, all of it answered. */
export const ticketInForce: readonly VisitEntry[] = [
  { step: "ticket-number", answer: "TF-2207" },
  { step: "ticket-kind", answer: "Dig ticket", verdict: "pass" },
  { step: "ticket-holder", answer: "In the name of whoever digs", verdict: "pass" },
  { step: "ticket-issued", answer: "2026-04-29 at 10:15" },
  { step: "ticket-lawful-from", answer: "2026-05-04 at 07:00" },
  { step: "ticket-expires", answer: "2026-06-18" },
  { step: "ticket-operators", answer: "Ferry Water, Ferry Electric" },
  { step: "operator: ferry water", answer: "Marked", verdict: "pass" },
  { step: "operator: ferry electric", answer: "Clear: nothing here", verdict: "pass" },
  { step: "ticket", answer: "All answered, ticket in force", verdict: "pass" },
  { step: "private-lines", answer: "Shown, or none", verdict: "pass" },
];

export function without(entries: readonly VisitEntry[], ...steps: readonly string[]): readonly VisitEntry[] {
  return entries.filter(({ step }) => !steps.includes(step));
}

export function changed(entries: readonly VisitEntry[], step: string, to: Partial<VisitEntry>): readonly VisitEntry[] {
  return entries.map((entry) => (entry.step === step ? { ...entry, ...to } : entry));
}
