import { choiceColumn, dateColumn, nameColumn, numberColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

/** A is the wettest floor, B the sloped sides, C rim and berm. */
export const MOISTURE_ZONES = ["A", "B", "C"] as const;

/** One row a clump of one plant in one yard: planned first, then what was planted. */
export const plantingSheet = {
  name: "Planting",
  preface: [
    "Planting: one row a clump. Zone A is the wettest floor, B the sloped sides, C rim and berm",
    "Place is measured from the middle of the basin: along its length, and across it (uphill is positive), in the yard's units (ft | m).",
  ],
  columns: {
    siteId: nameColumn("Site ID", { widthPixels: 76 }),
    plant: nameColumn("Plant", { widthPixels: 215, note: "Scientific name, as it stands on Plants." }),
    zone: choiceColumn("Moisture zone", "Moisture zone", MOISTURE_ZONES, { widthPixels: 76 }),
    planned: numberColumn("Planned", { label: "Planned", atLeast: 0 }, { widthPixels: 76, numberFormat: "0" }),
    spacing: numberColumn("Spacing (ft | m)", { label: "Spacing", moreThan: 0 }, { widthPixels: 80 }),
    alongLength: numberColumn("Place along (ft | m)", { label: "Place along" }, { widthPixels: 84, numberFormat: "0.0" }),
    acrossWidth: numberColumn("Place across (ft | m)", { label: "Place across" }, { widthPixels: 84, numberFormat: "0.0" }),
    planted: numberColumn("Planted", { label: "Planted", atLeast: 0 }, { widthPixels: 76, numberFormat: "0" }),
    plantedOn: dateColumn("Planted on", "Planted on", { widthPixels: 92 }),
    note: textColumn("Note", { widthPixels: 260, note: "Lot, supplier, or what was planted in its place." }),
  },
  rows: 1500,
  frozenColumns: 2,
} as const satisfies Sheet;

export type Clump = RecordOf<typeof plantingSheet>;
export type ClumpRow = SheetRow<typeof plantingSheet>;
