/**
 * How the kinds of a plan are told apart without color: each has a number and a mark, one of eight shapes, hollow,
 * solid or barred. Shapes are drawn in a square of two units around the middle.
 */
const SHAPES = [
  "M-1 0a1 1 0 1 0 2 0a1 1 0 1 0-2 0Z",
  "M-.85-.85H.85V.85H-.85Z",
  "M0-1 .95.75H-.95Z",
  "M0-1 1 0 0 1-1 0Z",
  "M0 1-.95-.75H.95Z",
  "M-.35-1H.35V-.35H1V.35H.35V1H-.35V.35H-1V-.35H-.35Z",
  "M-.5-.87H.5L1 0 .5.87H-.5L-1 0Z",
  "M0-1 .3-.35 1-.3.45.15.62.85 0 .48-.62.85-.45.15-1-.3-.3-.35Z",
] as const;

export const FILLS = ["hollow", "solid", "barred"] as const;

export interface PlantMark {
  /** As the legend counts the kinds, from 1. */
  readonly number: number;
  readonly path: string;
  readonly fill: (typeof FILLS)[number];
}

/** A mark for each kind, in the order of their first clump. */
export function marksOf(plants: readonly string[]): ReadonlyMap<string, PlantMark> {
  return new Map(
    [...new Set(plants)].map((plant, index) => [
      plant,
      {
        number: index + 1,
        path: SHAPES[index % SHAPES.length] ?? SHAPES[0],
        fill: FILLS[Math.floor(index / SHAPES.length) % FILLS.length] ?? "hollow",
      },
    ]),
  );
}
