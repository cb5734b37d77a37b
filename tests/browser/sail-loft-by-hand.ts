/**
 * The numbers of an invented yard, the sail loft in Sailmaker Lane, worked out by hand from what is typed for it: plain
 * arithmetic, none of it the project's own. What stands behind a line is what a pocket calculator shows for it.
 */

/** Inches and feet, cubic feet and yards, a cubic yard in cubic meters (exact: 0.9144 cubed), cubic inches in a gallon. */
const FT = 12;
const CU_YD = 27;
const CU_M = 0.9144 ** 3;
const GALLONS = 1728 / 231;

// --- Water: roof measured along the walls, 38 by 24 ft with 1 ft of overhang all around, half of it draining here; the
// drive is 300 sq ft, 0.6 of it.
export const roofArea = (38 + 2 * 1) * (24 + 2 * 1); // 1040 sq ft
export const contributingArea = roofArea * 0.5 + 300 * 0.6; // 700 sq ft
const stormInches = 1.2;
/** Share of a roof or paving: the simple method's 0.05 + 0.9 I at I = 1 (New Hampshire Env-Wq 1504.10). */
export const runoff = (0.95 * contributingArea * stormInches) / FT; // 66.5 cu ft

// --- Soil. Porchet's log form (ILRI publication 16, 1994, chapter 12): f = r / (2 t) x ln[(2 H1 + r) / (2 H2 + r)].
// Hole A is 10 in across, r = 5 in. Thirds of an hour: 7.5 ln(23/21) = 0.682, 7.5 ln(21/19.2) = 0.672, 7.5 ln(19.2/17.6)
// = 0.653 in/h: all within 10 %, so the whole hour counts.
export const rateA = (5 / (2 * 1)) * Math.log((2 * 9 + 5) / (2 * 6.3 + 5)); // 0.669 in/h
// Hole B is 8 in across, r = 4 in: 6 ln(20/18.6) = 0.435, 6 ln(18.6/17.4) = 0.400, 6 ln(17.4/16.2) = 0.429 in/h: likewise.
export const rateB = (4 / (2 * 1)) * Math.log((2 * 8 + 4) / (2 * 6.1 + 4)); // 0.4214 in/h
/** The geometric mean of the two, then halved (Minnesota Stormwater Manual, determining soil infiltration rates). */
export const testedRate = Math.sqrt(rateA * rateB); // 0.531 in/h
export const designRate = testedRate / 2; // 0.2655 in/h

// --- Basin: rectangle 1.5 times as long as wide, 5 in of ponding, sides 4 to 1, 6 in of soil mix with 0.25 of voids.
const d = 5 / FT; // 0.4167 ft
const reach = 4 * d; // 1.6667 ft
const rain = stormInches / FT; // 0.1 ft, on the basin itself too
const mixWater = (0.25 * 6) / FT; // 0.125 ft
// What comes in and what is held, with L = 1.5 W:
//   66.5 + 0.1 (1.5 W + 3.3333)(W + 3.3333) = 1.5 W^2 d + 2.5 W x 4 d^2 + 4/3 x 16 d^3 + 0.125 x 1.5 W^2
// that is, sorted by powers of W, a W^2 + b W = c:
const a = 1.5 * (d + mixWater - rain); // 0.6625
const b = (1.5 + 1) * (4 * d ** 2 - rain * 2 * reach); // 0.9028
const c = runoff + rain * (2 * reach) ** 2 - (4 / 3) * 16 * d ** 3; // 66.0679
const width = (-b + Math.sqrt(b ** 2 + 4 * a * c)) / (2 * a); // 9.3281 ft
const long = 1.5 * width; // 13.9922 ft
export const floorArea = long * width; // 130.52 sq ft
const rimLong = long + 2 * reach; // 17.3255 ft
const rimWide = width + 2 * reach; // 12.6615 ft
export const rimArea = rimLong * rimWide; // 219.37 sq ft
/** Between floor and rim by the prismoidal rule, d/6 (bottom + 4 middle + top). */
const middle = (long + reach) * (width + reach); // 172.17 sq ft
const ponded = (d / 6) * (floorArea + 4 * middle + rimArea); // 72.12 cu ft
export const waterHeld = ponded + mixWater * floorArea; // 88.44 cu ft = 66.5 of runoff and 21.94 of rain on the basin
export const pondingGoneHours = 5 / designRate; // 18.8 h, within 48 h
export const drawdownHours = (5 + 0.25 * 6) / designRate; // 24.5 h, soil mix included

