import { resultColumn } from "./column.ts";
import type { Sheet } from "./sheet.ts";
import { sitesSheet } from "./sites.ts";

/** The answers, row for row beside Sites: nothing here is typed, so nothing here can be overwritten by mistake. */
export const designSheet = {
  name: "Design",
  preface: [
    "Design: computed from Sites, Surfaces, Hole tests and Program, in each yard's own units. Nothing is typed here",
    "Design rate to Status are one call of SOAK.SITEDESIGN over all sites. Select a cell to read what it says in words.",
  ],
  columns: {
    siteId: resultColumn("Site ID", { widthPixels: 76 }),
    yard: resultColumn("Yard", { widthPixels: 215 }),
    units: resultColumn("Units", { widthPixels: 66 }),
    groundSlopePercent: resultColumn("Ground slope (%)", { numberFormat: "0.0", widthPixels: 76 }),
    contributingArea: resultColumn("Contributing area (sq ft | m²)", { numberFormat: "#,##0.0", widthPixels: 112 }),
    stormDepth: resultColumn("Storm depth (in | mm)", { numberFormat: "0.0#", widthPixels: 76 }),
    holes: resultColumn("Holes tested", { numberFormat: "0", widthPixels: 70 }),
    testedRate: resultColumn("Tested rate (in/h | mm/h)", { numberFormat: "0.00" }),
    pondingAsked: resultColumn("Ponding asked for (in | mm)", {
      numberFormat: "0.0",
      note: "Blank on Sites: the deepest that drains in time.",
    }),
    mediaDepth: resultColumn("Soil mix depth (in | mm)", { numberFormat: "0.0" }),
    sideSlope: resultColumn("Side slope (run to 1)", { numberFormat: "0.0", widthPixels: 80 }),
    shape: resultColumn("Shape", { widthPixels: 80 }),
    lengthToWidth: resultColumn("Length to width", { numberFormat: "0.0#", widthPixels: 80 }),
    designRate: resultColumn("Design rate (in/h | mm/h)", { numberFormat: "0.00" }),
    pondingDepth: resultColumn("Ponding depth used (in | mm)", { numberFormat: "0.0" }),
    floorArea: resultColumn("Floor area (sq ft | m²)", { numberFormat: "#,##0.0", widthPixels: 112 }),
    rimArea: resultColumn("Rim area (sq ft | m²)", { numberFormat: "#,##0.0", widthPixels: 112 }),
    runoff: resultColumn("Runoff (cu ft | m³)", { numberFormat: "#,##0.0#" }),
    waterHeld: resultColumn("Water held (cu ft | m³)", { numberFormat: "#,##0.0#" }),
    drawdownHours: resultColumn("Drawdown (h)", {
      numberFormat: "0.0",
      widthPixels: 84,
      note: "From full to empty, soil mix included. The limit on Program is for the standing water alone, which is what Status judges.",
    }),
    ruleArea: resultColumn("Rule of thumb, 10 % (sq ft | m²)", { numberFormat: "#,##0.0", widthPixels: 112 }),
    digVolume: resultColumn("Dig, in place (cu yd | m³)", {
      numberFormat: "0.00",
      note: "The basin to its ponding depth, its mulch and soil mix, and what sloping ground adds. Ground that is not measured counts as level.",
    }),
    status: resultColumn("Status", { widthPixels: 360 }),
    floorLength: resultColumn("Floor length (ft | m)", { numberFormat: "0.0", widthPixels: 84 }),
    floorWidth: resultColumn("Floor width (ft | m)", { numberFormat: "0.0", widthPixels: 84 }),
    floorEdge: resultColumn("Floor edge (ft | m)", { numberFormat: "0.0", widthPixels: 84 }),
    looseVolume: resultColumn("Dig, loose (cu yd | m³)", { numberFormat: "0.00" }),
    mixVolume: resultColumn("Soil mix, in place (cu yd | m³)", { numberFormat: "0.00" }),
    mixLoose: resultColumn("Mix to buy or keep, loose (cu yd | m³)", { numberFormat: "0.00", widthPixels: 112 }),
    mixSand: resultColumn("of it sand (cu yd | m³)", { numberFormat: "0.00" }),
    mixTopsoil: resultColumn("of it topsoil (cu yd | m³)", { numberFormat: "0.00" }),
    mixCompost: resultColumn("of it compost (cu yd | m³)", { numberFormat: "0.00" }),
    mixNativeSoil: resultColumn("of it native soil kept (cu yd | m³)", { numberFormat: "0.00", widthPixels: 112 }),
    mulchVolume: resultColumn("Mulch (cu yd | m³)", { numberFormat: "0.00" }),
    plants: resultColumn("Plants", { numberFormat: "0", widthPixels: 70 }),
    yardRunoff: resultColumn("Runoff by curve numbers (cu ft | m³)", { numberFormat: "#,##0.0#", widthPixels: 120 }),
  },
  rows: sitesSheet.rows,
  frozenColumns: 2,
  together: [
    ["designRate", "status"],
    ["floorLength", "floorEdge"],
  ],
} as const satisfies Sheet;
