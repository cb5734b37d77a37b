import { USUAL_VOID_SHARE } from "../../functions/basin/drawdown.ts";
import type { FormulaWrite } from "../workbook/port.ts";
import type { asBuiltSheet } from "./as-built.ts";
import { asWord } from "./as-word.ts";
import type { designSheet } from "./design.ts";
import { inEachRow } from "./formula-writes.ts";
import type { Place } from "./place.ts";
import type { KeyOf } from "./sheet.ts";
import { unitsOfSite } from "./site-units.ts";

/** Units, floor area and water held of a measured garden, in its own row. A row without its lengths stays blank. */
export function asBuiltFormulas(asBuilt: Place<typeof asBuiltSheet>, design: Place<typeof designSheet>): readonly FormulaWrite[] {
  const inRow = (key: KeyOf<typeof asBuiltSheet>, formula: (own: (key: KeyOf<typeof asBuiltSheet>) => string) => string) =>
    inEachRow(asBuilt, key, (row) => formula((of) => asBuilt.ownCell(row, of)));
  return [
    inRow("units", (own) => unitsOfSite(design, own("siteId"))),
    inRow("floorArea", (own) => {
      // In no list, no area: the sheet's own drop-down and Check workbook say so.
      const fill = `IF(s="rectangle",1,IF((s="")+(s="ellipse"),PI()/4,NA()))`;
      return `=LET(s,${asWord(own("shape"))},IF(COUNT(${own("floorLength")},${own("floorWidth")})<2,"",${fill}*${own("floorLength")}*${own("floorWidth")}))`;
    }),
    inRow("waterHeld", (own) => {
      const [length, width] = [own("floorLength"), own("floorWidth")];
      const lengthToWidth = `IF(COUNT(${length},${width})<2,"",MAX(${length},${width})/MIN(${length},${width}))`;
      const shape = `IF(TRIM(${own("shape")})="","ellipse",${own("shape")})`;
      const sideSlope = `IF(TRIM(${own("sideSlope")})="",0,${own("sideSlope")})`;
      const ponded = `SOAK.BASINVOLUME(${own("floorArea")},${own("pondingDepth")},${sideSlope},${shape},${lengthToWidth},${own("units")})`;
      // The mix is as deep as typed, in inches or millimeters under feet or meters of floor.
      const inLengths = `IF(${own("units")}="metric",CONVERT(1,"mm","m"),CONVERT(1,"in","ft"))`;
      const inVoids = `IF(TRIM(${own("mediaDepth")})="",0,${own("floorArea")}*${own("mediaDepth")}*${inLengths}*${USUAL_VOID_SHARE})`;
      return `=IF(COUNT(${length},${width},${own("pondingDepth")})=0,"",${ponded}+${inVoids})`;
    }),
  ];
}
