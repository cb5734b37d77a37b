import type { Indicator, RatingRegion, SunLevel } from "../../../addin/actions/planting/palette.ts";
import type { UndrawnClump } from "../../../addin/actions/planting/plan.ts";
import type { MoistureZone } from "../../../addin/actions/planting/planting-zones.ts";
import type { Container } from "../../../addin/actions/planting/plant-counts.ts";
import type { Season } from "./bloom.ts";

export function list(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1) ?? ""}`;
}

const plural = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

/** Every word of the planting view. Numbers arrive in words, with their units. */
export const plantingText = {
  materials: "Soil, mix and loads",
  zones: {
    A: "Zone A, floor: wettest",
    B: "Zone B, sloped sides: wet, then dry",
    C: "Zone C, rim and berm: driest",
  } satisfies Record<MoistureZone, string>,
  zone: (zone: MoistureZone) => `Zone ${zone}`,
  named: (name: string, commonName: string) => (commonName === "" ? name : `${commonName} (${name})`),

  plan: {
    title: "Planting plan",
    plants: (count: number) => (count === 0 ? "No plants yet" : count === 1 ? "1 plant" : `${count} plants`),
    clumps: (count: number) => (count === 1 ? "in 1 clump" : `in ${count} clumps`),
    noClump: "Choose plants, then draft the plan",
    more: "Zones and how they are counted",
    none: "No clumps yet. Choose plants below and draft a plan, or type rows on the Planting sheet.",
    summary: (plants: number, kinds: number, clumps: number) =>
      `${plural(plants, "plant")} of ${plural(kinds, "kind")} in ${plural(clumps, "clump")}.`,
    zoneCount: (zone: MoistureZone, plants: number, area: string, bare: number) =>
      `Zone ${zone}, ${area}: ${plural(plants, "plant")}${bare > 0 ? `, and bare ground for about ${bare} more of these kinds` : ""}.`,
    zoneEmpty: (zone: MoistureZone, area: string) => `Zone ${zone}, ${area}: no plants.`,
    drawing: "Planting plan to scale",
    uphill: "uphill",
    downhill: "downhill",
    description: (length: string, width: string, kinds: readonly string[]) =>
      `Seen from above, to scale, uphill at the top: ${length} along the basin and ${width} across it, berm included. ${kinds.length === 0 ? "Nothing is planted." : `It holds ${list(kinds)}.`}`,
    keys: "Choose a clump with a tap or below. Arrow keys move the chosen one, Page Up and Page Down choose another; or drag it. On another clump of its zone the two change places.",
    legend: "Plants of the plan",
    legendLine: (name: string, plants: number) => `${name}: ${plural(plants, "plant")}`,
    zoneLegend: "Zones",
    /** With the number that stands on the drawing: who speaks to the device says what is to be seen. */
    clump: (number: number, onDrawing: number, name: string, count: number, zone: MoistureZone) =>
      `Clump ${number}: number ${onDrawing}, ${name}, ${plural(count, "plant")}, zone ${zone}`,
    short: (name: string, stood: number, count: number) => `${name}: room for ${stood} of ${count} here. Move the clump, or plant fewer.`,
    undrawn: (name: string | null, reason: UndrawnClump["reason"]) =>
      `${name ?? "A row without a plant"} is not drawn: ${plantingText.reasons[reason]}`,
    basis:
      "Plants stand at their spacing within a clump; clumps of different kinds may stand a tenth nearer. Keep plants off the stone at inlet and overflow.",
  },
  reasons: {
    "no plant": "the row names none.",
    "no zone": "the row has no moisture zone, and Plants has none for it.",
    "no count": "the row has no count.",
    "not whole": "the count must be a whole number.",
    "too many": "the count is over 200; make several clumps of it.",
    "too close": "the spacing is closer than plants are set. It is in feet, or in meters in a metric yard.",
  } satisfies Record<UndrawnClump["reason"], string>,

  clump: {
    title: "Change a clump",
    choose: "Clump",
    named: (number: number, name: string, count: number, zone: MoistureZone | null) =>
      `${number}: ${name}, ${count}${zone === null ? "" : `, zone ${zone}`}`,
    none: "None chosen",
    plant: "Plant",
    zone: "Moisture zone",
    count: "Plants in the clump",
    along: "Place along the basin",
    across: "Place across the basin",
    alongHint: "From the middle; right is positive.",
    acrossHint: "From the middle; uphill is positive.",
    free: "No place typed: it stands where there is room.",
    offZone: (plant: string, zone: MoistureZone) => `Plants does not list ${plant} for zone ${zone}.`,
    move: "Move",
    directions: { left: "Left", up: "Uphill", down: "Downhill", right: "Right" },
    remove: "Remove this clump",
    add: "Add a clump of it",
    planted: "These plants are in the ground: a change here changes the record.",
    moved: (name: string, along: string, across: string) => `${name} moved to ${along} along, ${across} across.`,
    exchanged: (name: string, other: string) => `${name} and ${other} changed places.`,
    removed: (name: string) => `${name} removed. Nothing is written yet.`,
    wholeNumber: "Plants in the clump must be a whole number.",
  },

  picker: {
    title: "Choose plants",
    zone: "For which zone",
    zones: { A: "A, floor", B: "B, sloped sides", C: "C, rim and berm" } satisfies Record<MoistureZone, string>,
    sun: "Sun here",
    anySun: "Any",
    suns: { sun: "Sun", "part shade": "Part shade", shade: "Shade" } satisfies Record<SunLevel, string>,
    region: "Region of the wetland rating",
    noRegion: "Not shown",
    regions: {
      midwest: "Midwest",
      northcentralAndNortheast: "Northcentral and Northeast",
      easternMountainsAndPiedmont: "Eastern Mountains and Piedmont",
      atlanticAndGulfCoastalPlain: "Atlantic and Gulf Coastal Plain",
      westernMountainsValleysAndCoast: "Western Mountains, Valleys and Coast",
      aridWest: "Arid West",
    } satisfies Record<RatingRegion, string>,
    indicator: "Rated at least as wet as",
    anyIndicator: "Any rating",
    indicators: {
      OBL: "OBL, almost always in wetlands",
      FACW: "FACW, usually in wetlands",
      FAC: "FAC, in both",
      FACU: "FACU, usually not in wetlands",
      UPL: "UPL, almost never in wetlands",
    } satisfies Record<Indicator, string>,
    spacing: "Widest spacing",
    spacingHint: "Blank: any",
    month: "In bloom in",
    anyMonth: "Any month",
    plants: (zone: MoistureZone) => `Plants for zone ${zone}`,
    count: (shown: number, chosen: number) => `${plural(shown, "plant")} suit; ${chosen} chosen for this zone.`,
    chosenBesides: (names: readonly string[]) => `Chosen for this zone, and outside these filters: ${list(names)}.`,
    facts: (facts: readonly string[]) => facts.join(" · "),
    apart: (spacing: string) => `${spacing} apart`,
    noSpacing: "spacing not known",
    blooms: (months: string) => `blooms ${months}`,
    rated: (rating: string) => `rated ${rating}`,
    notRated: "not rated there",
    none: (zone: MoistureZone, sun: SunLevel | null) =>
      `No plant on your Plants sheet suits zone ${zone}${sun === null ? "" : ` in ${sun}`} with these filters.`,
    noneAdvice: {
      filters: "Take off a filter: bloom, spacing or rating first, as they matter least.",
      sun: "In shade a wet floor is hard to plant: look in part shade, prune to let light in, or move the garden into the sun.",
      zone: "Add plants that your own region's growers name for this zone to the Plants sheet; a row needs a zone, a spacing and the sun it wants.",
    },
    empty: "The Plants sheet holds no plants. Add rows to it: name, spacing, sun and moisture zone.",
    suggest: "Suggest plants",
    suggestHint:
      "Up to four a zone for the sun above, one a sedge, rush or grass; no shrubs, and none with a caution. They replace what is chosen.",
    draft: "Draft the plan",
    draftReplaces: "Drafting replaces the clumps that are not planted yet. Nothing is written until you write it.",
    drafted: (plants: number, clumps: number) =>
      `Drafted: ${plural(plants, "plant")} in ${plural(clumps, "clump")}. Nothing is written yet.`,
    leftOut: (plant: string, zone: MoistureZone, reason: "no room" | "no spacing") =>
      reason === "no room"
        ? `${plant} found no room in zone ${zone}: choose fewer kinds, or closer ones.`
        : `${plant} was left out of zone ${zone}: the Plants sheet has no spacing for it.`,
    understood: "Close",
    tooLarge: (zone: MoistureZone) =>
      `Zone ${zone} is too large to draw plant by plant. Split the basin, or plant it in blocks by SOAK.PLANTMIX.`,
  },

  months: ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"],
  seasons: { spring: "spring", summer: "summer", fall: "fall" } satisfies Record<Season, string>,
  bloom: {
    title: "Bloom through the season",
    kind: "Plant",
    inBloom: "in bloom",
    total: "Kinds in bloom",
    none: "No bloom is known of these plants.",
    span: (first: string, last: string) =>
      first === last ? `Something blooms in ${first}.` : `Something blooms from ${first} to ${last}.`,
    noGaps: "There is no gap between.",
    gaps: (months: readonly string[]) => `Nothing blooms in ${list(months)}.`,
    missing: (seasons: readonly string[]) => `No bloom in ${list(seasons)}: three seasons are common practice.`,
    unknown: (names: readonly string[]) => `Bloom not known: ${list(names)}.`,
    hemisphere: "Months are of the northern half of the world, from memory for the most part.",
  },

  shopping: {
    title: "Shopping list",
    none: "The list appears when the plan has plants.",
    flat: "Plants in a flat",
    flatHint: "Blank: plants one by one. Plugs alone come in flats.",
    flatWhole: "Plants in a flat must be a whole number.",
    columns: { plant: "Plant", count: "Plants", spacing: (unit: string) => `Spacing (${unit})`, container: "Container" },
    containers: { plug: "plug", quart: "quart", gallon: "1 gallon", "3 gallon": "3 gallon" } satisfies Record<Container, string>,
    noContainer: "not known",
    flats: (flats: number, plants: number) => `${plural(flats, "flat")}, ${plants} plants`,
    total: (plants: number) => `${plural(plants, "plant")} in all.`,
    basis:
      "Containers follow from the spacing (common practice, no source), and estimates are drafted by them: ask the nursery what it has. Many programs add 5 to 10 % for losses.",
    copy: "Copy the list",
    copied: "The list was copied.",
    cannotCopy: "The clipboard is closed to this pane: select the list and copy it.",
    print: "Print plan and list",
    heading: (siteId: string, name: string) => `Planting plan, ${siteId} ${name}`,
    date: (date: string) => `Drawn on ${date}`,
  },

  cautions: {
    title: "Before you plant",
    memory:
      "Sizes, spacing, sun, bloom, zone and cautions of the starting palette are from memory for the most part; ratings are of the list year on the Plants sheet. Check them before use.",
    invasive: "Check every plant against your state's invasive list at the time of planting.",
    indicator: "A wetland rating tells where a plant is found wild, not where it thrives in a garden: the zone decides.",
    marks: "Have utilities marked before any digging. Local codes decide about plants near sight lines, hydrants and wells.",
    plant: (name: string, caution: string) => `${name}: ${caution}`,
    unknownPlant: (name: string) => `${name} is not on your Plants sheet, so nothing is known of it here.`,
    tooMany: (name: string, percent: number) =>
      `${name} is ${percent} % of the plants: over 30 % of one kind and a pest or a bad winter takes much of the garden (common practice, no source).`,
    shrub: (name: string, commonName: string) =>
      `${commonName === "" ? name : commonName} grows wide: keep it clear of inlet, overflow and foundation.`,
  },

  sheet: {
    title: "On the sheet",
    same: "The plan is as the Planting sheet holds it.",
    willChange: (added: number, changed: number, removed: number) =>
      `Writing ${list([...(added > 0 ? [`adds ${plural(added, "clump")}`] : []), ...(changed > 0 ? [`changes ${changed}`] : []), ...(removed > 0 ? [`removes ${plural(removed, "clump")}`] : [])])} on Planting.`,
    write: "Write to the Planting sheet",
    back: "Back to what the sheet holds",
    removedTitle: "Clumps were removed from the sheet meanwhile",
    removed: (plants: readonly string[]) =>
      `The plan here still has them: ${list(plants)}. Nothing is written until you say what becomes of them.`,
    noPlant: "a clump without a plant",
    leaveOut: "Leave them out here too",
    putBack: "Put them back",
    done: (siteId: string) => `The planting plan of ${siteId} was written to Planting.`,
    notes: (plants: readonly string[]) =>
      `Rows that are removed hold more than a plan (planted, date or note): ${list(plants)}. Writing blanks them.`,
  },
} as const;