// --- Earth and materials.
const mixHole = (floorArea * 6) / FT / CU_YD; // 2.417 cu yd
/** "tight soil": 52 % sand, 24 % topsoil, 24 % compost; loose, it settles by 15 %, the value on Program. */
const mixLoose = mixHole / (1 - 0.15); // 2.844 cu yd
export const sand = 0.52 * mixLoose; // 1.479 cu yd
export const topsoil = 0.24 * mixLoose; // 0.682 cu yd
export const compost = 0.24 * mixLoose; // 0.682 cu yd
export const mulch = (rimArea * 3) / FT / CU_YD; // 2.031 cu yd, 3 in over floor and sides
/** Triangles of 1.5 ft: a plant stands for sin 60 degrees x 1.5 x 1.5 = 1.949 sq ft. */
export const plants = Math.ceil(rimArea / (Math.sin(Math.PI / 3) * 1.5 ** 2)); // 112.6, so 113

// --- Dig and berm on ground that falls 6 in 150, 4 %. Full water stands where a pad as wide as the rim would have its cut,
// compacted to 0.9 (FM 5-434, table 1-1), fill its downhill side: 6.4974 ft from the uphill rim. The dug bottom lies the
// mulch's 3 in, under the floor the mix's 6 in more, under the finished surface; the berm's crest 2 in over the water, 1 ft
// wide, sides 4 to 1. Cut into 20,000 slices across the slope, in each of which the ground is level and the rest straight lines.
const fromUphill = rimWide / (1 + Math.sqrt(0.9));
const groundAt = (down: number) => 0.04 * (fromUphill - (down + rimWide / 2));
const [mulchFeet, mixFeet, freeboard] = [3 / FT, 6 / FT, 2 / FT];
const crestFrom = reach + 4 * freeboard;
const crestTo = crestFrom + 1;
/** Heights at the two ends of each straight piece, by the way out from the floor's edge. */
const under = (out: number) => out / 4 - d;
const inside: readonly Piece[] = [{ from: 0, to: reach, height: (out) => under(out) - mulchFeet }];
const dugPieces: readonly Piece[] = [...inside, { from: reach, to: 12, height: under }];
const placedPieces: readonly Piece[] = [
  ...inside,
  { from: reach, to: crestFrom, height: under },
  { from: crestFrom, to: crestTo, height: () => freeboard },
  { from: crestTo, to: 12, height: (out) => freeboard - (out - crestTo) / 4 },
];
const earth = (pieces: readonly Piece[], side: 1 | -1): number => {
  const slices = 20_000;
  const edges = [0, width / 2, ...pieces.map(({ to }) => width / 2 + to)];
  let cubicFeet = 0;
  for (const [place, to] of edges.slice(1).entries()) {
    const from = edges[place] as number;
    for (let slice = 0; slice < slices; slice += 1) {
      const middleOf = from + ((to - from) * (slice + 0.5)) / slices;
      const out = middleOf - width / 2;
      const straight = pieces.find((piece) => out >= piece.from && out < piece.to);
      const bottom = straight === undefined ? -d - mulchFeet - mixFeet : straight.height(out);
      for (const down of [middleOf, -middleOf]) {
        const over = (height: number) => side * (groundAt(down) - height);
        const ends = pieces
          .filter((piece) => piece.to > out)
          .map((piece) => {
            const first = Math.max(piece.from, out);
            return (piece.to - first) * above(over(piece.height(first)), over(piece.height(piece.to)));
          });
        const across = Math.max(over(bottom), 0) * (long + 2 * Math.max(out, 0)) + 2 * ends.reduce((sum, one) => sum + one, 0);
        cubicFeet += (across * (to - from)) / slices;
      }
    }
  }
  return cubicFeet;
};

interface Piece {
  readonly from: number;
  readonly to: number;
  readonly height: (out: number) => number;
}

