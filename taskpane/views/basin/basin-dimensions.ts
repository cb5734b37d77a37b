import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { BasinShape } from "../../../functions/basin/basin-shape.ts";
import { USUAL_SIDE_SLOPE } from "../../../functions/basin/basin-volume.ts";
import { LEAST_BERM_TOP_FEET, LEAST_FREEBOARD_INCHES } from "../../../functions/earthwork/cut-fill.ts";
import { fromUs, INCHES_PER_FOOT, type UnitSystem } from "../../../functions/quantities.ts";
import { depthAsLength } from "./depths.ts";

/**
 * What a basin's plan and section are drawn from. Every length, upright ones too, is in the yard's length unit (ft or m),
 * because a drawing has one scale.
 */
export interface BasinDimensions {
  readonly units: UnitSystem;
  readonly shape: BasinShape;
  /** Across the slope. */
  readonly floorLength: number;
  /** Down the slope. */
  readonly floorWidth: number;
  readonly floorEdge: number;
  readonly pondingDepth: number;
  /** Run to rise of the basin's sides. */
  readonly sideSlope: number;
  readonly mixDepth: number;
  readonly mulchDepth: number;
  readonly bermCrestWidth: number;
  readonly freeboard: number;
  /** Run to rise of the berm's outer face. */
  readonly bermOuterSlope: number;
  /** Fall of the ground, as a share of its run; null where it was not measured, and drawn level. */
  readonly groundFall: number | null;
  /** Of the ground over the full water at the uphill rim. */
  readonly uphillRise: number;
}

/** The drawing's dimensions, or null while the basin has no size. */
export function basinDimensions(draft: BasinDraft, mulchDepthInches: number): BasinDimensions | null {
  const { units, groundSlopePercent, sideSlope, mediaDepth, floorLength, floorWidth, floorEdge, pondingDepth } = draft;
  if (!("value" in floorLength) || !("value" in floorWidth) || !("value" in floorEdge) || !("value" in pondingDepth)) return null;
  if (sideSlope === null || mediaDepth === null) return null;
  const inches = (depthInches: number) => fromUs("length", depthInches / INCHES_PER_FOOT, units);
  return {
    units,
    shape: draft.shape,
    floorLength: floorLength.value,
    floorWidth: floorWidth.value,
    floorEdge: floorEdge.value,
    pondingDepth: depthAsLength(pondingDepth.value, units),
    sideSlope,
    mixDepth: depthAsLength(mediaDepth, units),
    mulchDepth: inches(mulchDepthInches),
    bermCrestWidth: fromUs("length", LEAST_BERM_TOP_FEET, units),
    freeboard: inches(LEAST_FREEBOARD_INCHES),
    bermOuterSlope: Math.max(sideSlope, USUAL_SIDE_SLOPE),
    groundFall: groundSlopePercent === null ? null : groundSlopePercent / 100,
    uphillRise: draft.earthwork?.uphillRise ?? 0,
  };
}
