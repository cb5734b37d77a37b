import { render } from "preact";
import type { Drawing } from "../../../addin/actions/basin/save-drawing.ts";
import { svgPicture } from "../../parts/svg-picture.ts";
import { CHART_PIXELS, chartHeight, chartWords, ReportChart, type Chart } from "./report-chart.tsx";

/** The charts as pictures, black on white, drawn out of sight in the page. */
export async function drawCharts(charts: readonly Chart[]): Promise<readonly Drawing[]> {
  const drawings: Drawing[] = [];
  for (const chart of charts) {
    const frame = document.createElement("div");
    frame.className = "report-off-screen";
    document.body.append(frame);
    try {
      render(<ReportChart chart={chart} paper />, frame);
      const drawn = frame.querySelector("svg");
      if (drawn === null) throw new Error("The chart could not be made.");
      const size = { widthPixels: CHART_PIXELS, heightPixels: chartHeight(chart) };
      drawings.push({ ...size, pngBase64: await svgPicture(drawn, size.widthPixels, size.heightPixels), description: chartWords(chart) });
    } finally {
      render(null, frame);
      frame.remove();
    }
  }
  return drawings;
}
