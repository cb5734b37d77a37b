import { USUAL_VOID_SHARE } from "../../functions/basin/drawdown.ts";
import { CUBIC_FEET_PER_CUBIC_YARD } from "../../functions/quantities.ts";
import type { FormulaWrite } from "../workbook/port.ts";
import type { asBuiltSheet } from "./as-built.ts";
import type { Place } from "./place.ts";
import type { KeyOf } from "./sheet.ts";
import type { sitesSheet } from "./sites.ts";

/** Units, floor area and water held of every measured garden, one spilled formula each. A row without a Site ID stays blank. */
export function asBuiltFormulas(asBuilt: Place<typeof asBuiltSheet>, sites: Place<typeof sitesSheet>): readonly FormulaWrite[] {
  const own = (key: KeyOf<typeof asBuiltSheet>) => asBuilt.ownColumn(key);
  const siteIds = sites.columnReference("siteId");
  const length = own("floorLength");
  const width = own("floorWidth");
  const withAxes = (formula: string) => `IF(${length}="","",IF(${width}="","",${formula}))`;
  const fill = `IF(${own("shape")}="rectangle",1,PI()/4)`;
  const lengthToWidth = withAxes(`IF(${length}<${width},${width}/${length},${length}/${width})`);
  const sideSlope = `IF(${own("sideSlope")}="",0,${own("sideSlope")})`;
  // The mix's volume is earth, in cu yd or m³; the water in its voids is counted in cu ft or m³.
  const inVoids = `SOAK.LAYERVOLUME(${own("floorArea")},${own("mediaDepth")},0,${own("units")})*IF(${own("units")}="metric",1,${CUBIC_FEET_PER_CUBIC_YARD})*${USUAL_VOID_SHARE}`;
  const shape = `IF(${own("shape")}="","ellipse",${own("shape")})`;
  return [
    // Counting lifts over a column where looking up does not.
    formulaAt(
      asBuilt,
      "units",
      `=IF(COUNTIFS(${siteIds},${own("siteId")})=0,"",IF(COUNTIFS(${siteIds},${own("siteId")},${sites.columnReference("units")},"metric")>0,"metric","us"))`,
    ),
    formulaAt(asBuilt, "floorArea", `=${withAxes(`${fill}*${length}*${width}`)}`),
    formulaAt(
      asBuilt,
      "waterHeld",
      `=LET(ponded,SOAK.BASINVOLUME(${own("floorArea")},${own("pondingDepth")},${sideSlope},${shape},${lengthToWidth},${own("units")}),IF(${own("mediaDepth")}="",ponded,IF(${own("floorArea")}="",ponded,ponded+${inVoids})))`,
    ),
  ];
}

function formulaAt(asBuilt: Place<typeof asBuiltSheet>, key: KeyOf<typeof asBuiltSheet>, formula: string): FormulaWrite {
  return { range: asBuilt.cell(asBuilt.firstRow, key), formulas: [[formula]] };
}
