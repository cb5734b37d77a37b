import { COVERS } from "../../functions/published/tr-55.ts";
import { choiceColumn, nameColumn, numberColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

/** One row a surface: the roofs, drives and lawns whose water reaches a garden. */
export const surfacesSheet = {
  name: "Surfaces",
  preface: [
    "Surfaces: what drains to each garden. Measure a roof flat, as seen from above",
    "Share draining here is 0 to 1: half a roof is 0.5 (or 50%). Blank counts as 1.",
  ],
  columns: {
    siteId: nameColumn("Site ID", { widthPixels: 76 }),
    surface: textColumn("Surface", { widthPixels: 170 }),
    cover: choiceColumn("Cover", "Cover", COVERS, {
      widthPixels: 140,
      note: "Roof and paving run off by share, other ground by curve number (TR-55 tables 2-2a and 2-2c).",
    }),
    area: numberColumn("Area (sq ft | m²)", { label: "Area", atLeast: 0 }, { numberFormat: "#,##0.0" }),
    share: numberColumn("Share draining here", { label: "Share draining here", atLeast: 0, atMost: 1 }, { numberFormat: "0.00" }),
    howMeasured: textColumn("How measured", {
      widthPixels: 300,
      note: "The measurements that the area follows from, as typed in the pane, or your own words.",
    }),
    downspout: textColumn("Downspout to reroute", {
      widthPixels: 420,
      note: "The pipe or trench that was checked against the roof's peak flow, and with what.",
    }),
  },
  rows: 600,
  frozenColumns: 2,
} as const satisfies Sheet;

export type Surface = RecordOf<typeof surfacesSheet>;
export type SurfaceRow = SheetRow<typeof surfacesSheet>;
