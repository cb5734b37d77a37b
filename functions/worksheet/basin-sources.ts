import { losAngelesLidSample, perAreaProgramPage, wisconsinExtensionPages } from "../published/documents.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { sustainableTechnologiesWiki } from "../published/sustainable-technologies-wiki.ts";
import { wisconsinRainGardens } from "../published/wisconsin-rain-gardens.ts";
import { nearFactors } from "../published/wisconsin-size-factors.ts";

/** What several functions of the basin rest on. */

export const prismoidal = computedByHand("Prismoidal rule, exact for an ellipse or a rectangle whose sides share one slope");
export const drainLimit = losAngelesLidSample.place("drain time of 48 h for surface ponding");
export const ruleOfThumb = commonPractice("500 sq ft of roof and paving needs 50 to 60 sq ft of garden");
export const sizeLimit = wisconsinExtensionPages.place("step 1, size of 100 to 300 sq ft");
export const stormStorage = sustainableTechnologiesWiki.place('page "Infiltration", area from storage and soaking in the storm');
export const largestFloor = nearFactors.from;
export const leastFloorPages = perAreaProgramPage.place("gardens of 50 sq ft and more");
export const leastRate = wisconsinRainGardens.place("6 in of water gone from the test hole in 24 h, as quoted", "read");
export const emptyLimit = losAngelesLidSample.place("drain time of 96 h below grade; three state manuals ask 72 h (from memory)");
