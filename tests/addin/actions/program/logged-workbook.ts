/** A workbook that is set up, with its writes kept for the Change log. */
import { logWrites, type LoggedWorkbook } from "../../../../addin/actions/program/change-log.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { changeLogSheet, type ChangeRow } from "../../../../addin/records/change-log.ts";
import { readRecords } from "../../../../addin/records/read-records.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

export async function loggedInMemory(): Promise<{ readonly host: WorkbookInMemory; readonly logged: LoggedWorkbook }> {
  const host = new WorkbookInMemory();
  await setUpWorkbook(host);
  return { host, logged: logWrites(host) };
}

/** What stands on the Change log, row by row. */
export async function changeLogIn(host: WorkbookInMemory): Promise<readonly ChangeRow["record"][]> {
  const [cells = []] = await host.readSheets([changeLogSheet.name]);
  return readRecords(changeLogSheet, cells).rows.map(({ record }) => record);
}
