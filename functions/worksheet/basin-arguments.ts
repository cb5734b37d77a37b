import { BASIN_SHAPES, USUAL_LENGTH_TO_WIDTH } from "../basin/basin-shape.ts";
import { USUAL_SIDE_SLOPE } from "../basin/basin-volume.ts";
import { USUAL_DRAIN_HOURS } from "../basin/deepest-ponding.ts";
import { choice, hours, number } from "./calling/arguments.ts";

/** What several functions ask of a basin: asked in one set of words, with one default. */

export const sideSlope = number("sideSlope", "Side slope").atLeast(0).optional(USUAL_SIDE_SLOPE);
export const shape = choice("shape", "Shape", BASIN_SHAPES).optional("ellipse");
export const lengthToWidth = number("lengthToWidth", "Length to width").atLeast(1).optional(USUAL_LENGTH_TO_WIDTH);
export const drainHoursAllowed = hours("drainHours", "Drain hours").moreThan(0).optional(USUAL_DRAIN_HOURS);
