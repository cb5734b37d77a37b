import { appliedHydrology } from "./documents.ts";
import { PublishedDocument, type Published, type PlaceInPrint } from "./source.ts";

export const scs24HourStorms = new PublishedDocument(
  "USDA Soil Conservation Service, 24-hour rainfall distributions, half-hourly ordinates",
  "as used with TR-55, 2nd ed., 1986",
  "read in transcription",
);

/** I and IA fall on the Pacific coast, III on the Gulf and Atlantic coasts, II elsewhere in the United States. */
export type StormType = "I" | "IA" | "II" | "III";

export const STORM_TYPES: readonly StormType[] = ["I", "IA", "II", "III"];

/** Hours since the storm's start, and the share of its 24-hour depth that has fallen by then; straight in between. */
export type StormCurve = readonly (readonly [hours: number, share: number])[];

const breakpoints = appliedHydrology.place("24-hour rainfall distributions of the Soil Conservation Service", "read in transcription");

/** No half-hourly ordinates of I and IA were found: these are the printed breakpoints. */
const typeI: Published<StormCurve> = {
  values: [
    [0, 0],
    [2, 0.035],
    [4, 0.076],
    [6, 0.125],
    [7, 0.156],
    [8, 0.194],
    [8.5, 0.219],
    [9, 0.254],
    [9.5, 0.303],
    [9.75, 0.362],
    [10, 0.515],
    [10.5, 0.583],
    [11, 0.624],
    [11.5, 0.654],
    [11.75, 0.669],
    [12, 0.682],
    [12.5, 0.706],
    [13, 0.727],
    [13.5, 0.748],
    [14, 0.767],
    [16, 0.83],
    [20, 0.926],
    [24, 1],
  ],
  printedTo: 0.001,
  from: breakpoints,
};

const typeIA: Published<StormCurve> = {
  values: [
    [0, 0],
    [2, 0.05],
    [4, 0.116],
    [6, 0.206],
    [7, 0.268],
    [8, 0.425],
    [8.5, 0.48],
    [9, 0.52],
    [9.5, 0.55],
    [9.75, 0.564],
    [10, 0.577],
    [10.5, 0.601],
    [11, 0.624],
    [11.5, 0.645],
    [11.75, 0.655],
    [12, 0.664],
    [12.5, 0.683],
    [13, 0.701],
    [13.5, 0.719],
    [14, 0.736],
    [16, 0.8],
    [20, 0.906],
    [24, 1],
  ],
  printedTo: 0.001,
  from: breakpoints,
};

/**
 * Half-hourly ordinates, and the breakpoint at 11.75 h, without which the peak from there to 12 h, 0.306 of the depth,
 * would be spread over half an hour. Up to 6.5 h and at the breakpoints they agree with what was read.
 */
const typeII: Published<StormCurve> = {
  values: withQuarters(
    [
      0, 0.0053, 0.0108, 0.0164, 0.0223, 0.0284, 0.0347, 0.0414, 0.0483, 0.0555, 0.0632, 0.0712, 0.0797, 0.0887, 0.0984, 0.1089, 0.1203,
      0.1328, 0.1467, 0.1625, 0.1808, 0.2042, 0.2351, 0.2833, 0.6632, 0.7351, 0.7724, 0.7989, 0.8197, 0.838, 0.8538, 0.8676, 0.8801, 0.8914,
      0.9019, 0.9115, 0.9206, 0.9291, 0.9371, 0.9446, 0.9519, 0.9588, 0.9653, 0.9717, 0.9777, 0.9836, 0.9892, 0.9947, 1,
    ],
    [11.75, 0.357],
  ),
  printedTo: 0.0001,
  from: scs24HourStorms.place("type II", "from memory"),
};

/**
 * Of the two roundings in circulation this is the half-hourly one to four decimals, which keeps the storm the same
 * backward and forward; the three-decimal breakpoints differ from it by up to 0.0022 from 7 to 9.5 h. The ordinate at
 * 11.75 h is such a breakpoint; that at 12.25 h is not printed and is its counterpart.
 */
const typeIII: Published<StormCurve> = {
  values: withQuarters(
    [
      0, 0.005, 0.01, 0.015, 0.02, 0.0252, 0.0308, 0.0367, 0.043, 0.0497, 0.0568, 0.0642, 0.072, 0.0806, 0.0905, 0.1016, 0.114, 0.1284,
      0.1458, 0.1659, 0.189, 0.2165, 0.25, 0.298, 0.5, 0.702, 0.75, 0.7835, 0.811, 0.8341, 0.8542, 0.8716, 0.886, 0.8984, 0.9095, 0.9194,
      0.928, 0.9358, 0.9432, 0.9503, 0.957, 0.9634, 0.9694, 0.9752, 0.9808, 0.986, 0.9909, 0.9956, 1,
    ],
    [11.75, 0.339],
    [12.25, 1 - 0.339],
  ),
  printedTo: 0.0001,
  from: scs24HourStorms.place("type III"),
};

export const stormCurves: Readonly<Record<StormType, Published<StormCurve>>> = { I: typeI, IA: typeIA, II: typeII, III: typeIII };

/** Every place that the curves are taken from. */
export const stormCurveSources: readonly PlaceInPrint[] = [breakpoints, typeII.from, typeIII.from];

function withQuarters(halfHourly: readonly number[], ...quarters: StormCurve): StormCurve {
  const curve: StormCurve = [...halfHourly.map((share, place) => [place / 2, share] as const), ...quarters];
  return [...curve].sort(([one], [other]) => one - other);
}
