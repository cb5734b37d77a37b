import { CHECKLIST_SETTING, checklistDays, settingAfterMeeting, type ChecklistDays } from "../../checklist/checklist-version.ts";
import type { Workbook } from "../../workbook/port.ts";
import { today } from "../dates.ts";

export async function readChecklistDays(workbook: Workbook): Promise<ChecklistDays> {
  return checklistDays(await workbook.readSetting(CHECKLIST_SETTING), today());
}

/** With the first answer that is written under a version of the checklist, the workbook keeps that it met it, and when. */
export async function meetChecklist(workbook: Workbook): Promise<void> {
  const text = settingAfterMeeting(await workbook.readSetting(CHECKLIST_SETTING), today());
  if (text !== null) await workbook.writeSetting(CHECKLIST_SETTING, text);
}
