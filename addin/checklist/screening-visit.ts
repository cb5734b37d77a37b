import { chosen, counted, type Stage, type Step } from "./stage.ts";
import {
  heatReminder,
  leadReminder,
  liftingReminder,
  privateLinesReminder,
  standingWaterReminder,
  trenchReminder,
  utilitiesReminder,
  wellsAndSepticReminder,
} from "./reminders.ts";

/**
 * Beside and under the place. Swelling clay: Ontario's LID planning and design guide, bioretention. A basement that is wet
 * already, and the rest: common practice, no source. Holders of easements, utilities and local codes set the distances.
 */
const sinceTheSecondChecklist: readonly Step[] = [
  {
    id: "basement",
    title: "Basement or sump",
    ask: "Is there a basement, a crawl space or a sump beside the place?",
    why: "A garden must not feed a wall that is wet already.",
    answer: chosen(["None, or dry", "pass"], ["Damp, or a sump that runs", "refer"], ["Water comes in", "stop"]),
  },
  {
    id: "retaining-wall",
    title: "Retaining wall",
    ask: "Is there a retaining wall above or below the place?",
    why: "Water behind a wall pushes it over; a dig at its foot takes its footing away.",
    answer: chosen(["None nearby", "pass"], ["Yes, above or below", "refer"]),
  },
  {
    id: "ground",
    title: "Karst or swelling clay",
    ask: "Is the ground known for sinkholes, caves, or clay that swells and cracks?",
    why: "Soaking water opens a sinkhole, and lifts what stands on swelling clay.",
    answer: chosen(["Neither is known", "pass"], ["Sinkholes or caves", "refer"], ["Swelling clay", "refer"]),
  },
  {
    id: "fill-or-tank",
    title: "Fill or buried tank",
    ask: "Is there fill, rubble, an old cistern or an oil tank in the ground?",
    why: "Fill settles and may be foul; a tank may fall in, or leak into what you dig.",
    answer: chosen(["None is known", "pass"], ["Fill or rubble", "refer"], ["A tank, or signs of one", "stop"]),
  },
  {
    id: "easement",
    title: "Easement, right of way",
    ask: "Does an easement or a right of way lie over the place?",
    why: "Whoever holds it may forbid the garden, or dig it up.",
    answer: chosen(["None, looked up", "pass"], ["Yes, or not looked up", "refer"]),
  },
  {
    id: "overhead-lines",
    title: "Overhead lines",
    ask: "Do wires hang over the place, or over the way of machines and trucks?",
    why: "Long handles, ladders and buckets reach higher than they seem. The utility says how far to stay off.",
    answer: chosen(["None", "pass"], ["Yes", "refer"]),
  },
  {
    id: "sewer-lateral",
    title: "Sewer lateral",
    ask: "Where does the house's own sewer run?",
    why: "Nobody marks it but the owner. Roots and soaking water find its joints.",
    answer: chosen(["Known, and clear of the place", "pass"], ["Under or beside the place", "refer"], ["Not known", "refer"]),
  },
].map((step) => ({ ...step, since: 2 }));

export const NO_WATER_MET = "None met and no sign of it";

export const WATER_LEFT_TO_THE_HOLE = "Not known yet: the test hole will show it";

