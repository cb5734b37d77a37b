import type { BasinShape } from "../../../functions/basin/basin-shape.ts";

/** A basin as it stands in the ground: what is needed to dig it column by column. Any unit of length, the same for all. */
export interface StandingBasin {
  readonly shape: BasinShape;
  readonly floorLength: number;
  readonly floorWidth: number;
  /** Of the dug earth, at a way out from the floor's edge; negative ways are within the floor. Seen from the full water. */
  readonly dugHeight: (out: number) => number;
  /** Of the placed earth, likewise. */
  readonly placedHeight: (out: number) => number;
  /** Of the old ground, downhill of the floor's middle. */
  readonly groundHeight: (down: number) => number;
  /** Ways out at which one of the heights bends or jumps. */
  readonly edges: readonly number[];
}

/**
 * What is dug and what is placed, as upright columns between outlines around the floor and bearings from its middle. It
 * shares nothing with the calculation, which takes level layers cut off by the ground's contours.
 */
export function byColumns(basin: StandingBasin, steps = 120): { readonly cut: number; readonly fill: number } {
  const { shape, floorLength, floorWidth } = basin;
  const bearings = Array.from({ length: 4 * steps + 1 }, (_, index) => {
    const turn = (2 * Math.PI * index) / (4 * steps);
    const [x, y] = [Math.cos(turn), Math.sin(turn)];
    const stretch = shape === "ellipse" ? 1 : 1 / Math.max(Math.abs(x), Math.abs(y));
    return { x: x * stretch, y: y * stretch };
  });
  /** Halves of the axes at a way out; within the floor the outlines shrink to its middle. */
  const axes = (out: number) =>
    out < 0
      ? { along: (floorLength / 2) * (1 + out), across: (floorWidth / 2) * (1 + out) }
      : { along: floorLength / 2 + out, across: floorWidth / 2 + out };
  let cut = 0;
  let fill = 0;
  const ways = [-1, ...basin.edges];
  ways.slice(1).forEach((to, place) => {
    const from = ways[place] as number;
    for (let step = 0; step < steps; step += 1) {
      const [near, far] = [from + ((to - from) * step) / steps, from + ((to - from) * (step + 1)) / steps];
      const [inner, outer] = [axes(near), axes(far)];
      const dug = basin.dugHeight((near + far) / 2);
      const placed = basin.placedHeight((near + far) / 2);
      for (let turn = 1; turn < bearings.length; turn += 1) {
        const before = bearings[turn - 1]!;
        const after = bearings[turn]!;
        // The column's foot is a quadrilateral: half of its diagonals' cross product.
        const diagonal = { x: outer.along * after.x - inner.along * before.x, y: outer.across * after.y - inner.across * before.y };
        const other = { x: inner.along * after.x - outer.along * before.x, y: inner.across * after.y - outer.across * before.y };
        const foot = Math.abs(diagonal.x * other.y - diagonal.y * other.x) / 2;
        const ground = basin.groundHeight(((inner.across + outer.across) * (before.y + after.y)) / 4);
        cut += Math.max(ground - dug, 0) * foot;
        fill += Math.max(placed - ground, 0) * foot;
      }
    }
  });
  return { cut, fill };
}
