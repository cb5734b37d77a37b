import type { ArgumentRule } from "./arguments.ts";
import type { Speaker } from "./speaker.ts";

/**
 * A percent between 0 and 1 is real: ground of 0.5 percent is a flat yard, a pipe of 0.5 percent is common. It may also be
 * a share that was meant as a percent, so it computes as it stands and carries a caution.
 */
export function isSmallPercent(percent: unknown): percent is number {
  return typeof percent === "number" && percent > 0 && percent < 1;
}

/** "Ground slope is taken as 0.556%: write a percent as 2, not 0.02." */
export function takenAsItStands(label: string, percent: number, speaker: Speaker): string {
  return `${label} is taken as ${speaker.say("percent", percent)}%: ${PERCENT_SLIP}`;
}

export function aboutSmallPercent(label: string): string {
  return `${label} under 1% is taken as it stands: ${PERCENT_SLIP}`;
}

const PERCENT_SLIP = "write a percent as 2, not 0.02.";

type Inputs = Readonly<Record<string, unknown>>;

interface SmallPercentCaution {
  readonly when: (inputs: Inputs) => boolean;
  readonly about: string;
  readonly says: (inputs: Inputs, speaker: Speaker) => string;
}

/** The caution that every percent of a function carries. */
export function smallPercentCautions(rules: readonly ArgumentRule[]): readonly SmallPercentCaution[] {
  return rules
    .filter(({ kind }) => kind === "percent")
    .map(({ key, label }) => ({
      when: (inputs) => isSmallPercent(inputs[key]),
      about: aboutSmallPercent(label),
      says: (inputs, speaker) => takenAsItStands(label, inputs[key] as number, speaker),
    }));
}
