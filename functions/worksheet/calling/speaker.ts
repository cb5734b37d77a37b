import { fromUs, unitOf, type NumberKind, type UnitSystem } from "../../quantities.ts";

/** Which way a number is rounded when it is put in words: "down" for a limit that must still hold as printed. */
export type Rounding = "nearest" | "down" | "up";

/** Puts quantities in words, in the units of the row that is being computed: "6 in" or "152 mm". */
export class Speaker {
  constructor(readonly system: UnitSystem) {}

  say(kind: NumberKind, valueInUs: number, rounding: Rounding = "nearest"): string {
    return withUnit(threeDigits(fromUs(kind, valueInUs, this.system), rounding), unitOf(kind, this.system));
  }

  depth(inches: number, rounding?: Rounding): string {
    return this.say("depth", inches, rounding);
  }

  length(feet: number, rounding?: Rounding): string {
    return this.say("length", feet, rounding);
  }

  rate(inchesPerHour: number, rounding?: Rounding): string {
    return this.say("rate", inchesPerHour, rounding);
  }

  area(squareFeet: number, rounding?: Rounding): string {
    return this.say("area", squareFeet, rounding);
  }

  waterVolume(cubicFeet: number, rounding?: Rounding): string {
    return this.say("waterVolume", cubicFeet, rounding);
  }

  earthVolume(cubicYards: number, rounding?: Rounding): string {
    return this.say("earthVolume", cubicYards, rounding);
  }

  hours(hours: number, rounding: Rounding = "nearest"): string {
    return `${threeDigits(hours, rounding)} h`;
  }
}

export const speakers: Readonly<Record<UnitSystem, Speaker>> = { us: new Speaker("us"), metric: new Speaker("metric") };

/** A limit exactly as it is compared, with its unit unless it is zero: "152.4 mm", "0". */
export function limitInWords(limit: number, unit: string): string {
  return limit === 0 ? "0" : withUnit(grouped(limit), unit);
}

function withUnit(number: string, unit: string): string {
  return unit === "" ? number : `${number} ${unit}`;
}

/** Three significant digits, but never fewer than the whole part has: 4.63, 152, 12,345. */
function threeDigits(value: number, rounding: Rounding): string {
  if (!Number.isFinite(value)) return BEYOND_COUNTING;
  const decimals = Math.min(Math.max(2 - Math.floor(Math.log10(Math.abs(value) || 1)), 0), 15);
  const scaled = value * 10 ** decimals;
  // 4.6 times 100 is a hair under 460, and rounded down it must not turn into 4.59.
  const hair = Math.abs(scaled) * 1e-11;
  const whole = rounding === "down" ? Math.floor(scaled + hair) : rounding === "up" ? Math.ceil(scaled - hair) : Math.round(scaled);
  return grouped(whole / 10 ** decimals);
}

function grouped(value: number): string {
  const text = String(value);
  if (Math.abs(value) < 1000 || text.includes("e")) return text;
  return text.replace(/\d+/, (whole) => whole.replace(/\B(?=(\d{3})+$)/g, ","));
}

/** Stands for a number that outgrew arithmetic, such as the hours to drain through all but sealed soil. */
const BEYOND_COUNTING = "over 1e+308";
