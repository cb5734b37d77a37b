import type { Reminder } from "./stage.ts";

/** Facts behind these: handbook readings of one-call laws, 29 CFR 1926 Subpart P, OSHA heat-index bands, 40 CFR 745.65. */
export const utilitiesReminder: Reminder = {
  id: "utilities",
  title: "Call before any digging",
  text: "Ask the local one-call or utility-marking service to have the lines marked before anyone digs, a test hole included. The wait, how long the marks count and the hand-digging distance are set by local law. Dig only when every operator has answered, and by hand near a mark.",
  inUs: ({ ask }) =>
    `${ask.charAt(0).toUpperCase()}${ask.slice(1)} to have the lines marked before anyone digs, a test hole included. The wait, the life of the ticket and the hand-digging distance are set by state law. Dig only when every operator has answered, and by hand near a mark.`,
};

export const privateLinesReminder: Reminder = {
  id: "private-lines",
  title: "Nobody marks private lines",
  text: "Irrigation, propane from a tank, septic pipes, yard lighting and the wire to a shed are the owner's to find. Ask, and stop at anything unexpected.",
};

export const trenchReminder: Reminder = {
  id: "trench",
  title: "Keep it shallow",
  text: "A rain garden stays under 2 ft deep. Refer anything of 4 ft or more: a trench can bury a person. Pile soil at least 2 ft back from the edge.",
};

export const heatReminder: Reminder = {
  id: "heat",
  title: "Heat",
  text: "Plan shade, a cup of water every 15 to 20 minutes and rests. Full sun can add 15 °F to the heat index: from 91 °F slow down, from 103 °F move the day. Confusion or no sweat is an emergency: call for help.",
};

export const leadReminder: Reminder = {
  id: "lead",
  title: "Lead in soil",
  text: "Test soil beside a house built before 1978 or an old road. From 200 ppm keep children out and refer; wash hands, and leave the soil of the drip line where it is. Your health department decides.",
};

export const standingWaterReminder: Reminder = {
  id: "standing-water",
  title: "Standing water",
  text: "Keep small children away from open holes and ponded water, cover a test hole that stays overnight, and see that the basin is empty within the drain time so that no mosquitoes hatch.",
};

export const wellsAndSepticReminder: Reminder = {
  id: "wells-septic",
  title: "Wells and septic",
  text: "Distances to wells and septic fields are set by the health department. Never dig over a septic tank, pipe or field.",
};

export const liftingReminder: Reminder = {
  id: "lifting",
  title: "Lifting and tools",
  text: "A full five-gallon bucket of soil is about 55 lb: half fill it. Gloves, boots, a first-aid kit and the street address at hand; nobody under age on powered tools; check for ticks, poison ivy and the last tetanus shot.",
};

export const treesReminder: Reminder = {
  id: "trees",
  title: "Tree roots",
  text: "Stay outside the drip line of a tree worth keeping, or at least a foot away for each inch of its trunk, and cut no root thicker than one or two inches (25 to 50 mm).",
};

export const handDiggingReminder: Reminder = {
  id: "hand-digging",
  title: "Near a mark, dig by hand",
  text: "Within 18 inches (0.5 m) of a marked line, and farther where local rules say so, only hand tools, and gently. Marks have faded or were mown away: stop, and have them marked again. Colors differ from country to country: ask the service what each one means.",
  inUs: () =>
    "Within 18 inches of a marked line, and farther where your state says so (Michigan: 4 ft), only hand tools, and gently. Marks have faded or were mown away: stop, and have them marked again. Colors: red electric, yellow gas, orange communications, blue water, purple reclaimed water, green sewer, white the planned dig. Pink is a surveyor's mark: leave it where it is.",
};

export const dustReminder: Reminder = {
  id: "dust",
  title: "Dust",
  text: "Wet dry soil and compost before moving them, and wear an N95 mask where dust flies. Cutting stone or concrete makes silica dust: leave it to somebody equipped for it.",
};

export const overflowReminder: Reminder = {
  id: "overflow",
  title: "Where the overflow goes",
  text: "Water over the sill stays on the lot or goes to an approved outlet, and never over a sidewalk, where it freezes. A downspout that runs into a sewer may need the utility's leave to be taken off.",
};

export const privacyReminder: Reminder = {
  id: "privacy",
  title: "What is written down",
  text: "Write only what the visit needs. Ask before you take pictures, and leave people, plates and house keys out of them.",
};

/** Keeping silt in, and what packs a floor: common practice, no source. Local codes decide what is asked for. */
export const erosionReminder: Reminder = {
  id: "erosion",
  title: "Soil that moves",
  text: "Lay a barrier below the dig before the first spade, cover the pile, sweep the street the same day; your local code says what is asked for. Wheels and tracks stay off the floor. Do not dig frozen or soaked ground.",
};

export const overheadReminder: Reminder = {
  id: "overhead",
  title: "Overhead lines",
  text: "Look up before a ladder, a long handle or a bucket goes up. Every wire counts as live; the utility says how far to stay off, and shields or moves a line where that is not enough.",
};

export const emergencyReminder: Reminder = {
  id: "emergency",
  title: "If somebody is hurt",
  text: "One person calls (911 in the US) and gives the street address, one goes to the gate. Stop at a hit line, leave the place, call the operator. Minors work beside the adult who answers for them, and on no powered tool.",
};

/** Salt and snow: common practice, no source. */
export const winterReminder: Reminder = {
  id: "winter",
  title: "Winter",
  text: "Do not pile plowed snow on the garden or lead salted meltwater into it: salt kills plants and closes clay. Sand instead, and plant what bears salt where it cannot be kept out. A frozen garden drains late.",
};
