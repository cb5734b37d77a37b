import { BASIN_SHAPES } from "../../functions/basin/basin-shape.ts";
import { choiceColumn, dateColumn, nameColumn, numberColumn, resultColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

/** One row a measured garden, after it was built: the newest row of a yard counts. */
export const asBuiltSheet = {
  name: "As-built",
  preface: [
    "As-built: what was really built, measured again with tape and level. The newest row of a yard counts",
    "Lengths are in the yard's units (ft | m), depths in (in | mm). Water held is worked out from these, never from the design.",
  ],
  columns: {
    siteId: nameColumn("Site ID", { widthPixels: 76 }),
    date: dateColumn("Date", "Date", { widthPixels: 92 }),
    by: textColumn("By", { widthPixels: 110 }),
    shape: choiceColumn("Shape", "Shape", BASIN_SHAPES, { widthPixels: 84, note: "As built, seen from above. Blank: an ellipse." }),
    floorLength: numberColumn(
      "Floor length (ft | m)",
      { label: "Floor length", moreThan: 0 },
      { note: "Across the middle of the level floor, the long way." },
    ),
    floorWidth: numberColumn(
      "Floor width (ft | m)",
      { label: "Floor width", moreThan: 0 },
      { note: "Across the middle of the level floor, the short way." },
    ),
    pondingDepth: numberColumn(
      "Ponding depth (in | mm)",
      { label: "Ponding depth", moreThan: 0 },
      { note: "From the floor up to the sill of the overflow." },
    ),
    sideSlope: numberColumn(
      "Side slope (run to 1)",
      { label: "Side slope", atLeast: 0 },
      { note: "Blank: the sides are taken as upright, so that water held is never more than was built." },
    ),
    mediaDepth: numberColumn(
      "Soil mix depth (in | mm)",
      { label: "Soil mix depth", atLeast: 0 },
      { note: "As placed, under the floor. Blank: the water in its voids is not counted." },
    ),
    sillWidth: numberColumn("Overflow sill width (ft | m)", { label: "Overflow sill width", moreThan: 0 }),
    lowestBerm: numberColumn(
      "Berm above sill, lowest (in | mm)",
      { label: "Berm above sill" },
      { note: "Negative where the berm is lower than the sill: fill it." },
    ),
    drainHours: numberColumn("Flow test drained in (h)", { label: "Flow test drained in", moreThan: 0 }),
    note: textColumn("Note", { widthPixels: 260 }),
    units: resultColumn("Units", { widthPixels: 66, typedInstead: "The units of a yard are typed in its row of Sites." }),
    floorArea: resultColumn("Floor area (sq ft | m²)", {
      numberFormat: "#,##0.0",
      widthPixels: 112,
      typedInstead: "The floor area is computed: type the floor's shape, length and width in this row.",
    }),
    waterHeld: resultColumn("Water held (cu ft | m³)", {
      numberFormat: "#,##0.0#",
      typedInstead: "Water held is computed: type the floor, ponding depth, side slope and soil mix of this row.",
    }),
  },
  rows: 200,
  frozenColumns: 2,
} as const satisfies Sheet;

export type AsBuilt = RecordOf<typeof asBuiltSheet>;
export type AsBuiltRow = SheetRow<typeof asBuiltSheet>;
