/**
 * Weights of materials by volume.
 *
 * Source  US Army, TM 9-2320-366-10-1, table 2-15 (read), printed to 1 lb per cu ft, 1 lb per cu yd and 1 kg per cu m.
 *         Crushed stone is printed as a range; its heavy end stands here.
 */
export const tm9Table215 = [
  { material: "dry earth", printedAs: "earth, dry loose", poundsPerCubicFoot: 75, poundsPerCubicYard: 2025, kilogramsPerCubicMeter: 1202 },
  {
    material: "moist earth",
    printedAs: "earth, moist packed",
    poundsPerCubicFoot: 95,
    poundsPerCubicYard: 2565,
    kilogramsPerCubicMeter: 1522,
  },
  {
    material: "earth and gravel",
    printedAs: "earth and gravel, dry loose",
    poundsPerCubicFoot: 100,
    poundsPerCubicYard: 2700,
    kilogramsPerCubicMeter: 1602,
  },
  { material: "gravel", printedAs: "gravel", poundsPerCubicFoot: 110, poundsPerCubicYard: 2970, kilogramsPerCubicMeter: 1762 },
  {
    material: "dry gravel and sand",
    printedAs: "gravel and sand, dry loose",
    poundsPerCubicFoot: 95,
    poundsPerCubicYard: 2565,
    kilogramsPerCubicMeter: 1522,
  },
  {
    material: "wet gravel and sand",
    printedAs: "gravel and sand, wet",
    poundsPerCubicFoot: 120,
    poundsPerCubicYard: 3240,
    kilogramsPerCubicMeter: 1922,
  },
  {
    material: "crushed stone",
    printedAs: "crushed stone, 95 to 100",
    poundsPerCubicFoot: 100,
    poundsPerCubicYard: 2700,
    kilogramsPerCubicMeter: 1602,
  },
  { material: "wet mud", printedAs: "mud, wet", poundsPerCubicFoot: 120, poundsPerCubicYard: 3240, kilogramsPerCubicMeter: 1922 },
] as const;
