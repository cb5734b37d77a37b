import { reportSheet } from "../../records/report.ts";
import type { Workbook } from "../../workbook/port.ts";
import type { Drawing } from "../basin/save-drawing.ts";

/** Places the charts on sheet Report, right of its table, one below the other; those saved earlier make way. */
export async function saveReportCharts(workbook: Workbook, charts: readonly Drawing[]): Promise<void> {
  const column = Object.keys(reportSheet.columns).length + 1;
  let row = reportSheet.preface.length;
  for (const [place, chart] of charts.entries()) {
    await workbook.placePicture({ sheet: reportSheet.name, row, column, name: `Report chart ${place + 1}`, ...chart });
    row += Math.ceil(chart.heightPixels / ROW_PIXELS) + 1;
  }
}

/** Lower than any row is drawn, so that the next chart never stands on this one. */
const ROW_PIXELS = 18;
