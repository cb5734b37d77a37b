/**
 * Flow of an open half-round trench that runs full to its brim, from that of the whole pipe of the same width.
 *
 *   Q = Q of the full pipe / 2      (any unit of flow)
 *
 * Half a circle has half the area and half the wetted edge of the whole, so the same hydraulic radius D / 4 and, by
 * Manning's equation, the same speed.
 *
 * Source  Manning's equation; roughness of channels, City of Winchester, Indiana, stormwater code, table 4 (read).
 * Domain  fullPipeFlow >= 0.
 * Limits  As deep as half its width, and kept in that shape. Those of pipe-flow besides.
 */
export function halfRoundTrenchFlow(fullPipeFlow: number): number {
  return fullPipeFlow / 2;
}
