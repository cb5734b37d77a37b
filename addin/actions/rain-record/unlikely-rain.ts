import { fromUs } from "../../../functions/quantities.ts";
import { MOST_MEASURED_INCHES, YEARLY_INCHES } from "../../../functions/rainfall/likely-rain.ts";
import type { RainSeries } from "./rain-series.ts";

/** Why a series is hard to believe. */
export type Unlikely =
  | { readonly kind: "looks like mm"; readonly yearlyInches: number }
  | { readonly kind: "looks like inches"; readonly yearlyMillimetres: number }
  | {
      readonly kind: "more than ever measured";
      readonly largest: number;
      readonly most: number;
      readonly unit: RainSeries["unit"];
      readonly within: "hour" | "day";
    };

const DAY_MINUTES = 1440;
const YEAR_MINUTES = 365.25 * DAY_MINUTES;
const LEAST_TELLING_DAYS = 60;

export function unlikely({ unit, stepMinutes, depths }: RainSeries): readonly Unlikely[] {
  let [total, largest, measured] = [0, 0, 0];
  for (const depth of depths) {
    if (depth === null) continue;
    total += depth;
    measured += 1;
    if (depth > largest) largest = depth;
  }
  const yearly = measured === 0 ? 0 : (total / (measured * stepMinutes)) * YEAR_MINUTES;
  const isLong = measured * stepMinutes >= LEAST_TELLING_DAYS * DAY_MINUTES;
  const within = stepMinutes <= 60 ? "hour" : "day";
  const most = fromUs("depth", MOST_MEASURED_INCHES[within], unit === "mm" ? "metric" : "us");
  return [
    ...(unit === "in" && isLong && yearly > YEARLY_INCHES.most ? [{ kind: "looks like mm", yearlyInches: yearly } as const] : []),
    ...(unit === "mm" && isLong && total > 0 && yearly < fromUs("depth", YEARLY_INCHES.least, "metric")
      ? [{ kind: "looks like inches", yearlyMillimetres: yearly } as const]
      : []),
    ...(largest > most && stepMinutes <= DAY_MINUTES ? [{ kind: "more than ever measured", largest, most, unit, within } as const] : []),
  ];
}
