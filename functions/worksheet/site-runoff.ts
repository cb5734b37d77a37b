import { nationalEngineeringHandbook630, newHampshireEnvWq1504 } from "../published/documents.ts";
import { computedByHand } from "../published/source.ts";
import { COVERS, coverCurveNumbers, SOIL_GROUPS, tr55, type Cover, type SoilGroup } from "../published/tr-55.ts";
import { ROOF_RUNOFF_SHARE } from "../runoff/runoff-volume.ts";
import { isHard, siteRunoff as siteRunoffOf, WORST_SOIL_GROUP, type SiteSurface } from "../runoff/site-runoff.ts";
import { area, choice, depth, listOf, share, text, units, waterVolume, type ResultValue } from "./calling/arguments.ts";
import { isCellError, type Cell, type CellError } from "./calling/cell.ts";
import { isBlank } from "./calling/reading.ts";
import { rowOf } from "./calling/results.ts";
import type { Speaker } from "./calling/speaker.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";
import { listsDiffer, readIn, rowsOfSite } from "./site-lists.ts";

type Table = readonly (readonly Cell[])[];

const surfaceSiteId = text("surfaceSiteIds", "Site ID of a surface");
const coverOf = choice("covers", "Cover", COVERS);
const areaOf = area("areas", "Area");
const shareOf = share("shares", "Share draining here").optional(1);

/** Blank where the yard has no surface yet. */
const orBlank = (value: ResultValue<number>): ResultValue<number | ""> => value;

export const siteRunoff = worksheetFunction({
  name: "SITERUNOFF",
  summary: "What drains to each garden and runs off there in a storm: a row a yard, from one list of all yards' surfaces.",
  arguments: [
    text("siteId", "Site ID"),
    depth("storm", "Storm depth"),
    choice("soilGroup", "Soil group", SOIL_GROUPS).leftOutMeans(`group ${WORST_SOIL_GROUP}, of which most runs off, and the rule says so`),
    listOf(surfaceSiteId),
    listOf(coverOf),
    listOf(areaOf),
    listOf(shareOf),
    units,
  ],
  result: rowOf([
    orBlank(area("Contributing area")),
    orBlank(area("Roof and paving")),
    orBlank(waterVolume("Runoff")),
    text("Runoff rule"),
  ]),
  sources: [
    newHampshireEnvWq1504.equation("for the runoff coefficient"),
    coverCurveNumbers.from,
    tr55.equation("2-3"),
    nationalEngineeringHandbook630.chapter("10, weighted runoff"),
  ],
  example: {
    arguments: [
      "Y-001",
      2,
      "B",
      [["Y-001"], ["Y-002"], ["Y-001"]],
      [["roof"], ["paving"], ["good lawn"]],
      [[1000], [700], [3000]],
      [[0.5], [1], [1]],
    ],
    result: [[3500, 500, 97.45, "0.95 of the storm off roof and paving; other ground by curve number, soil group B"]],
    within: 0.005,
    from: computedByHand(
      "0.95 x 500 x 2 / 12 = 79.17; curve number 61: S 6.3934 in, Q (2 - 1.2787)^2 / (2 + 5.1148) = 0.07313 in, x 3,000 / 12 = 18.28",
    ),
  },
  equation: [
    "roof, paving: V = 0.95 x share x A x P / 12   (cu ft; A in sq ft, P in in)",
    "other ground: V = share x A x Q / 12, Q = (P - 0.2 S)^2 / (P + 0.8 S) where P > 0.2 S, otherwise 0; S = 1000 / CN - 10   (in)",
  ],
  working: ({ siteId, storm, soilGroup, surfaceSiteIds: ids, covers, areas, shares }, speaker) =>
    stepsOf(surfacesOf(siteId, ids, covers, areas, shares, speaker), (surfaces) =>
      surfaces.map((surface, place): WorkingStep => {
        const { runoffCubicFeet } = siteRunoffOf(storm, [surface], soilGroup ?? WORST_SOIL_GROUP);
        return { label: `Surface ${place + 1}, ${surface.cover ?? "no cover"}, runoff`, value: runoffCubicFeet, kind: "waterVolume" };
      }),
    ),
  calculate({ siteId, storm, soilGroup, surfaceSiteIds: ids, covers, areas, shares }, speaker) {
    const surfaces = surfacesOf(siteId, ids, covers, areas, shares, speaker);
    if (isCellError(surfaces)) return surfaces;
    if (surfaces.length === 0) return ["", "", "", ""] as const;
    const { contributingSquareFeet, hardSquareFeet, runoffCubicFeet } = siteRunoffOf(storm, surfaces, soilGroup ?? WORST_SOIL_GROUP);
    return [contributingSquareFeet, hardSquareFeet, runoffCubicFeet, ruleOf(surfaces, soilGroup)] as const;
  },
});

/** The surfaces of one yard. A row with a Site ID alone is none yet. */
function surfacesOf(
  siteId: string,
  ids: Table,
  covers: Table,
  areas: Table,
  shares: Table,
  { system }: Speaker,
): readonly SiteSurface[] | CellError {
  const differ =
    listsDiffer("Site IDs of the surfaces", ids, "Covers", covers) ??
    listsDiffer("Site IDs of the surfaces", ids, "Areas", areas) ??
    listsDiffer("Site IDs of the surfaces", ids, "Shares draining here", shares);
  if (differ !== undefined) return differ;
  const surfaces: SiteSurface[] = [];
  for (const [place, row] of rowsOfSite(ids, siteId).entries()) {
    const [coverCell, areaCell, shareCell] = [covers[row]?.[0], areas[row]?.[0], shares[row]?.[0]];
    if (isBlank(coverCell) && isBlank(areaCell)) continue;
    const named = (label: string) => `${label} of surface ${place + 1}`;
    const cover = isBlank(coverCell) ? null : readIn<Cover>(coverOf.rule, coverCell, system, named("Cover"));
    const areaSquareFeet = readIn<number>(areaOf.rule, areaCell, system, named("Area"));
    const shareDrainingHere = readIn<number>(shareOf.rule, shareCell, system, named("Share draining here"));
    if (isCellError(cover)) return cover;
    if (isCellError(areaSquareFeet)) return areaSquareFeet;
    if (isCellError(shareDrainingHere)) return shareDrainingHere;
    surfaces.push({ cover, areaSquareFeet, shareDrainingHere });
  }
  return surfaces;
}

/** How the runoff was worked out, in words. */
function ruleOf(surfaces: readonly SiteSurface[], soilGroup: SoilGroup | undefined): string {
  const uncovered = surfaces.filter(({ cover }) => cover === null).length;
  const isSoft = surfaces.some(({ cover }) => cover !== null && !isHard(cover));
  const group = soilGroup === undefined ? `soil group ${WORST_SOIL_GROUP} assumed` : `soil group ${soilGroup}`;
  return [
    ...(surfaces.some(({ cover }) => cover === null || isHard(cover)) ? [`${ROOF_RUNOFF_SHARE} of the storm off roof and paving`] : []),
    ...(isSoft ? [`other ground by curve number, ${group}`] : []),
    ...(uncovered > 0 ? [`${uncovered} without a cover taken as roof`] : []),
  ].join("; ");
}
