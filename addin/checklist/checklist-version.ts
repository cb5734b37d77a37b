/**
 * Which steps a workbook asks from when on.
 *
 * A step that a later version of the checklist brings is asked of every stage that is not finished, and of a finished one
 * from its next visit on: a garden that was built does not become unfinished because the list grew. So the workbook keeps
 * the version that it began with and the day on which each later one came into use: "1 2@46357".
 */
export const CHECKLIST_VERSION = 2;

/** The setting of the workbook that holds it. */
export const CHECKLIST_SETTING = "soakbook.checklist";

/** The first day of each version that came into use after the workbook began; a version that is missing was there from the start. */
export type ChecklistDays = ReadonlyMap<number, number>;

export const FROM_THE_START: ChecklistDays = new Map();

/** A workbook that does not say began before the checklist had versions. One that has not met a version yet meets it today. */
export function checklistDays(setting: string | null, today: number): ChecklistDays {
  const [began = "1", ...later] = (setting ?? "1").trim().split(/\s+/);
  const known = new Map(later.flatMap((token) => (/^\d+@\d+$/.test(token) ? [token.split("@").map(Number) as [number, number]] : [])));
  const first = /^\d+$/.test(began) ? Number(began) : 1;
  const versions = Array.from({ length: Math.max(0, CHECKLIST_VERSION - first) }, (_, place) => first + 1 + place);
  return new Map(versions.map((version) => [version, known.get(version) ?? today]));
}

/** The setting once the workbook has met this version on the day; null where it says so already. */
export function settingAfterMeeting(setting: string | null, today: number): string | null {
  const days = checklistDays(setting, today);
  const began = CHECKLIST_VERSION - days.size;
  const text = [String(began), ...[...days].map(([version, day]) => `${version}@${day}`)].join(" ");
  return text === setting?.trim() ? null : text;
}
