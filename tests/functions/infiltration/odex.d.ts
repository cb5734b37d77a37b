/** The part of odex 2.0.4 that the tests use. Its own source does not pass our compiler settings, so these types stand for it. */
export class Solver {
  constructor(dimensions: number);
  absoluteTolerance: number;
  relativeTolerance: number;
  solve(slopes: (x: number, y: number[]) => number[], from: number, start: number[], to: number): { readonly y: number[] };
}
