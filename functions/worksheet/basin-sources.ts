import { losAngelesLidSample, wisconsinExtensionPages } from "../published/documents.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { sustainableTechnologiesWiki } from "../published/sustainable-technologies-wiki.ts";

/** What several functions of the basin rest on. */

export const prismoidal = computedByHand("Prismoidal rule, exact for an ellipse or a rectangle whose sides share one slope");
export const drainLimit = losAngelesLidSample.place("drain time of 48 h for surface ponding");
export const ruleOfThumb = commonPractice("500 sq ft of roof and paving needs 50 to 60 sq ft of garden");
export const sizeLimit = wisconsinExtensionPages.place("step 1, size of 100 to 300 sq ft");
export const stormStorage = sustainableTechnologiesWiki.place('page "Infiltration", area from storage and soaking in the storm');
