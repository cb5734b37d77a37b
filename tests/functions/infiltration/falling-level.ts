import fc from "fast-check";
import type { HoleReading } from "../../../functions/infiltration/drop-rate.ts";
import { measured } from "../measured.ts";

export function readingsOf(...pairs: readonly (readonly [minutes: number, waterDepthInches: number])[]): readonly HoleReading[] {
  return pairs.map(([minutes, waterDepthInches]) => ({ minutes, waterDepthInches }));
}

/** Two to ten readings of a level that falls or stands still, the hole never dry. */
export const fallingLevel: fc.Arbitrary<readonly HoleReading[]> = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 120 }), measured(0, 3)), { minLength: 1, maxLength: 9 })
  .map((steps) => {
    const total = steps.reduce((sum, [, drop]) => sum + drop, 0);
    let minutes = 0;
    let waterDepthInches = total + 1;
    const readings: HoleReading[] = [{ minutes, waterDepthInches }];
    for (const [after, drop] of steps) {
      minutes += after;
      waterDepthInches = Math.max(waterDepthInches - drop, 0.5);
      readings.push({ minutes, waterDepthInches });
    }
    return readings;
  });
