import type { DesignBreach, Site, SiteDesign } from "../basin/site-design.ts";
import type { Speaker } from "./calling/speaker.ts";
import { drainsTooSlowly, NEVER_DRAINS, noAreaHolds } from "./draining.ts";
import { LOOK_AT_ITS_UNIT } from "./storm-cautions.ts";

/**
 * "fits", or a sentence for each limit that the design breaches, in the units of the yard. A basin that does without
 * something that was typed for its yard does not fit in silence.
 */
export function statusOf(design: SiteDesign, site: Site, notCounted: string, speaker: Speaker): string {
  const sentences = [
    ...design.breaches.map((breach) => SENTENCES[breach](design, site, speaker)),
    ...(notCounted === "" ? [] : [`${NOT_ALL_COUNTED}: ${notCounted.trim()}`]),
  ];
  return sentences.length === 0 ? "fits" : sentences.join(" ");
}

export const NOT_ALL_COUNTED = "Not all counted";

type Sentence = (design: SiteDesign, site: Site, speaker: Speaker) => string;

const SENTENCES: Readonly<Record<DesignBreach, Sentence>> = {
  "no water": (_, site, speaker) => {
    if (site.stormInches === 0) return "No size: the storm is 0, so no water comes.";
    return site.contributingSquareFeet === 0
      ? "No size: nothing drains to this basin."
      : `No size: a storm of ${speaker.depth(site.stormInches)} gives no runoff from what drains here.`;
  },
  "storm too small": (_, { stormInches, limits }, speaker) =>
    `Unlikely storm: ${speaker.depth(stormInches)} is under the least of ${speaker.depth(limits.leastStormInches)}: ${LOOK_AT_ITS_UNIT}`,
  "storm too large": (_, { stormInches, limits }, speaker) =>
    `Unlikely storm: ${speaker.depth(stormInches)} is over the largest of ${speaker.depth(limits.largestStormInches)}: ${LOOK_AT_ITS_UNIT}`,
  "never drains": () => NEVER_DRAINS,
  "no area holds it": (_, site, speaker) => noAreaHolds(site.stormInches, speaker),
  "drains too slowly": (design, site, speaker) =>
    drainsTooSlowly(design.pondingInches, design.designInchesPerHour, site.drainHours, speaker),
  "empties too slowly": ({ basin }, { limits }, speaker) =>
    `Empties too slowly: with its soil mix the basin needs ${speaker.hours(basin!.drawdownHours, "up")} and ${speaker.hours(limits.longestEmptyHours)} is the limit. Less soil mix or shallower ponding empties sooner.`,
  "soil too slow": ({ designInchesPerHour }, { limits }, speaker) =>
    `Soil too slow: the design rate of ${speaker.rate(designInchesPerHour, "down")} is under ${speaker.rate(limits.leastDesignInchesPerHour)}, the least without an underdrain. Choose another place or ask a professional.`,
  "floor too large": ({ basin }, { contributingSquareFeet, limits }, speaker) => {
    const floor = speaker.area(basin!.floorSquareFeet);
    const limit = `${percentOf(limits.largestFloorShare, speaker)} is the limit`;
    if (basin!.floorSquareFeet === limits.leastFloorSquareFeet) {
      return `Too little drains here: the least floor of ${floor} is more than ${percentOf(limits.largestFloorShare, speaker)} of ${speaker.area(contributingSquareFeet)}.`;
    }
    const ofWhatDrains = percentOf(basin!.floorSquareFeet / contributingSquareFeet, speaker);
    return `Too large: a floor of ${floor} is ${ofWhatDrains} of what drains to it and ${limit}. Pond deeper, add soil mix or look for faster soil.`;
  },
};

function percentOf(share: number, speaker: Speaker): string {
  return `${speaker.say("percent", 100 * share)}%`;
}
