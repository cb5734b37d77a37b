import { coverCurveNumbers, type Cover, type SoilGroup } from "../published/tr-55.ts";

/**
 * Curve number of one surface of a yard on one hydrologic soil group.
 *
 *   CN by table      (0 to 100; higher runs off more)
 *
 * Source  USDA Soil Conservation Service, TR-55, 2nd ed., 1986, tables 2-2a and 2-2c.
 * Domain  A cover and a soil group of the tables.
 * Limits  Average moisture, loss ratio 0.2. Urban fill is rarely the mapped soil group.
 */
export function tableCurveNumber(cover: Cover, soilGroup: SoilGroup): number {
  return coverCurveNumbers.values[cover][soilGroup];
}
