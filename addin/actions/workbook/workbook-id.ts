import type { Workbook } from "../../workbook/port.ts";

/**
 * What tells one workbook from another: a random text in its settings, so that what belongs to it on this device (what was
 * typed and not written yet) is never shown beside another. Yards cannot tell: every program has its own Y-001.
 */
export interface WorkbookId {
  readonly id: string;
  /** Writes it into a workbook that had none. Until then nothing has changed by merely opening it. */
  readonly keep: () => Promise<void>;
}

export async function workbookId(workbook: Workbook): Promise<WorkbookId> {
  const kept = await workbook.readSetting(WORKBOOK_ID_SETTING);
  if (kept !== null) return { id: kept, keep: () => Promise.resolve() };
  const id = randomId();
  return { id, keep: () => workbook.writeSetting(WORKBOOK_ID_SETTING, id) };
}

export const WORKBOOK_ID_SETTING = "soakbook.workbook";

function randomId(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
