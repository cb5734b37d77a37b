import type { Garden } from "../../../functions/basin/water-balance.ts";

/** A garden of a yard, drawn at random: media or none, vertical sides or sloping, sand to clay, pondless now and then. */
export function randomGarden(next: () => number): Garden {
  const between = (least: number, most: number): number => least + (most - least) * next();
  return {
    contributingSquareFeet: between(0, 5000),
    runoffShare: between(0, 1),
    floorSquareFeet: between(1, 500),
    pondingInches: next() < 0.05 ? 0 : between(1, 12),
    designInchesPerHour: next() < 0.05 ? 0 : between(0, 4) ** 2 / 4,
    mediaInches: next() < 0.5 ? 0 : between(3, 36),
    voidShare: between(0.05, 0.4),
    sideSlope: next() < 0.3 ? 0 : between(0, 4),
    evapotranspirationInchesPerDay: next() < 0.3 ? 0 : between(0, 0.3),
  };
}
