import {
  dustReminder,
  handDiggingReminder,
  heatReminder,
  leadReminder,
  liftingReminder,
  privateLinesReminder,
  standingWaterReminder,
  treesReminder,
  trenchReminder,
  utilitiesReminder,
} from "./reminders.ts";
import { chosen, type Stage } from "./stage.ts";

/** The dig itself: people first, then depths and levels. */
export const digDay: Stage = {
  id: "dig-day",
  name: "Dig day",
  purpose:
    "Brief everyone, dig to depth, check the levels, keep the pictures. People who come sign in; loads and incidents go on Dig days.",
  reminders: [
    utilitiesReminder,
    handDiggingReminder,
    privateLinesReminder,
    trenchReminder,
    heatReminder,
    liftingReminder,
    leadReminder,
    dustReminder,
    treesReminder,
    standingWaterReminder,
  ],
  steps: [
    {
      id: "briefing",
      title: "Briefing",
      ask: "Marks shown, tools, heat, first aid, the street address, who is in charge",
      why: "Everyone who comes later hears it too.",
      answer: chosen(["Everyone was briefed", "pass"], ["Not yet", "stop"]),
    },
    {
      id: "marks-visible",
      title: "Marks",
      ask: "Can every mark still be seen?",
      why: "A mark that was mown away protects nobody.",
      answer: chosen(["All of them", "pass"], ["Some are gone", "stop"]),
    },
    {
      id: "soil-as-tested",
      title: "Soil",
      ask: "Is the soil what the test hole showed?",
      why: "Another soil is another basin: test it again before it is filled.",
      answer: chosen(["As tested", "pass"], ["Different: test again", "refer"]),
    },
    {
      id: "depth-check",
      title: "Depth",
      ask: "Dug to the depth of the plan, soil mix and mulch included?",
      why: "Mulch and settling eat ponding depth.",
      answer: chosen(["To the plan", "pass"], ["Not to the plan", "stop"]),
    },
    {
      id: "levels",
      title: "Levels",
      ask: "Floor level, and the berm level above the sill, all around",
      why: "Water finds the low place in the first storm.",
      answer: chosen(["Within 1/2 in (13 mm)", "pass"], ["Not level yet", "stop"]),
    },
  ],
};
