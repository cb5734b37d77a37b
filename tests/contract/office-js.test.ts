import { expect, test } from "vitest";
import { officeHooks } from "./office-js.ts";

/** Each of these is internal to @microsoft/office-js, so a new version may drop it; the message says what rests on it. */
test.each([
  [
    "SessionBase",
    (hooks: ReturnType<typeof officeHooks>) => hooks.SessionBase,
    "function",
    "SessionBase._overrideSession leads Excel.run to the in-memory Excel",
  ],
  [
    "CommonUtility.isSetSupported",
    (hooks) => hooks.CommonUtility?.isSetSupported,
    "function",
    "it asks Office.context.requirements, where the test answers with the declared sets",
  ],
  [
    "CommonUtility._doApiNotSupportedCheck",
    (hooks) => hooks.CommonUtility?._doApiNotSupportedCheck,
    "boolean",
    "set to true it refuses members above the declared requirement sets",
  ],
  [
    "_testSetRichApiMessageReadyImpl",
    (hooks) => hooks._testSetRichApiMessageReadyImpl,
    "function",
    "without it, event handlers wait for a real Excel for ever",
  ],
  ["_testTriggerRichApiMessageEvent", (hooks) => hooks._testTriggerRichApiMessageEvent, "function", "it raises events"],
  ["Constants.eventMessageCategory", (hooks) => hooks.Constants?.eventMessageCategory, "number", "it marks a message as an event"],
  ["Constants.eventWorkbookId", (hooks) => hooks.Constants?.eventWorkbookId, "string", "it addresses an event to the workbook's sheets"],
] as const satisfies readonly (readonly [string, (hooks: ReturnType<typeof officeHooks>) => unknown, string, string])[])(
  "the object model of the pinned @microsoft/office-js still has %s",
  (name, find, type, purpose) => {
    expect(typeof find(officeHooks()), `OfficeExtension.${name} is gone: ${purpose}. Find its successor before raising the version.`).toBe(
      type,
    );
  },
);
