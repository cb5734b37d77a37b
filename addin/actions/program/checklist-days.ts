import { CHECKLIST_SETTING, checklistDays, settingAfterMeeting, type ChecklistDays } from "../../checklist/checklist-version.ts";
import type { Workbook } from "../../workbook/port.ts";
import { today } from "../dates.ts";

/** Workbooks that had met this version when they were read last, so that the spreadsheet is not asked again for each answer. */
const met = new WeakSet<Workbook>();

export async function readChecklistDays(workbook: Workbook): Promise<ChecklistDays> {
  const setting = await workbook.readSetting(CHECKLIST_SETTING);
  if (settingAfterMeeting(setting, today()) === null) met.add(workbook);
  else met.delete(workbook);
  return checklistDays(setting, today());
}

/** With the first answer that is written under a version of the checklist, the workbook keeps that it met it, and when. */
export async function meetChecklist(workbook: Workbook): Promise<void> {
  if (met.has(workbook)) return;
  const text = settingAfterMeeting(await workbook.readSetting(CHECKLIST_SETTING), today());
  if (text !== null) await workbook.writeSetting(CHECKLIST_SETTING, text);
  met.add(workbook);
}
