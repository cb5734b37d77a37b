import { chosen } from "./stage.ts";
import type { Stage } from "./stage.ts";
import { heatReminder, leadReminder, liftingReminder, privateLinesReminder, standingWaterReminder, trenchReminder, utilitiesReminder, wellsAndSepticReminder } from "./reminders.ts";

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
      answer: { kind: "measured", quantity: "length", rule: "Water table or rock below the dig", orNone: "None met and no sign of it" },
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
      answer: chosen(["No", "pass"], ["Yes, tested under 200 ppm", "pass"], ["Yes, not tested", "refer"], ["Tested 200 ppm or more", "stop"]),
    },
  ],
};