/** Walk the yard, find the place, and see what forbids it before a spade is lifted. */
export const screeningVisit: Stage = {
  id: "screening",
  name: "Screening visit",
  purpose: "Walk the yard, find the place, and see what speaks against it. Nothing is dug on this visit.",
  reminders: [
    utilitiesReminder,
    privateLinesReminder,
    wellsAndSepticReminder,
    leadReminder,
    heatReminder,
    trenchReminder,
    standingWaterReminder,
    liftingReminder,
  ],
  steps: [
    {
      id: "foundation",
      title: "Foundation",
      ask: "Distance from the nearest edge of the ponding to the nearest foundation",
      why: "Water that soaks in beside a foundation ends in the basement.",
      answer: { kind: "measured", quantity: "length", rule: "Distance to foundation" },
    },
    {
      id: "slope",
      title: "Ground slope",
      ask: "Drop and run of a level string down the slope, both in the same unit",
      why: "A steep yard needs a deep cut and a tall berm, and may slide.",
      answer: { kind: "slope", rule: "Ground slope" },
    },
    {
      id: "property-line",
      title: "Property line",
      ask: "Distance from the ponding edge to the property line",
      why: "Seepage and overflow must stay on the lot.",
      answer: { kind: "measured", quantity: "length", rule: "Distance to property line" },
    },
    {
      id: "septic-uphill",
      title: "Septic, basin uphill of it",
      ask: "Distance to a septic field below the basin",
      why: "Water soaking in uphill floods the field.",
      answer: { kind: "measured", quantity: "length", rule: "Distance to septic field, basin uphill", orNone: "No septic field downhill" },
    },
    {
      id: "septic-downhill",
      title: "Septic, basin downhill of it",
      ask: "Distance to a septic field above the basin",
      why: "The field must not drain into the basin.",
      answer: { kind: "measured", quantity: "length", rule: "Distance to septic field, basin downhill", orNone: "No septic field uphill" },
    },
    {
      id: "well",
      title: "Well",
      ask: "Distance to the nearest well, the neighbors' included",
      why: "Street and roof water must not reach drinking water.",
      answer: { kind: "measured", quantity: "length", rule: "Distance to well", orNone: "No well nearby" },
    },
    {
      id: "water-table",
      title: "Water table or rock",
      ask: "Depth from the bottom of the planned dig to the seasonal high water or rock, where known",
      why: "With water or rock close below, a basin cannot empty.",
      answer: {
        kind: "measured",
        quantity: "length",
        rule: "Water table or rock below the dig",
        orNone: NO_WATER_MET,
        orLater: WATER_LEFT_TO_THE_HOLE,
      },
    },
    {
      id: "water-table-how",
      title: "How it is known",
      ask: "What shows that there is none?",
      why: "On a visit on which nobody digs, no sign of water is no answer. A paper says so, or a hole as deep as the dig.",
      answer: chosen(
        ["A hole dug to the bottom of the planned dig, or deeper", "pass"],
        ["A soil boring", "pass"],
        ["A soil map or soil survey", "pass"],
        ["A well log nearby", "pass"],
      ),
      since: 2,
      onlyIf: { step: "water-table", said: NO_WATER_MET },
    },
    {
      id: "water-table-depth",
      title: "Known down to",
      ask: "Depth below the lawn down to which it shows none",
      why: "It has to reach the bottom of the planned dig. The Rain Garden Handbook for Western Washington digs a separate hole of 36 in (910 mm).",
      answer: counted("in", "mm"),
      since: 2,
      onlyIf: { step: "water-table", said: NO_WATER_MET },
    },
    {
      id: "wet-spot",
      title: "Wet spot",
      ask: "Does water already stand here a day after rain?",
      why: "A place that stays wet does not soak.",
      answer: chosen(["No, it drains", "pass"], ["Yes, it stays wet", "stop"]),
    },
    {
      id: "trees",
      title: "Trees",
      ask: "Is the place outside the drip line of every tree worth keeping?",
      why: "Digging cuts the roots that feed a tree.",
      answer: chosen(["Yes, outside", "pass"], ["No, under branches", "refer"]),
    },
    {
      id: "steep-ground",
      title: "Steep ground nearby",
      ask: "Is there ground steeper than 10 % within 50 ft (15 m)?",
      why: "Soaking water can set a slope moving; that is a question for a geotechnical engineer.",
      answer: chosen(["No", "pass"], ["Yes", "refer"]),
    },
    {
      id: "overflow",
      title: "Overflow",
      ask: "Can water spill over the yard where it does no harm, and stay off sidewalks and neighbors?",
      why: "Every basin overflows one day.",
      answer: chosen(["Yes, there is a way", "pass"], ["Not sure", "refer"], ["No", "stop"]),
    },
    {
      id: "lead",
      title: "Lead in soil",
      ask: "House built before 1978, or an old road or building beside the place?",
      why: "Old paint and exhaust leave lead in the soil that hands and children meet.",
      answer: chosen(
        ["No", "pass"],
        ["Yes, tested under 200 ppm", "pass"],
        ["Yes, not tested", "refer"],
        ["Tested 200 ppm or more", "stop"],
      ),
    },
    ...sinceTheSecondChecklist,
  ],
};