/** Mean of what of a straight line is above nothing. */
function above(start: number, end: number): number {
  if (start >= 0 && end >= 0) return (start + end) / 2;
  if (start <= 0 && end <= 0) return 0;
  return Math.max(start, end) ** 2 / (2 * Math.abs(start - end));
}

export const digVolume = earth(dugPieces, 1) / CU_YD; // 7.3075 cu yd in place
const berm = earth(placedPieces, -1) / CU_YD; // 1.3716 cu yd, compacted
/** Common earth swells to 1.25 (US Army FM 5-434, table 1-1). */
export const looseVolume = 1.25 * digVolume; // 9.134 cu yd
const hauledOff = 1.25 * (digVolume - berm / 0.9); // 7.229 cu yd loose

// --- Hours by hand: 0.43 cu m an hour in firm soil (Planning Planet wiki, pits to 2 sq m), volunteers 1.5 times as long.
const digHours = ((digVolume * CU_M) / 0.43) * 1.5; // 19.49 h
/** 12 sq ft of stone 6 in deep on Program, at 100 lb a cu ft (TM 9-2320-366-10-1, table 2-15). */
const stoneTons = (12 * 0.5 * 100) / 2000; // 0.3 ton

// --- Money. Quantities are rounded up to a hundredth; prices, packages and deliveries are those typed in the test.
const hundredthUp = (quantity: number) => Math.ceil(quantity * 100 - 1e-6) / 100;
export const estimate = {
  sand: hundredthUp(sand) * 38 + 40, // 1.48 x 38 and 40 for delivery = 96.24
  topsoil: Math.max(hundredthUp(topsoil), 1) * 32, // 0.69, and 1 at least: 32.00
  compost: hundredthUp(compost) * 45, // 0.69 x 45 = 31.05
  "shredded mulch": hundredthUp(mulch) * 36, // 2.04 x 36 = 73.44
  "river stone": hundredthUp(stoneTons) * 60, // 0.3 x 60 = 18.00
  "soil disposal": hundredthUp(hauledOff) * 20, // 7.23 x 20 = 144.60
  "plant quart": Math.ceil(plants / 32) * 32 * 3.2, // 4 trays of 32 quarts at 3.20 = 409.60
  "tool hire": 1 * 85, // 85.00
} as const;
export const cash = Object.values(estimate).reduce((sum, amount) => sum + amount, 0); // 889.93
const contingency = cash * 0.15; // 133.49
export const cost = cash + contingency; // 1023.42
export const inKind = hundredthUp(digHours) * 31.8; // 19.49 x 31.80 = 619.78
export const costPerSquareFoot = cost / contributingArea; // 1.46, all of it roof and paving
export const costPerGallon = cost / (waterHeld * GALLONS); // 1023.42 / 661.6 gal = 1.55

// --- Planting: zone A the floor, B the sides, C a berm's crest of 1 ft around the rim, in sq ft.
export const zones = {
  A: floorArea, // 130.5
  B: rimArea - floorArea, // 88.8
  C: (rimLong + 2) * (rimWide + 2) - rimArea, // 19.33 x 14.66 - 219.37 = 64.0
} as const;

// --- As built: a floor of 14 by 9.4 ft, 4.75 in up to the sill, sides 4 to 1, 6 in of mix. By the prismoidal rule again:
const builtDepth = 4.75 / FT; // 0.3958 ft
const builtFloor = 14 * 9.4; // 131.6 sq ft
const builtRim = (14 + 2 * 4 * builtDepth) * (9.4 + 2 * 4 * builtDepth); // 17.17 x 12.57 = 215.73 sq ft
const builtMiddle = (14 + 4 * builtDepth) * (9.4 + 4 * builtDepth); // 171.20 sq ft
export const heldAsBuilt = (builtDepth / 6) * (builtFloor + 4 * builtMiddle + builtRim) + mixWater * builtFloor; // 68.08 + 16.45 = 84.53 cu ft
/** An inch a week over floor and sides (common practice, no source). */
export const weeklyGallons = (builtRim / FT) * GALLONS; // 134.5
/** From 1.5 in to the 3 in of Program. */
export const mulchToBring = (builtRim * 1.5) / FT / CU_YD; // 0.999 cu yd
