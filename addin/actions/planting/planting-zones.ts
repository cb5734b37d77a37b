import { basinFloor, type BasinOutline, type BasinShape } from "../../../functions/basin/basin-shape.ts";
import { plantingEdges, USUAL_BERM_TOP_FEET } from "../../../functions/planting/zone-areas.ts";
import { fromUs, toUs, type UnitSystem } from "../../../functions/quantities.ts";
import { isCellError } from "../../../functions/worksheet/calling/cell.ts";
import { zoneAreas } from "../../../functions/worksheet/plants.ts";
import { MOISTURE_ZONES } from "../../records/planting.ts";

/** Handed on with the zones, so that the pane asks no record. */
export { MOISTURE_ZONES };
export type MoistureZone = (typeof MOISTURE_ZONES)[number];

/** What the planting zones follow from, in the yard's units. */
export interface PlantedBasin {
  readonly units: UnitSystem;
  readonly floorArea: number;
  readonly pondingDepth: number;
  readonly sideSlope: number;
  readonly outline: BasinOutline;
}

/** A place on the ground, in the yard's length unit: along the basin and across it, uphill positive, from its middle. */
export interface Spot {
  readonly along: number;
  readonly across: number;
}

/** An outline around the basin's middle. */
export interface Edge {
  readonly shape: BasinShape;
  readonly halfLength: number;
  readonly halfWidth: number;
}

/** The ground between two edges; the floor has no inner one. */
export interface ZoneRing {
  readonly zone: MoistureZone;
  readonly area: number;
  readonly inner: Edge | null;
  readonly outer: Edge;
}

export interface PlantingZones {
  readonly units: UnitSystem;
  readonly rings: readonly ZoneRing[];
  readonly cautions: readonly string[];
}

/** The zones of a basin as SOAK.ZONEAREAS has them, or the sentence that says why there are none. */
export function plantingZones(basin: PlantedBasin): PlantingZones | { readonly sentence: string } {
  const { units, floorArea, pondingDepth, sideSlope, outline } = basin;
  const inputs = [floorArea, pondingDepth, sideSlope, null, outline.shape, outline.lengthToWidth, units];
  const areas = zoneAreas.evaluate(inputs)[0] ?? [];
  const fault = areas.find(isCellError);
  if (fault !== undefined) return { sentence: fault.sentence };
  const edges = zoneEdges(basin);
  const rings = MOISTURE_ZONES.map(
    (zone, place): ZoneRing => ({
      zone,
      area: Number(areas[place]),
      inner: edges[place - 1] ?? null,
      outer: edges[place] as Edge,
    }),
  );
  return { units, rings, cautions: zoneAreas.cautionsFor(inputs) };
}

function zoneEdges({ units, floorArea, pondingDepth, sideSlope, outline }: PlantedBasin): readonly Edge[] {
  const floor = basinFloor(toUs("area", floorArea, units), outline.shape, outline.lengthToWidth);
  const { reachFeet } = plantingEdges(floor, toUs("depth", pondingDepth, units), sideSlope, USUAL_BERM_TOP_FEET);
  return [0, reachFeet, reachFeet + USUAL_BERM_TOP_FEET].map((outward) => ({
    shape: outline.shape,
    halfLength: fromUs("length", floor.lengthFeet / 2 + outward, units),
    halfWidth: fromUs("length", floor.widthFeet / 2 + outward, units),
  }));
}

export function isInZone({ inner, outer }: ZoneRing, place: Spot): boolean {
  return isInside(outer, place) && (inner === null || !isInside(inner, place));
}

function isInside({ shape, halfLength, halfWidth }: Edge, { along, across }: Spot): boolean {
  if (shape === "rectangle") return Math.abs(along) <= halfLength && Math.abs(across) <= halfWidth;
  return (along / halfLength) ** 2 + (across / halfWidth) ** 2 <= 1;
}

export function ringOf({ rings }: PlantingZones, zone: MoistureZone): ZoneRing {
  return rings.find((ring) => ring.zone === zone) as ZoneRing;
}

export function distanceBetween(one: Spot, other: Spot): number {
  return Math.hypot(one.along - other.along, one.across - other.across);
}
