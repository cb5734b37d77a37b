import type { Workbook } from "../../workbook/port.ts";
import type { Yard } from "../program/read-program.ts";

/** Brings the yard's row of Sites to the front, so that sheet and pane show the same yard. */
export function selectYard(workbook: Workbook, yard: Yard): Promise<void> {
  return workbook.select(yard.site.at("siteId"));
}
