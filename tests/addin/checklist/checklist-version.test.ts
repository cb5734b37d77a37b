import { expect, it, test } from "vitest";
import { CHECKLIST_VERSION, checklistDays, settingAfterMeeting } from "../../../addin/checklist/checklist-version.ts";

const TODAY = 46_400;

test("a workbook that began with this list asks all of it from the start", () => {
  expect([...checklistDays(String(CHECKLIST_VERSION), TODAY)]).toEqual([]);
  expect(settingAfterMeeting(String(CHECKLIST_VERSION), TODAY)).toBeNull();
});

test("an older workbook meets it today, and from then on keeps the day", () => {
  expect([...checklistDays(null, TODAY)]).toEqual([[2, TODAY]]);
  const kept = settingAfterMeeting(null, TODAY);
  expect(kept).toBe("1 2@46400");
  expect([...checklistDays(kept, TODAY + 90)]).toEqual([[2, TODAY]]);
  expect(settingAfterMeeting(kept, TODAY + 90)).toBeNull();
});

// Whatever stands in the setting, a finished garden stays finished: what cannot be read counts as the oldest list.
it.each(["", "  ", "two", "1 2@", "1 x@y", "1 2@later"])("a setting of %j counts as the oldest, met today", (setting) => {
  expect([...checklistDays(setting, TODAY)]).toEqual([[2, TODAY]]);
});

test("a workbook of a newer list than this one asks everything that this one knows", () => {
  expect([...checklistDays("9", TODAY)]).toEqual([]);
});
