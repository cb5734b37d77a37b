import fc from "fast-check";
import { BASIN_SHAPES } from "../../../functions/basin/basin-shape.ts";
import { measured } from "../measured.ts";

/** Basins such as a yard could hold, and the corners beyond them. */
export const floorArea = measured(1, 2000);
export const depthInches = measured(0, 48);
export const sideSlope = measured(0, 6);
export const shape = fc.constantFrom(...BASIN_SHAPES);
export const lengthToWidth = measured(1, 6);
