import { LEVEL_PASS_INCHES, type AsBuiltComparison, type BuiltBeside } from "../../../addin/actions/build/record-as-built.ts";
import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import { shown } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { buildText } from "./text.ts";

/** One measured thing in a sentence, with what it comes to; null where the difference is only told. */
export interface BuiltLine {
  readonly what: keyof AsBuiltComparison;
  readonly words: string;
  readonly finding: BuiltBeside["finding"];
}

const words = buildText.asBuilt;

/** What was built, a sentence each, the ones that decide first. */
export function asBuiltLines(compared: AsBuiltComparison, expectedDrainHours: number | null, units: UnitSystem): readonly BuiltLine[] {
  const depth = (value: number) => quantityWords("depth", value, units);
  const hours = (value: number) => quantityWords("hours", value, units);
  const line = (what: keyof AsBuiltComparison, sentence: (beside: BuiltBeside) => string): BuiltLine[] => {
    const beside = compared[what];
    return beside === null ? [] : [{ what, words: sentence(beside), finding: beside.finding }];
  };
  return [
    ...line("waterHeld", (beside) => `${words.held(quantityWords("waterVolume", beside.built, units))}: ${shareWords(beside, units)}`),
    ...line(
      "pondingDepth",
      (beside) =>
        `${words.sill(depth(beside.built))}: ${differenceWords("depth", beside, units)}${beside.finding === "fail" ? ` ${words.sillFail}` : ""}`,
    ),
    ...line("lowestBerm", ({ built, designed, finding }) =>
      finding === "fail"
        ? words.bermFail(depth(-built))
        : `${words.berm(depth(built))}: ${finding === "pass" ? words.bermPass(depth(designed ?? 0)) : words.bermWatch(depth(designed ?? 0))}`,
    ),
    ...line("drainHours", ({ built, designed, finding }) => {
      const limit = finding === "pass" ? words.drainPass(hours(designed ?? 0)) : words.drainFail(hours(designed ?? 0));
      return `${words.drained(hours(built))}: ${limit}${expectedDrainHours === null ? "" : ` ${words.expected(hours(expectedDrainHours))}`}`;
    }),
    ...line(
      "sideSlope",
      ({ built, designed, finding }) =>
        `${words.slope(shown(built, 1))}: ${finding === "watch" ? words.steep(shown(designed ?? 0, 1)) : words.flat(shown(designed ?? 0, 1))}`,
    ),
    ...line(
      "floorArea",
      (beside) => `${words.floorArea(quantityWords("area", beside.built, units))}: ${differenceWords("area", beside, units)}`,
    ),
  ];
}

function shareWords({ built, designed, finding }: BuiltBeside, units: UnitSystem): string {
  if (designed === null || designed <= 0) return words.noDesign;
  if (finding === null) return words.mixNotMeasured(quantityWords("waterVolume", designed, units));
  const share = words.share(shown((built / designed) * 100, 0), quantityWords("waterVolume", designed, units));
  return finding === "fail" ? `${share} ${words.shareFail}` : share;
}

function differenceWords(kind: "depth" | "area", { built, designed }: BuiltBeside, units: UnitSystem): string {
  if (designed === null) return words.noDesign;
  const difference = built - designed;
  if (Math.abs(difference) < smallest(kind, units)) return words.asDesigned;
  const amount = quantityWords(kind, Math.abs(difference), units);
  return difference > 0
    ? words.more(amount, quantityWords(kind, designed, units))
    : words.less(amount, quantityWords(kind, designed, units));
}

/** Under what a tape shows, nobody calls it a difference. */
function smallest(kind: "depth" | "area", units: UnitSystem): number {
  return kind === "depth" ? fromUs("depth", LEVEL_PASS_INCHES / 10, units) : fromUs("area", 0.5, units);
}
