/**
 * The knee of a curve of captured share against area: where a larger garden begins to bring less than its size costs.
 *
 *   x = area / (area at the end), y = (share - share at the start) / (share at the end - share at the start)
 *   knee = the point with the largest y - x: the farthest above the straight line between the ends
 *
 * Source  Satopää, Albrecht, Irwin and Raghavan, Finding a "kneedle" in a haystack: detecting knee points in system
 *         behavior, 2011 (from memory): the same distance, without their smoothing and sensitivity.
 * Domain  Points in the order of their areas, from the smallest. Undefined where no point lies above that line.
 * Limits  The knee moves with the end of the curve, so the end has to be stated beside it. It knows no prices.
 */
export function captureKnee<Point extends CurvePoint>(points: readonly Point[]): Point | undefined {
  const [start, end] = [points[0], points.at(-1)];
  if (start === undefined || end === undefined) return undefined;
  const across = end.area - start.area;
  const up = end.capturedShare - start.capturedShare;
  let [knee, highest]: [Point | undefined, number] = [undefined, 0];
  for (const point of points) {
    const above = (point.capturedShare - start.capturedShare) / up - (point.area - start.area) / across;
    if (above > highest) [knee, highest] = [point, above];
  }
  return knee;
}

export interface CurvePoint {
  /** In any unit of area, the same at all points. */
  readonly area: number;
  readonly capturedShare: number;
}
