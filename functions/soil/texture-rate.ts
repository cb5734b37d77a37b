import { saturatedConductivities } from "../published/rawls-1982.ts";
import type { TabledTexture, TextureClass } from "../published/soil-survey-manual.ts";
import { toUs } from "../quantities.ts";

/**
 * Published saturated rate of a texture class.
 *
 *   rate by table      (printed in mm/h, given back in in/h)
 *
 * Source  Rawls, Brakensiek and Saxton, Transactions of the ASAE, 1982.
 * Domain  A class of the table.
 * Limits  A mean over soil samples: the rate of a saturated, uncompacted soil of that class, not of one yard. Twice and
 *         more of Green and Ampt's conductivity, and not reduced for design. Undefined for silt, which has no row.
 */
export function textureRateInchesPerHour(texture: TextureClass): number | undefined {
  return isTabled(texture) ? toUs("rate", saturatedConductivities.values[texture], "metric") : undefined;
}

/** The tables by texture class have no row for silt. */
export function isTabled(texture: TextureClass): texture is TabledTexture {
  return texture !== "silt";
}
