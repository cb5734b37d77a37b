import { chosen, type Step } from "./stage.ts";

/** One thing that is looked at in a finished garden: what passes, what is watched, and what is put right. */
export interface InspectionItem {
  readonly id: string;
  readonly item: string;
  readonly ask: string;
  readonly why: string;
  readonly pass: string;
  /** Where there is no middle, what does not pass fails. */
  readonly watch?: string;
  readonly fail: string;
  /** What is done about a fail. */
  readonly action: string;
  readonly source: string;
}

const COMMON_PRACTICE = "Common practice, no source";
const EDINA = "Inspection form of the city of Edina, Minnesota, as read";

/** The look at a finished garden, item by item. Your own manual may set other triggers. */
export const inspectionItems: readonly InspectionItem[] = [
  {
    id: "ponding",
    item: "Ponding",
    ask: "How long does water stand after half an inch (13 mm) of rain or more?",
    why: "Water that stays drowns plants, and mosquitoes need 7 to 12 days to hatch in it.",
    pass: "Gone within 24 hours",
    watch: "Gone within 24 to 48 hours",
    fail: "Still there after 48 hours",
    action: "Look for a clog, in the top 2 to 6 in (50 to 150 mm) of soil first, and test the hole again.",
    source: "48 hours: Edina inspection question; 72 hours and the top 2 to 6 in: Snohomish County guidance, both as read",
  },
  {
    id: "sediment",
    item: "Sediment at the inlet",
    ask: "How deep does sediment lie where the water comes in?",
    why: "Fine sediment seals the soil that has to drink the water.",
    pass: "Under 1/2 in (13 mm)",
    watch: "1/2 to 1 in (13 to 25 mm)",
    fail: "Over 1 in (25 mm)",
    action: "Take it out, and find where it comes from.",
    source: COMMON_PRACTICE,
  },
  {
    id: "mulch",
    item: "Mulch",
    ask: "How deep is the mulch, and is the ground bare anywhere?",
    why: "Mulch keeps weeds down and the surface open.",
    pass: "2 to 4 in (50 to 100 mm)",
    watch: "1 to 2 in (25 to 50 mm)",
    fail: "Under 1 in (25 mm), or over 10 % bare",
    action: "Top it up to 2 to 4 in (50 to 100 mm), clear of the stems.",
    source: "2 to 4 in as read in several handbooks; bare ground: common practice, no source",
  },
  {
    id: "erosion",
    item: "Erosion",
    ask: "Has water cut into the sides, the inlet or the overflow?",
    why: "A small rill is a gully after the next storm.",
    pass: "None",
    watch: "Rills under 1 in (25 mm)",
    fail: "A gully, an undercut sill or a bare pipe",
    action: "Repair it and lay stone where the water runs.",
    source: COMMON_PRACTICE,
  },
  {
    id: "plants",
    item: "Plants alive",
    ask: "How many of the plants that were planted are alive?",
    why: "Roots keep the soil open; bare ground closes.",
    pass: "90 % or more",
    watch: "75 to 89 %",
    fail: "Under 75 %",
    action: "Find out why, then plant again what suits that zone.",
    source: COMMON_PRACTICE,
  },
  {
    id: "weeds",
    item: "Weeds and invasive plants",
    ask: "How much of the garden do they cover?",
    why: "They crowd out what was planted.",
    pass: "Under 10 %",
    watch: "10 to 25 %",
    fail: "Over 25 %",
    action: "Pull them before they seed, and mulch the gaps.",
    source: `Under 10 %: ${EDINA}; 25 %: common practice`,
  },
  {
    id: "sill",
    item: "Berm and sill level",
    ask: "How far is the lowest place of the berm from its level above the sill?",
    why: "Water spills over the lowest place, wherever that is.",
    pass: "Within 1/2 in (13 mm)",
    watch: "Within 1 in (25 mm)",
    fail: "A low place below the sill",
    action: "Fill and tamp the low place, and check it again with water.",
    source: COMMON_PRACTICE,
  },
  {
    id: "inlet",
    item: "Downspout and inlet",
    ask: "Does water reach the garden freely?",
    why: "A blocked inlet sends the water to the foundation or the street.",
    pass: "Clear",
    watch: "Partly blocked",
    fail: "Blocked",
    action: "Clear it, and see why it blocked.",
    source: COMMON_PRACTICE,
  },
  {
    id: "unauthorized",
    item: "Trash, changes, discharges",
    ask: "Is there trash, anything altered without leave, or anything poured in that is not rain?",
    why: "What is thrown or poured in ends in the soil and the water below.",
    pass: "None",
    fail: "Any of these",
    action: "Take trash away; speak with the owner; report a discharge as your local rules ask.",
    source: EDINA,
  },
];

/** The item as a step of one look: its id carries the look's, because a look at one week and at one year are two answers. */
export function inspectionStep(look: string, item: InspectionItem): Step {
  const { ask, why, pass, watch, fail } = item;
  const options = [[pass, "pass"], ...(watch === undefined ? [] : [[watch, "watch"] as const]), [fail, "fail"]] as const;
  return { id: `${look}-${item.id}`, title: item.item, ask, why, answer: chosen(...options) };
}
